import type { Localized } from '../../messages/localized.ts'
import type { YardDocument } from '../../scene/document.ts'
import { GEAR_FILE_VERSION, GEAR_FORMAT, readGear, type GearItem } from '../../scene/gear.ts'
import { readForm } from '../../scene/readFile.ts'
import { fileFormOf } from '../../scene/writeFile.ts'

export const EVERYTHING_FORMAT = 'stringyard-everything'

/** Every layout in the form of its own file and the gear list, as one text: what 'save everything' hands out. */
export const everythingOf = ({ at, documents, gear }: { at: string; documents: readonly YardDocument[]; gear: readonly GearItem[] }): string =>
  `${JSON.stringify({ format: EVERYTHING_FORMAT, at, layouts: documents.map((document) => fileFormOf(document)), gear: { format: GEAR_FORMAT, fileVersion: GEAR_FILE_VERSION, gear } }, null, 1)}\n`

export interface Everything {
  documents: readonly YardDocument[]
  gear: readonly GearItem[]
  /** What could not be read back, each with its reason; the rest can still be restored. */
  refused: readonly Localized[]
}

/** Reads what `everythingOf` wrote, each layout as strictly as a file of its own; null for any other text. Never throws. */
export function readEverything(text: string): Everything | null {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    return null
  }
  if (typeof json !== 'object' || json === null || !('format' in json) || json.format !== EVERYTHING_FORMAT) return null
  const layouts: unknown[] = 'layouts' in json && Array.isArray(json.layouts) ? json.layouts : []
  const refused: Localized[] = []
  const documents = layouts.flatMap((form, i) => {
    const read = readForm(form)
    if (read.ok) return [read.document]
    const [first] = read.issues
    refused.push({ en: `layout ${i + 1}: ${first?.path ?? ''} ${first?.message.en ?? ''}`, es: `plano ${i + 1}: ${first?.path ?? ''} ${first?.message.es ?? ''}` })
    return []
  })
  const gear = 'gear' in json ? readGear(JSON.stringify(json.gear)) : ({ ok: true, gear: [] } as const)
  if (!gear.ok) refused.push({ en: `gear list: ${gear.issues[0]?.path ?? ''} ${gear.issues[0]?.message.en ?? ''}`, es: `lista de equipo: ${gear.issues[0]?.path ?? ''} ${gear.issues[0]?.message.es ?? ''}` })
  return { documents, gear: gear.ok ? gear.gear : [], refused }
}
