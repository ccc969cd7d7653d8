import type { PlacedRecord } from '../scene/kinds/index.ts'

/** What copies carry from layout to layout: kept in memory, and as text on the device's clipboard where the browser allows. */
interface Clip {
  stringyard: 'clip'
  records: readonly PlacedRecord[]
}

let held: Clip | null = null

export const putClip = (records: readonly PlacedRecord[]): void => {
  held = { stringyard: 'clip', records }
  // Refused without a gesture or on an insecure page: the copy in memory still serves this window.
  void globalThis.navigator?.clipboard?.writeText(JSON.stringify(held)).catch(() => undefined)
}

const readClip = (text: string): Clip | null => {
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' && value !== null && 'stringyard' in value && value.stringyard === 'clip' && 'records' in value && Array.isArray(value.records) ? (value as Clip) : null
  } catch {
    return null
  }
}

/** Records last copied here or in another window. What comes from outside is checked by the paste command. */
export const takeClip = async (): Promise<readonly unknown[]> => {
  const text = await globalThis.navigator?.clipboard?.readText().catch(() => '')
  const outside = text === undefined || text === '' || text.length > 5_000_000 ? null : readClip(text)
  return (outside ?? held)?.records ?? []
}
