/** A link that carries a layout in its fragment: no server keeps it, and what stands behind '#' is never sent to one. */
import type { Localized } from '../../messages/localized.ts'
import { recordsOf, type YardDocument, type YardRecord } from '../document.ts'
import { readFile, type ReadLimits } from '../readFile.ts'
import { referenceIssues } from '../references.ts'
import { fileFormOf } from '../writeFile.ts'
import { packed, unpacked, type Unpacked } from './packing.ts'

export const LINK_VERSION = 1
/** A fragment of ours: '#yard', version, dot, the part that carries the layout. */
const fragmentShape = /^#?yard(\d{1,4})\.(.*)$/s
/** Longest part that is looked at, and made: programs that pass links on cut longer ones. */
export const MOST_LINK_CHARS = 60_000
const limits: Partial<ReadLimits> = { depth: 32, records: 5000 }

/** Whether a fragment wants to be a link of ours, of whatever version and however broken. */
export const isLayoutFragment = (fragment: string): boolean => /^#?yard\d/.test(fragment)

export interface LinkContent {
  document: YardDocument
  /** What the link does not carry. */
  left: { talks: number; photos: number }
}

/**
 * What a link carries of a document: the plan with its log of prints and shares. Talks and sign-offs stay behind, since
 * they hold names; photos do too, with what is drawn from them.
 */
export function linkContent(document: YardDocument): LinkContent {
  const talks = recordsOf(document, 'release').filter(({ what }) => what === 'talk' || what === 'signOff')
  const photos = recordsOf(document, 'asset')
  const gone = new Set([...talks, ...photos].map(({ id }) => id))
  let records: Record<string, YardRecord> = Object.fromEntries(Object.entries(document.records).filter(([id]) => !gone.has(id)))
  for (let bad = photos.length === 0 ? [] : referenceIssues(records); bad.length > 0; bad = referenceIssues(records)) {
    const without = new Set(bad.map(({ recordId }) => recordId))
    records = Object.fromEntries(Object.entries(records).filter(([id]) => !without.has(id)))
  }
  return { document: { records }, left: { talks: talks.length, photos: photos.length } }
}

/** The fragment, without '#', that carries what `linkContent` says. May be longer than `MOST_LINK_CHARS`: the caller says so. */
export const writeFragment = (content: LinkContent): string => `yard${LINK_VERSION}.${packed(JSON.stringify(fileFormOf(content.document)))}`

export type LinkResult = { ok: true; document: YardDocument; notes: readonly Localized[] } | { ok: false; reason: Localized }

const refused = (en: string, es: string): LinkResult => ({ ok: false, reason: { en, es } })

/** Why a part that carries nothing readable is refused. */
const reasons: Readonly<Record<Exclude<Unpacked, { ok: true }>['why'], Localized>> = {
  letters: { en: 'it holds characters that no such link has', es: 'tiene caracteres que un enlace así no lleva' },
  cut: { en: 'it is cut off or damaged; ask for it again, or for the file', es: 'está cortado o dañado; pídalo otra vez, o pida el archivo' },
  large: { en: 'what it carries is larger than any layout', es: 'lo que trae es más grande que cualquier plano' },
  changed: { en: 'it was changed on its way; ask for it again, or for the file', es: 'fue alterado en el camino; pídalo otra vez, o pida el archivo' },
}

/**
 * Reads a fragment (with or without '#'). Never throws. What is refused is refused in this order: shape and version,
 * length, letters, unpacked size, sum over the text, and then as strictly as a file. Nothing is opened by this.
 */
export function readFragment(fragment: string): LinkResult {
  const found = fragmentShape.exec(fragment)
  if (found === null) return refused('this is no link to a layout', 'esto no es un enlace a un plano')
  const version = Number(found[1])
  if (version > LINK_VERSION) return refused(`it was made by a newer Stringyard (link version ${version}); update the app to open it`, `fue hecho por un Stringyard más nuevo (versión de enlace ${version}); actualice la aplicación para abrirlo`)
  if (version < 1) return refused('this is no link to a layout', 'esto no es un enlace a un plano')
  const part = found[2] as string
  if (part.length > MOST_LINK_CHARS) return refused(`it is ${part.length} characters long; more than ${MOST_LINK_CHARS} are not read`, `tiene ${part.length} caracteres; no se leen más de ${MOST_LINK_CHARS}`)
  const text = unpacked(part)
  if (!text.ok) return { ok: false, reason: reasons[text.why] }
  const read = readFile(text.text, { limits })
  if (read.ok) return read
  const [first] = read.issues
  const path = first === undefined || first.path === '' ? '' : `${first.path}: `
  return refused(`${path}${first?.message.en ?? 'could not be read'}`, `${path}${first?.message.es ?? 'no se pudo leer'}`)
}
