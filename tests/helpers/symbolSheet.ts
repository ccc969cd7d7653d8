/**
 * A page of every symbol, to look at: `npx tsx tests/helpers/symbolSheet.ts OUT.html [unlabelled]`, then
 * `chromium --headless --no-sandbox --screenshot=OUT.png --window-size=1400,2200 OUT.html`.
 * `unlabelled` leaves the names out, for trying the symbols on someone fresh.
 */
import { writeFileSync } from 'node:fs'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Primitive, SymbolContext } from '../../src/drawing/primitives.ts'
import { svgParts } from '../../src/drawing/svg.ts'
import { levelShape } from '../../src/drawing/levelShapes.ts'
import { themes } from '../../src/drawing/theme.ts'
import type { Theme } from '../../src/drawing/theme.ts'
import { kindOf, kinds } from '../../src/scene/kinds/index.ts'
import type { PlacedRecord } from '../../src/scene/kinds/index.ts'
import { datumPlan } from '../../src/scene/symbols/datum.ts'
import { machineClamps } from '../../src/scene/symbols/machine.ts'
import { sampleOf } from './sampleRecords.ts'

const OD_M = 0.273

interface Cell {
  list: readonly Primitive[]
  pxPerM: number
  pxPerLevelM?: number
  xPx: number
  yPx: number
  name: string
  nameAtPx?: number
}

const context = (pxPerM: number, over: Partial<SymbolContext> = {}): SymbolContext => ({ pipeOuterDiameterM: OD_M, stickLengthM: 12.192, pxPerM, ...over })
const plan = (record: PlacedRecord, pxPerM: number, over: Partial<SymbolContext> = {}): readonly Primitive[] => kindOf(record.kind)?.planSymbol(record, context(pxPerM, over)) ?? []

const planCells = (): Cell[] => {
  const cells: Cell[] = []
  const scale = 23
  let [x, y] = [120, 90]
  for (const { kind, name, placing } of kinds) {
    const isWide = kind === 'rack' || kind === 'offload'
    const width = isWide ? 620 : placing === 'item' ? 170 : 300
    if (x + width > 1380) [x, y] = [120, y + 150]
    const record = sampleOf(kind)
    cells.push({ list: plan(record, scale), pxPerM: scale, xPx: x + (isWide ? 250 : placing === 'item' ? 20 : 0), yPx: y, name: name.en, nameAtPx: 78 })
    x += width
  }
  const extra: readonly (readonly [string, PlacedRecord])[] = [
    ['stand, V', sampleOf('stand', { roller: 'V' })], ['stand, cradle', sampleOf('stand', { roller: 'cradle' })],
    ['skid loader pulls', sampleOf('puller', { pullerKind: 'loader' })], ['winch pulls', sampleOf('puller', { pullerKind: 'winch' })],
  ]
  ;[x, y] = [60, y + 150]
  for (const [name, record] of extra) {
    cells.push({ list: plan(record, scale), pxPerM: scale, xPx: x, yPx: y, name, nameAtPx: 60 })
    x += 170
  }
  cells.push({ list: datumPlan(), pxPerM: scale, xPx: x, yPx: y, name: 'datum nail', nameAtPx: 60 })
  ;(['STOP', 'FIX', 'CHECK', 'NOTE'] as const).forEach((level, i) => {
    for (const [j, size] of [23, 15, 11].entries()) cells.push({ list: [{ t: 'mark', xM: 0, yM: 0, parts: levelShape(level, size, j === 0 ? String(i + 1) : null) }], pxPerM: 1, xPx: x + 150 + j * 34, yPx: y - 40 + i * 30, name: '' })
  })
  // The same gear, enlarged to 60 px a metre and shrunk to 8 and 5.
  ;[x, y] = [200, y + 200]
  for (const kind of ['machine', 'stand', 'roller', 'puller', 'loader', 'anchor', 'crew'] as const) {
    cells.push({ list: plan(sampleOf(kind), 60), pxPerM: 60, xPx: x, yPx: y, name: `${kind} at 60 px/m`, nameAtPx: 110 })
    x += kind === 'machine' ? 230 : 130
    if (kind === 'puller') x += 210
  }
  ;[x, y] = [200, y + 180]
  for (const pxPerM of [9, 5]) {
    for (const kind of ['machine', 'rack', 'stand', 'roller', 'puller', 'loader', 'offload', 'crew', 'level', 'tree'] as const) {
      cells.push({ list: plan(sampleOf(kind), pxPerM, { onShelf: pxPerM === 9 }), pxPerM, xPx: x, yPx: y, name: '' })
      x += kind === 'rack' || kind === 'offload' ? 170 : 80
    }
    ;[x, y] = [200, y + 60]
  }
  return cells
}

const sideCells = (pxPerM: number, pxPerLevelM: number, y: number): Cell[] => {
  const cells: Cell[] = []
  let x = 150
  const side = (record: PlacedRecord, saddleM: number, name: string, dx: number): void => {
    const at = { ...context(pxPerM), pxPerLevelM, saddleM }
    const list = kindOf(record.kind)?.sectionSymbol?.(record, at) ?? []
    const pipe: Primitive[] = record.kind === 'puller' ? [] : [-1.4, 1.4].slice(0, 1).map((from) => ({ t: 'rect', xM: from, yM: saddleM, widthM: 2.8, heightM: OD_M, fill: 'pipe' }))
    const over = record.kind === 'machine' ? machineClamps(record, at) : []
    cells.push({ list: [{ t: 'path', points: [-2.5, 0, 5, 0], stroke: 'ink', weight: 'gear' }, ...pipe, ...list, ...over], pxPerM, pxPerLevelM, xPx: x, yPx: y, name, nameAtPx: 24 })
    x += dx
  }
  side(sampleOf('stand'), 0.75, 'stand, flat', 8 * pxPerM)
  side(sampleOf('stand', { roller: 'V' }), 0.6, 'stand, V', 8 * pxPerM)
  side(sampleOf('stand', { roller: 'cradle' }), 0.5, 'stand, cradle', 8 * pxPerM)
  side(sampleOf('roller'), 0.15, 'ground roller', 8 * pxPerM)
  if (pxPerM < 30) side(sampleOf('rack'), 0.75, 'rack', 12 * pxPerM)
  side(sampleOf('machine'), 0.75, 'machine', 8 * pxPerM)
  side(sampleOf('puller'), 0, 'tractor', 8 * pxPerM)
  if (pxPerM < 30) {
    side(sampleOf('puller', { pullerKind: 'loader' }), 0, 'loader', 8 * pxPerM)
    side(sampleOf('puller', { pullerKind: 'winch' }), 0, 'winch', 8 * pxPerM)
  }
  return cells
}

const drawn = (cells: readonly Cell[], theme: Theme, widthPx: number, heightPx: number, labelled: boolean, prefix: string): string => {
  const parts = cells.map((cell, i) => svgParts(cell.list, { matrix: { a: cell.pxPerM, b: 0, c: 0, d: -(cell.pxPerLevelM ?? cell.pxPerM), e: cell.xPx, f: cell.yPx }, theme, idPrefix: `${prefix}${i}` }))
  const names = labelled ? cells.map((cell) => `<text x="${cell.xPx}" y="${cell.yPx + (cell.nameAtPx ?? 30)}" font-size="13" text-anchor="middle" fill="${theme.inks.ink2}" font-family="Fira Sans Condensed">${cell.name}</text>`) : []
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}"><rect width="${widthPx}" height="${heightPx}" fill="${theme.inks.paper}"/><defs>${parts.map(({ defs }) => defs).join('')}</defs>${parts.map(({ body }) => body).join('')}${names.join('')}</svg>`
}

/** The whole page as HTML text. */
export const symbolSheet = (labelled = true, themeName: keyof typeof themes = 'day'): string => {
  const face = (weight: number): string => pathToFileURL(fileURLToPath(new URL(`../../node_modules/@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-${weight}-normal.woff2`, import.meta.url))).href
  const faces = [400, 500, 600].map((weight) => `@font-face{font-family:'Fira Sans Condensed';font-weight:${weight};src:url('${face(weight)}')}`).join('')
  const theme = themes[themeName]
  return `<!doctype html><meta charset="utf-8"><style>${faces}body{margin:0}svg{display:block}</style>${drawn(planCells(), theme, 1400, 1480, labelled, 'p')}${drawn([...sideCells(15.4, 77, 110), ...sideCells(46, 46, 330)], theme, 1400, 400, labelled, 's')}`
}

const [, script, out, option, themeName] = process.argv
if (script !== undefined && script.endsWith('symbolSheet.ts') && out !== undefined) writeFileSync(out, symbolSheet(option !== 'unlabelled', (themeName as keyof typeof themes | undefined) ?? 'day'))
