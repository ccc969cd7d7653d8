import { describe, expect, it } from 'vitest'
import { item, free, onRun, yard } from '../../helpers/documents.ts'
import { harness, lastArgs, named } from '../toolHarness.ts'

const stand = (runningM: number, id: string, over: Record<string, unknown> = {}): ReturnType<typeof item> => item('stand', id, onRun(runningM), over)
const building = item('building', 'building:b', [{ xM: -2, yM: 4 }, { xM: 8, yM: 4 }, { xM: 8, yM: 9 }, { xM: -2, yM: 9 }])

describe('selecting', () => {
  it('a click chooses what lies under it, a click on empty ground nothing', () => {
    const tool = harness(yard(stand(5, 'stand:a')))
    expect(tool.tap(5, 0)).toEqual([{ do: 'select', ids: ['stand:a'] }])
    const chosen = harness(yard(stand(5, 'stand:a')), { selection: ['stand:a'] })
    expect(chosen.tap(20, 8)).toEqual([{ do: 'select', ids: [] }])
  })

  it('a click again chooses what lies beneath', () => {
    const yardWithBoth = yard(stand(5, 'stand:a'), item('building', 'building:under', [{ xM: 0, yM: -3 }, { xM: 10, yM: -3 }, { xM: 10, yM: 3 }, { xM: 0, yM: 3 }]))
    expect(harness(yardWithBoth, { selection: ['stand:a'] }).tap(5, 0)).toEqual([{ do: 'select', ids: ['building:under'] }])
    expect(harness(yardWithBoth, { selection: ['building:under'] }).tap(5, 0)).toEqual([{ do: 'select', ids: ['stand:a'] }])
  })

  it('with Shift a click adds, and takes away again', () => {
    const both = yard(stand(5, 'stand:a'), stand(12, 'stand:b'))
    expect(harness(both, { selection: ['stand:a'] }).tap(12, 0, { shift: true })).toEqual([{ do: 'select', ids: ['stand:a', 'stand:b'] }])
    expect(harness(both, { selection: ['stand:a', 'stand:b'] }).tap(12, 0, { shift: true })).toEqual([{ do: 'select', ids: ['stand:a'] }])
  })

  it('a long press of a finger adds what it rests on', () => {
    const tool = harness(yard(item('crew', 'crew:a', free(5, 3)), item('crew', 'crew:b', free(12, 3))), { selection: ['crew:a'] })
    tool.down(12, 3, { pointer: 'touch' })
    expect(tool.send({ type: 'hold', pointerId: 1, pointer: 'touch', ...tool.context.toPx(12, 3), xM: 12, yM: 3, shift: false, alt: false, mod: false, button: 0, timeMs: 500 })).toEqual([{ do: 'select', ids: ['crew:a', 'crew:b'] }])
    // The release that ends it is no tap.
    expect(tool.up(12, 3, { pointer: 'touch' })).toEqual([])
  })

  it('Shift and a drag of empty ground draw a box; what lies wholly inside is chosen besides', () => {
    const tool = harness(yard(stand(5, 'stand:a'), stand(12, 'stand:b'), building), { selection: ['stand:b'] })
    tool.down(3, -2, { shift: true })
    tool.move(6, 2, { shift: true })
    expect(tool.overlay().box).toEqual({ fromXM: 3, fromYM: -2, toXM: 6, toYM: 2 })
    expect(tool.up(6, 2, { shift: true })).toEqual([{ do: 'select', ids: ['stand:b', 'stand:a'] }])
  })

  it('a tap on a mark opens its finding', () => {
    const tool = harness(yard(stand(5, 'stand:a')), { spots: [{ xPx: 700, yPx: 100, radiusPx: 12, effect: { do: 'openFinding', key: 'k' } }] })
    // px 700 is (700 − 500)/20 = 10 m, px 100 is (250 − 100)/20 = 7.5 m
    expect(tool.tap(10, 7.5)).toEqual([{ do: 'openFinding', key: 'k' }])
  })
})

describe('moving', () => {
  it('a mouse drags at once; the drag is begun, shown and made one step', () => {
    const tool = harness(yard(stand(5, 'stand:a')))
    tool.down(5, 0)
    expect(named(tool.move(7, 0))).toEqual(['select', 'begin', 'preview'])
    const effects = tool.up(7, 0)
    expect(named(effects)).toEqual(['commit'])
  })

  it('a step is called by the label of what is moved', () => {
    const tool = harness(yard(stand(5, 'stand:a'), stand(9, 'stand:b')))
    tool.down(9, 0)
    expect(tool.move(11, 0)).toContainEqual({ do: 'begin', label: { text: { en: 'move E2', es: 'mover E2' } } })
  })

  it('a finger pans unless it starts on what is chosen', () => {
    const crew = item('crew', 'crew:a', free(5, 3))
    const pans = harness(yard(crew))
    pans.down(5, 3, { pointer: 'touch' })
    expect(named(pans.move(7, 3, { pointer: 'touch' }))).toEqual(['pan'])
    const moves = harness(yard(crew), { selection: ['crew:a'] })
    moves.down(5, 3, { pointer: 'touch' })
    expect(named(moves.move(7, 3, { pointer: 'touch' }))).toEqual(['begin', 'preview'])
    // UNDO is offered after a touch move, never after a mouse one.
    expect(moves.up(7, 3, { pointer: 'touch' })).toContainEqual({ do: 'notice', text: { en: 'O moved.', es: 'O movido.' }, undo: true })
  })

  it('what is drawn on the site has to be chosen before a mouse moves it', () => {
    const first = harness(yard(building))
    first.down(3, 6)
    expect(named(first.move(5, 6))).toEqual(['pan'])
    const chosen = harness(yard(building), { selection: ['building:b'] })
    chosen.down(3, 6)
    expect(named(chosen.move(5, 6))).toEqual(['begin', 'preview'])
  })

  it('several chosen items move together by the way of the one that is held', () => {
    const tool = harness(yard(stand(5, 'stand:a'), stand(9, 'stand:b')), { selection: ['stand:a', 'stand:b'], snapping: false })
    tool.down(9, 0)
    expect(lastArgs(tool.move(9.5, 0.25))).toEqual({ ids: ['stand:a', 'stand:b'], dxM: 0.5, dyM: 0.25 })
  })

  it('locked items stay, hold still freezes all', () => {
    const locked = harness(yard(stand(5, 'stand:a', { locked: true })))
    locked.down(5, 0)
    expect(named(locked.move(7, 0))).toEqual(['select', 'notice'])
    const frozen = harness(yard(stand(5, 'stand:a')), { frozen: true })
    frozen.down(5, 0)
    const effects = named(frozen.move(7, 0))
    expect(effects).toContain('notice')
    expect(effects).not.toContain('begin')
  })

  it.each(['cancel', 'Escape'] as const)('%s puts everything back', (how) => {
    const tool = harness(yard(stand(5, 'stand:a')))
    tool.down(5, 0)
    tool.move(7, 0)
    expect(how === 'cancel' ? tool.send({ type: 'cancel' }) : tool.key('Escape')).toEqual([{ do: 'cancelPreview' }])
    expect(tool.state().name).toBe('idle')
    expect(tool.up(7, 0)).toEqual([])
  })

  it('a drag that comes back to where it began makes no step', () => {
    const tool = harness(yard(stand(5, 'stand:a')), { snapping: false })
    tool.down(5, 0)
    tool.move(7, 0)
    tool.move(5, 0)
    expect(tool.up(5, 0)).toEqual([{ do: 'cancelPreview' }])
  })

  it('a distance typed during a drag is the running distance of what stands on the line', () => {
    const tool = harness(yard(stand(5, 'stand:a')))
    tool.down(5, 0)
    tool.move(7, 0)
    for (const key of ['2', '5', "'"]) tool.key(key)
    expect(tool.overlay().echo).toEqual({ typed: "25'", read: '25 ft 0 in' })
    const effects = tool.key('Enter')
    expect(named(effects)).toEqual(['preview', 'commit'])
    // 25 ft = 7.62 m, from 5 m: 2.62 m further
    expect(lastArgs(effects)['dxM']).toBeCloseTo(2.62, 9)
  })

  it('a bare number is feet, or metres in a metric layout; Esc clears the typing before the drag', () => {
    const tool = harness(yard(stand(5, 'stand:a')), { system: 'metric' })
    tool.down(5, 0)
    tool.move(7, 0)
    tool.key('8')
    expect(tool.overlay().echo).toEqual({ typed: '8', read: '8 m' })
    expect(tool.key('Escape')).toEqual([])
    expect(tool.state().name).toBe('moving')
    expect(tool.key('Escape')).toEqual([{ do: 'cancelPreview' }])
  })

  it('a distance typed on the infeed side stays on the infeed side', () => {
    const tool = harness(yard(stand(-5, 'stand:a')))
    tool.down(-5, 0)
    tool.move(-6, 0)
    for (const key of ['2', '0', "'"]) tool.key(key)
    // 20 ft = 6.096 m on the infeed: from −5 to −6.096
    expect(lastArgs(tool.key('Enter'))['dxM']).toBeCloseTo(-1.096, 9)
  })

  it('for a free item the typed distance is how far it goes in the direction of the drag', () => {
    const tool = harness(yard(item('tree', 'tree:a', free(5, 8))), { snapping: false, system: 'metric' })
    tool.down(5, 8)
    tool.move(8, 12)
    tool.key('1')
    tool.key('0')
    const { dxM, dyM } = lastArgs(tool.key('Enter'))
    // direction (3, 4)/5, 10 m along it
    expect([dxM, dyM].map((value) => Math.round(Number(value) * 1e9) / 1e9)).toEqual([6, 8])
  })

  it('Alt suspends snapping', () => {
    const tool = harness(yard(stand(5, 'stand:a')))
    tool.down(5, 0)
    expect(lastArgs(tool.move(7.0123, 0.1))['dyM']).toBe(0)
    expect(lastArgs(tool.move(7.0123, 0.1, { alt: true }))).toMatchObject({ dyM: 0.1 })
  })
})

describe('handles', () => {
  it('the turning handle turns its item to the nearest 15° and whole degrees', () => {
    const tool = harness(yard(item('loader', 'loader:a', free(5, 8))), { selection: ['loader:a'] })
    const [handle] = tool.context.handles
    expect(handle?.kind).toBe('rotate')
    const at = { xM: (handle!.xPx - 500) / 20, yM: (250 - handle!.yPx) / 20 }
    tool.down(at.xM, at.yM)
    // From straight above to straight left: a quarter turn.
    const effects = tool.move(5 - (at.yM - 8), 8.01)
    expect(lastArgs(effects)['turnRad']).toBeCloseTo(Math.PI / 2, 9)
    expect(named(tool.up(0, 8))).toEqual(['commit'])
  })

  it('a corner of a feature is dragged, a new one pulled out of a side, and one taken away with Alt', () => {
    const tool = harness(yard(building), { selection: ['building:b'], snapping: false })
    tool.down(8, 4)
    expect(lastArgs(tool.move(9, 3))).toEqual({ id: 'building:b', index: 1, xM: 9, yM: 3 })
    tool.up(9, 3)
    tool.down(3, 4)
    const effects = tool.move(3, 2)
    expect(effects.at(-1)).toEqual({ do: 'preview', command: 'addVertex', args: { id: 'building:b', index: 1, xM: 3, yM: 2 } })
    tool.send({ type: 'cancel' })
    expect(tool.tap(8, 4, { alt: true })).toEqual([{ do: 'command', command: 'removeVertex', args: { id: 'building:b', index: 1 } }])
  })

  it('handles work for a finger within 24 px', () => {
    const tool = harness(yard(building), { selection: ['building:b'], snapping: false })
    // 1 m is 20 px
    tool.down(9, 4, { pointer: 'touch' })
    expect(named(tool.move(10, 3, { pointer: 'touch' }))).toEqual(['begin', 'preview'])
  })
})
