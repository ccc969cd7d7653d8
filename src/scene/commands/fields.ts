import type { YardRecord } from '../document.ts'

/** Parts of a dotted path; list positions as numbers: 'points.2.xM' and 'points[2].xM' are one. */
export const pathParts = (path: string): (string | number)[] =>
  path.replaceAll(/\[(\d+)\]/g, '.$1').split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part))

type Bag = Record<string | number, unknown>
const isBag = (value: unknown): value is Bag => typeof value === 'object' && value !== null

/** Whether the record has a field at the path (its parent and the name in it). */
export function hasField(record: YardRecord, parts: readonly (string | number)[]): boolean {
  let value: unknown = record
  for (const part of parts) {
    if (!isBag(value) || !Object.hasOwn(value, part)) return false
    value = value[part]
  }
  return true
}

/** A copy with the value at the path; everything off the path is shared. The parent must be there. */
export function withField(value: unknown, [part, ...rest]: readonly (string | number)[], to: unknown): unknown {
  if (part === undefined) return to
  if (!isBag(value)) return value
  if (Array.isArray(value)) return value.map((one: unknown, i) => (i === part ? withField(one, rest, to) : one))
  return { ...value, [part]: withField(value[part], rest, to) }
}

/** Plain object laid over another, group by group; lists and plain values are replaced. */
export function laidOver(base: unknown, patch: unknown): unknown {
  if (!isBag(base) || !isBag(patch) || Array.isArray(base) || Array.isArray(patch)) return patch
  const out: Bag = { ...base }
  for (const key of Object.keys(patch)) if (key !== '__proto__') out[key] = Object.hasOwn(base, key) ? laidOver(base[key], patch[key]) : patch[key]
  return out
}

/**
 * The group of a figure at `….value`, after its value was typed: the basis says where it now comes from and a band that
 * no longer holds the value goes. Null makes it unknown again.
 */
export function typedFigure(figure: unknown, value: unknown, basis: string): unknown {
  if (!isBag(figure) || !Object.hasOwn(figure, 'basis')) return null
  const { band, ...rest } = figure
  const isInBand = isBag(band) && typeof value === 'number' && Number(band['low']) <= value && value <= Number(band['high'])
  const kept = figure['basis'] === 'typical' ? basis : figure['basis']
  return { ...rest, value, basis: value === null ? 'typical' : kept, ...(isInBand ? { band } : {}) }
}
