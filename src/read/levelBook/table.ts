/** Text of a level book as rows of cells. */
import Papa from 'papaparse'
import { refused, type Reading } from '../refusal.ts'

export interface TableLimits {
  chars: number
  rows: number
  columns: number
  cellChars: number
}

/** Looked at before anything is read of a book. Rows: what a crew shoots in a year, and what the plan still draws at once. */
export const tableLimits: TableLimits = { chars: 2_000_000, rows: 10_000, columns: 30, cellChars: 200 }

export interface TableRow {
  /** Line of the text the row begins on, from 1. */
  line: number
  cells: readonly string[]
}

export interface Table {
  rows: readonly TableRow[]
  columns: number
  /** The character the columns are split at, as found. */
  delimiter: string
}

/** Strongest first: where a semicolon or a tab parts the cells, commas are decimal. */
const delimiters = ['\t', ';', '|', ',']

const delimiterOf = (text: string): string => {
  const first = /[^\s].*/.exec(text)?.[0] ?? ''
  return delimiters.find((one) => first.includes(one)) ?? ','
}

/**
 * Splits CSV text (RFC 4180 quoting) at the tab, semicolon, stroke or comma, the first of these that its first line has. Empty rows go.
 *
 * Limits: characters before it is split; rows, columns and length of a cell after. Never throws.
 */
export function readTable(text: string, limits: TableLimits = tableLimits): Reading<{ table: Table }> {
  if (text.length > limits.chars) return refused(`the level book has ${text.length} characters; more than ${limits.chars} are not read`, `la libreta tiene ${text.length} caracteres; no se leen más de ${limits.chars}`)
  if (text.includes('\u0000')) return refused('the level book is no text: it holds zero bytes', 'la libreta no es texto: contiene bytes cero')
  // One row more than allowed, its header and the empty ones: enough to know that there are too many.
  const { data, meta, errors } = Papa.parse<string[]>(text, { delimiter: delimiterOf(text), preview: 2 * limits.rows + 10, skipEmptyLines: false })
  const open = errors.find(({ type }) => type === 'Quotes')
  let line = 1
  const rows: TableRow[] = []
  for (const cells of data) {
    const trimmed = cells.map((cell) => cell.trim())
    if (trimmed.some((cell) => cell !== '')) rows.push({ line, cells: trimmed })
    line += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\n|\r(?!\n)/g)?.length ?? 0), 0)
  }
  if (open !== undefined) {
    const at = rows.at(Math.min(open.row ?? 0, rows.length - 1))?.line ?? 1
    return refused(`line ${at}: a quotation mark is not closed`, `línea ${at}: falta cerrar unas comillas`)
  }
  if (rows.length === 0) return refused('the level book is empty', 'la libreta está vacía')
  // The header is no row of figures.
  if (rows.length > limits.rows + 1) return refused(`the level book has more than ${limits.rows} rows`, `la libreta tiene más de ${limits.rows} filas`)
  const columns = Math.max(...rows.map(({ cells }) => cells.length))
  if (columns > limits.columns) {
    const wide = rows.find(({ cells }) => cells.length > limits.columns)
    return refused(`line ${wide?.line ?? 1} has ${columns} columns; more than ${limits.columns} are not read`, `la línea ${wide?.line ?? 1} tiene ${columns} columnas; no se leen más de ${limits.columns}`)
  }
  const long = rows.find(({ cells }) => cells.some((cell) => cell.length > limits.cellChars))
  if (long !== undefined) return refused(`line ${long.line} has a cell of more than ${limits.cellChars} characters`, `la línea ${long.line} tiene una celda de más de ${limits.cellChars} caracteres`)
  return { ok: true, table: { rows, columns, delimiter: columns === 1 ? '' : meta.delimiter } }
}
