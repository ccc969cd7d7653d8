/**
 * Writes docs/verification.md from shared/cases with our own values beside theirs: `npx tsx tests/helpers/makeVerification.ts`.
 * tests/docs/verification.test.ts fails where the page in the repository is not what this gives.
 */
import { writeFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { verificationRows, type VerificationRow } from './verificationRows.ts'
import { workedComparison } from './workedComparison.ts'

export const verificationPath = new URL('../../docs/verification.md', import.meta.url)

export const basisClasses = ['published', 'from memory', 'common practice', 'derived'] as const
export type BasisClass = (typeof basisClasses)[number]

/** Where the other value comes from: read in a document, recalled, said by everyone, or worked out by ourselves. */
export function classOf({ basis, source }: Pick<VerificationRow, 'basis' | 'source'>): BasisClass {
  if (basis === 'calculated') return 'derived'
  if (/rule of thumb|common practice/.test(source)) return 'common practice'
  if (basis === 'from memory, confirm') return 'from memory'
  if (basis === 'read' || basis === 'published form, calculated value') return 'published'
  throw new Error(`a row has the basis ${basis}, which is none of the four`)
}

/** Names of one document written in different ways, without the page and column they were read in. */
const documents: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^Civil Engineering Formulas, Table 2\.1/, 'Civil Engineering Formulas, Table 2.1'],
  [/^AISC .*3-22/, 'AISC Steel Construction Manual, Table 3-22'],
  [/^AISC .*3-23/, 'AISC Steel Construction Manual, Table 3-23'],
  [/chapter 3, Table B\.1\.1/, 'PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 3, Table B.1.1'],
]
const documentOf = (source: string): string => documents.find(([pattern]) => pattern.test(source))?.[1] ?? source

/**
 * Checks by class: one for each source and quantity, and in tables one for each ten values. A value that two parts of the code are held
 * against counts once; a source of which some values were read and some recalled counts as recalled only for what the read ones leave.
 */
export function countChecks(rows: readonly VerificationRow[]): Record<BasisClass, number> {
  const groups = new Map<string, Map<string, Record<BasisClass, number>>>()
  for (const row of rows) {
    const key = `${documentOf(row.source)} | ${row.quantity}`
    const parts = groups.get(key) ?? new Map<string, Record<BasisClass, number>>()
    groups.set(key, parts)
    const counts = parts.get(row.part) ?? { published: 0, 'from memory': 0, 'common practice': 0, derived: 0 }
    parts.set(row.part, counts)
    counts[classOf(row)] += row.theirs.length
  }
  const total: Record<BasisClass, number> = { published: 0, 'from memory': 0, 'common practice': 0, derived: 0 }
  for (const parts of groups.values()) {
    const most = (of: (counts: Record<BasisClass, number>) => number): number => Math.ceil(Math.max(...[...parts.values()].map(of)) / 10)
    const published = most((counts) => counts.published)
    total.published += published
    total['from memory'] += Math.max(0, most((counts) => counts.published + counts['from memory']) - published)
    total['common practice'] += most((counts) => counts['common practice'])
    total.derived += most((counts) => counts.derived)
  }
  return total
}

const figure = (value: number): string => (Math.abs(value) < 1e-12 ? '0' : String(Number(value.toPrecision(6))))
const list = (values: readonly number[]): string => values.map(figure).join(', ')

/** Largest difference of a row, and what it may be at most. Digits lost to rounding differ from machine to machine and are not written. */
function differences({ ours, theirs, allowed }: VerificationRow): { most: string; may: string } {
  const offs = ours.map((value, i) => Math.abs(value - theirs[i]!))
  const at = offs.reduce((worst, off, i) => (off > offs[worst]! ? i : worst), 0)
  const most = offs[at]!
  const isNoise = most <= 1e-9 * Math.max(1, Math.abs(theirs[at]!))
  return { most: isNoise ? '< 1e-9' : String(Number(most.toPrecision(2))), may: String(Number(allowed[at]!.toPrecision(2))) }
}

const cell = (text: string): string => text.replaceAll('|', '\\|')

const isWithin = ({ ours, theirs, allowed }: VerificationRow): boolean => ours.length === theirs.length && ours.every((value, i) => Math.abs(value - theirs[i]!) <= allowed[i]!)

/** Rows outside what they may differ by; none, or the page says something that is not true. */
export const rowsOutside = (rows: readonly VerificationRow[]): string[] => rows.filter((row) => !isWithin(row)).map(({ check, ours, theirs }) => `${check}: ${list(ours)} against ${list(theirs)}`)

/** The page as Markdown. */
export function verificationMarkdown(rows: readonly VerificationRow[] = verificationRows()): string {
  const sources = [...new Set(rows.map(({ source }) => source))]
  const counts = countChecks(rows)
  const parts = [...new Set(rows.map(({ part }) => part))]
  const values = rows.reduce((sum, { theirs }) => sum + theirs.length, 0)
  const table = (part: string): string[] => [
    `## ${part}`, '',
    '| check | ours | theirs | unit | difference | allowed | source | basis |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows.filter((row) => row.part === part).map((row) => {
      const { most, may } = differences(row)
      return `| ${cell(row.check)} | ${list(row.ours)} | ${list(row.theirs)} | ${cell(row.unit)} | ${most} | ${may} | ${sources.indexOf(row.source) + 1} | ${row.basis === 'published form, calculated value' ? 'published form, worked by hand' : classOf(row)} |`
    }), '',
  ]
  return [
    '# Verification against other people’s values',
    '',
    'Written by `npx tsx tests/helpers/makeVerification.ts` from `shared/cases`; a test fails where it is out of date. *Ours* is what the code of this repository gives, *theirs* what the',
    'source gives; where a row has several values the difference is the largest of them. Small differences of last digits printed are expected, and *allowed* says how much.',
    '',
    `| ${basisClasses.join(' | ')} | rows | values |`,
    `| ${[...basisClasses, '', ''].map(() => '---').join(' | ')} |`,
    `| ${basisClasses.map((name) => counts[name]).join(' | ')} | ${rows.length} | ${values} |`,
    '',
    'How it is counted: a check counts once for each independent source and quantity, and in a published table once for each ten values. What two parts of the code are held against counts once.',
    '*Published* was read in the source named, or is a published form worked by hand; *from memory* has to be confirmed in the document; *derived* is our own arithmetic, made apart from the code under',
    'test, and is no source. Rows of a table that the engine itself reads (moduli, bend radii, overhead lines) guard the copying of it, not a calculation. Trade facts without a source are tests of their own (`tests/checks/tradeFacts.test.ts`).',
    'Laws, oracles and long seeded runs are described in [the contact beam](formulas/contact-beam.md), [clearance](formulas/clearance.md) and [pull](formulas/pull.md).',
    '',
    ...parts.flatMap(table),
    ...workedComparison(),
    '## Sources', '',
    ...sources.map((source, i) => `${i + 1}. ${source}`),
    '',
  ].join('\n')
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const rows = verificationRows()
  const outside = rowsOutside(rows)
  if (outside.length > 0) throw new Error(`not written, these differ by more than they may:\n${outside.join('\n')}`)
  writeFileSync(verificationPath, verificationMarkdown(rows))
  console.log(`${rows.length} rows, checks ${JSON.stringify(countChecks(rows))}`)
}
