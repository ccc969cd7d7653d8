import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseLength, parseQuantity } from '../../src/units/parse.ts'
import type { LengthFieldUnit, QuantityReading } from '../../src/units/parse.ts'
import { quantityKinds, siUnitOf } from '../../src/units/quantity.ts'
import type { QuantityKind } from '../../src/units/quantity.ts'

const fieldUnits: Record<string, LengthFieldUnit> = { 'feet and inches': 'feetInches', ft: 'ft', in: 'in', m: 'm', mm: 'mm', 'no unit': null }

interface Row {
  line: number
  typed: string
  field: string
  answer: string
}

const lines = readFileSync(new URL('../../docs/number-entry.md', import.meta.url), 'utf8').split('\n')
const rows: Row[] = lines.flatMap((text, index) => {
  const cells = /^\| `(.*)` \| (.+) \| (.+) \|$/.exec(text)
  return cells ? [{ line: index + 1, typed: cells[1]!, field: cells[2]!, answer: cells[3]! }] : []
})

/** What the parser says, as [kind of answer, text or SI value, unit]. */
function reading(typed: string, field: string): { read: QuantityReading; unit: string } {
  const [kind, system] = field.split(', ')
  if (quantityKinds.includes(kind as QuantityKind)) {
    return { read: parseQuantity(typed, kind as QuantityKind, system === 'metric' ? 'metric' : 'feetInches'), unit: siUnitOf[kind as QuantityKind] }
  }
  const hasSides = field.endsWith(', with sides')
  const name = hasSides ? kind! : field
  if (!(name in fieldUnits)) throw new Error(`the table names an unknown field: ${field}`)
  const length = parseLength(typed, { fieldUnit: fieldUnits[name]!, allowNegative: hasSides })
  if (length.ok) return { read: { ...length, value: length.valueM }, unit: 'm' }
  return { read: length.reason === 'ask' ? { ...length, choices: length.choices.map(({ label, valueM }) => ({ label, value: valueM })) } : length, unit: 'm' }
}

function mismatch({ line, typed, field, answer }: Row): string[] {
  const { read, unit } = reading(typed, field)
  const off = (got: string): string[] => [`line ${line}: \`${typed}\` in ${field}: got ${got}, the table says ${answer}`]
  if (read.ok) {
    const value = Number(/^(-?[\d.]+) (.+)$/.exec(answer)?.[1])
    const isSame = answer.endsWith(` ${unit}`) && Math.abs(read.value - value) <= 1e-9 * Math.max(1, Math.abs(value))
    return isSame ? [] : off(`${read.value} ${unit}`)
  }
  const said = read.reason === 'ask' ? `asks: ${read.choices.map(({ label }) => label).join(' · ')}` : `refused: ${read.detail.en}`
  return said === answer ? [] : off(said)
}

describe('the table of docs/number-entry.md', () => {
  it('has at least 80 rows, with every kind of answer among them', () => {
    expect(rows.length).toBeGreaterThanOrEqual(80)
    expect(rows.filter(({ answer }) => answer.startsWith('asks: ')).length).toBeGreaterThanOrEqual(5)
    expect(rows.filter(({ answer }) => answer.startsWith('refused: ')).length).toBeGreaterThanOrEqual(20)
  })

  it('holds in every row', () => expect(rows.flatMap(mismatch)).toEqual([]))

  it('is the test: a wrong row would be reported', () => {
    expect(mismatch({ line: 0, typed: '12 ft', field: 'ft', answer: '3.6577 m' })).toHaveLength(1)
    expect(mismatch({ line: 0, typed: '12', field: 'feet and inches', answer: 'asks: 12 ft' })).toHaveLength(1)
  })

  it('is refused in Spanish too, with an example the same field reads', () => {
    for (const { typed, field } of rows) {
      const { read } = reading(typed, field)
      if (read.ok || read.reason === 'ask') continue
      expect(read.detail.es.length, typed).toBeGreaterThan(5)
      expect(reading(read.example, field).read.ok, `${field}: ${read.example}`).toBe(true)
    }
  })
})
