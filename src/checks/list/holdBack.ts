import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { stringPullOf, type JointPull } from '../../derive/stringPull.ts'
import type { AnchorRecord } from '../../scene/kinds/anchor.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding, Remedy, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, nameOf, q, say } from '../make.ts'

const ID = 'hold-back'
const sums: Source = { class: 'mechanics', cite: 'mechanics, docs/formulas/pull.md; low friction common practice, no published source' }
/** A force below this is rounding. */
const NO_FORCE_N = 1

type End = 'exit' | 'infeed'
const endWord: Record<End, Localized> = { exit: { en: 'the exit', es: 'la salida' }, infeed: { en: 'the infeed', es: 'la entrada' } }

export const holdBack = defineCheck({
  id: ID,
  title: { en: 'String held on the grade', es: 'Sarta retenida en la pendiente' },
  cost: 'slow',
  run: (site, { limits }) => {
    const { missing, joints } = stringPullOf(site)
    if (site.setUp === null || site.run === null) return []
    if (missing.length > 0) return [unknown(site, missing, limits)]
    if (site.ground.from === 'unknown') return [unknown(site, [{ recordId: site.setUp.id, path: 'fallRatio', label: { en: 'fall of the ground along the axis', es: 'caída del terreno a lo largo del eje' } }], limits)]
    const found = (['exit', 'infeed'] as const).flatMap((end) => towards(site, joints, end, limits))
    const pushing = joints.find(({ isPushingItself }) => isPushingItself)
    if (pushing !== undefined && found.every(({ level }) => level !== 'STOP')) {
      found.push(finding(ID, {
        level: 'NOTE', about: 'pushes', source: sums, phases: ['pull'], where: atRun(pushing.lengthM / 2),
        what: say('Part of the way the string pushes itself (from joint {joint} on).', 'En parte del camino la sarta se empuja sola (desde la junta {joint}).', { joint: pushing.joint }),
        move: say('Watch for slack rope there.', 'Cuide que la cuerda no se afloje ahí.'),
      }))
    }
    if (found.length > 0) return found
    const grade = joints.reduce((most, one) => Math.max(most, Math.abs(one.gradeRatio)), 0)
    const limit = limits.limit('roller-grade')
    return [finding(ID, { level: 'met', measured: q('slope', grade), limit: q('slope', limit.check), source: sourceOf(limit), what: say('The string stays by itself: {grade} at most.', 'La sarta se queda quieta sola: {grade} como máximo.', { grade: q('slope', grade) }) })]
  },
})

function unknown(site: SiteModel, missing: readonly MissingInput[], limits: Limits): Finding {
  return finding(ID, {
    level: 'CHECK', about: 'unknown', missing, source: sourceOf(limits.limit('roller-grade')), phases: ['fuse', 'pull', 'rest'], items: [site.setUp!.id],
    what: say('Whether the string would leave by itself is not known.', 'No se sabe si la sarta se iría sola.'),
    move: say('Give the levels or the fall, and the pipe.', 'Dé los niveles o la caída, y el tubo.'),
    remedy: null,
  })
}

/** What the string would do toward one end, and what holds it there. */
function towards(site: SiteModel, joints: readonly JointPull[], end: End, limits: Limits): Finding[] {
  const worst = joints.reduce((most, one) => (one.runAwayN[end] > most.runAwayN[end] ? one : most))
  const tether = joints.reduce((most, one) => (one.tetherN[end] > most.tetherN[end] ? one : most))
  const steepest = joints.reduce((most, one) => Math.max(most, end === 'exit' ? one.gradeRatio : -one.gradeRatio), 0)
  const gradeLimit = limits.limit('roller-grade')
  const leaves = worst.runAwayN[end] > NO_FORCE_N
  if (!leaves && isUnder(steepest, gradeLimit.check ?? Infinity)) return []
  const held = holdsOf(site, end, tether.lengthM)
  const factor = limits.limit('anchor-factor').fix ?? 2
  const leaving = joints.filter(({ runAwayN }) => runAwayN[end] > NO_FORCE_N).map(({ joint }) => joint)
  const scene = { site, end, worst, tether, steepest, held, factor, limits, leaving }
  if (held.anchors.length > 0) return ofAnchors(scene, leaves)
  if (leaves && held.puller === null) return [runsAway(scene, null)]
  if (leaves) {
    return [finding(ID, {
      level: 'CHECK', about: `${end}:puller`, items: [held.puller!], source: sums, phases: ['fuse', 'pull', 'rest'], where: atRun(0),
      measured: q('force', worst.runAwayN[end]), limit: q('force', 0),
      what: say('By itself the string runs back to the infeed with {force}; only the puller’s rope holds it.', 'Sola, la sarta regresa a la entrada con {force}; solo la retiene la cuerda de tiro.', { force: q('force', worst.runAwayN[end]) }),
      move: say('Keep the rope tight whenever a jaw is open, and tether it for the night.', 'Mantenga tensa la cuerda cuando haya una mordaza abierta, y póngale retención de noche.'),
      remedy: placeHold(site, end),
    })]
  }
  return [finding(ID, {
    level: 'CHECK', about: end, source: sourceOf(gradeLimit), phases: ['fuse', 'pull', 'rest'], where: atRun(0),
    measured: q('slope', steepest), limit: q('slope', gradeLimit.check),
    what: say('The string lies on {grade} falling to {end} and nothing holds it.', 'La sarta está en {grade} cayendo hacia {end} y nada la retiene.', { grade: q('slope', steepest), end: endWord[end] }),
    move: say('Tether before the jaws open: {tether} down the slope.', 'Retención antes de abrir las mordazas: {tether} cuesta abajo.', { tether: q('force', tether.tetherN[end]) }),
    remedy: placeHold(site, end),
  })]
}

interface Scene {
  site: SiteModel
  end: End
  worst: JointPull
  tether: JointPull
  steepest: number
  held: { anchors: readonly AnchorRecord[]; puller: string | null }
  factor: number
  limits: Limits
  /** Joints after which it leaves by itself. */
  leaving: readonly number[]
}

/** Anchors that hold toward an end: some of the string lies on the downhill side of them. A puller holds what would run back to the infeed. */
function holdsOf(site: SiteModel, end: End, lengthM: number): Scene['held'] {
  const items = [...site.placed.values()]
  const anchors = items.flatMap(({ record, runningM }) => (record.kind === 'anchor' && runningM !== null && (end === 'exit' ? runningM < lengthM : runningM > 0) ? [record] : []))
  const puller = end === 'infeed' ? (items.find(({ kind }) => kind === 'puller')?.id ?? null) : null
  return { anchors, puller }
}

function ofAnchors(scene: Scene, leaves: boolean): Finding[] {
  const { site, end, worst, tether, held, factor, limits } = scene
  const best = held.anchors.reduce((most, one) => ((one.figures.ratedHoldN.value ?? -1) > (most.figures.ratedHoldN.value ?? -1) ? one : most))
  const heldN = best.figures.ratedHoldN.value
  const limit = limits.limit('anchor-factor')
  const designN = tether.tetherN[end]
  const common = { about: `${end}:anchor`, items: [best.id], source: sourceOf(limit), phases: ['fuse', 'pull', 'rest'] as const, where: whereOf(site, best.id) }
  const values = { anchor: nameOf(site, best.id), design: q('force', designN), needed: q('force', factor * designN), held: q('force', heldN) }
  if (heldN === null) {
    return [finding(ID, {
      ...common, level: 'CHECK', missing: held.anchors.filter(({ figures }) => figures.ratedHoldN.value === null).map(({ id }) => ({ recordId: id, path: 'figures.ratedHoldN.value', label: { en: 'what the anchor holds', es: 'lo que aguanta el ancla' } })),
      what: say('{anchor}: what it holds is not known; the slope asks for {needed}.', '{anchor}: no se sabe cuánto aguanta; la pendiente pide {needed}.', values),
      move: say('Test it by a static pull before the first jaw opens.', 'Pruébela con un tirón estático antes de abrir la primera mordaza.'),
    })]
  }
  if (leaves && isUnder(heldN, worst.runAwayN[end])) return [runsAway(scene, best)]
  if (isUnder(heldN, factor * designN)) {
    return [finding(ID, {
      ...common, level: 'FIX', measured: q('force', heldN), limit: q('force', factor * designN), bound: 'least',
      what: say('{anchor} holds {held}; twice the full weight down the slope is {needed}.', '{anchor} aguanta {held}; el doble del peso total cuesta abajo es {needed}.', values),
      move: say('Use an anchor and tether good for {needed}, or add a second.', 'Use un ancla y retención para {needed}, o agregue otra.', values),
    })]
  }
  return [finding(ID, {
    ...common, level: 'met', measured: q('force', heldN), limit: q('force', factor * designN), bound: 'least',
    what: say('{anchor} holds {held}, {needed} are wanted. Tight before the jaws open.', '{anchor} aguanta {held}; se piden {needed}. Tensa antes de abrir las mordazas.', values),
  })]
}

function runsAway({ site, end, worst, tether, factor, leaving }: Scene, weak: AnchorRecord | null): Finding {
  const values = { force: q('force', worst.runAwayN[end]), joint: worst.joint, end: endWord[end], needed: q('force', factor * tether.tetherN[end]), design: q('force', tether.tetherN[end]) }
  return finding(ID, {
    level: 'STOP', about: `${end}:run-away`, joints: leaving, items: weak === null ? [] : [weak.id], source: sums, phases: ['fuse', 'pull', 'rest'],
    where: atRun(end === 'exit' ? worst.lengthM : 0), measured: q('force', worst.runAwayN[end]), limit: q('force', weak?.figures.ratedHoldN.value ?? 0),
    what: weak === null
      ? say('With its jaws open the string runs to {end} by itself: {force} at joint {joint}, and nothing holds it.', 'Con las mordazas abiertas la sarta se va sola hacia {end}: {force} en la junta {joint}, y nada la retiene.', values)
      : say('The hold-back is weaker than the string’s own pull to {end}: {force} at joint {joint}.', 'La retención es más débil que el tiro propio de la sarta hacia {end}: {force} en la junta {joint}.', values),
    move: say('Tether it uphill before any jaw opens: {design} down the slope, anchor good for {needed}.', 'Reténgala cuesta arriba antes de abrir ninguna mordaza: {design} cuesta abajo, ancla para {needed}.', values),
    remedy: weak === null ? placeHold(site, end) : null,
  })
}

/** At the tail where it falls to the exit; three quarters of a stick down-string where it falls to the infeed. */
function placeHold(site: SiteModel, end: End): Remedy | null {
  if (site.setUp === null) return null
  const stickM = site.sticks.stickLengthM ?? 12.192
  return {
    command: 'setHoldBack',
    args: end === 'exit' ? { setUpId: site.setUp.id } : { setUpId: site.setUp.id, runningM: Math.round(0.75 * stickM * 1000) / 1000 },
    label: end === 'exit' ? say('Add tether and anchor at the tail', 'Agregar retención y ancla en la cola') : say('Add tether and anchor uphill', 'Agregar retención y ancla cuesta arriba'),
  }
}

function whereOf(site: SiteModel, id: string): Finding['where'] {
  const item = site.placed.get(id)
  return item?.runningM === null || item === undefined ? null : atRun(item.runningM, null, item.offsetM ?? 0)
}
