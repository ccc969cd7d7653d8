/** Checklist, gear list, cautions: columns of text. */
import type { CheckRun } from '../../checks/finding.ts'
import { mobilisingOf } from '../../derive/mobilising.ts'
import type { SiteModel } from '../../derive/types.ts'
import { alsoBring, clockWords } from '../../messages/ui/clockWords.ts'
import { openFindings, valueWords } from '../findings.ts'
import type { Lettering } from '../lettering.ts'
import { box } from '../region.ts'
import { sheetWords } from '../words.ts'
import { emptyTick, heading, paragraph } from './blocks.ts'
import type { Block, Section } from './flow.ts'
import type { CrewReader } from './reader.ts'
import { missingWords } from './stageStrip.ts'
import { BOLD } from './text.ts'
import { checklistWords } from './words.ts'

const INDENT_PT = 20

/** In the order it is done, a box to tick before each. */
export const checklistSection = (reader: CrewReader, lettering: Lettering): Section => ({
  as: 'columns',
  blocks: (widthPt) => [
    heading(reader.say('checklist'), widthPt, lettering),
    ...checklistWords.flatMap((text, i) => reader.localLines(text).flatMap((line, j) => paragraph(j === 0 ? `${i + 1} ${line}` : line, widthPt, lettering, { indentPt: INDENT_PT, ...(j === 0 ? { mark: emptyTick } : {}) }))),
  ],
})

export const gearSection = (site: SiteModel, reader: CrewReader, lettering: Lettering): Section => ({
  as: 'columns',
  blocks: (widthPt) => {
    const list = mobilisingOf(site)
    const mass = (valueKg: number) => ({ kind: 'mass', value: valueKg }) as const
    const ticked = (lines: readonly string[]): readonly Block[] => lines.flatMap((line, i) => paragraph(line, widthPt, lettering, { indentPt: INDENT_PT, ...(i === 0 ? { mark: emptyTick } : {}) }))
    const plain = (lines: readonly string[]): readonly Block[] => lines.flatMap((line) => paragraph(line, widthPt, lettering))
    return [
      heading(reader.say('gear'), widthPt, lettering),
      ...list.rows.flatMap(({ name, bring, placed, saddleM }) => ticked([
        ...reader.lines('gearRow', { name, bring, placed }),
        ...(saddleM === null ? [] : [reader.say('gearSaddles', { low: { kind: 'height', value: saddleM.lowM }, high: { kind: 'height', value: saddleM.highM } })]),
      ])),
      ...ticked(list.stickMassKg === null ? reader.localLines(clockWords.sticksOnly, { sticks: list.sticks }) : reader.localLines(clockWords.sticks, { sticks: list.sticks, mass: mass(list.stickMassKg), total: mass(list.stickMassKg * list.sticks) })),
      ...(list.sticksAssumed ? plain(reader.localLines(clockWords.sticksAssumed)) : []),
      ...(list.truck === null ? [] : plain(reader.localLines(clockWords.trucks, { loads: list.truck.loads, per: list.truck.sticksPerLoad, why: list.truck.endedBy === 'mass' ? clockWords.byMass : clockWords.byRoom }))),
      ...alsoBring.flatMap((text) => ticked(reader.localLines(text))),
    ]
  },
})

/** The caution first, then every open finding with its value, then what is still to confirm. */
export const cautionsSection = (run: CheckRun | null, reader: CrewReader, lettering: Lettering): Section => ({
  as: 'columns',
  blocks: (widthPt) => {
    const open = openFindings(run)
    const missing = (run?.findings ?? []).filter(({ isUnknown }) => isUnknown).flatMap((finding) => finding.missing)
    const values = (finding: (typeof open)[number]['finding']): readonly string[] => [...new Set(reader.readers.map((one) => valueWords(finding, one)).filter((text) => text !== null))]
    return [
      heading(reader.say('cautions'), widthPt, lettering),
      ...reader.localLines(sheetWords.caution).flatMap((text) => paragraph(text, widthPt, lettering, { look: BOLD })),
      ...(run === null ? paragraph(reader.say('openUnknown'), widthPt, lettering) : open.length === 0 ? paragraph(reader.say('findingsNone'), widthPt, lettering) : []),
      ...open.flatMap(({ level, finding }) => [
        ...reader.sentenceLines(finding.what).flatMap((text, i) => paragraph(i === 0 ? `${reader.local(sheetWords[level])}: ${text}` : text, widthPt, lettering, i === 0 ? { mark: (x, y) => lettering.line('•', x, y, BOLD), indentPt: 9 } : { indentPt: 9 })),
        ...values(finding).flatMap((text) => paragraph(text, widthPt, lettering, { indentPt: 9 })),
        ...(finding.move === null ? [] : reader.sentenceLines(finding.move).flatMap((text) => paragraph(text, widthPt, lettering, { indentPt: 9 }))),
      ]),
      ...(missing.length === 0 ? [] : paragraph(reader.say('toConfirm', { names: missingWords(missing, reader) }), widthPt, lettering)),
    ]
  },
})

/** Side of a module: a phone reads it off paper at arm's length; smaller only where the column is too narrow. */
const MODULE_PT = 1.4
/** Quiet border, in modules (ISO/IEC 18004). */
const QUIET = 4

/** The code that opens the layout, under its heading. */
export const codeSection = (code: readonly (readonly boolean[])[], reader: CrewReader, lettering: Lettering): Section => ({
  as: 'columns',
  blocks: (widthPt) => {
    const module = Math.min(MODULE_PT, widthPt / (code.length + 2 * QUIET))
    return [
      heading(reader.say('codeOpens'), widthPt, lettering),
      { heightPt: (code.length + 2 * QUIET) * module, draw: (x, y) => code.flatMap((row, i) => darkRuns(row).map(([from, to]) => box(x + (from + QUIET) * module, y + (i + QUIET) * module, (to - from) * module, module, { fill: 'ink' }))) },
    ]
  },
})

/** Dark modules of a row side by side as one bar: no hair lines between them on paper. */
const darkRuns = (row: readonly boolean[]): readonly (readonly [number, number])[] => {
  const runs: [number, number][] = []
  row.forEach((isDark, at) => {
    const last = runs.at(-1)
    if (!isDark) return
    if (last !== undefined && last[1] === at) last[1] = at + 1
    else runs.push([at, at + 1])
  })
  return runs
}
