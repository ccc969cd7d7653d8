import { describe, expect, it } from 'vitest'
import { recordsOf } from '../../../src/scene/document.ts'
import { labelsOf } from '../../../src/scene/resolve.ts'
import { after, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp } from '../../helpers/documents.ts'

const line = documentOf(layout(), job({ stickLengthM: 12.192 }), setUp(), run(), item('machine', 'machine:1', onRun(0)))
const usual = (document: typeof line) => after(document, 'usualSetUp', { setUpId: 'setUp:1' })

describe('the usual set-up', () => {
  it('with 40 ft sticks: rack beams at 8 ft 4 in and 31 ft 8 in, exit stands at 20 ft and 35 ft, on the jaw line', () => {
    const now = usual(line)
    const [rack] = recordsOf(now, 'rack')
    // Common practice: beams 23 ft 4 in apart, near beam 8 ft 4 in from the datum: −6.096 ± 3.556.
    expect(whereIs(now, rack!.id).runningM! + rack!.figures.beamSpacingM.value! / 2).toBeCloseTo(-2.54, 9)
    expect(whereIs(now, rack!.id).runningM! - rack!.figures.beamSpacingM.value! / 2).toBeCloseTo(-9.652, 9)
    // Common practice, no source: some 20 ft each side of the machine is the usual place for a stand.
    expect(recordsOf(now, 'stand').map(({ id, height }) => [whereIs(now, id).runningM, height.rule])).toEqual([[6.096, 'onAxis'], [10.668, 'onAxis']])
  })
  it('grows with the stick', () => {
    const long = after({ records: { ...line.records, 'job:this': job({ stickLengthM: 15.24 }) } }, 'usualSetUp', { setUpId: 'setUp:1' })
    expect(recordsOf(long, 'stand').map(({ id }) => whereIs(long, id).runningM)).toEqual([7.62, 13.335])
  })
  it('adds only what is missing, and nothing the second time', () => {
    const one = after(line, 'place', { kind: 'stand', place: onRun(5) }, { newId: () => 'stand:own', now: () => '' })
    const now = usual(one)
    expect([...labelsOf(now).values()].sort()).toEqual(['E1', 'E2', 'M', 'R'])
    expect(usual(now)).toBe(now)
  })
  it('of a set-up that is not there is refused', () => {
    expect(() => after(line, 'usualSetUp', { setUpId: 'setUp:9' })).toThrow('setUpId names setUp:9, which is not a set-up here')
  })
})

describe('usual crew spots', () => {
  it('stand for the gear that is there, on the closed side of the rack, and are added once', () => {
    const now = after(usual(line), 'crewDefaults', { setUpId: 'setUp:1' })
    const crew = recordsOf(now, 'crew')
    expect(crew.map(({ role }) => role)).toEqual(['operator', 'infeedHand', 'exitHand', 'noseSpotter'])
    // The rack's open side is right, so they stand left: offset negative.
    expect(crew.every(({ id }) => (whereIs(now, id).offsetM ?? 0) < 0)).toBe(true)
    expect(after(now, 'crewDefaults', { setUpId: 'setUp:1' })).toBe(now)
  })
  it('keep off jaws and carriage, off what the loader sweeps, and off the nose', () => {
    const document = { records: { ...usual(line).records, 'loader:1': item('loader', 'loader:1', onRun(-6, { offsetM: 8 })) } }
    const now = after(document, 'crewDefaults', { setUpId: 'setUp:1' })
    const at = (role: string) => {
      const { runningM, offsetM } = whereIs(now, recordsOf(now, 'crew').find((one) => one.role === role)!.id)
      return [expect.closeTo(runningM ?? NaN, 3), expect.closeTo(offsetM ?? NaN, 3)]
    }
    // Half of 3.35 m, 3 ft and 6 in: 2.742. Half of 40 ft, 4.5 m for a boom nobody has measured and 6 in:
    // 6.096 + 4.5 + 0.1524 = 10.748 behind the loader, more than its sweep. 18 ft 6 in: 5.639.
    expect([2.742, -1.524]).toEqual(at('exitHand'))
    expect([-16.748, 8]).toEqual(at('spotter'))
    expect(whereIs(now, recordsOf(now, 'crew').find(({ role }) => role === 'noseSpotter')!.id).offsetM).toBeCloseTo(-5.639, 3)
    expect(recordsOf(now, 'crew').find(({ role }) => role === 'infeedHand')!.phases).toEqual(['load', 'fuse', 'pull'])
  })
  it('stand where the carriage does not come: its travel is kept clear where it runs down-string', () => {
    const there = after(usual(line), 'setField', { ids: recordsOf(usual(line), 'machine').map(({ id }) => id), path: 'carriageSide', value: 'exit' })
    const now = after(there, 'crewDefaults', { setUpId: 'setUp:1' })
    // 2.742 m and 0.3 m of travel.
    expect(whereIs(now, recordsOf(now, 'crew').find(({ role }) => role === 'exitHand')!.id).runningM).toBeCloseTo(3.042, 3)
  })
  it('with an unloading place have a spotter and the driver ahead of the trailer', () => {
    const document = { records: { ...line.records, 'offload:1': item('offload', 'offload:1', free(-10, -30)) } }
    const crew = recordsOf(after(document, 'crewDefaults', { setUpId: 'setUp:1' }), 'crew')
    expect(crew.filter(({ phases }) => phases.includes('offload')).map(({ role }) => role)).toEqual(['spotter', 'driver'])
  })
  it('with loader and puller have their drivers and a spotter', () => {
    const document = { records: { ...line.records, ...Object.fromEntries([item('loader', 'loader:1', free(-8, -5)), item('puller', 'puller:1', onRun(80))].map((one) => [one.id, one])) } }
    expect(recordsOf(after(document, 'crewDefaults', { setUpId: 'setUp:1' }), 'crew').map(({ role }) => role)).toEqual(['operator', 'exitHand', 'loaderOperator', 'spotter', 'noseSpotter', 'pullerOperator'])
  })
})

it('the hold-back stands beside the machine on the infeed side, or where it is told', () => {
  const now = after(line, 'setHoldBack', { setUpId: 'setUp:1' })
  expect(recordsOf(now, 'anchor')[0]?.place).toEqual(onRun(-3.048, { offsetM: -2.5 }))
  expect(recordsOf(after(line, 'setHoldBack', { setUpId: 'setUp:1', runningM: -9, offsetM: 1 }), 'anchor')[0]?.place).toEqual(onRun(-9, { offsetM: 1 }))
})
