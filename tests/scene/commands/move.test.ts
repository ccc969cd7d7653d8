import { describe, expect, it } from 'vitest'
import { after, recordOf, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const near = (x: number): unknown => expect.closeTo(x, 9)
const machine = item('machine', 'machine:1', onRun(0))
const stand = item('stand', 'stand:1', onRun(6))

describe('moving', () => {
  it('a free item adds to its point and keeps its heading', () => {
    expect(recordOf(after(yard(item('tree', 'tree:1', free(1, 2, 0.5))), 'moveBy', { ids: ['tree:1'], dxM: 3, dyM: -1 }), 'tree:1')['place']).toEqual(free(4, 1, 0.5))
  })
  it('an attached item stays attached: distance and offset are those of the point it was dragged to', () => {
    expect(recordOf(after(yard(stand), 'moveBy', { ids: ['stand:1'], dxM: 2, dyM: 0.5 }), 'stand:1')['place']).toEqual(onRun(8, { offsetM: -0.5 }))
  })
  it('an attached item round a bend takes its distance along the pipe', () => {
    const bent = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: 10, yM: 0, radiusM: null }, { xM: 10, yM: 50, radiusM: null }] }), item('stand', 'stand:1', onRun(9)))
    // From (9, 0) to (10, 5): 10 m of axis and 5 m of the second leg.
    expect(recordOf(after(bent, 'moveBy', { ids: ['stand:1'], dxM: 1, dyM: 5 }), 'stand:1')['place']).toEqual(onRun(15))
  })
  it('an item on another moves in the frame of its carrier', () => {
    const document = yard(item('puller', 'puller:1', free(0, 0, Math.PI / 2)), item('crew', 'crew:1', onItem('puller:1', 1, 0)))
    const moved = after(document, 'moveBy', { ids: ['crew:1'], dxM: 2, dyM: 3 })
    // Carrier heads +y: +x of the site is −y of the carrier.
    expect(recordOf(moved, 'crew:1')['place']).toEqual(onItem('puller:1', 4, -2))
    expect(whereIs(moved, 'crew:1')).toMatchObject({ xM: near(2), yM: near(4) })
  })
  it('a carrier together with what it carries moves both once', () => {
    const document = yard(item('puller', 'puller:1', free(0, 0)), item('crew', 'crew:1', onItem('puller:1', 1, 1)))
    expect(whereIs(after(document, 'moveBy', { ids: ['puller:1', 'crew:1'], dxM: 5, dyM: 0 }), 'crew:1')).toMatchObject({ xM: near(6), yM: near(1) })
  })
  it('the machine moves datum and axis, and all that is attached moves with it by one edit of the set-up', () => {
    const document = yard(machine, stand, item('crew', 'crew:1', onItem('machine:1', 0, 2)), item('tree', 'tree:1', free(20, 0)))
    const moved = after(document, 'moveBy', { ids: ['machine:1'], dxM: 3, dyM: 4 })
    expect(recordOf(moved, 'setUp:1')['datum']).toEqual({ xM: 3, yM: 4 })
    expect(whereIs(moved, 'stand:1')).toMatchObject({ xM: near(9), yM: near(4), runningM: 6 })
    expect(whereIs(moved, 'crew:1')).toMatchObject({ xM: near(3), yM: near(6) })
    expect(whereIs(moved, 'tree:1')).toMatchObject({ xM: 20, yM: 0 })
    expect(Object.keys(moved.records).filter((id) => moved.records[id] !== document.records[id])).toEqual(['setUp:1'])
  })
  it('the machine and a stand chosen together moves the stand once', () => {
    expect(whereIs(after(yard(machine, stand), 'moveBy', { ids: ['machine:1', 'stand:1'], dxM: 3, dyM: 0 }), 'stand:1').xM).toBeCloseTo(9, 9)
  })
  it('the machine slides the corner of the path along with the axis, and leaves the further ones', () => {
    const bent = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: 40, yM: 0, radiusM: 5 }, { xM: 60, yM: 30, radiusM: null }] }), machine)
    const moved = after(bent, 'moveBy', { ids: ['machine:1'], dxM: 0, dyM: 2 })
    expect(recordOf(moved, 'run:1')['vertices']).toEqual([{ xM: 40, yM: 2, radiusM: 5 }, { xM: 60, yM: 30, radiusM: null }])
  })
  it('a feature moves every point', () => {
    const document = yard(item('fence', 'fence:1', [{ xM: 0, yM: 0 }, { xM: 5, yM: 1 }]))
    expect(recordOf(after(document, 'moveBy', { ids: ['fence:1'], dxM: 1, dyM: 1 }), 'fence:1')['points']).toEqual([{ xM: 1, yM: 1 }, { xM: 6, yM: 2 }])
  })
  it('what is locked or gone changes nothing', () => {
    const document = yard({ ...stand, locked: true })
    expect(after(document, 'moveBy', { ids: ['stand:1', 'stand:9'], dxM: 1, dyM: 1 })).toBe(document)
  })
})

describe('sliding', () => {
  it('adds to distance and offset of an attached item', () => {
    expect(recordOf(after(yard(stand), 'slideBy', { ids: ['stand:1'], dRunningM: -1.5, dOffsetM: 0.25 }), 'stand:1')['place']).toEqual(onRun(4.5, { offsetM: 0.25 }))
  })
  it('takes a free item along the run and leaves it free', () => {
    expect(recordOf(after(yard(item('loader', 'loader:1', free(5, 3, 0.2))), 'slideBy', { ids: ['loader:1'], dRunningM: 2, dOffsetM: 1 }), 'loader:1')['place']).toEqual(free(7, 2, 0.2))
  })
  it('takes the machine and with it the datum', () => {
    expect(recordOf(after(yard(machine), 'slideBy', { ids: ['machine:1'], dRunningM: 2, dOffsetM: 1 }), 'setUp:1')['datum']).toEqual({ xM: 2, yM: -1 })
  })
  it('takes a feature by its middle', () => {
    const document = yard(item('fence', 'fence:1', [{ xM: 0, yM: 4 }, { xM: 4, yM: 4 }]))
    expect(recordOf(after(document, 'slideBy', { ids: ['fence:1'], dRunningM: 1, dOffsetM: 2 }), 'fence:1')['points']).toEqual([{ xM: 1, yM: 2 }, { xM: 5, yM: 2 }])
  })
})

describe('setting distance, offset and turn', () => {
  it('of an attached item leaves alone what is not named', () => {
    const document = yard({ ...stand, place: onRun(6, { offsetM: 0.1, turnRad: 0.2 }) } as typeof stand)
    expect(recordOf(after(document, 'setOnRun', { id: 'stand:1', runningM: 7.62 }), 'stand:1')['place']).toEqual(onRun(7.62, { offsetM: 0.1, turnRad: 0.2 }))
  })
  it('of a free item moves it there and leaves it free', () => {
    const moved = after(yard(item('loader', 'loader:1', free(5, 3, 0.2))), 'setOnRun', { id: 'loader:1', runningM: 8 })
    expect(recordOf(moved, 'loader:1')['place']).toEqual(free(8, 3, 0.2))
  })
  it('of an item on another keeps it there and puts it at that distance', () => {
    const document = yard(item('puller', 'puller:1', free(10, 0, 1)), item('crew', 'crew:1', onItem('puller:1', 1, 0)))
    const moved = after(document, 'setOnRun', { id: 'crew:1', runningM: 14, offsetM: 2 })
    expect(recordOf(moved, 'crew:1')['place']).toMatchObject({ at: 'onItem' })
    expect(whereIs(moved, 'crew:1')).toMatchObject({ xM: near(14), yM: near(-2) })
  })
  it('of the machine moves the datum there', () => {
    const moved = after(yard(machine, stand), 'setOnRun', { id: 'machine:1', runningM: -1, turnRad: 0.01 })
    expect(recordOf(moved, 'setUp:1')['datum']).toEqual({ xM: -1, yM: 0 })
    expect(recordOf(moved, 'machine:1')['place']).toEqual(onRun(0, { turnRad: 0.01 }))
  })
  it('of a feature is refused by name', () => {
    const document = yard(item('fence', 'fence:1', [{ xM: 0, yM: 0 }, { xM: 5, yM: 1 }]))
    expect(() => after(document, 'setOnRun', { id: 'fence:1', runningM: 1 })).toThrow('setOnRun: id fence:1 has no place of its own')
  })
})

describe('turning', () => {
  it('an attached item turns against the run, a free one in the site', () => {
    const turned = after(yard(stand, item('tree', 'tree:1', free(0, 0, 3))), 'rotateBy', { ids: ['stand:1', 'tree:1'], turnRad: 0.25 })
    expect(recordOf(turned, 'stand:1')['place']).toEqual(onRun(6, { turnRad: 0.25 }))
    // 3.25 rad is beyond π: 3.25 − 2π = −3.033185307.
    expect(recordOf(turned, 'tree:1')['place']).toEqual(free(0, 0, -3.033185307))
  })
  it('the machine turns the axis about the datum, with all that is attached and the corner of the path at its distance', () => {
    const bent = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: 40, yM: 0, radiusM: 5 }] }), machine, stand)
    const turned = after(bent, 'rotateBy', { ids: ['machine:1', 'stand:1'], turnRad: Math.PI / 2 })
    // The heading is kept to 1e-9 rad, so 6 m out the point is right to 6e-9 m.
    expect(whereIs(turned, 'stand:1')).toMatchObject({ xM: expect.closeTo(0, 7), yM: near(6) })
    expect(recordOf(turned, 'run:1')['vertices']).toEqual([{ xM: expect.closeTo(0, 7), yM: 40, radiusM: 5 }])
  })
  it('a feature turns about its middle', () => {
    const document = yard(item('fence', 'fence:1', [{ xM: -1, yM: 0 }, { xM: 1, yM: 0 }]))
    expect(recordOf(after(document, 'rotateBy', { ids: ['fence:1'], turnRad: Math.PI / 2 }), 'fence:1')['points']).toEqual([{ xM: near(0), yM: -1 }, { xM: near(0), yM: 1 }])
  })
})
