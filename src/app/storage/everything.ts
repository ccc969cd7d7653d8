import type { Localized } from '../../messages/localized.ts'
import { layoutOf, type YardDocument } from '../../scene/document.ts'
import { GEAR_FILE_VERSION, GEAR_FORMAT, readGear, type GearItem } from '../../scene/gear.ts'
import { readForm } from '../../scene/readFile.ts'
import { fileFormOf } from '../../scene/writeFile.ts'
import type { ViewState } from '../../state/viewStore.ts'
import { readSettings } from './settings.ts'

export const EVERYTHING_FORMAT = 'stringyard-everything'

/** A point in time beside the layout it was kept for. */
export interface PointOfLayout {
  layoutId: string
  name: string
  at: string
  document: YardDocument
}

export interface EverythingHere {
  at: string
  documents: readonly YardDocument[]
  points: readonly PointOfLayout[]
  gear: readonly GearItem[]
  settings: Partial<ViewState>
}

/** Every layout and point in time in the form of its own file, the gear list and the settings, as one text: what 'save everything' hands out. */
export const everythingOf = ({ at, documents, points, gear, settings }: EverythingHere): string =>
  `${JSON.stringify({
    format: EVERYTHING_FORMAT, at, layouts: documents.map((document) => fileFormOf(document)),
    points: points.map(({ document, ...point }) => ({ ...point, file: fileFormOf(document) })),
    gear: { format: GEAR_FORMAT, fileVersion: GEAR_FILE_VERSION, gear }, settings,
  }, null, 1)}\n`

export interface Everything {
  documents: readonly YardDocument[]
  points: readonly PointOfLayout[]
  gear: readonly GearItem[]
  settings: Partial<ViewState>
  /** What could not be read back, each with its reason; the rest can still be restored. */
  refused: readonly Localized[]
}

const listOf = (json: object, key: string): readonly unknown[] => {
  const list: unknown = (json as Record<string, unknown>)[key]
  return Array.isArray(list) ? list : []
}
const textOf = (value: unknown, most: number): string => (typeof value === 'string' ? value.slice(0, most) : '')

/** Reads what `everythingOf` wrote, each layout as strictly as a file of its own; null for any other text. Never throws. */
export function readEverything(text: string): Everything | null {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    return null
  }
  if (typeof json !== 'object' || json === null || !('format' in json) || json.format !== EVERYTHING_FORMAT) return null
  const refused: Localized[] = []
  const opened = (form: unknown, name: Localized): readonly YardDocument[] => {
    const read = readForm(form)
    if (read.ok) return [read.document]
    const [first] = read.issues
    refused.push({ en: `${name.en}: ${first?.path ?? ''} ${first?.message.en ?? ''}`, es: `${name.es}: ${first?.path ?? ''} ${first?.message.es ?? ''}` })
    return []
  }
  const documents = listOf(json, 'layouts').flatMap((form, i) => opened(form, { en: `layout ${i + 1}`, es: `plano ${i + 1}` }))
  const known = new Set(documents.map((document) => layoutOf(document).layoutId))
  const points = listOf(json, 'points').flatMap((one, i): readonly PointOfLayout[] => {
    const point: Record<string, unknown> = typeof one === 'object' && one !== null ? { ...one } : {}
    const layoutId = textOf(point['layoutId'], 80)
    // A point goes with its layout: where that was refused it is named already.
    if (!known.has(layoutId)) return []
    return opened(point['file'], { en: `point in time ${i + 1}`, es: `punto en el tiempo ${i + 1}` }).map((document) => ({ layoutId, name: textOf(point['name'], 200), at: textOf(point['at'], 40), document }))
  })
  const gear = 'gear' in json ? readGear(JSON.stringify(json.gear)) : ({ ok: true, gear: [] } as const)
  if (!gear.ok) refused.push({ en: `gear list: ${gear.issues[0]?.path ?? ''} ${gear.issues[0]?.message.en ?? ''}`, es: `lista de equipo: ${gear.issues[0]?.path ?? ''} ${gear.issues[0]?.message.es ?? ''}` })
  return { documents, points, gear: gear.ok ? gear.gear : [], settings: 'settings' in json ? readSettings(json.settings) : {}, refused }
}
