import { isPlan, tidyWhatIf, type ShownCase, type WhatIf } from '../../derive/whatIf.ts'
import { whatIfWords as words } from '../../messages/ui/whatIfWords.ts'
import { mphMPerS } from '../../units/factors.ts'
import type { Words } from '../context.tsx'

/** The steps of the taps, round in the reader's own system. */
const WARMER_C = { feetInches: 20 / 1.8, metric: 10 } as const
const WIND_M_PER_S = { feetInches: 30 * mphMPerS, metric: 13 } as const

export const warmerStepC = (reader: Pick<Words, 'systemOf'>): number => WARMER_C[reader.systemOf('temperature')]
export const windStepMPerS = (reader: Pick<Words, 'systemOf'>): number => WIND_M_PER_S[reader.systemOf('speed')]

/** What is supposed, one part each, in the reader's words; `nameOf` gives an item's label. */
export function whatIfParts(whatIf: WhatIf, reader: Words, nameOf: (id: string) => string): string[] {
  const { warmerC, missing, wetGrass, windMPerS, friction, modulus, temperature, sink } = tidyWhatIf(whatIf)
  const { local } = reader
  const part = { low: local(words.part_low), likely: local(words.part_likely), high: local(words.part_high) }
  return [
    ...(warmerC === undefined ? [] : [local(words.warmer, { by: { kind: 'temperatureChange', value: warmerC } })]),
    ...(missing === undefined ? [] : [local(words.missing, { items: missing.map(nameOf).join(', ') })]),
    ...(wetGrass === undefined ? [] : [local(words.wetGrass)]),
    ...(windMPerS === undefined ? [] : [local(words.wind, { speed: { kind: 'speed', value: windMPerS } })]),
    ...(sink === undefined ? [] : [local(words.sink, { item: nameOf(sink.itemId), by: { kind: 'shortLength', value: sink.byM } })]),
    ...(friction === undefined ? [] : [local(words.friction, { part: part[friction] })]),
    ...(modulus === undefined ? [] : [local(words.modulus, { part: part[modulus] })]),
    ...(temperature === undefined ? [] : [local(words.temperature, { part: part[temperature] })]),
  ]
}

/** One line that says which case is shown; null for the plan. */
export function caseLine(shown: ShownCase, reader: Words, nameOf: (id: string) => string): string | null {
  if (isPlan(shown)) return null
  const parts = whatIfParts(shown.whatIf, reader, nameOf)
  const asSet = shown.variant === 'asSet' ? reader.local(words.asSet) : ''
  return parts.length === 0 ? asSet : `${asSet === '' ? '' : `${asSet} `}${reader.local(words.whatIf)} ${parts.join(' · ')}`
}
