/** Where the string lies on the ground, from the bent pipe itself; by closed form where it cannot be solved (docs/formulas/pull.md). */
import { freeLayDownLengthM } from '../engine/beam/closedForms.ts'
import type { Surface } from '../scene/records/frame.ts'
import { bodySolverOf, type BodyCase } from './bodies.ts'
import type { SiteModel } from './types.ts'

/** A stretch of the run on which the string lies on the ground. */
export interface GroundStretch {
  /** Where the pipe comes down and where it leaves the ground again, running distances. */
  fromM: number
  toM: number
  /** The ground carries its weight from here to here: what hangs free before and behind weighs on the touchdowns too. */
  carriedFromM: number
  carriedToM: number
  surface: Surface | null
}

/** A touch shorter than this carries too little to matter and too little to draw. */
const LEAST_M = 0.01

/**
 * Where the finished string is drawn over the ground, and how much of its weight the ground carries there.
 *
 * Model:  the string from the infeed to the far nose on the raised lifts and all supports, pull load. The ground force F of a
 *         contact is the weight of F/q of pipe, laid evenly about its middle, held inside the neighbouring contacts.
 * Output: exit side only (infeed and jaws carry it on rollers); parted in the middle of bends, where the surface of the run changes.
 */
export function groundStretchesOf(site: SiteModel): GroundStretch[] {
  const noseM = site.sticks.stringLengthM(site.sticks.stickCount)
  if (site.pipe.properties === null || !(noseM > 0)) return []
  const contacts = solvedContacts(site, noseM) ?? closedContacts(site, noseM)
  return contacts.flatMap((contact) => partedAtBends(site, contact))
}

type Contact = Omit<GroundStretch, 'surface'>

function solvedContacts(site: SiteModel, noseM: number): Contact[] | null {
  const hasInfeed = site.supports.some(({ runningM, levelM }) => runningM < 0 && levelM !== null)
  const body: BodyCase = { name: 'string', startM: 0 - (hasInfeed ? (site.sticks.stickLengthM ?? 0) : site.jaws.liftAtM), endM: noseM, question: 'pull', infeedJaws: 'out', exitJaws: 'out', lifts: true }
  const solution = bodySolverOf(site).solve(body)
  if (solution === null || solution.result.status !== 'ok') return null
  const q = site.pipe.properties!.lineLoadNPerM
  const contacts = solution.result.groundContacts
    .filter(({ startM, endM, forceN }) => (startM + endM) / 2 > 0 && forceN / q > LEAST_M)
    .map(({ startM, endM, forceN }): Contact => {
      const [middleM, halfM] = [(startM + endM) / 2, forceN / q / 2]
      return { fromM: startM, toM: endM, carriedFromM: Math.max(0, middleM - halfM), carriedToM: Math.min(noseM, middleM + halfM) }
    })
  // Two touches near each other share what hangs between them: their stretches meet, they do not overlap.
  for (let i = 1; i < contacts.length; i += 1) {
    const [before, after] = [contacts[i - 1]!, contacts[i]!]
    const overM = before.carriedToM - after.carriedFromM
    if (overM <= 0) continue
    before.carriedToM -= overM / 2
    after.carriedFromM += overM / 2
  }
  return contacts
}

/** Between carriers farther apart than both their free lay-down lengths (72 EI h/w)^¼, and beyond the last one. */
function closedContacts(site: SiteModel, noseM: number): Contact[] {
  const bendingStiffnessNm2 = site.pipe.stiffnessNm2('pull')
  if (bendingStiffnessNm2 === null) return []
  const { lineLoadNPerM } = site.pipe.properties!
  const reachM = (heightM: number): number => (heightM > 0 ? freeLayDownLengthM({ lineLoadNPerM, bendingStiffnessNm2, heightM }) : 0)
  const exit = site.supports.filter(({ runningM }) => runningM > 0 && runningM <= noseM).map(({ runningM, saddleM }) => ({ runningM, heightM: saddleM ?? 0 }))
  const carriers = [{ runningM: 0, heightM: site.jaws.bopLevelM ?? 0 }, ...exit]
  return carriers.flatMap((carrier, i): Contact[] => {
    const next = carriers[i + 1]
    const [behindM, aheadM] = [reachM(carrier.heightM), next === undefined ? 0 : reachM(next.heightM)]
    const [fromM, toM] = [carrier.runningM + behindM, (next?.runningM ?? noseM) - aheadM]
    // A third of each free length lies at the touchdown.
    return toM - fromM <= 1e-6 ? [] : [{ fromM, toM, carriedFromM: fromM - behindM / 3, carriedToM: toM + aheadM / 3 }]
  })
}

function partedAtBends(site: SiteModel, { fromM, toM, carriedFromM, carriedToM }: Contact): GroundStretch[] {
  const cuts = [fromM, ...site.bends.map((bend) => (bend.fromM + bend.toM) / 2).filter((at) => at > fromM && at < toM), toM]
  return cuts.slice(1).map((cutM, i) => {
    const startM = cuts[i]!
    return {
      fromM: startM, toM: cutM,
      carriedFromM: i === 0 ? carriedFromM : startM,
      carriedToM: i === cuts.length - 2 ? carriedToM : cutM,
      surface: site.surfaceAt((startM + cutM) / 2),
    }
  })
}
