import type { Localized } from '../../messages/localized.ts'
import { parseLength } from '../../units/parse.ts'
import { quoted, refused, type Reading } from '../refusal.ts'
import type { Columns, Role } from './columns.ts'
import type { TableRow } from './table.ts'

/** What a bare number means: decimal feet, feet and inches (12-6; a bare number is then a fault), metres, millimetres. */
export const bookUnits = ['ft', 'feetInches', 'm', 'mm'] as const
export type BookUnit = (typeof bookUnits)[number]

export interface BookChoices {
  unit: BookUnit | null
  columns: Columns
  /** Station of the datum nail in the book's stations. */
  datumStationM: number | null
  /** Level of the ground at the datum nail in the book. */
  datumLevelM: number | null
  /** Which way stations rise. */
  stationsRise: 'exit' | 'infeed'
  /** Which side of the line, looking down-string, a plus means. */
  plusOffset: 'right' | 'left'
}

export interface BookLevel {
  line: number
  /** From the datum nail, exit positive. */
  runningM: number
  /** Right positive looking down-string. */
  offsetM: number
  /** Above the ground at the datum nail. */
  aboveDatumM: number
  /** The level as the book has it. */
  bookLevelM: number
}

export interface BookFault {
  line: number
  role: Role
  message: Localized
}

/** Farther from the datum nail than this no ground level is of use to a yard; a slip of the unit or of the datum's own figure. */
const MOST_RUNNING_M = 10_000
const MOST_OFFSET_M = 2_000
const MOST_LEVEL_M = 100
/** Points nearer than this are one. */
const SAME_POINT_M = 0.005

type Cell = { ok: true; valueM: number } | { ok: false; message: Localized }
const fault = (en: string, es: string): Cell => ({ ok: false, message: { en, es } })

/** Stations as 1+25.5: two digits behind the plus count feet in hundreds, three count metres in thousands (common practice, no source). */
const plusStation = /^(-?)(\d{1,4})\+(\d{2,3})([.,]\d{1,4})?$/

function stationCell(text: string, unit: BookUnit): Cell | null {
  const found = plusStation.exec(text.replace(/\s/g, ''))
  if (found === null) return null
  const [, minus, whole, part, decimals = ''] = found
  const isFeet = unit === 'ft' || unit === 'feetInches'
  if (part!.length !== (isFeet ? 2 : 3)) {
    return isFeet
      ? fault(`${quoted(text)}: a station in feet has two digits after the plus`, `${quoted(text)}: un cadenamiento en pies lleva dos cifras después del más`)
      : fault(`${quoted(text)}: a station in metres has three digits after the plus`, `${quoted(text)}: un cadenamiento en metros lleva tres cifras después del más`)
  }
  const value = Number(whole) * (isFeet ? 100 : 1000) + Number(`${part}${decimals.replace(',', '.')}`)
  return { ok: true, valueM: (minus === '-' ? -value : value) * (isFeet ? 0.3048 : 1) }
}

/** One length of the book. What can be read in two ways is a fault, never a guess. */
function lengthCell(text: string | undefined, role: Role, unit: BookUnit): Cell {
  if (text === undefined || text === '') return fault('is empty', 'está vacía')
  if (/^'?[=@]/.test(text)) return fault(`${quoted(text)} is a formula, not a number`, `${quoted(text)} es una fórmula, no un número`)
  const station = role === 'station' ? stationCell(text, unit) : null
  if (station !== null) return station
  const reading = parseLength(text, { fieldUnit: unit, allowNegative: true })
  if (reading.ok) return reading
  if (reading.reason === 'ask') {
    const ways = reading.choices.map(({ label }) => label)
    return fault(`${quoted(text)} can be read as ${ways.join(' or ')}`, `${quoted(text)} se puede leer como ${ways.join(' o ')}`)
  }
  return fault(`${quoted(text)}: ${reading.detail.en}`, `${quoted(text)}: ${reading.detail.es}`)
}

const hasSideWord = (text: string): boolean => /[a-z]/i.test(text) && /^(?:r|l|d|i|right|left|derecha|izquierda|der|izq)\b|\b(?:r|l|right|left|derecha|izquierda|der|izq)\.?$/i.test(text)

/** What must be said before a book can be read; empty when all is. */
export const openChoices = (choices: BookChoices): readonly (Role | 'unit' | 'sameColumn' | 'datumStation' | 'datumLevel')[] => {
  const { unit, columns, datumStationM, datumLevelM } = choices
  const said = [columns.station, columns.offset, columns.level].filter((column) => typeof column === 'number')
  return [
    ...(unit === null ? ['unit' as const] : []),
    ...(columns.station === null ? ['station' as const] : []),
    ...(columns.offset === null ? ['offset' as const] : []),
    ...(columns.level === null ? ['level' as const] : []),
    ...(new Set(said).size < said.length ? ['sameColumn' as const] : []),
    ...(datumStationM === null ? ['datumStation' as const] : []),
    ...(datumLevelM === null ? ['datumLevel' as const] : []),
  ]
}

/**
 * Ground levels of a book by what was chosen: each row a level, or a fault with its line and column.
 *
 * Fails: refuses where a choice is open. Rows of figures only, without the header. Never throws.
 */
export function readLevels(rows: readonly TableRow[], choices: BookChoices): Reading<{ levels: readonly BookLevel[]; faults: readonly BookFault[] }> {
  const { unit, columns, datumStationM, datumLevelM } = choices
  if (openChoices(choices).length > 0 || unit === null || columns.station === null || columns.level === null || columns.offset === null || datumStationM === null || datumLevelM === null) return refused('unit, columns and datum have to be chosen first', 'primero hay que elegir unidad, columnas y origen')
  const levels: BookLevel[] = []
  const faults: BookFault[] = []
  const lineOfPoint = new Map<string, number>()
  for (const { line, cells } of rows) {
    const station = lengthCell(cells[columns.station], 'station', unit)
    const offsetText = columns.offset === 'none' ? '0' : cells[columns.offset]
    const offset = lengthCell(offsetText, 'offset', unit)
    const level = lengthCell(cells[columns.level], 'level', unit)
    const wrong = ([['station', station], ['offset', offset], ['level', level]] as const).flatMap(([role, cell]) => (cell.ok ? [] : [{ line, role, message: cell.message }]))
    if (wrong.length > 0 || !station.ok || !offset.ok || !level.ok) {
      faults.push(...wrong)
      continue
    }
    const runningM = (station.valueM - datumStationM) * (choices.stationsRise === 'exit' ? 1 : -1)
    // A side word says the side by itself; only a bare sign needs to know what plus means.
    const turn = choices.plusOffset === 'left' && !hasSideWord(offsetText ?? '') ? -1 : 1
    const offsetM = offset.valueM === 0 ? 0 : offset.valueM * turn
    const aboveDatumM = level.valueM - datumLevelM
    const far = tooFar(runningM, offsetM, aboveDatumM)
    if (far !== null) {
      faults.push({ line, ...far })
      continue
    }
    const key = `${Math.round(runningM / SAME_POINT_M / 2)}:${Math.round(offsetM / SAME_POINT_M / 2)}`
    const before = lineOfPoint.get(key)
    if (before !== undefined) {
      faults.push({ line, role: 'station', message: { en: `is the same point as line ${before}`, es: `es el mismo punto que la línea ${before}` } })
      continue
    }
    lineOfPoint.set(key, line)
    levels.push({ line, runningM, offsetM, aboveDatumM, bookLevelM: level.valueM })
  }
  return { ok: true, levels, faults }
}

function tooFar(runningM: number, offsetM: number, aboveDatumM: number): { role: Role; message: Localized } | null {
  if (Math.abs(runningM) > MOST_RUNNING_M) return { role: 'station', message: { en: 'is more than 10 km from the datum nail; look at the unit and at the station of the datum', es: 'está a más de 10 km del clavo de origen; revise la unidad y el cadenamiento del origen' } }
  if (Math.abs(offsetM) > MOST_OFFSET_M) return { role: 'offset', message: { en: 'is more than 2 km off the line; look at the unit', es: 'está a más de 2 km de la línea; revise la unidad' } }
  if (Math.abs(aboveDatumM) > MOST_LEVEL_M) return { role: 'level', message: { en: 'is more than 100 m above or below the datum nail; look at the unit and at the level of the datum', es: 'está a más de 100 m sobre o bajo el clavo de origen; revise la unidad y el nivel del origen' } }
  return null
}
