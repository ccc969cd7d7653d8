import { bodySolverOf, type BodyCase, type BodySolution } from '../../derive/bodies.ts'
import { SMALL_SLOPE_LIMIT_RATIO } from '../../engine/beam/result.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Finding } from '../finding.ts'
import { atRun, defineCheck, finding, listOf, mechanics as mechanicsSource, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'

const ID = 'small-slope'
/** From here the error of slope²/2 passes 3 %, more than the modulus is known to: a *met* of that phase is no longer worth its word. */
const CHECK_SLOPE_RATIO = 0.25
/** Places of a body looked at for the steepest. */
const PLACES = 400

interface Steepest {
  slopeRatio: number
  runningM: number
  levelM: number
}

export const smallSlope = defineCheck({
  id: ID,
  title: { en: 'Pipe too steep for the beam sums', es: 'Tubo demasiado inclinado para el cálculo de viga' },
  cost: 'slow',
  run: (site, { mechanics }) => {
    // The other checks ask for their solves first; these two make sure that there are some.
    mechanics.solvedJoints()
    mechanics.arrivals()
    const steep = bodySolverOf(site).solved().filter(({ body, result }) => isPlanned(body) && result.status === 'ok' && result.outOfSmallSlope)
    const found = [...new Set(steep.map(({ body }) => phaseOf(body)))].map((phase) => ({
      phases: [phase], ...steepestOf(steep.filter(({ body }) => phaseOf(body) === phase).reduce((most, one) => (one.result.maxSlopeRatio > most.result.maxSlopeRatio ? one : most))),
    }))
    const serious = found.filter(({ slopeRatio }) => slopeRatio > CHECK_SLOPE_RATIO)
    // Slopes that are worth a note say the same in every phase: one note, of the steepest.
    const slight = found.filter(({ slopeRatio }) => slopeRatio <= CHECK_SLOPE_RATIO)
    const [first] = slight.toSorted((one, other) => other.slopeRatio - one.slopeRatio)
    return [...serious.map((one) => findingOf(one, 'CHECK')), ...(first === undefined ? [] : [findingOf({ ...first, phases: slight.flatMap(({ phases }) => phases) }, 'NOTE')])]
  },
})

function findingOf({ phases, slopeRatio, runningM, levelM }: Steepest & { phases: readonly Phase[] }, level: 'CHECK' | 'NOTE'): Finding {
  const values = { phases: listOf(phases.map((phase) => phaseWords[phase])), slope: q('slope', slopeRatio), most: q('slope', SMALL_SLOPE_LIMIT_RATIO), at: { runningM }, error: q('percent', Math.min(1, slopeRatio ** 2 / 2)) }
  return finding(ID, {
    about: level === 'NOTE' ? 'slight' : phases.join(), level, source: mechanicsSource('contact-beam'), phases, where: atRun(runningM, levelM),
    measured: q('slope', slopeRatio), limit: q('slope', SMALL_SLOPE_LIMIT_RATIO),
    what: say('In {phases} the pipe slopes up to {slope}, at {at}. The beam sums hold up to {most}; here forces and levels are off by some {error} or more.', 'En {phases} el tubo se inclina hasta {slope}, en {at}. El cálculo de viga vale hasta {most}; aquí fuerzas y niveles fallan {error} o más.', values),
    ...(level === 'CHECK' ? { move: say('Bring supports nearer to one line, or judge that stretch on site.', 'Acerque los apoyos a una línea, o juzgue ese tramo en el sitio.') } : {}),
  })
}

/** As planned: no support tried higher or lower or taken away, no nose held for the sake of a sum. */
const isPlanned = ({ shift, without, noseLevelM, bow }: BodyCase): boolean => shift === undefined && without === undefined && noseLevelM === undefined && bow === undefined

function phaseOf({ lifts, infeedJaws, exitJaws, question }: BodyCase): Phase {
  if (question === 'rest') return 'rest'
  if (infeedJaws === 'out' && exitJaws === 'out') return 'pull'
  return lifts ? 'load' : 'fuse'
}

function steepestOf({ body, result }: BodySolution): Steepest {
  const lengthM = body.endM - body.startM
  const places = Array.from({ length: PLACES + 1 }, (_, i) => {
    const runningM = body.startM + (i * lengthM) / PLACES
    const { slopeRatio, levelM } = result.at(runningM)
    return { runningM, levelM, slopeRatio: Math.abs(slopeRatio) }
  })
  const { runningM, levelM } = places.reduce((most, one) => (one.slopeRatio > most.slopeRatio ? one : most))
  return { runningM, levelM, slopeRatio: result.maxSlopeRatio }
}
