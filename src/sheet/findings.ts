/** Open findings as on the margin of the screen: number in the shape of the level, sentence, value against limit, source. */
import type { CheckRun, Finding, Source } from '../checks/finding.ts'
import { levelShape, type LevelName } from '../drawing/levelShapes.ts'
import type { Primitive } from '../drawing/primitives.ts'
import type { ImageContent, Reader } from './content.ts'
import type { Lettering, TextLook } from './lettering.ts'
import { imageBoxes, widthOf } from './page.ts'
import { HEADING, HEADING_LINE_PX, notSettledPlate, rule, type Region } from './region.ts'

const levels: readonly LevelName[] = ['STOP', 'FIX', 'CHECK', 'NOTE']
/** At 25 px the number in the shape is 14 px: 7 pt. */
const MARK_PX = 25
const TEXT_AT_PX = 38
const LINE_PX = 18
const GAP_PX = 8
/** Between a sentence and its value on one line. */
const BESIDE_PX = 12
const FOOT_LINES = 2

interface OpenFinding {
  number: number
  level: LevelName
  finding: Finding
}

/** Open findings in reading order with the numbers of the screen; missing input and what is met are counted apart. */
export const openFindings = (run: CheckRun | null): readonly OpenFinding[] => {
  const open = (run?.findings ?? []).filter(({ level, isUnknown }) => level !== 'met' && !isUnknown)
  return levels.flatMap((level) => open.filter((finding) => finding.level === level).map((finding) => ({ level, finding }))).map((one, i) => ({ ...one, number: i + 1 }))
}

/**
 * '6 ft 5 in (1.96 m), at least 10 ft 0 in (3.05 m)'. Most or least is read off the margin: by contract it is
 * limit − measured for a most and measured − limit for a least.
 */
export const valueWords = ({ measured, limit, margin }: Finding, reader: Reader): string | null => {
  if (measured === null) return limit === null ? null : reader.say('valueLimitOnly', { limit: reader.both(limit) })
  if (limit === null || limit.value === null) return reader.both(measured)
  const values = { measured: reader.both(measured), limit: reader.both(limit) }
  if (measured.value === null || margin === null || margin.value === null) return reader.say('valueLimit', values)
  const isMost = Math.abs(limit.value - measured.value - margin.value) <= Math.abs(measured.value - limit.value - margin.value)
  return reader.say(isMost ? 'valueAtMost' : 'valueAtLeast', values)
}

/** Class of the source; a published one with its document. */
export const sourceWords = (source: Source, reader: Reader): string =>
  [reader.say(source.class), ...(source.class === 'published' ? [source.cite] : []), ...(source.edited === true ? [reader.say('edited')] : []), ...(source.fromMemory === true && !source.cite.includes('from memory') ? [reader.say('fromMemory')] : [])].join(', ')

interface TextLine {
  text: string
  look: TextLook
  indentPx: number
  /** Line of the entry, from 0; value and source may share the last one of the sentence. */
  row: number
}

interface Entry {
  open: OpenFinding
  lines: readonly TextLine[]
  heightPx: number
}

const below = (texts: readonly string[], look: TextLook, fromRow: number): readonly TextLine[] => texts.map((text, i) => ({ text, look, indentPx: 0, row: fromRow + i }))

const entryOf = (open: OpenFinding, withMove: boolean, ink: 'ink' | 'ink2', reader: Reader, lettering: Lettering): Entry => {
  const { finding, level } = open
  const roomPx = widthOf(imageBoxes.findings) - TEXT_AT_PX
  const sentence: TextLook = { sizePx: 15.5, ink, bold: level === 'STOP' }
  const wordPx = lettering.widthPx(reader.say(level), { sizePx: 14, bold: true }) + 9
  const told = lettering.wrapped(reader.sentence(finding.what), roomPx, { ...sentence, firstIndentPx: wordPx })
  const proof = [valueWords(finding, reader), sourceWords(finding.source, reader)].filter((text) => text !== null).join('; ')
  const quiet: TextLook = { sizePx: 14, ink: 'ink2' }
  const lines: TextLine[] = told.map((text, i) => ({ text, look: sentence, indentPx: i === 0 ? wordPx : 0, row: i }))
  // Value and source stand behind the sentence where its last line leaves room, else on lines of their own.
  const last = lines.at(-1)
  const besidePx = last === undefined ? roomPx : last.indentPx + lettering.widthPx(last.text, sentence) + BESIDE_PX
  if (last !== undefined && besidePx + lettering.widthPx(proof, quiet) <= roomPx) lines.push({ text: proof, look: quiet, indentPx: besidePx, row: last.row })
  else lines.push(...below(lettering.wrapped(proof, roomPx, quiet), quiet, told.length))
  if (withMove && finding.move !== null) {
    const look: TextLook = { sizePx: 15, ink: ink === 'ink2' ? 'ink2' : 'chosen' }
    lines.push(...below(lettering.wrapped(reader.sentence(finding.move), roomPx, look), look, (lines.at(-1)?.row ?? -1) + 1))
  }
  return { open, lines, heightPx: Math.max(MARK_PX + 2, ((lines.at(-1)?.row ?? 0) + 1) * LINE_PX) + GAP_PX }
}

const totalPx = (entries: readonly Entry[]): number => entries.reduce((sum, { heightPx }) => sum + heightPx, 0)

/** With the moves of STOP and FIX where everything fits, else without them, else as many as fit. */
const fitted = (all: readonly OpenFinding[], roomPx: number, ink: 'ink' | 'ink2', reader: Reader, lettering: Lettering): readonly Entry[] => {
  for (const movesFor of [levels, ['STOP', 'FIX'], []] as const) {
    const entries = all.map((open) => entryOf(open, (movesFor as readonly LevelName[]).includes(open.level), ink, reader, lettering))
    if (totalPx(entries) <= roomPx) return entries
  }
  const plain = all.map((open) => entryOf(open, false, ink, reader, lettering))
  const kept: Entry[] = []
  for (const entry of plain) {
    if (totalPx(kept) + entry.heightPx > roomPx - LINE_PX) break
    kept.push(entry)
  }
  return kept
}

/** 'to confirm 7: wall temperature, rated load of E1 and 5 more' in at most two lines, then how many are met. */
const footLines = (run: CheckRun, roomPx: number, look: TextLook, reader: Reader, lettering: Lettering): readonly string[] => {
  const met = reader.say('met', { count: run.counts.met })
  const { toConfirm } = run.counts
  if (toConfirm === 0) return [met]
  const names = [...new Map(run.findings.filter(({ isUnknown }) => isUnknown).flatMap(({ missing }) => missing).map((input) => [`${input.recordId}|${input.path}`, reader.local(input.label)])).values()]
  const unique = [...new Set(names)]
  for (let shown = unique.length; shown > 0; shown--) {
    const listed = unique.slice(0, shown).join('; ')
    const text = reader.say('toConfirmNamed', { count: toConfirm, names: shown === unique.length ? listed : reader.say('namesMore', { names: listed, count: unique.length - shown }) })
    const lines = lettering.wrapped(`${text} · ${met}`, roomPx, look)
    if (lines.length <= FOOT_LINES) return lines
  }
  return [`${reader.say('toConfirm', { count: toConfirm })} · ${met}`]
}

const countParts = (run: CheckRun, x1: number, y: number, lettering: Lettering): readonly Primitive[] => {
  const look: TextLook = { sizePx: 16, bold: true }
  const open = openFindings(run)
  let x = x1
  const list: Primitive[] = []
  for (const level of [...levels].reverse()) {
    const text = String(open.filter((one) => one.level === level).length)
    x -= lettering.widthPx(text, look)
    list.push(...lettering.line(text, x, y, look), { t: 'mark', xM: x - 14, yM: y - 6, parts: levelShape(level, 18) })
    x -= 38
  }
  return list
}

export const findingsRegion = (content: ImageContent, reader: Reader, lettering: Lettering): Region => {
  const area = imageBoxes.findings
  const { run, isSettled } = content
  const ink = isSettled ? 'ink' : 'ink2'
  const heading = area.y0 + 17
  const list: Primitive[] = [...lettering.line(reader.say('findings'), area.x0, heading, HEADING), rule([area.x0, area.y0 + HEADING_LINE_PX, area.x1, area.y0 + HEADING_LINE_PX], 'ink', 'boundary')]
  if (run === null) {
    const look: TextLook = { sizePx: 16, bold: true }
    return { name: 'findings', box: area, list: [...list, ...lettering.wrapped(reader.say('findingsNotRun'), widthOf(area), look).flatMap((text, i) => lettering.line(text, area.x0, area.y0 + 48 + i * 20, look))] }
  }
  list.push(...countParts(run, area.x1, heading, lettering))
  if (!isSettled) list.push(...notSettledPlate(reader.say('notSettled'), { x1: area.x1 - 205, baselinePx: heading - 1 }, lettering).list)

  const quiet: TextLook = { sizePx: 14, ink: 'ink2' }
  const foot = footLines(run, widthOf(area), quiet, reader, lettering)
  const footTop = area.y1 - 6 - (foot.length - 1) * LINE_PX
  const all = openFindings(run)
  let y = area.y0 + HEADING_LINE_PX + 6
  const entries = fitted(all, footTop - LINE_PX - 4 - y, ink, reader, lettering)
  for (const { open, lines, heightPx } of entries) {
    list.push({ t: 'mark', xM: area.x0 + MARK_PX * 0.63, yM: y + MARK_PX / 2 + 1, parts: levelShape(open.level, MARK_PX, String(open.number)) })
    list.push(...lettering.line(reader.say(open.level), area.x0 + TEXT_AT_PX, y + 15, { sizePx: 14, bold: true, ink }))
    for (const { text, look, indentPx, row } of lines) list.push(...lettering.line(text, area.x0 + TEXT_AT_PX + indentPx, y + 15 + row * LINE_PX, look))
    y += heightPx
    list.push(rule([area.x0, y - GAP_PX / 2, area.x1, y - GAP_PX / 2], 'hair', 'hair'))
  }
  const hidden = all.slice(entries.length)
  const strong: TextLook = { sizePx: 15, bold: true, ink }
  if (all.length === 0) list.push(...lettering.line(reader.say('findingsNone'), area.x0, y + 16, strong))
  if (hidden.length > 0) {
    const counts = levels.flatMap((level) => (hidden.some((one) => one.level === level) ? [`${hidden.filter((one) => one.level === level).length} ${reader.say(level)}`] : [])).join(', ')
    list.push(...lettering.line(reader.say('findingsMore', { count: hidden.length, levels: counts }), area.x0, y + 15, strong))
  }
  list.push(rule([area.x0, footTop - LINE_PX + 1, area.x1, footTop - LINE_PX + 1]), ...foot.flatMap((text, i) => lettering.line(text, area.x0, footTop + i * LINE_PX, quiet)))
  return { name: 'findings', box: area, list }
}
