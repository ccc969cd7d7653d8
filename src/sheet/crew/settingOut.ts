/** Rows of the setting-out table: what stands along the line in the order of the tape, figures as the solver gives them. */
import type { CheckRun } from '../../checks/finding.ts'
import type { PlacedItem, SiteModel, SupportView } from '../../derive/types.ts'
import type { Lettering } from '../lettering.ts'
import type { Localized } from '../../messages/localized.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { inchM } from '../../units/factors.ts'
import { itemNameOf, rankOf } from '../dimensionRows.ts'
import { fitted, heading, paragraph, tableHead, tableRow, type Cell, type Column } from './blocks.ts'
import type { Section } from './flow.ts'
import type { CrewReader } from './reader.ts'
import { crewWords } from './words.ts'

/** SI; null is unknown, or asked of what has no such figure. */
export interface SetOutRow {
  label: string
  item: Localized
  /** What the pipe lies on, or the jaws: it has heights. */
  isSet: boolean
  runningM: number
  offsetM: number | null
  /** Ground there over the ground at the datum. */
  groundM: number | null
  /** Bottom of the pipe over the ground there, as planned. */
  bopM: number | null
  /** Top of a flat roller over the ground; null for rollers whose top is not where the pipe lies. */
  rollerTopM: number | null
  /** The most it carries over all stages solved. */
  loadN: number | null
  toleranceM: number | null
  /** Bottom of the pipe over the ground as the crew measured it. */
  asSetM: number | null
}

const supportRow = (support: SupportView, site: SiteModel, run: CheckRun | null): SetOutRow => {
  const figures = run?.quantities?.supports[support.key]
  return {
    label: support.label, item: kindOf(support.kind)?.name ?? { en: '', es: '' }, isSet: true,
    runningM: support.runningM, offsetM: support.offsetM, groundM: site.ground.from === 'unknown' ? null : support.groundLevelM, bopM: support.plannedSaddleM,
    rollerTopM: support.roller === 'flat' ? support.plannedSaddleM : null,
    loadN: figures?.loadN ?? null, toleranceM: figures?.toleranceM ?? null, asSetM: support.measuredSaddleM,
  }
}

const itemRow = (item: PlacedItem & { runningM: number }, site: SiteModel): SetOutRow => {
  const isMachine = item.id === site.jaws.machineId
  const groundM = site.groundLevelAt(item.runningM, item.offsetM ?? 0)
  return {
    label: item.label, item: isMachine ? crewWords.jaws : itemNameOf(item), isSet: isMachine,
    runningM: item.runningM, offsetM: item.offsetM, groundM: site.ground.from === 'unknown' ? null : groundM,
    bopM: isMachine && site.plannedJawM !== null ? site.plannedJawM - site.groundLevelAt(0) : null,
    rollerTopM: null, loadN: null, toleranceM: null, asSetM: null,
  }
}

/**
 * Supports, jaws, gear for lifting and pulling and crew spots, from the infeed end to the exit end; none is left out.
 * `site`: the plan. Loads and tolerances are those of `run`; without it they are unknown.
 */
export const setOutRows = (site: SiteModel, run: CheckRun | null): readonly SetOutRow[] => {
  const supportIds = new Set(site.supports.map(({ itemId }) => itemId))
  const isAlong = (item: PlacedItem): item is PlacedItem & { runningM: number } => rankOf(kindOf(item.kind)) !== null && item.runningM !== null && !supportIds.has(item.id) && 'place' in item.record
  return [
    ...site.supports.map((support) => supportRow(support, site, run)),
    ...[...site.placed.values()].filter(isAlong).map((item) => itemRow(item, site)),
  ].toSorted((a, b) => a.runningM - b.runningM)
}

const columns = (reader: CrewReader): readonly Column[] => [
  { head: reader.lines('headLabel'), share: 30, bold: true },
  { head: reader.lines('headItem'), share: 62, isFlexible: true },
  { head: reader.lines('headTape'), share: 92, bold: true },
  { head: reader.lines('headOffset'), share: 56 },
  { head: reader.lines('headGround'), share: 50 },
  { head: reader.lines('headBop'), share: 54, bold: true },
  { head: reader.lines('headTop'), share: 52 },
  { head: reader.lines('headLoad'), share: 50 },
  { head: reader.lines('headTolerance'), share: 48 },
  { head: reader.lines('headSet'), share: 30, isTick: true },
  { head: reader.lines('headAsSet'), share: 50 },
]

/** Cells of a row as a person reads them, in the order of the columns. */
export const setOutCells = (row: SetOutRow, reader: CrewReader): readonly Cell[] => {
  const none: Cell = [reader.say('none')]
  const height = (valueM: number | null): Cell => (row.isSet ? reader.cell({ kind: 'height', value: valueM }) : none)
  const isSupport = row.isSet && row.item !== crewWords.jaws
  return [
    [row.label], reader.localLines(row.item), reader.runningCell(row.runningM), reader.offsetCell(row.offsetM),
    signedHeight(row.groundM, reader), height(row.bopM),
    isSupport && row.rollerTopM === null && row.bopM !== null ? none : isSupport ? height(row.rollerTopM) : none,
    isSupport ? reader.cell({ kind: 'force', value: row.loadN }) : none,
    isSupport ? reader.toleranceCell(row.toleranceM) : none,
    [''], row.asSetM === null ? [''] : reader.cell({ kind: 'height', value: row.asSetM }),
  ]
}

/** Ground over (+) or under (−) the ground at the datum. */
const signedHeight = (valueM: number | null, reader: CrewReader): Cell => {
  if (valueM === null) return ['?']
  const stepM = reader.isMetric ? 0.001 : inchM / 16
  const [first = '', ...rest] = reader.cell({ kind: 'height', value: Math.round(Math.abs(valueM) / stepM) * stepM })
  return !/[1-9½¼¾⅛⅜⅝⅞]/.test(first) ? ['0'] : [`${valueM > 0 ? '+' : '−'}${first}`, ...rest]
}

export const settingOutSection = (site: SiteModel, run: CheckRun | null, reader: CrewReader, lettering: Lettering): Section => {
  const rows = setOutRows(site, run)
  const cells = rows.map((row) => setOutCells(row, reader))
  const listOf = (widthPt: number): readonly Column[] => fitted(columns(reader), cells, widthPt, lettering)
  return {
    as: 'wide',
    again: (widthPt) => [heading(reader.say('settingOut'), widthPt, lettering), tableHead(listOf(widthPt), widthPt, lettering)],
    blocks: (widthPt) => {
      const list = listOf(widthPt)
      return [
        heading(reader.say('settingOut'), widthPt, lettering),
        ...reader.lines('settingOutAbout').flatMap((text) => paragraph(text, widthPt, lettering)).map((block) => ({ ...block, isHead: true })),
        tableHead(list, widthPt, lettering),
        ...(rows.length === 0 ? paragraph(reader.say('rowsNone'), widthPt, lettering) : cells.map((row) => tableRow(list, row, widthPt, lettering))),
      ]
    },
  }
}
