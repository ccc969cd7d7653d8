/** Stage by stage: how far the nose goes, what it meets, what holds the string, what the pull takes. */
import type { RunThrough, StageArrival, StageResult } from '../../derive/stages/types.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { Lettering } from '../lettering.ts'
import { heading, paragraph, tableHead, tableRow, type Column } from './blocks.ts'
import type { Section } from './flow.ts'
import type { CrewReader } from './reader.ts'

/** One joint, or the first stick before any. */
export interface StageRow {
  /** 0: stick 1 is brought to the line. */
  joint: number
  noseM: number | null
  /** To start the pull; null: not worked out, or nothing is pulled. */
  needN: number | null
  dragN: number | null
  dragPa: number | null
  arrivals: readonly StageArrival[]
  holdFirst: readonly ('exit' | 'infeed')[]
  tipsAtM: number | null
  isUnsettled: boolean
  isHardest: boolean
}

/** A row a joint, load, fusion and pull together; stick 1 first where anything is worth saying of it. */
export const stageRows = (rehearsal: RunThrough): readonly StageRow[] => {
  const byJoint = new Map<number, StageResult[]>()
  for (const result of rehearsal.stages) {
    const joint = result.stage.joint ?? (result.stage.phase === 'setUp' ? 0 : null)
    if (joint !== null) byJoint.set(joint, [...(byJoint.get(joint) ?? []), result])
  }
  return [...byJoint].map(([joint, results]) => {
    const of = (phase: string): StageResult | undefined => results.find(({ stage }) => stage.phase === phase)
    const [pull, fuse, last] = [of('pull'), of('fuse'), results.at(-1)]
    return {
      joint,
      noseM: last?.stage.noseM?.to ?? null,
      needN: pull?.pull?.needN ?? null,
      dragN: fuse?.drag?.movingN ?? null,
      dragPa: fuse?.drag?.pressurePa ?? null,
      arrivals: results.flatMap(({ arrivals }) => arrivals).filter(({ outcome }) => outcome !== 'ridesOn'),
      holdFirst: pull?.opening?.holdFirst ?? [],
      tipsAtM: of('load')?.feed?.tipsAtM ?? null,
      isUnsettled: results.some(({ status }) => status === 'unsettled'),
      isHardest: pull !== undefined && pull.stage.id === rehearsal.hardestPullId,
    }
  })
}

/** One line a language; what is only held over one support after the other is told in one breath. */
const arrivalNotes = (arrivals: readonly StageArrival[], reader: CrewReader): readonly string[] => {
  const held = arrivals.filter(({ outcome }) => outcome === 'held').map(({ label }) => label)
  return [
    ...arrivals.filter(({ outcome }) => outcome !== 'held').flatMap((arrival) => arrivalNote(arrival, reader)),
    ...(held.length === 0 ? [] : reader.lines('noteHeld', { label: held.join(', ') })),
  ]
}

const arrivalNote = ({ label, outcome, droopM, liftM, liftN }: StageArrival, reader: CrewReader): readonly string[] => {
  const droop = { kind: 'height', value: Math.abs(droopM) } as const
  if (outcome === 'lifted') return reader.lines('noteLifted', { label, lift: { kind: 'height', value: liftM }, force: { kind: 'force', value: liftN } })
  return reader.lines(outcome === 'hits' ? 'noteHits' : 'noteRidesUp', { label, droop })
}

const notesOf = (row: StageRow, reader: CrewReader): readonly string[] => [
  ...(row.isUnsettled ? reader.lines('noteUnsettled') : []),
  ...row.holdFirst.flatMap((end) => reader.lines(end === 'exit' ? 'noteHoldExit' : 'noteHoldInfeed')),
  ...(row.tipsAtM === null ? [] : reader.lines('noteTips', { at: { runningM: row.tipsAtM } })),
  ...arrivalNotes(row.arrivals, reader),
  ...(row.isHardest ? reader.lines('noteHardest') : []),
]

const columns = (reader: CrewReader): readonly Column[] => [
  { head: reader.lines('headStage'), share: 66, bold: true },
  { head: reader.lines('headNose'), share: 100 },
  { head: reader.lines('headPull'), share: 78 },
  { head: reader.lines('headDrag'), share: 78 },
  { head: reader.lines('headNotes'), share: 236 },
]

export const missingWords = (missing: readonly MissingInput[], reader: CrewReader): string => [...new Set(missing.map(({ label }) => reader.local(label)))].join(', ')

export const stageSection = (rehearsal: RunThrough | null, reader: CrewReader, lettering: Lettering): Section => {
  const list = columns(reader)
  const head = (widthPt: number): ReturnType<typeof heading> => heading(reader.say('stages'), widthPt, lettering)
  const missing = rehearsal === null ? reader.say('stagesNone') : rehearsal.missing.length > 0 ? reader.say('stagesMissing', { missing: missingWords(rehearsal.missing, reader) }) : null
  return {
    as: 'wide',
    again: (widthPt) => [head(widthPt), tableHead(list, widthPt, lettering)],
    blocks: (widthPt) => [
      head(widthPt),
      ...(missing === null ? [] : paragraph(missing, widthPt, lettering)),
      ...(rehearsal === null || rehearsal.missing.length > 0 ? [] : [
        tableHead(list, widthPt, lettering),
        ...stageRows(rehearsal).map((row) => tableRow(list, [
          row.joint === 0 ? reader.lines('firstStick') : reader.lines('joint', { joint: row.joint }),
          row.noseM === null ? [reader.say('none')] : reader.runningCell(row.noseM),
          row.joint === 0 ? [reader.say('none')] : reader.cell({ kind: 'force', value: row.needN }),
          row.joint === 0 ? [reader.say('none')] : [reader.figure({ kind: 'force', value: row.dragN }), ...(row.dragPa === null ? [] : [reader.figure({ kind: 'pressure', value: row.dragPa })])],
          notesOf(row, reader),
        ], widthPt, lettering)),
      ]),
    ],
  }
}
