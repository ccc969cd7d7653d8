/** Which fields of each kind the checks need, and what they are called. */
import { kindOf, type PlacedKind, type PlacedRecord } from '../scene/kinds/index.ts'
import type { Figure } from '../scene/parts.ts'
import type { SiteModel } from '../derive/types.ts'
import type { Localized } from '../messages/localized.ts'

export interface NeededField {
  path: string
  /** Only where it matters on this site. */
  when?: (site: SiteModel) => boolean
}

const hasKind = (kind: PlacedKind) => (site: SiteModel): boolean => [...site.placed.values()].some((item) => item.kind === kind)

/** Fields without which a check stays silent or guesses, by kind, in the order they are asked for. */
export const neededFields: Partial<Record<PlacedKind, readonly NeededField[]>> = {
  machine: [
    { path: 'figures.jawHeightM.value' }, { path: 'figures.jawsFittedOdM.value' }, { path: 'figures.innerClampM.value' }, { path: 'figures.outerClampM.value' },
    { path: 'figures.liftTravelM.value' }, { path: 'figures.liftAtM.value' },
  ],
  rack: [{ path: 'height' }, { path: 'figures.beamSpacingM.value' }, { path: 'figures.ratedLoadN.value' }, { path: 'stopsLeft' }, { path: 'stopsRight' }],
  stand: [{ path: 'height' }, { path: 'figures.ratedLoadN.value' }, { path: 'figures.lowestSaddleM.value' }, { path: 'figures.highestSaddleM.value' }],
  roller: [{ path: 'height' }, { path: 'figures.ratedLoadN.value' }],
  puller: [{ path: 'figures.ropeLengthM.value' }, { path: 'figures.towRatingN.value' }, { path: 'figures.ropeRatingN.value' }, { path: 'guardedCab' }, { path: 'figures.topHeightM.value', when: hasKind('overheadLine') }],
  anchor: [{ path: 'figures.ratedHoldN.value' }],
  loader: [{ path: 'figures.plateLoadN.value' }, { path: 'figures.reachM.value' }, { path: 'figures.topHeightM.value', when: hasKind('overheadLine') }],
  trench: [{ path: 'figures.depthM.value' }, { path: 'figures.widthM.value' }],
  overheadLine: [{ path: 'figures.voltageV.value' }, { path: 'figures.lowestHeightM.value' }],
  road: [{ path: 'traffic' }, { path: 'figures.widthM.value' }],
  walkway: [{ path: 'access' }, { path: 'figures.widthM.value' }],
}

/** Value at a dotted path of a record. */
export const valueAt = (record: object, path: string): unknown => path.split('.').reduce<unknown>((at, part) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[part] : undefined), record)

/** Nobody has given it: null, or a height rule nobody chose. */
export function isMissing(record: PlacedRecord, path: string): boolean {
  const value = valueAt(record, path)
  return value === null || (path === 'height' && typeof value === 'object' && (value as { rule?: unknown }).rule === 'unknown')
}

/** The figure a path leads into, or null where it leads elsewhere. */
export function figureAt(record: PlacedRecord, path: string): Figure | null {
  const figure = valueAt(record, path.replace(/\.value$/, ''))
  return path.endsWith('.value') && typeof figure === 'object' && figure !== null && 'basis' in figure ? (figure as Figure) : null
}

const height: Localized = { en: 'height', es: 'altura' }

/** What a field is called, as the tag of the item calls it. */
export const fieldName = (kind: PlacedKind, path: string): Localized => (path === 'height' ? height : (kindOf(kind)?.fields.find((field) => field.path === path)?.label ?? { en: path, es: path }))
