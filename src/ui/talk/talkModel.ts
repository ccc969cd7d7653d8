/** What a talk about one stage is made of: pure, from the site as it is shown. */
import { rollingWindMPerS } from '../../checks/list/windChock.ts'
import type { Limits } from '../../checks/limits.ts'
import type { Finding } from '../../checks/finding.ts'
import { carriageDragsOf } from '../../derive/carriageDrags.ts'
import { clearSpot, type SpotPlace } from '../../derive/clearSpot.ts'
import { itemsOf } from '../../derive/itemsOf.ts'
import { stringPullOf } from '../../derive/stringPull.ts'
import type { PlacedItem, SiteModel, Stage } from '../../derive/types.ts'
import { depthIn, judging, zoneStagesOf } from '../../derive/zoneStages.ts'
import { zonesAt, type Zone } from '../../derive/zones.ts'
import type { Localized } from '../../messages/localized.ts'
import type { TextValue } from '../../messages/render.ts'
import { talkWords } from '../../messages/ui/talkWords.ts'
import { crewRoles, type CrewRecord } from '../../scene/kinds/crew.ts'
import { isAfterJoints, phases, type Phase } from '../../scene/parts.ts'

export interface TalkLine {
  text: Localized
  values?: Readonly<Record<string, TextValue>>
}

/** Pages of a talk in order; `zone` once for each live zone. */
export type TalkStep = { name: 'choose' | 'next' | 'stand' | 'stops' | 'changed' | 'wrong' | 'question' | 'sign' } | { name: 'zone'; index: number; zone: Zone | null }

/** Classes in the order they are told: what kills first. */
const classOrder = ['RED', 'AMBER', 'BLUE'] as const

/**
 * Live zones of a stage as they are told, RED before AMBER before BLUE, each in the order of the catalogue. Zones of one
 * number and one sentence are told once, drawn together: two stacks have one line.
 */
export function talkZones(site: SiteModel, stage: Stage): readonly Zone[] {
  const told = new Map<string, Zone>()
  for (const zone of zonesAt(site, stage)) {
    const key = zone.id === 'hand' ? zone.key : `${zone.id} ${zone.zoneClass} ${zone.sentence.en}`
    const before = told.get(key)
    told.set(key, before === undefined ? zone : { ...before, rings: [...before.rings, ...zone.rings], itemIds: [...new Set([...before.itemIds, ...zone.itemIds])], missing: [...before.missing, ...zone.missing], mayEnter: [...new Set([...before.mayEnter, ...zone.mayEnter])] })
  }
  return [...told.values()].toSorted((a, b) => classOrder.indexOf(a.zoneClass) - classOrder.indexOf(b.zoneClass))
}

export function talkSteps(zones: readonly Zone[]): readonly TalkStep[] {
  const told: TalkStep[] = zones.length === 0 ? [{ name: 'zone', index: 0, zone: null }] : zones.map((zone, index) => ({ name: 'zone', index, zone }))
  return [{ name: 'choose' }, { name: 'next' }, ...told, { name: 'stand' }, { name: 'stops' }, { name: 'changed' }, { name: 'wrong' }, { name: 'question' }, { name: 'sign' }]
}

export const roleName = (role: CrewRecord['role']): Localized => crewRoles.find(({ value }) => value === role)?.label ?? { en: role, es: role }
export const roleLetter = (role: CrewRecord['role']): string => crewRoles.find(({ value }) => value === role)?.letter ?? '?'

/** 'a, b and c' in both languages. */
export const listWords = (parts: readonly Localized[]): Localized => {
  const join = (texts: readonly string[], and: string): string => (texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} ${and} ${texts.at(-1)}`)
  return { en: join(parts.map(({ en }) => en), 'and'), es: join(parts.map(({ es }) => es), 'y') }
}

/** What the class of a zone asks, with who may be in it. */
export function classLine(zone: Zone): TalkLine {
  if (zone.zoneClass === 'BLUE') return { text: talkWords.class_BLUE }
  const people = listWords([...new Set(zone.mayEnter)].map(roleName))
  if (zone.mayEnter.length === 0) return { text: zone.zoneClass === 'RED' ? talkWords.class_RED : talkWords.class_AMBER_none }
  return { text: zone.zoneClass === 'RED' ? talkWords.class_RED_some : talkWords.class_AMBER, values: { people } }
}

export interface CrewItem extends PlacedItem {
  record: CrewRecord
}
export interface SpotInTalk {
  item: CrewItem
  /** Zones live at this stage that it stands in and that do not let its task in, deepest first. */
  inside: readonly { zone: Zone; depthM: number }[]
  /** Nearest place clear of the zones of all its stages; null where it stands clear, or there is none. */
  clear: SpotPlace | null
}

/** A spot on the edge keeps its distance; a millimetre is rounding. */
const INSIDE_M = 0.001

/** Spots of the crew used in a phase, each against the zones live at the stage. */
export function talkSpots(site: SiteModel, stage: Stage): readonly SpotInTalk[] {
  const zones = zonesAt(site, stage)
  const spots = [...site.placed.values()].filter((item): item is CrewItem => item.record.kind === 'crew' && item.record.phases.includes(stage.phase))
  return spots.map((item) => {
    const { role, phases: used } = item.record
    const bars = (zone: Zone): boolean => zone.zoneClass !== 'BLUE' && judging(zone) && !zone.mayEnter.includes(role)
    const inside = zones.filter(bars).map((zone) => ({ zone, depthM: depthIn(zone, item) })).filter(({ depthM }) => depthM > INSIDE_M).toSorted((a, b) => b.depthM - a.depthM)
    const clear = inside.length === 0 || item.runningM === null || item.offsetM === null ? null
      : clearSpot(site, { runningM: item.runningM, offsetM: item.offsetM }, [...zones, ...zoneStagesOf(site).filter((one) => used.includes(one.stage.phase)).flatMap((one) => one.zones)].filter(bars))
    return { item, inside, clear }
  })
}

/** Length and weight of the string at the stage, and the way of its nose in a pull. */
export function stageLines(site: SiteModel, stage: Stage): readonly TalkLine[] {
  const { sticks, pipe } = site
  if (sticks.stickLengthM === null || stage.phase === 'setUp' || stage.phase === 'offload') return []
  const isWhole = isAfterJoints(stage.phase)
  const count = isWhole ? sticks.stickCount : Math.min(stage.joint, Math.max(1, sticks.stickCount - 1)) + (stage.phase === 'pull' ? 1 : 0)
  const lengthM = sticks.stringLengthM(count)
  const length = { kind: 'length', value: lengthM } as const
  const lines: TalkLine[] = [pipe.properties === null
    ? { text: talkWords.stringLength, values: { length } }
    : { text: talkWords.stringNow, values: { length, weight: { kind: 'force', value: pipe.properties.lineLoadNPerM * lengthM } } }]
  if (stage.phase === 'pull') lines.push({ text: talkWords.noseGoes, values: { from: { runningM: sticks.stringLengthM(count - 1) }, to: { runningM: lengthM } } })
  return lines
}

/** What stops the work of a stage, with this layout's own numbers; what is not known says so. */
export function talkStops(site: SiteModel, stage: Stage, limits: Limits): readonly TalkLine[] {
  const lines: TalkLine[] = [{ text: talkWords.stopZone }]
  const { properties } = site.pipe
  if (['pull', 'move', 'rest', 'tieIn'].includes(stage.phase)) {
    lines.push(properties === null ? { text: talkWords.stopWindUnknown } : { text: talkWords.stopWind, values: { speed: { kind: 'speed', value: rollingWindMPerS(properties, limits.limit('wind-share')) } } })
  }
  if (stage.phase === 'pull' || stage.phase === 'move') lines.push(pullLine(site, stage))
  if (stage.phase === 'fuse') lines.push(dragLine(site, stage))
  const dead = itemsOf(site, 'radioDead')
  const places = namesOf(dead)
  lines.push(dead.length === 0 ? { text: talkWords.stopRadio } : places.length === 0 ? { text: talkWords.stopRadioMarked } : { text: talkWords.stopRadioDead, values: { places: places.join(', ') } })
  return lines
}

/** Names people gave things, else their labels; what has neither is left out. */
const namesOf = (items: readonly PlacedItem[]): string[] => items.map(({ record, label }) => ('name' in record && record.name !== '' ? record.name : label)).filter((name) => name !== '')

const nearest = <T extends { joint: number }>(all: readonly T[], joint: number): T | undefined =>
  all.reduce<T | undefined>((best, one) => (best === undefined || Math.abs(one.joint - joint) < Math.abs(best.joint - joint) ? one : best), undefined)

function pullLine(site: SiteModel, stage: Stage): TalkLine {
  const pulls = stringPullOf(site)
  const at = stage.phase === 'move' ? pulls.joints.at(-1) : nearest(pulls.joints, stage.joint)
  if (pulls.missing.length > 0 || at === undefined) return { text: talkWords.stopPullUnknown }
  return { text: talkWords.stopPull, values: { pull: { kind: 'force', value: at.pullN }, start: { kind: 'force', value: at.startN } } }
}

function dragLine(site: SiteModel, stage: Stage): TalkLine {
  const drag = nearest(carriageDragsOf(site), stage.joint)
  if (drag === undefined) return { text: talkWords.stopDragUnknown }
  const values = { drag: { kind: 'force', value: drag.movingN } as const }
  return drag.pressurePa === null ? { text: talkWords.stopDrag, values } : { text: talkWords.stopDragGauge, values: { ...values, gauge: { kind: 'pressure', value: drag.pressurePa } } }
}

/** Findings of a phase that are open, STOP before FIX; CHECK and NOTE belong to the office. */
export const openFindings = (findings: readonly Finding[], phase: Phase): readonly Finding[] =>
  (['STOP', 'FIX'] as const).flatMap((level) => findings.filter((one) => one.level === level && one.phases.includes(phase)))

/** Muster points drawn on the plan: by name, or how many there are. */
export function musterLines(site: SiteModel): readonly TalkLine[] {
  const points = itemsOf(site, 'muster')
  const names = namesOf(points)
  if (points.length === 0) return []
  return names.length < points.length ? [{ text: talkWords.musterMarked, values: { count: points.length } }] : [{ text: talkWords.musterOnPlan, values: { places: names.join(', ') } }]
}

/** Id of the stage as the release log keeps it: `pull:3`, `setUp`. */
export const stageIdOf = ({ phase, joint }: Stage): string => (phase === 'load' || phase === 'fuse' || phase === 'pull' ? `${phase}:${joint}` : phase)

/** Phase of an id of the log; null where it is none of today's. */
export const phaseOfStageId = (stageId: string | null): Phase | null => phases.find((phase) => phase === (stageId ?? '').split(':')[0]) ?? null
