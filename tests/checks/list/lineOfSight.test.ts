import { describe, expect, it } from 'vitest'
import { lineOfSight } from '../../../src/checks/list/lineOfSight.ts'
import { sightLinesOf } from '../../../src/derive/people/sight.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { boxM, findingsOf, ftM, levelsOf, machineAt0, siteOf, withFigures } from '../yardCase.ts'

// Operator and exit hand in the pull: the operator must see the exit hand.
const crew = (role: string, id: string, runningM: number, offsetM: number, phases = ['pull']) => item('crew', id, onRun(runningM, { offsetM }), { role, phases })
const pair = (apartM: number) => [crew('operator', 'crew:1', 0, -5), crew('exitHand', 'crew:2', apartM, -5)]
// The axis runs along x, so offsets to the right are −y: both stand at y = 5.

describe('lines of sight', () => {
  it('ask for a radio past 150 ft, and not at 150 ft', () => {
    expect(levelsOf(lineOfSight, siteOf({}, ...pair(150 * ftM)))).toEqual(['met'])
    const [far] = findingsOf(lineOfSight, siteOf({}, ...pair(151 * ftM)))
    expect([far!.level, far!.measured!.value, far!.source.class, far!.phases]).toEqual(['CHECK', expect.closeTo(151 * ftM, 9), 'houseRule', ['pull']])
  })

  it('ask for a radio where a building stands between, and not where it stands beside', () => {
    const behind = findingsOf(lineOfSight, siteOf({}, ...pair(20), item('building', 'building:1', boxM(8, 10, 4, 8), { name: 'pump house' })))
    expect(behind.map(({ level }) => level)).toEqual(['CHECK'])
    expect(behind[0]!.itemIds).toEqual(['crew:1', 'crew:2', 'building:1'])
    expect(levelsOf(lineOfSight, siteOf({}, ...pair(20), item('building', 'building:1', boxM(8, 10, 5.01, 8))))).toEqual(['met'])
  })

  it('ask to look where a fence of no known height stands between', () => {
    const [maybe] = findingsOf(lineOfSight, siteOf({}, ...pair(20), item('fence', 'fence:1', [{ xM: 10, yM: 0 }, { xM: 10, yM: 9 }])))
    expect([maybe!.level, maybe!.key]).toEqual(['CHECK', 'line-of-sight@maybe'])
  })

  it('look over a stack lower than the eye, not over a higher one, and ask where nobody gave the rows', () => {
    // OD 10.75 in = 0.273 m; rows of 0.866 · OD above the first: 6 rows reach 1.456 m, 7 reach 1.692 m; the eye is at 1.5 m.
    const withRows = (rowCount: number | null) => findingsOf(lineOfSight, siteOf({}, ...pair(20), withFigures('stack', 'stack:1', onRun(10, { offsetM: -5, turnRad: Math.PI / 2 }), { rowCount }))).map(({ key }) => key)
    expect(withRows(6)).toEqual(['line-of-sight'])
    expect(withRows(7)).toEqual(['line-of-sight@radio'])
    expect(withRows(null)).toEqual(['line-of-sight@maybe'])
  })

  it('see through an empty trailer, ask of one nobody has said is empty', () => {
    const trailer = (isLoaded: boolean | null) => findingsOf(lineOfSight, siteOf({}, ...pair(20), item('trailer', 'trailer:1', onRun(10, { offsetM: -5, turnRad: Math.PI / 2 }), { isLoaded }))).map(({ key }) => key)
    expect(trailer(false)).toEqual(['line-of-sight'])
    expect(trailer(null)).toEqual(['line-of-sight@maybe'])
  })

  it('stop at the wall of a shelter, not inside it', () => {
    // Shelter 4.5 by 4 m about the datum: the operator at (0, 1.5) sees the jaws; from (20, 1.5) its wall at x = 2.25 is between.
    const spots = (x: number) => siteOf({}, machineAt0(), crew('operator', 'crew:1', x, -1.5, ['fuse']), item('shelter', 'shelter:1', onRun(0)))
    expect(levelsOf(lineOfSight, spots(0))).toEqual(['met'])
    expect(levelsOf(lineOfSight, spots(20))).toEqual(['CHECK'])
  })

  it('are a FIX where a radio is needed and does not reach either end', () => {
    const dead = (fromXM: number, toXM: number) => levelsOf(lineOfSight, siteOf({}, ...pair(60), item('radioDead', 'radioDead:1', boxM(fromXM, toXM, 0, 10))))
    expect(dead(55, 65)).toEqual(['FIX'])
    expect(dead(-5, 5)).toEqual(['FIX'])
    // In between nobody stands: the radio reaches.
    expect(dead(20, 40)).toEqual(['CHECK'])
    // In sight no radio is needed.
    expect(levelsOf(lineOfSight, siteOf({}, ...pair(20), item('radioDead', 'radioDead:1', boxM(15, 25, 0, 10))))).toEqual(['met'])
  })

  it('take the spot best seen of several of a task', () => {
    const lines = sightLinesOf(siteOf({}, ...pair(60), crew('exitHand', 'crew:3', 30, -5)))
    expect(lines.filter(({ target }) => target === 'exitHand').map(({ other, distanceM }) => [other!.id, distanceM])).toEqual([['crew:3', 30]])
  })

  it('say nothing where nobody is drawn, and nothing of phases in which a spot is not used', () => {
    expect(levelsOf(lineOfSight, siteOf({}))).toEqual([])
    expect(levelsOf(lineOfSight, siteOf({}, crew('operator', 'crew:1', 0, -5, ['rest']), crew('exitHand', 'crew:2', 90, -5, ['rest'])))).toEqual([])
  })
})
