/**
 * Figures rail at the foot of the side view: a column under each support with its saddle, what it carries, and how a free
 * nose arrives. Frame of the list: x = running distance, m; y = px up from the foot of the band.
 */
import { guessedWidthPx } from '../drawing/fractionText.ts'
import type { InkName, Primitive } from '../drawing/primitives.ts'
import { formatQuantity, type FormatOptions } from '../units/format.ts'
import type { SectionProfile, SiteModel } from './types.ts'

/** How the nose comes to a support, as the checks found it. */
export interface ArrivalFigure {
  /** Tip below (negative) or above the top of the support; null: it is set there, not fed. */
  aboveM: number | null
  onGround: boolean
  isBad: boolean
}

export interface RailLook {
  reader: Pick<FormatOptions, 'system' | 'language'>
  fromM: number
  toM: number
  pxPerM: number
  chosenIds: readonly string[]
  /** Running distance at the left end of the band on screen. */
  leftM: number
  /** By support key; null: the checks have not said. */
  arrivals: ReadonlyMap<string, ArrivalFigure> | null
  figurePx: number
  /** Heads of the rows in one word, for narrow bands. */
  isNarrow?: boolean
  /** False for what is drawn beyond a fold: the heads of the rows stand at the other end. */
  hasHeads?: boolean
}

export const RAIL_ROW_PX = 21
/** Nearer than this only every second column is written; the chosen one always. */
export const RAIL_ROOM_PX = 30

export const railHeightPx = (hasArrivals: boolean, figurePx: number): number => (hasArrivals ? 3 : 2) * rowPxOf(figurePx) + 3
const rowPxOf = (figurePx: number): number => Math.max(RAIL_ROW_PX, figurePx * 1.5)

const words = {
  saddle: { en: 'saddle, BOP above ground', es: 'apoyo, fondo sobre el suelo' },
  carries: { en: 'carries', es: 'carga' },
  nose: { en: 'free nose on arrival', es: 'punta libre al llegar' },
  saddleShort: { en: 'saddle', es: 'apoyo' },
  noseShort: { en: 'nose', es: 'punta' },
  floats: { en: 'floats', es: 'libre' },
  onGround: { en: 'on ground', es: 'en el suelo' },
  set: { en: 'set', es: 'puesta' },
} as const

/** Figure and unit of a quantity apart: the unit stands once, at the head of the row. */
const split = (text: string): { figure: string; unit: string } => {
  const match = /^(.*\d[^a-zA-Z]*)\s([a-zA-Z·]+)$/u.exec(text)
  return match === null ? { figure: text, unit: '' } : { figure: match[1] as string, unit: match[2] as string }
}

interface Column {
  atM: number
  isChosen: boolean
  /** Rows from top to bottom. */
  cells: readonly ({ text: string; ink: InkName; bold: boolean } | null)[]
}

/** Columns shown at this scale: every one, or those at least 30 px from the one shown before; the chosen always. */
export const railColumns = <T extends { atM: number; isChosen: boolean }>(columns: readonly T[], pxPerM: number, roomPx = RAIL_ROOM_PX): T[] => {
  const kept: T[] = columns.filter(({ isChosen }) => isChosen)
  for (const column of columns) {
    if (column.isChosen || kept.some((other) => Math.abs(other.atM - column.atM) * pxPerM < roomPx)) continue
    kept.push(column)
  }
  return kept.sort((a, b) => a.atM - b.atM)
}

/** The rail as a drawing list, back to front. */
export const sectionRail = (site: SiteModel, profile: SectionProfile, look: RailLook): Primitive[] => {
  const { reader, fromM, toM, pxPerM, leftM, arrivals, figurePx } = look
  const language = reader.language
  const rowPx = rowPxOf(figurePx)
  const rows = arrivals === null ? 2 : 3
  const height = railHeightPx(arrivals !== null, figurePx)
  const baseline = (row: number): number => height - rowPx * (row + 1) + rowPx * 0.32
  const inView = site.supports.filter(({ runningM }) => runningM >= fromM && runningM <= toM)
  const saddle = (valueM: number | null): string => (valueM === null ? '?' : split(formatQuantity({ kind: 'height', value: valueM }, reader)).figure)
  const unitOf = (kind: 'height' | 'force', value: number): string => split(formatQuantity({ kind, value }, reader)).unit

  const columns: Column[] = inView.map((support) => {
    const isChosen = look.chosenIds.includes(support.itemId)
    const plain = (text: string, ink: InkName = 'ink', bold = false): Column['cells'][number] => ({ text, ink: isChosen ? 'chosen' : ink, bold: bold || isChosen })
    const load = profile.loads.get(support.key)
    const carries = load === undefined ? null : load.floats ? plain(words.floats[language], 'ink2') : plain(forceFigure(load.reactionN, reader))
    const arrival = arrivals?.get(support.key)
    const nose = arrival === undefined ? null : arrival.onGround ? plain(words.onGround[language], 'red', true) : arrival.aboveM === null ? plain(words.set[language]) : plain(saddle(arrival.aboveM), arrival.isBad ? 'red' : 'ink', arrival.isBad)
    return { atM: support.runningM, isChosen, cells: [plain(saddle(support.saddleM), support.saddleM === null ? 'amber' : 'ink'), carries, nose] }
  })
  const { bopLevelM } = site.jaws
  if (bopLevelM !== null && fromM < 0 && toM > 0) columns.push({ atM: 0, isChosen: false, cells: [{ text: saddle(bopLevelM - site.groundLevelAt(0)), ink: 'ink2', bold: false }, null, null] })

  // Forces of a thousand newton and more change their unit, so the row does not name one then.
  const largestN = Math.max(0, ...inView.map(({ key }) => profile.loads.get(key)?.reactionN ?? 0))
  const forceUnit = reader.system === 'metric' && largestN >= 999.5 ? 'N' : unitOf('force', Math.max(1, largestN))
  const [saddleHead, noseHead] = look.isNarrow === true ? [words.saddleShort, words.noseShort] : [words.saddle, words.nose]
  const heads = [`${saddleHead[language]} (${unitOf('height', 0.5)})`, `${words.carries[language]} (${forceUnit})`, `${noseHead[language]} (${unitOf('height', 0.5)})`].slice(0, look.hasHeads === false ? 0 : rows)
  const headPx = look.hasHeads === false ? -Infinity : Math.max(...heads.map((head) => guessedWidthPx(head, 12.5))) + 24
  const alongPx = (atM: number): number => Math.abs(atM - leftM) * pxPerM

  const list: Primitive[] = [
    { t: 'rect', xM: fromM, yM: 0, widthM: toM - fromM, heightM: height, fill: 'paper' },
    { t: 'path', points: [fromM, height, toM, height], stroke: 'ink', weight: 'context' },
    ...Array.from({ length: rows - 1 }, (_, row): Primitive => ({ t: 'path', points: [fromM, height - rowPx * (row + 1), toM, height - rowPx * (row + 1)], stroke: 'hair', weight: 'hair' })),
    ...heads.map((text, row): Primitive => ({ t: 'text', xM: leftM, yM: baseline(row), text, sizePx: 12.5, ink: 'ink2', dxPx: 14 })),
  ]
  for (const { atM, cells, isChosen } of railColumns(columns, pxPerM, Math.max(RAIL_ROOM_PX, figurePx * 2.3))) {
    list.push({ t: 'path', points: [atM, height, atM, height + 6], stroke: isChosen ? 'chosen' : 'ink', weight: 'context' })
    // Under the heads of the rows there is no room for figures.
    if (alongPx(atM) < headPx + 14) continue
    cells.slice(0, rows).forEach((cell, row) => {
      if (cell !== null) list.push({ t: 'text', xM: atM, yM: baseline(row), text: cell.text, sizePx: figurePx, ink: cell.ink, bold: cell.bold, align: 'center' })
    })
  }
  return list
}

/** Force without its unit; metric forces stay in newton so that a row reads alike. */
const forceFigure = (valueN: number, reader: Pick<FormatOptions, 'system' | 'language'>): string => (reader.system === 'metric' ? String(Math.round(valueN)) : split(formatQuantity({ kind: 'force', value: valueN }, reader)).figure)
