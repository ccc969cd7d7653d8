/** Blocks of text and tables for the flow of a crew sheet. */
import type { Primitive } from '../../drawing/primitives.ts'
import type { Lettering, TextLook } from '../lettering.ts'
import { box, rule } from '../region.ts'
import type { Block } from './flow.ts'
import { BODY, BODY_PT, BOLD, HEADING, LINE_PT, linesOf, setLines, wordsOf } from './text.ts'

export const gap = (heightPt: number): Block => ({ heightPt, draw: () => [] })

/** Heading of a section over a rule. */
export const heading = (text: string, widthPt: number, lettering: Lettering): Block => {
  const lines = linesOf(text, widthPt, HEADING, lettering)
  const textPt = lines.length * 17
  return { heightPt: 10 + textPt + 6, isHead: true, draw: (x, y) => [...setLines(lines, x, y + 10, HEADING, lettering, 17), rule([x, y + 12 + textPt, x + widthPt, y + 12 + textPt], 'ink', 'boundary')] }
}

/** A paragraph line by line, so that a long one goes on in the next column. `mark` stands before its first line. */
export const paragraph = (text: string, widthPt: number, lettering: Lettering, { look = BODY, indentPt = 0, mark }: { look?: TextLook; indentPt?: number; mark?: (x: number, baselinePt: number) => readonly Primitive[] } = {}): readonly Block[] =>
  linesOf(text, widthPt - indentPt, look, lettering).map((line, i, all): Block => ({
    heightPt: LINE_PT,
    // Never one line of it alone at the foot.
    isHead: i === 0 && all.length > 1,
    draw: (x, y) => [...(i === 0 && mark !== undefined ? mark(x, y + BODY_PT * 0.86) : []), ...setLines([line], x + indentPt, y, look, lettering)],
  }))

export interface Column {
  /** One line a language. */
  head: readonly string[]
  /** Width in shares of the table. */
  share: number
  /** The first to be drawn in where the table is too wide. */
  isFlexible?: boolean
  bold?: boolean
  /** An empty box to tick; the cell's text is left out, or a cross where it says 'x'. */
  isTick?: boolean
}

/** Lines of a cell, wrapped where the column is narrower. */
export type Cell = readonly string[]

const PAD_PT = 3
const TICK_PT = 11
const ROW_GAP_PT = 4

const widthsOf = (columns: readonly Column[], widthPt: number): readonly number[] => {
  const all = columns.reduce((sum, { share }) => sum + share, 0)
  return columns.map(({ share }) => (share / all) * widthPt)
}

const tickBox = (x: number, y: number, isTicked: boolean): readonly Primitive[] => [
  box(x, y, TICK_PT, TICK_PT, { stroke: 'ink', weight: 'ticks' }),
  ...(isTicked ? [rule([x + 2, y + 5, x + 5, y + 9, x + 10, y + 1], 'ink', 'gear')] : []),
]
export const emptyTick = (x: number, baselinePt: number): readonly Primitive[] => [box(x, baselinePt - 8.4, 9.4, 9.4, { stroke: 'ink', weight: 'ticks' })]

/** On one line where there is room for it. */
const cellLines = (cell: Cell, roomPt: number, look: TextLook, lettering: Lettering): readonly string[] =>
  cell.length === 2 && lettering.widthPx(cell.join(' '), look) <= roomPt ? [cell.join(' ')] : cell.flatMap((text) => linesOf(text, roomPt, look, lettering))

/**
 * Columns with shares that follow what is in them: each as wide as its longest line. Where that is too much, flexible columns
 * are drawn in first, then the others, down to their longest word or figure with its unit.
 */
export const fitted = (columns: readonly Column[], rows: readonly (readonly Cell[])[], widthPt: number, lettering: Lettering): readonly Column[] => {
  const widths = columns.map(({ head, bold, isTick }, i) => {
    const look: TextLook = bold === true ? BOLD : BODY
    const texts = isTick === true ? [] : rows.flatMap((row) => row[i] ?? [])
    const widest = (lines: readonly string[], of: TextLook): number => lines.reduce((most, line) => Math.max(most, lettering.widthPx(line, of)), 0)
    const headPt = widest(head.flatMap((line) => line.split(' ')), BOLD)
    const pad = 2 * PAD_PT + 1
    const wordsPt = widest([...new Set(texts)].flatMap((text) => wordsOf(text, Infinity, look, lettering)), look)
    return { leastPt: Math.max(TICK_PT + 6, headPt, wordsPt) + pad, wishedPt: Math.max(TICK_PT + 6, headPt, widest([...new Set(texts)], look)) + pad }
  })
  const shares = widths.map(({ wishedPt }) => wishedPt)
  const total = (): number => shares.reduce((sum, one) => sum + one, 0)
  for (const isFlexible of [true, false]) {
    const overPt = total() - widthPt
    const giving = columns.flatMap((column, i) => ((column.isFlexible === true) === isFlexible ? [i] : []))
    const canGivePt = giving.reduce((sum, i) => sum + shares[i]! - widths[i]!.leastPt, 0)
    if (overPt <= 0 || canGivePt <= 0) continue
    const part = Math.min(1, overPt / canGivePt)
    for (const i of giving) shares[i] = shares[i]! - (shares[i]! - widths[i]!.leastPt) * part
  }
  const sparePt = Math.max(0, widthPt - total()) / columns.length
  return columns.map((column, i) => ({ ...column, share: shares[i]! + sparePt }))
}

export const tableHead = (columns: readonly Column[], widthPt: number, lettering: Lettering): Block => {
  const widths = widthsOf(columns, widthPt)
  const heads = columns.map(({ head }, i) => head.flatMap((line) => linesOf(line, widths[i]! - 2 * PAD_PT, BOLD, lettering)))
  const heightPt = Math.max(...heads.map(({ length }) => length)) * LINE_PT + 5
  return {
    heightPt, isHead: true,
    draw: (x0, y0) => {
      let x = x0
      const list: Primitive[] = []
      heads.forEach((lines, i) => {
        list.push(...setLines(lines, x + PAD_PT, y0 + 1, BOLD, lettering))
        x += widths[i]!
      })
      return [...list, rule([x0, y0 + heightPt, x0 + widthPt, y0 + heightPt], 'ink', 'boundary')]
    },
  }
}

export const tableRow = (columns: readonly Column[], cells: readonly Cell[], widthPt: number, lettering: Lettering): Block => {
  const widths = widthsOf(columns, widthPt)
  const lookOf = (i: number): TextLook => (columns[i]!.bold === true ? BOLD : BODY)
  const lines = cells.map((cell, i) => (columns[i]!.isTick === true ? [] : cellLines(cell, widths[i]! - 2 * PAD_PT, lookOf(i), lettering)))
  const heightPt = Math.max(1, ...lines.map(({ length }) => length)) * LINE_PT + ROW_GAP_PT
  return {
    heightPt,
    draw: (x0, y0) => {
      let x = x0
      const list: Primitive[] = []
      lines.forEach((text, i) => {
        if (columns[i]!.isTick === true) list.push(...tickBox(x + PAD_PT + 2, y0 + 3, cells[i]![0] === 'x'))
        else list.push(...setLines(text, x + PAD_PT, y0 + 2, lookOf(i), lettering))
        x += widths[i]!
      })
      return [...list, rule([x0, y0 + heightPt, x0 + widthPt, y0 + heightPt], 'ink2', 'hair')]
    },
  }
}
