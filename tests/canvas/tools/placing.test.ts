import { describe, expect, it } from 'vitest'
import { documentOf, item, job, layout, onRun, yard } from '../../helpers/documents.ts'
import { harness, lastArgs, named } from '../toolHarness.ts'
import { rowOf } from '../../../src/canvas/tools/row.ts'

const standTool = { name: 'place', kind: 'stand' } as const

describe('placing one item', () => {
  it('a tap puts it on the line, snapped to the axis and a round distance, and the tool is put down', () => {
    const tool = harness(yard(), { tool: standTool })
    const effects = tool.tap(7.65, 0.2)
    // 25 ft = 7.62 m
    expect(effects[0]).toEqual({ do: 'command', command: 'place', args: { kind: 'stand', place: { at: 'onRun', runId: 'run:1', runningM: expect.closeTo(7.62, 9) as number, offsetM: 0, turnRad: 0 } }, select: true })
    expect(effects[1]).toEqual({ do: 'tool', tool: null })
  })

  it('a drag from the gear edge places where it is let go, though it began elsewhere', () => {
    const tool = harness(yard(), { tool: standTool })
    tool.move(5, 3)
    tool.move(6.1, 0.1)
    expect(tool.overlay().ghosts).toHaveLength(1)
    expect(lastArgs(tool.up(6.1, 0.1))['place']).toMatchObject({ at: 'onRun' })
  })

  it('far from the axis it stands free', () => {
    const tool = harness(yard(), { tool: standTool, snapping: false })
    expect(lastArgs(tool.tap(7, 6))['place']).toEqual({ at: 'free', xM: 7, yM: 6, headingRad: 0 })
  })

  it('without a set-up it stands free too', () => {
    const tool = harness(documentOf(layout(), job()), { tool: { name: 'place', kind: 'machine' }, snapping: false })
    expect(lastArgs(tool.tap(7, 6))['place']).toEqual({ at: 'free', xM: 7, yM: 6, headingRad: 0 })
  })

  it('Shift keeps the tool for another', () => {
    expect(named(harness(yard(), { tool: standTool }).tap(7, 0, { shift: true }))).toEqual(['command'])
  })

  it('a finger that drags the sheet pans and places nothing', () => {
    const tool = harness(yard(), { tool: standTool })
    tool.down(5, 3, { pointer: 'touch' })
    expect(named(tool.move(7, 3, { pointer: 'touch' }))).toEqual(['pan'])
    expect(tool.up(7, 3, { pointer: 'touch' })).toEqual([])
  })

  it('a typed distance places at that running distance', () => {
    const tool = harness(yard(), { tool: standTool })
    tool.move(3, 0)
    for (const key of ['2', '0']) tool.key(key)
    expect(lastArgs(tool.key('Enter'))['place']).toMatchObject({ runningM: expect.closeTo(6.096, 9) as number, offsetM: 0 })
  })

  it('what the shelf adds goes with it', () => {
    const tool = harness(yard(), { tool: { ...standTool, patch: { roller: 'V' } } as typeof standTool })
    expect(lastArgs(tool.tap(7, 0))['patch']).toEqual({ roller: 'V' })
  })

  it('Esc puts the tool down, hold still places nothing', () => {
    expect(harness(yard(), { tool: standTool }).key('Escape')).toEqual([{ do: 'tool', tool: null }])
    expect(named(harness(yard(), { tool: standTool, frozen: true }).tap(7, 0))).toEqual(['notice'])
  })
})

describe('a row', () => {
  const rowTool = { name: 'row', kind: 'roller' } as const

  it('one drag lays equal items at the spacing, counted to where it is let go', () => {
    const tool = harness(yard(), { tool: rowTool, system: 'metric' })
    tool.down(6, 0)
    expect(lastArgs(tool.move(25, 0))).toMatchObject({ kind: 'roller', fromRunningM: 6, spacingM: 6, count: 4, offsetM: 0 })
    expect(tool.overlay().figures).toBe('4 at 6 m')
    const effects = tool.up(25, 0)
    expect(named(effects)).toEqual(['cancelPreview', 'command', 'tool'])
    // 6, 12, 18, 24 reach 25
    expect(lastArgs(effects)['count']).toBe(4)
  })

  it('tap and tap does the same', () => {
    const tool = harness(yard(), { tool: rowTool, system: 'metric' })
    expect(named(tool.tap(6, 0))).not.toContain('command')
    tool.move(20, 0)
    expect(lastArgs(tool.tap(20, 0))).toMatchObject({ fromRunningM: 6, count: 3 })
  })

  it('typed digits set the spacing, Enter lays the row', () => {
    const tool = harness(yard(), { tool: rowTool })
    tool.down(0, 0)
    tool.move(12.2, 0)
    tool.key('1')
    tool.key('0')
    // 10 ft = 3.048 m; 12.2 m holds 5 places from 0
    expect(lastArgs(tool.key('Enter'))).toMatchObject({ spacingM: expect.closeTo(3.048, 9) as number, count: 5 })
  })

  it('a sweep towards the infeed counts backwards', () => {
    expect(rowOf(-4, -17, 6)).toEqual({ count: 3, spacingM: -6 })
  })

  it('Esc takes the preview back and puts the tool down', () => {
    const tool = harness(yard(), { tool: rowTool })
    tool.down(0, 0)
    tool.move(12, 0)
    expect(named(tool.key('Escape'))).toEqual(['cancelPreview', 'tool'])
  })
})

describe('drawing corner by corner', () => {
  const area = { name: 'place', kind: 'building' } as const

  it('taps put corners, a tap on the first one closes the area', () => {
    const tool = harness(yard(), { tool: area, snapping: false })
    tool.tap(0, 5)
    tool.tap(6, 5)
    tool.tap(6, 9)
    const effects = tool.tap(0.1, 5.1)
    expect(effects[0]).toMatchObject({ do: 'command', command: 'place', args: { kind: 'building', points: [{ xM: 0, yM: 5 }, { xM: 6, yM: 5 }, { xM: 6, yM: 9 }] } })
    expect(effects[1]).toEqual({ do: 'tool', tool: null })
  })

  it('a line ends with a tap on its last corner or with Enter', () => {
    const line = { name: 'place', kind: 'fence' } as const
    const tapped = harness(yard(), { tool: line, snapping: false })
    tapped.tap(0, 5)
    tapped.tap(6, 5)
    expect(named(tapped.tap(6, 5))).toContain('command')
    const keyed = harness(yard(), { tool: line, snapping: false })
    keyed.tap(0, 5)
    keyed.tap(6, 5)
    expect(lastArgs(keyed.key('Enter'))['points']).toHaveLength(2)
  })

  it('too few corners make nothing', () => {
    const tool = harness(yard(), { tool: area, snapping: false })
    tool.tap(0, 5)
    tool.tap(6, 5)
    expect(tool.key('Enter')).toEqual([])
  })

  it('typed digits set the length of the leg, Backspace takes a corner back', () => {
    const tool = harness(yard(), { tool: area, snapping: false, system: 'metric' })
    tool.tap(0, 5)
    tool.move(3, 5)
    tool.key('8')
    tool.key('Enter')
    expect(tool.overlay().sketch?.points[1]).toEqual({ xM: 8, yM: 5 })
    tool.key('Backspace')
    expect(tool.overlay().sketch?.points).toHaveLength(2)
  })

  it('a second finger between two corners leaves the ones tapped', () => {
    const tool = harness(yard(), { tool: area, snapping: false })
    tool.tap(0, 5)
    tool.send({ type: 'cancel' })
    tool.tap(6, 5)
    tool.tap(6, 9)
    expect(lastArgs(tool.key('Enter'))['points']).toHaveLength(3)
  })

  it('a bend goes into the pull path after its last corner', () => {
    const tool = harness(yard(), { tool: { name: 'place', kind: 'bend' }, gesture: 'bend', runCorners: 2, snapping: false })
    expect(tool.tap(60, 0)[0]).toEqual({ do: 'command', command: 'addVertex', args: { id: 'run:1', index: 2, xM: 60, yM: 0 } })
  })
})

describe('the strip and measuring', () => {
  it('a drag is the middle line, a tap beside it the width', () => {
    const tool = harness(yard(), { tool: { name: 'strip' }, snapping: false })
    tool.down(-15, 0)
    tool.move(60, 0)
    tool.up(60, 0)
    tool.move(20, 9)
    const effects = tool.tap(20, 10)
    expect(lastArgs(effects)).toEqual({ xM: -15, yM: 0, headingRad: 0, lengthM: 75, widthM: 20 })
    expect(named(effects)).toEqual(['command', 'tool'])
  })

  it('length and width can be typed, three taps do without a drag', () => {
    const tool = harness(documentOf(layout(), job()), { tool: { name: 'strip' }, snapping: false, system: 'metric' })
    tool.tap(0, 0)
    tool.move(5, 0)
    for (const key of ['1', '2', '8']) tool.key(key)
    tool.key('Enter')
    for (const key of ['2', '1']) tool.key(key)
    expect(lastArgs(tool.key('Enter'))).toEqual({ xM: 0, yM: 0, headingRad: 0, lengthM: 128, widthM: 21 })
  })

  it('measuring by drag or by two taps leaves the line on the sheet', () => {
    const tool = harness(yard(), { tool: { name: 'measure' }, snapping: false })
    tool.down(0, 5)
    tool.move(3, 9)
    expect(tool.up(3, 9)).toEqual([{ do: 'measure', measure: { fromXM: 0, fromYM: 5, toXM: 3, toYM: 9 } }])
    tool.tap(1, 1)
    tool.move(4, 5)
    expect(tool.tap(4, 5).at(-1)).toEqual({ do: 'measure', measure: { fromXM: 1, fromYM: 1, toXM: 4, toYM: 5 } })
  })

  it('measuring catches the corners of what is there', () => {
    const building = item('building', 'building:b', [{ xM: 2, yM: 4 }, { xM: 8, yM: 4 }, { xM: 8, yM: 9 }])
    const tool = harness(yard(building, item('stand', 'stand:a', onRun(5))), { tool: { name: 'measure' } })
    tool.down(2.2, 4.1)
    tool.move(5.1, 0.2)
    expect(tool.up(5.1, 0.2)).toEqual([{ do: 'measure', measure: { fromXM: 2, fromYM: 4, toXM: 5, toYM: 0 } }])
  })
})
