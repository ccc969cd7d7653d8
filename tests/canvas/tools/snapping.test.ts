import { describe, expect, it } from 'vitest'
import { item, free, onItem, onRun, yard } from '../../helpers/documents.ts'
import { roundStepM, snapOnRun, snapPoint, withRiders, type RunNeighbour, type RunSnapInput } from '../../../src/canvas/tools/snapping.ts'
import { contextOf } from '../toolHarness.ts'

const ft = 0.3048
const at = (runningM: number, offsetM = 0, id = `n${runningM}`): RunNeighbour => ({ id, runningM, offsetM, xM: runningM, yM: -offsetM })
const snap = (over: Partial<RunSnapInput>): ReturnType<typeof snapOnRun> => snapOnRun({ runningM: 0, offsetM: 0, neighbours: [], pxPerM: 20, reachPx: 8, system: 'feetInches', ...over })
const kinds = ({ marks }: { marks: readonly { kind: string }[] }): string[] => marks.map(({ kind }) => kind)

describe('snapping', () => {
  it.each([
    // 4 px and more: at 20 px/m 1 ft is 6.1 px, 6 in 3.05 px; at 80 px/m 3 in is 6.1 px; at 2 px/m 10 ft is 6.1 px
    ['feetInches', 20, ft], ['feetInches', 80, 3 * 0.0254], ['feetInches', 2, 10 * ft], ['metric', 20, 0.5], ['metric', 200, 0.05],
  ] as const)('the round distance of a tape in %s at %d px/m is %d m', (system, pxPerM, stepM) => {
    expect(roundStepM(system, pxPerM)).toBeCloseTo(stepM, 12)
  })

  it('catches the axis within reach and rounds the running distance', () => {
    // reach 8 px = 0.4 m; 7.7 m is 25.26 ft
    const got = snap({ runningM: 7.7, offsetM: 0.3 })
    expect(got.offsetM).toBe(0)
    expect(got.runningM).toBeCloseTo(25 * ft, 12)
    expect(kinds(got)).toEqual(['axis', 'round'])
  })

  it('beyond reach of the axis it rounds the offset', () => {
    // 1.3 m is 4.27 ft
    expect(snap({ runningM: 3, offsetM: 1.3 }).offsetM).toBeCloseTo(4 * ft, 12)
  })

  it('takes the distance of what stands beside the line, and its offset', () => {
    const across = snap({ runningM: 5.1, neighbours: [at(5, 3)] })
    expect(across.runningM).toBe(5)
    expect(kinds(across)).toEqual(['axis', 'across'])
    const along = snap({ runningM: 9, offsetM: 3.2, neighbours: [at(5, 3)] })
    expect(along.offsetM).toBe(3)
    expect(kinds(along)).toContain('along')
  })

  it('never lands on what stands on the line: there is a thing there', () => {
    const got = snap({ runningM: 5.05, neighbours: [at(5.07)] })
    expect(got.runningM).not.toBe(5.07)
  })

  it('repeats the spacing of neighbours beyond them and half way between them', () => {
    // 4 and 7.5: next at 11; between: 5.75
    expect(snap({ runningM: 11.15, neighbours: [at(4), at(7.5)] }).runningM).toBe(11)
    expect(snap({ runningM: 0.6, neighbours: [at(4), at(7.5)] }).runningM).toBe(0.5)
    const middle = snap({ runningM: 5.7, neighbours: [at(4), at(7.5)] })
    expect(middle.runningM).toBe(5.75)
    expect(middle.marks).toContainEqual({ kind: 'equal', betweenM: [4, 5.75, 7.5] })
  })

  it('a point catches corners of features and centres of items before anything else', () => {
    const context = contextOf(yard(item('building', 'building:b', [{ xM: 2, yM: 4 }, { xM: 8, yM: 4 }, { xM: 8, yM: 9 }])))
    const got = snapPoint(context, 2.2, 4.2, { reachPx: 8, without: new Set(), toCorners: true, suspended: false })
    expect(got).toMatchObject({ xM: 2, yM: 4, marks: [{ kind: 'corner', xM: 2, yM: 4 }] })
    expect(snapPoint(context, 2.2, 4.2, { reachPx: 8, without: new Set(['building:b']), toCorners: true, suspended: false }).marks.map(({ kind }) => kind)).not.toContain('corner')
  })

  it('a leg comes square to the axis from the corner before', () => {
    const got = snapPoint(contextOf(yard()), 12, 6.2, { reachPx: 8, without: new Set(), from: { xM: 3, yM: 6 }, toCorners: false, suspended: false })
    expect(got.yM).toBeCloseTo(6, 12)
    expect(got.marks.map(({ kind }) => kind)).toContain('square')
  })

  it('suspended it answers the point itself', () => {
    expect(snapPoint(contextOf(yard()), 3.123, 0.05, { reachPx: 8, without: new Set(), toCorners: true, suspended: true })).toMatchObject({ xM: 3.123, yM: 0.05, marks: [] })
  })

  it('what rides on an item moves with it, at any depth, and is no neighbour', () => {
    const context = contextOf(yard(item('puller', 'puller:p', onRun(30)), item('crew', 'crew:a', onItem('puller:p', 1, 1)), item('crew', 'crew:b', onItem('crew:a', 1, 1)), item('crew', 'crew:c', free(0, 5))))
    expect([...withRiders(context.pickables, ['puller:p'])].sort()).toEqual(['crew:a', 'crew:b', 'puller:p'])
  })
})
