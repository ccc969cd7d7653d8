import { limitParam } from '../../engine/limits.ts'
import type { GuideForce, SideForces } from '../../derive/sideForces.ts'
import { guideShapeOf } from '../../derive/sideForces.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding, Level, Remedy } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atJaws, atSupport, boundFor, defineCheck, finding, inRuns, levelFor, machineIds, mechanics, nameOf, q, say, stretchOf } from '../make.ts'
import { sideWord } from '../words.ts'

const ID = 'side-force'
/** A side force below this is rounding. */
const NO_FORCE_N = 0.5

const toRight: Localized = { en: 'right', es: 'la derecha' }
const toLeft: Localized = { en: 'left', es: 'la izquierda' }
const wayOf = (forceN: number): Localized => (forceN > 0 ? toRight : toLeft)

export const sideForce = defineCheck({
  id: ID,
  title: { en: 'Side force at jaws and guides', es: 'Fuerza lateral en mordazas y guías' },
  cost: 'slow',
  run: (site, { limits, mechanics: solves }) => {
    const all = solves.sideForces()
    if (all.length === 0) return []
    const found = [...(['infeed', 'exit'] as const).flatMap((side) => atTheJaws(site, all.filter((one) => one.side === side), limits)), ...atGuides(site, all, limits), ...notSettled(site, all)]
    if (found.length > 0) return found
    const most = largest(all)
    const limit = limits.limit('side-force')
    if (Math.max(Math.abs(most.innerN), Math.abs(most.outerN)) < NO_FORCE_N) return [finding(ID, { level: 'met', source: mechanics('side-force'), phases: ['fuse'], what: say('Nothing pushes the pipe sideways in the jaws.', 'Nada empuja el tubo de lado en las mordazas.') })]
    return [finding(ID, {
      level: 'met', measured: q('ratio', most.effortRatio), limit: q('ratio', limit.check), source: sourceOf(limit), phases: ['fuse'], where: atJaws(site), items: machineIds(site),
      what: say('Off the line a little: side force at the {side} jaws {inner} and {outer}, at joint {joint}.', 'Algo fuera de línea: fuerza lateral en las mordazas de {side} {inner} y {outer}, en la junta {joint}.', jawValues(most)),
    })]
  },
})

function notSettled(site: SiteModel, all: readonly SideForces[]): Finding[] {
  const open = all.filter(({ isSettled }) => !isSettled)
  if (open.length === 0) return []
  return [finding(ID, { about: 'unsettled', level: 'CHECK', source: mechanics('side-force'), phases: ['fuse'], where: atJaws(site), what: say('Side forces at joint {joint} did not settle: the figures are near, not right.', 'Las fuerzas laterales en la junta {joint} no convergieron: las cifras son aproximadas.', { joint: open[0]!.joint }), move: say('Slide what is off the line on to it.', 'Corra a la línea lo que está fuera de ella.') })]
}

const largest = (all: readonly SideForces[]): SideForces => all.reduce((most, one) => (one.effortRatio > most.effortRatio ? one : most))
const jawValues = ({ side, innerN, outerN, joint }: SideForces) => ({ side: sideWord(side), inner: q('force', Math.abs(innerN)), outer: q('force', Math.abs(outerN)), joint })

function atTheJaws(site: SiteModel, of: readonly SideForces[], limits: Limits): Finding[] {
  if (of.length === 0) return []
  const limit = limits.limit('side-force')
  const worst = largest(of)
  const level = levelFor(limit, worst.effortRatio)
  if (level === 'met') return []
  const pushes = worst.guides.reduce((most, one) => (Math.abs(one.forceN) > Math.abs(most.forceN) ? one : most))
  const values = { ...jawValues(worst), label: pushes.view.label, force: q('force', Math.abs(pushes.forceN)), way: wayOf(pushes.forceN) }
  return [finding(ID, {
    about: `jaws:${worst.side}`, level, measured: q('ratio', worst.effortRatio), limit: q('ratio', boundFor(limit, level)), source: sourceOf(limit), phases: ['fuse'],
    where: atJaws(site), items: [...machineIds(site), pushes.view.itemId],
    what: say('{label} pushes the pipe to the {way} with {force} at joint {joint}: the {side} jaws hold it with {inner} and {outer}.', '{label} empuja el tubo a {way} con {force} en la junta {joint}: las mordazas de {side} lo sujetan con {inner} y {outer}.', values),
    move: say('Slide {label} on to the string line.', 'Corra {label} hasta el hilo.', values),
    remedy: slide(site, pushes),
  })]
}

function slide(site: SiteModel, { view }: GuideForce): Remedy | null {
  if (view.locked || site.placed.get(view.itemId)?.isAttached !== true) return null
  return { command: 'setOnRun', args: { id: view.itemId, offsetM: 0, turnRad: 0 }, label: say('Slide {label} on to the line', 'Correr {label} a la línea', { label: nameOf(site, view.itemId) }) }
}

interface Climbing extends GuideForce {
  joint: number
  level: Level
}

/** V rollers, cradles and rack lanes whose side the pipe rides up; a flat roller only lets it slide. */
function atGuides(site: SiteModel, all: readonly SideForces[], limits: Limits): Finding[] {
  const limit = limits.limit('guide-hold')
  const outM = limitParam(limit, 'outOfOdRatio') * (site.pipe.odM ?? 0)
  const worst = new Map<string, Climbing>()
  for (const { guides, joint } of all) {
    for (const guide of guides) {
      const share = guide.isFull ? 1 : Math.abs(guide.forceN) / guide.holdN
      if (guideShapeOf(guide.view) === 'flat' || levelFor(limit, share) === 'met' || Math.abs(guide.forceN) < NO_FORCE_N) continue
      const before = worst.get(guide.view.key)
      if (before === undefined || guide.pastM > before.pastM) worst.set(guide.view.key, { ...guide, joint, level: guide.pastM > outM ? 'FIX' : 'CHECK' })
    }
  }
  const inOrder = [...worst.values()].toSorted((a, b) => a.view.runningM - b.view.runningM)
  return inRuns(inOrder, (a, b) => a.level === b.level && a.view.kind === b.view.kind).map((group) => ofGuides(group, outM, limits))
}

function ofGuides(group: readonly Climbing[], outM: number, limits: Limits): Finding {
  const most = group.reduce((worst, one) => (one.pastM > worst.pastM ? one : worst))
  const values = { labels: stretchOf(group.map(({ view }) => view)), label: most.view.label, hold: q('force', most.holdN), joint: most.joint, past: q('shortLength', most.pastM) }
  return finding(ID, {
    about: group[0]!.view.key, level: most.level, measured: q('shortLength', most.pastM), limit: q('shortLength', outM), source: sourceOf(limits.limit('guide-hold')), phases: ['fuse'],
    where: atSupport(most.view), items: [...new Set(group.map(({ view }) => view.itemId))],
    what: most.level === 'FIX'
      ? say('{labels}: the pipe climbs out at joint {joint}. {label} holds {hold} sideways, and the pipe lies {past} past it.', '{labels}: el tubo se sale en la junta {joint}. {label} retiene {hold} de lado, y el tubo queda {past} más allá.', values)
      : say('{labels}: the pipe rides up the side at joint {joint}. {label} holds {hold} sideways, and the pipe lies {past} past its middle.', '{labels}: el tubo sube por el costado en la junta {joint}. {label} retiene {hold} de lado, y el tubo queda a {past} de su centro.', values),
    move: group.length === 1 ? say('Slide it on to the string line.', 'Córralo hasta el hilo.') : say('Slide them on to the string line.', 'Córralos hasta el hilo.'),
  })
}
