import { describe, expect, it } from 'vitest'
import { item, onRun, yard } from '../../helpers/documents.ts'
import { harness } from '../toolHarness.ts'

const dropping = (over = {}) => harness(yard(item('stand', 'stand:1', onRun(12))), { tool: { name: 'rollOff' }, ...over })

describe('the roll-off tool', () => {
  it('drops a pipe where it is tapped, and again where it is tapped next', () => {
    const tool = dropping()
    expect(tool.down(3, -4)).toEqual([{ do: 'rollOff', rollOff: { xM: 3, yM: -4 } }])
    tool.up(3, -4)
    expect(tool.down(8, 2)).toEqual([{ do: 'rollOff', rollOff: { xM: 8, yM: 2 } }])
  })

  it('carries it with a drag, not with the tremble of a finger, and leaves it where it is let go', () => {
    const tool = dropping()
    tool.down(0, 0, { pointer: 'touch' })
    // 20 px a metre: 0.2 m are 4 px, under the 10 px of a touch.
    expect(tool.move(0.2, 0, { pointer: 'touch' })).toEqual([])
    expect(tool.move(2, 0, { pointer: 'touch' })).toEqual([{ do: 'rollOff', rollOff: { xM: 2, yM: 0 } }])
    tool.up(2, 0, { pointer: 'touch' })
    expect(tool.move(5, 0)).toEqual([])
  })

  it('works without a pointer: Enter drops it on what is chosen, arrows carry it, Esc takes it up and then lets go', () => {
    const tool = dropping({ selection: ['stand:1'] })
    expect(tool.key('Enter')).toEqual([{ do: 'rollOff', rollOff: { xM: 12, yM: 0 } }])
    expect(tool.key('ArrowRight')).toEqual([{ do: 'rollOff', rollOff: { xM: 12.5, yM: 0 } }])
    expect(tool.key('ArrowDown')).toEqual([{ do: 'rollOff', rollOff: { xM: 12.5, yM: -0.5 } }])
    expect(tool.key('Escape')).toEqual([{ do: 'rollOff', rollOff: null }])
    expect(tool.key('Escape')).toEqual([{ do: 'rollOff', rollOff: null }, { do: 'tool', tool: null }])
  })

  it('drops on the datum where nothing is chosen', () => expect(dropping().key('Enter')).toEqual([{ do: 'rollOff', rollOff: { xM: 0, yM: 0 } }]))
})
