/** The setting-out table as CSV, for a spreadsheet. */
import Papa from 'papaparse'
import type { CrewSheetContent } from '../sheet/crew/types.ts'
import { plainText } from '../sheet/crew/face.ts'
import { crewReader } from '../sheet/crew/reader.ts'
import { setOutRows } from '../sheet/crew/settingOut.ts'

/** Text that a spreadsheet would take for a formula, blanks before it included, is led by an apostrophe. Numbers stay numbers. */
const FORMULA = /^\s*[=+\-@\t\r|%]/

/** Lines of a cell; what is said in two languages is parted by a stroke. */
const onOneLine = (lines: readonly string[]): string => lines.join(lines.some((line) => /\d/.test(line)) ? ' ' : ' / ')

const headOf = { label: 'no.', item: 'item', tape: 'tape from datum', runningM: 'tape m', offset: 'offset', offsetM: 'offset m (right +)', groundM: 'ground m', bopM: 'BOP above ground m', rollerTopM: 'roller top m', loadN: 'most load N', toleranceM: 'within m', asSetM: 'as set m', revision: 'revision' } as const

/**
 * Comma-separated (RFC 4180), UTF-8 with the mark that spreadsheets look for, one row an item. Figures in SI to 0.1 mm of tape and
 * 0.01 mm of height; unknown cells are empty. Distances as a person reads them stand beside those in metres.
 */
export const csvOf = ({ site, run, language, system }: Pick<CrewSheetContent, 'site' | 'run' | 'language' | 'system'>): string => {
  const reader = crewReader(site, language, system)
  const figure = (value: number | null, digits: number): number | '' => (value === null ? '' : Number(value.toFixed(digits)))
  const rows = setOutRows(site, run).map((row) => ({
    [headOf.label]: plainText(row.label), [headOf.item]: plainText(reader.local(row.item)),
    [headOf.tape]: onOneLine(reader.runningCell(row.runningM)), [headOf.runningM]: figure(row.runningM, 4),
    [headOf.offset]: onOneLine(reader.offsetCell(row.offsetM)), [headOf.offsetM]: figure(row.offsetM, 4),
    [headOf.groundM]: figure(row.groundM, 5), [headOf.bopM]: figure(row.bopM, 5), [headOf.rollerTopM]: figure(row.rollerTopM, 5),
    [headOf.loadN]: figure(row.loadN, 1), [headOf.toleranceM]: figure(row.toleranceM, 5), [headOf.asSetM]: figure(row.asSetM, 5),
    [headOf.revision]: plainText(site.layout.revision),
  }))
  return `\ufeff${Papa.unparse({ fields: Object.values(headOf), data: rows }, { escapeFormulae: FORMULA, newline: '\r\n' })}\r\n`
}
