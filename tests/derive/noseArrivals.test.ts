import { describe, expect, it } from 'vitest'
import { bodies, bodySolverOf } from '../../src/derive/bodies.ts'
import { arrivingSupports, evenDroopM, evenSpacingM, liftAtArrivalN, reachableM, solveArrival } from '../../src/derive/noseArrivals.ts'
import { noseDroopM } from '../../src/engine/beam/closedForms.ts'
import { fusionYard, ft, inch, mechanicsOf, siteOf, type YardSpec } from '../helpers/fusionYard.ts'
import { footM } from '../../src/units/factors.ts'

const tenInch: YardSpec = { size: '10', neededFt: 280, exits: [[20, 0], [35, 0]] }
const rollersFrom = (fromFt: number, everyFt: number, toFt: number): number[] => Array.from({ length: Math.floor((toFt - fromFt) / everyFt) + 1 }, (_, i) => fromFt + i * everyFt)

describe('arrivals that occur', () => {
  const labels = (spec: YardSpec): string[] => arrivingSupports(siteOf(fusionYard(spec))).map(({ label }) => label)
  it('stick 1 set by the loader: no nose passes the stands under it', () => expect(labels({ ...tenInch, rollers: [41, 60] })).toEqual(['G1', 'G2']))
  it('stick 1 fed through: every exit support', () => expect(labels({ ...tenInch, rollers: [60], job: { firstStick: 'fedThrough' } })).toEqual(['E1', 'E2', 'G1']))
  it('none beyond the finished string', () => expect(labels({ ...tenInch, rollers: [60, 400] })).toEqual(['G1']))
  it('each in the pull that reaches it', () => {
    const mechanics = mechanicsOf(fusionYard({ ...tenInch, rollers: [60, 100, 130] }))
    // Strings of 2, 3 and 4 sticks end at 79.9, 119.8 and 159.8 ft.
    expect(mechanics.arrivals().map(({ pull }) => pull)).toEqual([1, 2, 3])
  })
})

describe('droop past an even row', () => {
  const site = siteOf(fusionYard(tenInch))
  const beam = { lineLoadNPerM: site.pipe.properties!.lineLoadNPerM, bendingStiffnessNm2: site.pipe.stiffnessNm2('nose')! }
  it('is 0.2453 w S⁴/EI (derived, five and more spans behind)', () => {
    for (const spacingFt of [8, 11, 16, 20]) expect(evenDroopM(site, ft(spacingFt))! / noseDroopM({ ...beam, spacingM: ft(spacingFt), root: 'manySpans' })).toBeCloseTo(1, 3)
  })
  it('10 in IPS DR 17 at 20 ft: 28 in; at 78,000 psi 29½ in (a finite-element run of our own)', () => {
    expect(evenDroopM(site, ft(20))! / inch(1)).toBeCloseTo(28.1, 0)
    // Stiffness scales it: 82/78.
    expect((evenDroopM(site, ft(20))! * 82) / 78 / inch(1)).toBeCloseTo(29.5, 0)
  })
  it('a quarter of the OD allows 11 ft 0 in', () => {
    const spacingFt = evenSpacingM(site, inch(10.75 / 4))! / footM
    expect(spacingFt).toBeGreaterThan(11)
    expect(spacingFt).toBeLessThan(11.25)
    expect(evenDroopM(site, ft(spacingFt))).toBeCloseTo(inch(10.75 / 4), 6)
  })
})

describe('an arrival', () => {
  it('far from the machine has the droop of the even row', () => {
    // On level high stands: nothing for the nose to come down to.
    const exits = rollersFrom(20, 16, 260).map((atFt) => [atFt, 0] as const)
    const site = siteOf(fusionYard({ size: '10', neededFt: 280, exits }))
    const solver = bodySolverOf(site)
    const arrivals = arrivingSupports(site).map((view) => solveArrival(site, solver, view)!)
    // Half an inch short of 16 ft: (1 − ½/192)⁴ is 1 % less.
    expect(arrivals.at(-2)!.droopM / evenDroopM(site, ft(16))!).toBeCloseTo(0.99, 2)
  })
  it('cut off far behind the nose it moves by less than 0.1 mm', () => {
    const site = siteOf(fusionYard({ ...tenInch, rollers: rollersFrom(55, 11, 310) }))
    const solver = bodySolverOf(site)
    const last = arrivingSupports(site).at(-1)!
    const cut = solveArrival(site, solver, last)!
    expect(cut.solution.body.isCut).toBe(true)
    const whole = solver.solve(bodies.pulled(site, 8, cut.tipM))!
    expect(whole.body.startM).toBeLessThan(cut.solution.body.startM)
    expect(Math.abs(whole.result.ends.levelM[1] - cut.solution.result.ends.levelM[1])).toBeLessThan(1e-4)
  })
  it('on the ground says so, and lifting it takes a force that holds the tip at the roller', () => {
    const site = siteOf(fusionYard({ ...tenInch, rollers: [75] }))
    const solver = bodySolverOf(site)
    const arrival = solveArrival(site, solver, arrivingSupports(site)[0]!)!
    expect(arrival.isOnGround).toBe(true)
    expect(arrival.droopM).toBeCloseTo(inch(6), 4)
    const liftN = liftAtArrivalN(solver, arrival)!
    const held = solver.solve({ ...arrival.solution.body, noseLevelM: arrival.view.levelM! })!
    expect(liftN).toBeGreaterThan(0)
    expect(held.result.ends.levelM[1]).toBeCloseTo(arrival.view.levelM!, 9)
    expect(held.noseForceN).toBeCloseTo(liftN, 9)
  })
  it('a support slid to where it can take the nose in just does', () => {
    const site = siteOf(fusionYard({ size: '10', neededFt: 100, exits: [[20, 0], [35, 0], [58, 0]] }))
    const solver = bodySolverOf(site)
    const arrival = solveArrival(site, solver, arrivingSupports(site)[0]!)!
    expect(arrival.droopM).toBeGreaterThan(arrival.leadInM)
    const reach = reachableM(site, solver, arrival)!
    const moved = siteOf(fusionYard({ size: '10', neededFt: 100, exits: [[20, 0], [35, 0], [reach.runningM / footM, 0]] }))
    const again = solveArrival(moved, bodySolverOf(moved), arrivingSupports(moved)[0]!)!
    expect(again.droopM).toBeLessThanOrEqual(arrival.leadInM + 1e-4)
    expect(again.droopM).toBeGreaterThan(arrival.leadInM - 0.002)
  })
})
