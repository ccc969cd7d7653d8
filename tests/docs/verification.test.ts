import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { classOf, countChecks, rowsOutside, verificationMarkdown, verificationPath } from '../helpers/makeVerification.ts'
import { verificationRows, type VerificationRow } from '../helpers/verificationRows.ts'

const rows = verificationRows()
const row = (over: Partial<VerificationRow>): VerificationRow => ({ part: 'p', check: 'c', quantity: 'q', ours: [1], theirs: [1], allowed: [0], unit: 'm', source: 's', basis: 'read', ...over })
const values = (count: number): number[] => Array.from({ length: count }, (_, i) => i)

describe('docs/verification.md', () => {
  it('is what tests/helpers/makeVerification.ts gives; run it where this fails', () => {
    expect(readFileSync(verificationPath, 'utf8')).toBe(verificationMarkdown(rows))
  })

  it('holds no row that differs by more than it may', () => expect(rowsOutside(rows)).toEqual([]))

  it('reports a row that does', () => expect(rowsOutside([row({ ours: [1.2], allowed: [0.1] }), row({ ours: [], theirs: [1] })])).toHaveLength(2))
})

describe('the counting of checks', () => {
  it('takes one for a source and quantity, and one for each ten values of a table', () => {
    // 1 row → 1; 10 values → 1; 11 values → 2
    expect(countChecks([row({})]).published).toBe(1)
    expect(countChecks([row({ theirs: values(10) })]).published).toBe(1)
    expect(countChecks([row({ theirs: values(10) }), row({})]).published).toBe(2)
    expect(countChecks([row({}), row({ quantity: 'other' }), row({ source: 'other' })]).published).toBe(3)
  })

  it('counts once what two parts of the code are held against', () => expect(countChecks([row({}), row({ part: 'other' })]).published).toBe(1))

  it('counts as recalled only what the values read leave', () => {
    expect(countChecks([row({}), row({ basis: 'from memory, confirm' })])).toMatchObject({ published: 1, 'from memory': 0 })
    // 10 read and 5 recalled: 2 in all, 1 of them read
    expect(countChecks([row({ theirs: values(10) }), row({ basis: 'from memory, confirm', theirs: values(5) })])).toMatchObject({ published: 1, 'from memory': 1 })
  })

  it('tells the four classes apart and refuses any other', () => {
    expect(classOf({ basis: 'calculated', source: 'statics' })).toBe('derived')
    expect(classOf({ basis: 'read', source: 'field rule of thumb' })).toBe('common practice')
    expect(() => classOf({ basis: 'guessed', source: 's' })).toThrow('guessed')
  })

  // 30 is the floor set for this project; what a person can open and what is recalled are told apart above.
  it('finds at least 30 checks with a source', () => {
    const { published, 'from memory': recalled } = countChecks(rows)
    expect(published).toBeGreaterThanOrEqual(30)
    expect(published + recalled).toBeGreaterThanOrEqual(60)
  })
})
