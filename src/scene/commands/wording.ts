import type { Localized } from '../../messages/localized.ts'
import type { YardDocument } from '../document.ts'
import type { StepLabel } from '../edit.ts'
import { kindOf } from '../kinds/index.ts'
import { labelsOf } from '../resolve.ts'

const frameNames: Record<string, Localized> = {
  layout: { en: 'layout', es: 'plano' }, job: { en: 'job', es: 'obra' }, setUp: { en: 'set-up', es: 'montaje' }, run: { en: 'pull path', es: 'recorrido de tiro' },
  string: { en: 'string', es: 'sarta' }, zoneChange: { en: 'change of a zone', es: 'cambio de zona' }, limitChange: { en: 'change of a limit', es: 'cambio de límite' },
  asSet: { en: 'as-set figure', es: 'medida colocada' }, release: { en: 'release', es: 'entrega' }, asset: { en: 'picture', es: 'imagen' },
}

/** Name of a kind of record for a person. */
export const kindName = (kind: string): Localized => kindOf(kind)?.name ?? frameNames[kind] ?? { en: kind, es: kind }

/** What a step is about: 'E3', 'fence', '4 items', 'nothing'. Never text typed by a person: braces in it would be read as places. */
export function whatText(document: YardDocument, ids: readonly string[]): Localized {
  const there = [...new Set(ids)].filter((id) => document.records[id] !== undefined)
  const [only] = there
  if (only === undefined) return { en: 'nothing', es: 'nada' }
  if (there.length > 1) return { en: `${there.length} items`, es: `${there.length} elementos` }
  const label = labelsOf(document).get(only)
  return label === undefined ? kindName(document.records[only]!.kind) : { en: label, es: label }
}

/** Step label 'verb what' in both languages. */
export const stepOf = (verb: Localized, what: Localized, values?: StepLabel['values']): StepLabel => {
  const text = { en: `${verb.en} ${what.en}`, es: `${verb.es} ${what.es}` }
  return values === undefined ? { text } : { text, values }
}
