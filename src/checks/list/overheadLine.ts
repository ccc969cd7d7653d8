import { overheadClearanceM, type OverheadClearance } from '../../engine/safety/overheadClearance.ts'
import { overheadRulesOf } from '../../engine/safety/tables.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import { valueFromZero, type Phase } from '../../scene/parts.ts'
import type { OverheadLineRecord } from '../../scene/kinds/overheadLine.ts'
import { footM } from '../../units/factors.ts'
import type { Finding, Source } from '../finding.ts'
import { gapBetween, isUnder, laneBodies, loaderSwings, machineBodies, offloadBodies, pullerBodies, pullerSweeps, rackBodies, stringBody, worstOfEach, type GearBody, type Gap } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, listOf, nameOf, q, say } from '../make.ts'

const ID = 'overhead-line'
/** No rule asks for more than 50 ft at any voltage it covers; farther away an unknown line is excluded. */
const OUT_OF_REACH_M = 50 * footM

/** A body with its highest point above ground; null: not known. */
interface TallBody extends GearBody {
  topM: number | null
  missing: readonly MissingInput[]
  phases: readonly Phase[]
}

export const overheadLine = defineCheck({
  id: ID,
  title: { en: 'Overhead line', es: 'Línea eléctrica aérea' },
  cost: 'slow',
  run: (site) => {
    const lines = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'overheadLine' ? [record] : []))
    if (lines.length === 0) return []
    const bodies = tallBodies(site)
    return lines.flatMap((line) => ofLine(site, line, bodies))
  },
})

interface Near {
  body: TallBody
  gap: Gap
}

function ofLine(site: SiteModel, line: OverheadLineRecord, bodies: readonly TallBody[]): Finding[] {
  const [voltageV, lowestM] = [valueFromZero(line.figures.voltageV), valueFromZero(line.figures.lowestHeightM)]
  const rule = overheadClearanceM(voltageV === null ? null : voltageV / 1000, overheadRulesOf(site.layout.profile))
  const missing: MissingInput[] = [
    ...(voltageV === null ? [{ recordId: line.id, path: 'figures.voltageV.value', label: { en: 'voltage', es: 'voltaje' } }] : []),
    ...(lowestM === null ? [{ recordId: line.id, path: 'figures.lowestHeightM.value', label: { en: 'lowest wire above ground', es: 'cable más bajo sobre el suelo' } }] : []),
  ]
  const shape = { kind: 'polyline', points: line.points } as const
  const near = bodies.map((body): Near => ({ body, gap: gapBetween(body.points, { shape, halfWidthM: 0 }) })).toSorted((a, b) => a.gap.clearM - b.gap.clearM)
  // What no rule or figure bounds counts as near until 50 ft away; a voltage over the last band belongs to the line's owner.
  const withinM = rule.status === 'ok' ? rule.clearanceM! : OUT_OF_REACH_M
  const inside = near.filter(({ gap }) => isUnder(gap.clearM, withinM))
  if (rule.status !== 'ok' && inside.length > 0) return [unknownLine(site, line, { inside, missing, rule })]
  if (lowestM === null && inside.length > 0) return [unknownLine(site, line, { inside, missing, rule })]
  if (missing.length > 0) return [farUnknown(site, line, { nearest: near[0], missing, rule })]
  const found = worstOfEach(inside.flatMap(({ body, gap }) => ofBody(site, line, { body, gap, rule, clearanceM: withinM, lowestM: lowestM! })))
  if (found.length > 0) return found
  const nearest = near[0]
  return nearest === undefined ? [] : [finding(ID, {
    level: 'met', about: line.id, items: [line.id], measured: q('length', nearest.gap.clearM), limit: q('length', withinM), bound: 'least', source: sourceFor(rule), where: atPoint(nearest.gap.to.xM, nearest.gap.to.yM),
    what: inside.length > 0
      ? say('What passes under {line} stays {clearance} below its lowest wire.', 'Lo que pasa bajo {line} queda {clearance} por debajo de su cable más bajo.', { line: nameOf(site, line.id), clearance: q('length', withinM) })
      : say('Nothing comes nearer than {clearance} to {line}.', 'Nada se acerca a menos de {clearance} de {line}.', { line: nameOf(site, line.id), clearance: q('length', withinM) }),
  })]
}

interface Judged extends Near {
  rule: OverheadClearance
  clearanceM: number
  lowestM: number
}

/** Within the distance in plan: only what is known to stay low enough under the wires may pass. */
function ofBody(site: SiteModel, line: OverheadLineRecord, { body, gap, rule, clearanceM, lowestM }: Judged): Finding[] {
  const underM = lowestM - clearanceM
  const values = { body: body.name, line: nameOf(site, line.id), clear: q('length', gap.clearM), clearance: q('length', clearanceM), under: q('height', Math.max(0, underM)), top: q('height', body.topM), wire: q('height', lowestM), kv: q('voltage', line.figures.voltageV.value) }
  const common = { about: `${line.id}:${body.role}:${body.itemIds[0] ?? ''}${body.isSweep === true ? ':way' : ''}`, items: [...body.itemIds, line.id], where: atPoint(gap.at.xM, gap.at.yM), phases: body.phases, source: sourceFor(rule) }
  if (body.topM === null) {
    return [stop(finding(ID, {
      ...common, level: 'STOP', measured: q('length', gap.clearM), limit: q('length', clearanceM), bound: 'least',
      what: say('{body} comes {clear} from {line} in plan, and how high it reaches is not known; {clearance} are needed.', '{body} queda a {clear} de {line} en planta, y no se sabe hasta qué altura llega; hacen falta {clearance}.', values),
      // Only what has such a field can be answered.
      move: body.missing.length === 0
        ? say('Work {clearance} away.', 'Trabaje a {clearance}.', values)
        : say('Work {clearance} away, or give its highest point: under the wire it must stay below {under}.', 'Trabaje a {clearance}, o dé su punto más alto: bajo el cable debe quedar por debajo de {under}.', values),
    }), body.missing)]
  }
  if (isUnder(underM, body.topM)) {
    return [finding(ID, {
      ...common, level: 'STOP', measured: q('height', body.topM), limit: q('height', underM),
      what: say('{body} reaches {top} where {line} leaves {under}: lowest wire {wire}, {clearance} clear at {kv}.', '{body} llega a {top} donde {line} deja {under}: cable más bajo {wire}, {clearance} libres a {kv}.', values),
      move: say('Do it {clearance} away from the line, or carry low and say how high.', 'Hágalo a {clearance} de la línea, o cargue bajo y diga qué altura.', values),
    })]
  }
  if (body.role !== 'offload') return []
  return [finding(ID, {
    ...common, level: 'FIX', measured: q('length', gap.clearM), limit: q('length', clearanceM), bound: 'least', source: { class: 'houseRule', cite: 'common practice, no published source: no unloading under a line' },
    what: say('Pipe is unloaded {clear} from {line} in plan, under its wires.', 'Se descarga tubo a {clear} de {line} en planta, bajo sus cables.', values),
    move: say('Unload somewhere else: {clearance} or more from the line.', 'Descargue en otro lugar: a {clearance} o más de la línea.', values),
  })]
}

/** STOP stands though inputs are missing: they are what cannot be excluded. */
const stop = (one: Finding, missing: readonly MissingInput[]): Finding => ({ ...one, level: 'STOP', isUnknown: false, missing })

interface Unknown {
  missing: readonly MissingInput[]
  rule: OverheadClearance
}

function unknownLine(site: SiteModel, line: OverheadLineRecord, { inside, missing, rule }: Unknown & { inside: readonly Near[] }): Finding {
  const nearest = inside[0]!
  const values = { line: nameOf(site, line.id), lacking: lackingOf(missing, rule), bodies: listOf([...new Map(inside.map(({ body }) => [body.itemIds.join(), body.name])).values()]), clear: q('length', nearest.gap.clearM), trigger: q('length', rule.clearanceM ?? OUT_OF_REACH_M) }
  return stop(finding(ID, {
    level: 'STOP', about: line.id, items: [line.id, ...new Set(inside.flatMap(({ body }) => body.itemIds))], where: atPoint(nearest.gap.at.xM, nearest.gap.at.yM), phases: [...new Set(inside.flatMap(({ body }) => body.phases))],
    measured: q('length', nearest.gap.clearM), limit: q('length', rule.clearanceM ?? OUT_OF_REACH_M), bound: 'least', source: sourceFor(rule),
    what: say('{line}: {lacking} not known, and {bodies} come as near as {clear}.', '{line}: no se sabe {lacking}, y {bodies} llegan a {clear}.', values),
    move: say('Ask the line’s owner, measure by instrument; until then stay {trigger} away.', 'Pregunte al dueño de la línea y mida con instrumento; hasta entonces quédese a {trigger}.', values),
  }), missing)
}

/** Too far to matter at any voltage, or held by its distance in plan alone: to be confirmed, no more. */
function farUnknown(site: SiteModel, line: OverheadLineRecord, { nearest, missing, rule }: Unknown & { nearest: Near | undefined }): Finding {
  return finding(ID, {
    level: 'CHECK', about: line.id, items: [line.id], missing, source: sourceFor(rule), ...(nearest === undefined ? {} : { measured: q('length', nearest.gap.clearM), where: atPoint(nearest.gap.to.xM, nearest.gap.to.yM) }),
    what: say('{line}: {lacking} not known; nothing on the plan comes near it.', '{line}: no se sabe {lacking}; nada en el plano se le acerca.', { line: nameOf(site, line.id), lacking: lackingOf(missing, rule) }),
    move: say('Ask the line’s owner before anything moves toward it.', 'Pregunte al dueño de la línea antes de acercar algo.'),
  })
}

function lackingOf(missing: readonly MissingInput[], rule: OverheadClearance): Localized {
  if (missing.length === 0) return rule.status === 'setByOwner' ? { en: 'the distance at this voltage, which its owner sets, is', es: 'la distancia a este voltaje, que fija su dueño' } : { en: 'its distance is', es: 'su distancia' }
  const names = listOf(missing.map(({ label }) => label))
  return { en: `${names.en} ${missing.length > 1 ? 'are' : 'is'}`, es: names.es }
}

const sourceFor = ({ source }: OverheadClearance): Source => ({ class: 'published', cite: source, ...(source.includes('1926.600') ? { fromMemory: true } : {}) })

/** Machine and rack reach no height anyone gives; a puller its highest point; loaders, what they unload and their lanes as high as boom and load. */
function tallBodies(site: SiteModel): TallBody[] {
  const loaders = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'loader' ? [record] : []))
  const tops = loaders.map(({ figures }) => figures.topHeightM.value)
  const highestM = tops.length === 0 || tops.some((top) => top === null) ? null : Math.max(...tops.map((top) => top ?? 0))
  const lacking = (id: string): MissingInput => ({ recordId: id, path: 'figures.topHeightM.value', label: { en: 'highest point of boom and load', es: 'punto más alto de pluma y carga' } })
  const loaderMissing = loaders.length === 0 ? [{ recordId: site.layout.id, path: 'loader', label: { en: 'a loader on the plan with its highest point', es: 'un cargador en el plano con su punto más alto' } }] : loaders.filter(({ figures }) => figures.topHeightM.value === null).map(({ id }) => lacking(id))
  const withTop = (bodies: readonly GearBody[], phases: readonly Phase[], topOf: (body: GearBody) => number | null, missing: readonly MissingInput[] = []): TallBody[] => bodies.map((body) => ({ ...body, topM: topOf(body), missing, phases }))
  const recordOf = (body: GearBody) => site.placed.get(body.itemIds[0] ?? '')?.record
  const string = stringBody(site)
  return [
    ...withTop(string === null ? [] : [string], ['pull', 'rest'], () => stringTopM(site)),
    ...withTop([...machineBodies(site), ...rackBodies(site)], ['setUp', 'load', 'fuse'], () => null),
    ...[...pullerBodies(site), ...pullerSweeps(site)].map((body): TallBody => {
      const record = recordOf(body)
      const topM = record?.kind === 'puller' ? record.figures.topHeightM.value : null
      return { ...body, topM, missing: topM === null ? [{ recordId: body.itemIds[0]!, path: 'figures.topHeightM.value', label: { en: 'highest point of the puller', es: 'punto más alto del equipo de tiro' } }] : [], phases: ['pull'] }
    }),
    ...loaderSwings(site).map((body): TallBody => {
      const record = recordOf(body)
      const topM = record?.kind === 'loader' ? record.figures.topHeightM.value : null
      return { ...body, topM, missing: topM === null ? [lacking(body.itemIds[0]!)] : [], phases: ['offload', 'load', 'move'] }
    }),
    ...offloadBodies(site).map((body): TallBody => {
      const record = recordOf(body)
      const loadM = record?.kind === 'offload' ? record.figures.loadHeightM.value : null
      return { ...body, topM: highestM === null || loadM === null ? null : Math.max(highestM, loadM), missing: [...loaderMissing, ...(loadM === null ? [{ recordId: body.itemIds[0]!, path: 'figures.loadHeightM.value', label: { en: 'height of the load', es: 'altura de la carga' } }] : [])], phases: ['offload'] }
    }),
    ...withTop(laneBodies(site), ['offload', 'load', 'move'], () => highestM, loaderMissing),
  ]
}

/** Top of the pipe on its highest support or in the jaws, above the ground there; null while a height is unknown. */
function stringTopM(site: SiteModel): number | null {
  const { bopLevelM } = site.jaws
  const saddles = site.supports.map(({ saddleM }) => saddleM)
  if (bopLevelM === null || site.pipe.odM === null || saddles.some((saddleM) => saddleM === null)) return null
  return Math.max(bopLevelM, ...saddles.map((saddleM) => saddleM ?? 0)) + site.pipe.odM
}
