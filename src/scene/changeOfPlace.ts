/** Moves, turns, outlines and heights of one record before and after, in words. */
import { wrapAngleRad } from '../geometry/vector.ts'
import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'
import type { ChangeLine } from './changeLine.ts'
import type { YardDocument, YardRecord } from './document.ts'
import type { PlacedRecord } from './kinds/index.ts'
import type { HeightRule } from './parts.ts'
import { PlaceError, resolvePlace, type ResolvedPlace } from './places.ts'

/** A move nobody can set out, m, and a turn nobody can see, rad. */
const LEAST_MOVE_M = 0.001
const LEAST_TURN_RAD = 0.0087
/** Across the line by more than this on both sides: it changed sides. */
const ASIDE_M = 0.3

type Item = Extract<PlacedRecord, { place: unknown }>
type Feature = Exclude<PlacedRecord, { place: unknown }>

/** Where an item lies; null where its place leads nowhere. */
export const placeBeside = (document: YardDocument, record: PlacedRecord): ResolvedPlace | null => {
  try {
    return resolvePlace(document, record)
  } catch (error) {
    if (error instanceof PlaceError) return null
    throw error
  }
}

/** How an item moved and turned along the line; looking down-string, up-string is back to the rack. */
export function poseChange(from: YardDocument, to: YardDocument, before: Item, after: Item): readonly ChangeLine[] {
  if (JSON.stringify(before.place) === JSON.stringify(after.place)) return []
  const [was, is] = [placeBeside(from, before), placeBeside(to, after)]
  if (was === null || is === null) return [{ group: 'moved', text: { en: '{what}: place changed', es: '{what}: cambió de lugar' }, values: {} }]
  const moved = moveLine(was, is)
  const turnRad = before.place.at === after.place.at && before.place.at !== 'free' && after.place.at !== 'free' ? after.place.turnRad - before.place.turnRad : is.headingRad - was.headingRad
  const turned = Math.abs(wrapAngleRad(turnRad)) < LEAST_TURN_RAD ? [] : [turnLine(wrapAngleRad(turnRad))]
  const lines = [...(moved === null ? [] : [moved]), ...turned]
  if (lines.length > 0) return lines
  return before.place.at === after.place.at ? [] : [{ group: 'moved', text: after.place.at === 'free' ? { en: '{what} no longer goes with the line', es: '{what} ya no sigue la línea' } : { en: '{what} goes with the line now', es: '{what} ahora sigue la línea' }, values: {} }]
}

function moveLine(was: ResolvedPlace, is: ResolvedPlace): ChangeLine | null {
  if (was.runningM === null || is.runningM === null || was.offsetM === null || is.offsetM === null) {
    const distanceM = Math.hypot(is.xM - was.xM, is.yM - was.yM)
    return distanceM < LEAST_MOVE_M ? null : { group: 'moved', text: { en: '{what} moved {distance}', es: '{what} se movió {distance}' }, values: { distance: { kind: 'length', value: distanceM } } }
  }
  const [alongM, acrossM] = [is.runningM - was.runningM, is.offsetM - was.offsetM]
  const parts: Localized[] = []
  const values: Record<string, TextValue> = {}
  if (Math.abs(alongM) >= LEAST_MOVE_M) {
    parts.push(alongM < 0 ? { en: '{along} up-string', es: '{along} hacia la entrada' } : { en: '{along} down-string', es: '{along} hacia la salida' })
    values['along'] = { kind: Math.abs(alongM) < 0.3048 ? 'shortLength' : 'length', value: Math.abs(alongM) }
  }
  const isSwapped = was.offsetM * is.offsetM < 0 && Math.min(Math.abs(was.offsetM), Math.abs(is.offsetM)) >= ASIDE_M
  if (Math.abs(acrossM) >= LEAST_MOVE_M && !isSwapped) {
    parts.push(acrossM > 0 ? { en: '{across} to the right', es: '{across} a la derecha' } : { en: '{across} to the left', es: '{across} a la izquierda' })
    values['across'] = { kind: Math.abs(acrossM) < 0.3048 ? 'shortLength' : 'length', value: Math.abs(acrossM) }
  }
  const joined = { en: parts.map(({ en }) => en).join(' and '), es: parts.map(({ es }) => es).join(' y ') }
  if (isSwapped) {
    const and = parts.length === 0 ? { en: '', es: '' } : { en: `, and moved ${joined.en}`, es: `, y se movió ${joined.es}` }
    return { group: 'moved', text: { en: `{what} swapped side, now {offset}${and.en}`, es: `{what} cambió de lado, ahora {offset}${and.es}` }, values: { offset: { offsetM: is.offsetM }, ...values } }
  }
  return parts.length === 0 ? null : { group: 'moved', text: { en: `{what} moved ${joined.en}`, es: `{what} se movió ${joined.es}` }, values }
}

const turnLine = (turnRad: number): ChangeLine => ({
  group: 'moved',
  text: turnRad > 0 ? { en: '{what} turned {turn} to the left', es: '{what} girado {turn} a la izquierda' } : { en: '{what} turned {turn} to the right', es: '{what} girado {turn} a la derecha' },
  values: { turn: { kind: 'angle', value: Math.abs(turnRad) } },
})

/** A feature moved as a whole, or its outline changed. */
export function pointsChange(to: YardDocument, before: Feature, after: Feature): readonly ChangeLine[] {
  if (JSON.stringify(before.points) === JSON.stringify(after.points)) return []
  const [first, was] = [after.points[0], before.points[0]]
  const isWhole = first !== undefined && was !== undefined && before.points.length === after.points.length
    && after.points.every((point, i) => Math.hypot(point.xM - before.points[i]!.xM - (first.xM - was.xM), point.yM - before.points[i]!.yM - (first.yM - was.yM)) < LEAST_MOVE_M)
  if (!isWhole) return [{ group: 'moved', text: { en: '{what}: outline changed', es: '{what}: cambió su contorno' }, values: {} }]
  // Both places by the newer run: where the run itself went, what stood still did not move.
  const [from, at] = [placeBeside(to, before), placeBeside(to, after)]
  const line = from === null || at === null ? null : moveLine(from, at)
  return line === null ? [] : [line]
}

const ruleWords = (height: HeightRule, name: string): { text: Localized; values: Record<string, TextValue> } => {
  switch (height.rule) {
    case 'onAxis': return { text: { en: 'on the jaw line', es: 'en la línea de mordazas' }, values: {} }
    case 'belowAxis': return { text: { en: `{${name}} below the jaw line`, es: `{${name}} bajo la línea de mordazas` }, values: { [name]: { kind: 'height', value: height.dropM } } }
    case 'aboveGround': return { text: { en: `{${name}} above ground`, es: `{${name}} sobre el suelo` }, values: { [name]: { kind: 'height', value: height.saddleM } } }
    case 'unknown': return { text: { en: 'not known', es: 'sin saber' }, values: {} }
  }
}

/** Raised or lowered where both heights are measured alike; else the old rule and the new one. */
export function heightChange(before: YardRecord, after: YardRecord): readonly ChangeLine[] {
  if (!('height' in before) || !('height' in after) || !isRule(before.height) || !isRule(after.height)) return []
  const [was, is] = [before.height, after.height]
  if (JSON.stringify(was) === JSON.stringify(is)) return []
  const [dropWas, dropIs] = [dropOf(was), dropOf(is)]
  const upM = was.rule === 'aboveGround' && is.rule === 'aboveGround' ? is.saddleM - was.saddleM : dropWas !== null && dropIs !== null ? dropWas - dropIs : null
  const now = ruleWords(is, 'to')
  if (upM !== null && Math.abs(upM) < LEAST_MOVE_M) return []
  if (upM !== null) {
    return [{
      group: 'height',
      text: upM > 0 ? { en: `{what} raised {by}: now ${now.text.en}`, es: `{what} subió {by}: ahora ${now.text.es}` } : { en: `{what} lowered {by}: now ${now.text.en}`, es: `{what} bajó {by}: ahora ${now.text.es}` },
      values: { by: { kind: 'shortLength', value: Math.abs(upM) }, ...now.values },
    }]
  }
  const old = ruleWords(was, 'from')
  return [{ group: 'height', text: { en: `{what}, height: ${old.text.en} → ${now.text.en}`, es: `{what}, altura: ${old.text.es} → ${now.text.es}` }, values: { ...old.values, ...now.values } }]
}

const isRule = (height: unknown): height is HeightRule => typeof height === 'object' && height !== null && 'rule' in height

/** Below the jaw line; null where it is not measured from there. */
const dropOf = (height: HeightRule): number | null => (height.rule === 'onAxis' ? 0 : height.rule === 'belowAxis' ? height.dropM : null)
