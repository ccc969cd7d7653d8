import { describe, expect, it } from 'vitest'
import { clearance } from '../../src/checks/list/clearance.ts'
import { free, item } from '../helpers/documents.ts'
import { boxM, findingsOf, levelsOf, machineAt0, siteOf } from './yardCase.ts'

/** Half of 10.750 in. */
const HALF_OD_M = 0.136525
const building = (fromYM: number) => item('building', 'building:1', boxM(10, 20, fromYM, fromYM + 5))

describe('clear of what stands there', () => {
  it('wants 3 ft beside the string, measured from its side', () => {
    // 0.9144 + 0.1365 = 1.0509 m from the axis is just enough; 1 mm less is not. House rule, common practice.
    expect(levelsOf(clearance, siteOf({}, building(0.9144 + HALF_OD_M)))).toEqual(['met'])
    const [near] = findingsOf(clearance, siteOf({}, building(0.9134 + HALF_OD_M)))
    expect(near!.level).toBe('CHECK')
    expect(near!.measured!.value).toBeCloseTo(0.9134, 9)
    expect(near!.margin!.value).toBeCloseTo(-0.001, 9)
  })

  it('does not fit where it touches', () => {
    expect(levelsOf(clearance, siteOf({}, building(HALF_OD_M + 0.001)))).toEqual(['CHECK'])
    expect(levelsOf(clearance, siteOf({}, building(HALF_OD_M)))).toEqual(['FIX'])
    expect(levelsOf(clearance, siteOf({}, building(-1)))).toEqual(['FIX'])
  })

  it('moves the machine and its axis sideways, just far enough', () => {
    const [near] = findingsOf(clearance, siteOf({}, machineAt0(), building(0.5)))
    // The strip wants 1.0509 m, there are 0.5: at least 0.5509 m to the right (y down), in decimetres 0.6.
    expect(near!.remedy).toMatchObject({ command: 'moveBy', args: { ids: ['machine:1'], dxM: 0, dyM: -0.6 } })
  })

  it('keeps a loader out of a tree, and names the way out', () => {
    // Loader 3.6 × 1.9 m at 30, 10: its side is 0.95 m from its middle; a tree of 2 m radius 2.5 m aside overlaps by 0.45 m.
    const [hit] = findingsOf(clearance, siteOf({}, item('loader', 'loader:1', free(30, 10)), item('tree', 'tree:1', free(30, 12.5))))
    expect(hit!.level).toBe('FIX')
    expect(hit!.measured!.value).toBeCloseTo(2.5 - 0.95 - 2, 9)
    expect(hit!.remedy).toMatchObject({ command: 'moveBy', args: { ids: ['loader:1'] } })
    const { dyM } = hit!.remedy!.args as { dyM: number }
    expect(dyM).toBeLessThanOrEqual(-0.5)
  })

  it('leaves a locked loader where it is', () => {
    const [hit] = findingsOf(clearance, siteOf({}, item('loader', 'loader:1', free(30, 10), { locked: true }), item('tree', 'tree:1', free(30, 12.5))))
    expect(hit!.remedy).toBeNull()
  })

  it('sees what the puller drives into though it is drawn elsewhere', () => {
    // It drives ahead of the nose to 97.4 + 9.1 + 3.6 m; a fence across at 105 m is in its way, the string itself ends before it.
    const found = findingsOf(clearance, siteOf({}, item('puller', 'puller:1', free(40, 20)), item('fence', 'fence:1', [{ xM: 105, yM: -3 }, { xM: 105, yM: 3 }])))
    expect(found.map(({ level, itemIds }) => [level, itemIds[0]])).toEqual([['FIX', 'puller:1']])
  })

  it('says how far gear reaches out of the boundary', () => {
    // Strip 10 m wide to either side; loader at y = 9.5 with half a width of 0.95 reaches 0.45 m out.
    const [out] = findingsOf(clearance, siteOf({}, item('boundary', 'boundary:1', boxM(-30, 130, -10, 10)), item('loader', 'loader:1', free(30, 9.5))))
    expect(out!.level).toBe('FIX')
    expect(out!.measured!.value).toBeCloseTo(0.45, 9)
  })

  it('leaves the end of the run to the room check, and judges its sides', () => {
    const short = item('boundary', 'boundary:1', boxM(-30, 50, -10, 10))
    expect(levelsOf(clearance, siteOf({}, short))).toEqual([])
    const narrow = item('boundary', 'boundary:1', boxM(-30, 130, -10, 0.1))
    const [out] = findingsOf(clearance, siteOf({}, narrow))
    // The strip's left side lies 0.1365 m from the axis, the boundary 0.1 m.
    expect(out!.measured!.value).toBeCloseTo(HALF_OD_M - 0.1, 9)
  })

  it('asks for a plan where the string crosses a road, and takes gear off an open one', () => {
    const road = (traffic: string | null) => item('road', 'road:1', [{ xM: 30, yM: -20 }, { xM: 30, yM: 20 }], { traffic })
    expect(levelsOf(clearance, siteOf({}, road('closed')))).toEqual(['CHECK'])
    const loader = item('loader', 'loader:1', free(30, 12))
    expect(findingsOf(clearance, siteOf({}, road('open'), loader)).map(({ level }) => level)).toEqual(['CHECK', 'FIX'])
    expect(findingsOf(clearance, siteOf({}, road('closed'), loader)).map(({ level }) => level)).toEqual(['CHECK'])
  })

  it('never passes what it cannot measure', () => {
    expect(levelsOf(clearance, siteOf({ job: { pipe: null } }, building(30)))).toEqual(['CHECK?'])
    const [unknown] = findingsOf(clearance, siteOf({}, item('tree', 'tree:1', free(30, 30), { figures: { radiusM: { value: null, basis: 'typical' } } })))
    expect(unknown!.missing.map(({ recordId, path }) => [recordId, path])).toEqual([['tree:1', 'figures.radiusM.value']])
  })
})
