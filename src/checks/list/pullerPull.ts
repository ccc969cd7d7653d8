import { allowableOf } from '../../derive/stages/pull.ts'
import { pullerOf, usableTow } from '../../derive/stages/puller.ts'
import { breakawayFactor, stringPullOf } from '../../derive/stringPull.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { pullEditions } from '../../engine/pipe/tables.ts'
import type { PullerRecord } from '../../scene/kinds/puller.ts'
import { hourS } from '../../units/factors.ts'
import type { Finding } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, boundFor, defineCheck, finding, houseRule, levelFor, nameOf, plate, q, say } from '../make.ts'

const ID = 'puller-pull'

export const pullerPull = defineCheck({
  id: ID,
  title: { en: 'Puller, rope and pipe against the pull', es: 'Tractor, cuerda y tubo frente al tiro' },
  cost: 'slow',
  run: (site, { limits }) => {
    if (site.run === null || site.job.method === 'walking') return []
    const { joints, missing } = stringPullOf(site)
    if (missing.length > 0) return [unknown(site, missing, 'job')]
    const hardest = joints.reduce((most, one) => (one.needN > most.needN ? one : most))
    const { needN } = hardest
    const over = (usableN: number): number[] => joints.filter((one) => one.needN > usableN).map(({ joint }) => joint)
    const scene: Scene = { site, limits, needN, pullN: hardest.pullN, stiffnessN: hardest.stiffnessN, joint: hardest.joint, noseM: hardest.lengthM, over }
    const puller = [...site.placed.values()].find(({ kind }) => kind === 'puller')
    if (puller === undefined) return [...ofPipe(scene), unknown(site, [{ recordId: site.layout.id, path: 'puller', label: { en: 'a puller on the plan', es: 'un equipo de tiro en el plano' } }], 'puller')]
    return [...ofVehicle(scene, puller.record as PullerRecord), ...ofRope(scene, puller.record as PullerRecord), ...lacking(site, puller.record as PullerRecord), ...ofPipe(scene)]
  },
})

interface Scene {
  site: SiteModel
  limits: Limits
  needN: number
  pullN: number
  /** Of the need, what the stiffness at bends makes. */
  stiffnessN: number
  joint: number
  noseM: number
  /** Joints whose pull starts with more than this. */
  over: (usableN: number) => readonly number[]
}

const valuesOf = ({ needN, pullN, stiffnessN, joint }: Scene) => ({ need: q('force', needN), pull: q('force', pullN), stiff: q('force', stiffnessN), joint, factor: q('ratio', breakawayFactor) })

/** What the need is made of; a line for the bends only where there are any. */
const madeOf = ({ stiffnessN }: Scene): readonly [en: string, es: string] => (stiffnessN > 0 ? ['({pull} times {factor}, and {stiff} at the bends)', '({pull} por {factor}, y {stiff} en las curvas)'] : ['({pull} times {factor})', '({pull} por {factor})'])

function unknown(site: SiteModel, missing: readonly MissingInput[], about: string): Finding {
  return finding(ID, {
    level: 'CHECK', about: `${about}:unknown`, missing, source: houseRule, phases: ['pull'], items: missing.map(({ recordId }) => recordId).filter((id) => site.placed.has(id)),
    what: about === 'job' ? say('The pull of the string is not known.', 'No se sabe el tiro de la sarta.') : say('Whether what pulls is strong enough is not known.', 'No se sabe si lo que tira es bastante fuerte.'),
    move: about === 'job' ? say('Give the pipe and the stick length.', 'Dé el tubo y su largo.') : say('Read plates and tags.', 'Lea placas y etiquetas.'),
  })
}

function lacking(site: SiteModel, { id, pullerKind, figures }: PullerRecord): Finding[] {
  const missing: MissingInput[] = [
    ...(figures.towRatingN.value === null ? [{ recordId: id, path: 'figures.towRatingN.value', label: { en: 'tow rating', es: 'tiro nominal' } }] : []),
    ...(pullerKind !== 'winch' && figures.massKg.value === null ? [{ recordId: id, path: 'figures.massKg.value', label: { en: 'mass of the puller', es: 'masa del equipo de tiro' } }] : []),
    ...(figures.ropeRatingN.value === null ? [{ recordId: id, path: 'figures.ropeRatingN.value', label: { en: 'rope or sling rating', es: 'carga de la cuerda o eslinga' } }] : []),
  ]
  return missing.length === 0 ? [] : [unknown(site, missing, 'puller')]
}

/** Tow rating and grip; where one is unknown the other alone may already be too little. */
function ofVehicle(scene: Scene, puller: PullerRecord): Finding[] {
  const { site, limits, needN, noseM } = scene
  const view = pullerOf(site)
  const tow = view === null ? null : usableTow(site, view, limits, noseM)
  if (tow === null) return []
  const { usableN } = tow
  const isByGrip = tow.by === 'grip'
  const values = { ...valuesOf(scene), puller: nameOf(site, puller.id), usable: q('force', usableN) }
  const common = {
    about: puller.id, items: [puller.id], phases: ['pull'] as const, where: atRun(noseM), measured: q('force', needN), limit: q('force', usableN),
    source: isByGrip ? sourceOf(limits.limit(tow.gripLimitId)) : plate('tow rating on the plate of the puller'),
  }
  if (!isUnder(usableN, needN)) {
    // Nothing is passed while half of it is unknown.
    if (!tow.isWhole) return []
    return [finding(ID, { ...common, level: 'met', what: say('{puller} can pull {usable}; starting the last string takes {need}.', '{puller} puede tirar {usable}; arrancar la última sarta pide {need}.', values) })]
  }
  const [en, es] = madeOf(scene)
  return [finding(ID, {
    ...common, level: 'FIX', joints: scene.over(usableN),
    what: isByGrip
      ? say(`{puller} grips for {usable}; the pull of joint {joint} starts with {need} ${en}.`, `{puller} agarra para {usable}; el tiro de la junta {joint} arranca con {need} ${es}.`, values)
      : say(`{puller} is rated for {usable}; the pull of joint {joint} starts with {need} ${en}.`, `{puller} tiene {usable} nominales; el tiro de la junta {joint} arranca con {need} ${es}.`, values),
    move: say('Put rollers under the string, or bring a heavier puller.', 'Ponga rodillos bajo la sarta, o traiga un equipo más pesado.'),
  })]
}

function ofRope(scene: Scene, puller: PullerRecord): Finding[] {
  const { needN, noseM } = scene
  const ratedN = puller.figures.ropeRatingN.value
  if (ratedN === null) return []
  const values = { ...valuesOf(scene), rated: q('force', ratedN) }
  const common = { about: `${puller.id}:rope`, items: [puller.id], phases: ['pull'] as const, where: atRun(noseM), measured: q('force', needN), limit: q('force', ratedN), source: plate('rated load on the tag of rope or sling; 29 CFR 1926.251, from memory, confirm') }
  return isUnder(ratedN, needN)
    ? [finding(ID, { ...common, level: 'FIX', joints: scene.over(ratedN), what: say('Rope or sling are rated {rated}; the pull of joint {joint} starts with {need}.', 'La cuerda o eslinga tiene {rated}; el tiro de la junta {joint} arranca con {need}.', values), move: say('Use a rope and sling rated for {need}.', 'Use cuerda y eslinga para {need}.', values) })]
    : [finding(ID, { ...common, level: 'met', what: say('Rope or sling are rated {rated}, {need} are needed.', 'La cuerda o eslinga tiene {rated}; hacen falta {need}.', values) })]
}

/** The pull against what the pipe may take: half of it CHECK, all of it FIX. */
function ofPipe(scene: Scene): Finding[] {
  const { site, limits, needN, noseM } = scene
  const allowed = allowableOf(site)
  const common = { about: 'pipe', phases: ['pull'] as const, where: atRun(noseM), items: site.run === null ? [] : [site.run.id] }
  const cite = pullEditions.find(({ id }) => id === site.job.pullEdition)?.source ?? site.job.pullEdition
  const hours = site.job.pullDurationH.value
  if (allowed === null) {
    const isTooLong = hours !== null && allowableOf({ ...site, job: { ...site.job, pullDurationH: { value: null, basis: 'typical' } } }) !== null
    const values = { ...valuesOf(scene), time: q('duration', hours === null ? null : hours * hourS) }
    return [finding(ID, {
      ...common, level: 'CHECK', source: { class: 'published', cite }, measured: q('force', needN),
      what: isTooLong
        ? say('The rule chosen gives no allowable pull for {time}; it starts with {need}.', 'La regla elegida no da tiro admisible para {time}; arranca con {need}.', values)
        : say('The rule chosen gives no allowable pull for this pipe; it starts with {need}.', 'La regla elegida no da tiro admisible para este tubo; arranca con {need}.', values),
      move: isTooLong ? say('Pull in less time, or choose a rule that covers it.', 'Jale en menos tiempo, o elija una regla que lo cubra.') : say('Ask the pipe maker for its yield stress, or choose another rule.', 'Pida al fabricante su esfuerzo de fluencia, o elija otra regla.'),
    })]
  }
  const limit = limits.limit('pull-share')
  const { loadN, source } = allowed
  const share = needN / loadN
  const level = levelFor(limit, share)
  const bound = boundFor(limit, level)
  // How long the pull takes with its stops decides what the pipe may take.
  const [en, es] = hours === null
    ? ['the pipe may take within the hour (nobody has said how long a pull takes)', 'que admite el tubo en menos de una hora (nadie ha dicho cuánto dura un jalado)']
    : ['the pipe may take in {time}', 'que admite el tubo en {time}']
  const values = { ...valuesOf(scene), allowed: q('force', loadN), share: q('percent', share), time: q('duration', hours === null ? null : hours * hourS) }
  const measures = { level, measured: q('force', needN), limit: q('force', bound === null ? null : bound * loadN), source: level === 'CHECK' ? sourceOf(limit) : { class: 'published' as const, cite: source, fromMemory: true } }
  if (level === 'met') return [finding(ID, { ...common, ...measures, what: say(`The pull starts with {need}, {share} of the {allowed} ${en}.`, `El tiro arranca con {need}, {share} de los {allowed} ${es}.`, values) })]
  return [finding(ID, {
    ...common, ...measures, joints: scene.over((bound ?? 0) * loadN),
    what: say(`The pull of joint {joint} starts with {need}, {share} of the {allowed} ${en}.`, `El tiro de la junta {joint} arranca con {need}, {share} de los {allowed} ${es}.`, values),
    move: say('Put rollers under the string, or pull it in parts.', 'Ponga rodillos bajo la sarta, o jálela en partes.'),
  })]
}
