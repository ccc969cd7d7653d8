/** Head of the first page: what, which revision, what it replaces, pipe, datum, where help comes to. */
import type { CheckRun } from '../../checks/finding.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { replacedLetter } from '../../scene/revision.ts'
import type { Lettering, TextLook } from '../lettering.ts'
import { box } from '../region.ts'
import { pipeLine, sticksLine } from '../titleBlock.ts'
import { sheetWords } from '../words.ts'
import type { Block } from './flow.ts'
import type { CrewReader } from './reader.ts'
import { BODY, BOLD, LINE_PT, linesOf, setLines } from './text.ts'

interface HeadCell {
  caption: string
  values: readonly string[]
  share: number
}

const TITLE: TextLook = { sizePx: 20, bold: true }
const TITLE_LINE_PT = 23

const countsOf = (run: CheckRun | null, reader: CrewReader): readonly string[] =>
  run === null ? reader.lines('openUnknown') : reader.lines('openCounts', { stop: run.counts.STOP, fix: run.counts.FIX, check: run.counts.CHECK - run.counts.toConfirm, confirm: run.counts.toConfirm })

/** Rows of cells with a caption over each value; heights follow what is in them. */
export const titleBlock = ({ site, run, when }: { site: SiteModel; run: CheckRun | null; when: string }, widthPt: number, reader: CrewReader, lettering: Lettering): Block => {
  const { layout, job, setUp } = site
  const all = (write: (reader: CrewReader['readers'][number]) => string): readonly string[] => [...new Set(reader.readers.map(write))]
  const said = (text: string | null | undefined): readonly string[] => (text === null || text === undefined || text.trim() === '' ? reader.lines('unsaid') : [text])
  const replaces = replacedLetter(site.document)
  const meeting = [job.dispatch.muster, job.dispatch.caller].filter((text) => text !== null && text.trim() !== '').join(', ')
  const rows: readonly (readonly HeadCell[])[] = [
    [
      { caption: reader.say('revision'), values: [layout.revision], share: 80 },
      { caption: reader.say('replaces'), values: replaces === null ? reader.lines('replacesNone') : [replaces], share: 130 },
      { caption: reader.say('date'), values: [when], share: 150 },
      { caption: reader.say('open'), values: countsOf(run, reader), share: 220 },
    ],
    [
      { caption: reader.say('pipe'), values: all((one) => pipeLine({ site }, one)), share: 170 },
      { caption: reader.say('sticks'), values: all((one) => sticksLine({ site }, one)), share: 230 },
      { caption: reader.say('units'), values: reader.localLines(sheetWords[reader.isMetric ? 'unitsMetric' : 'unitsBoth']), share: 180 },
    ],
    [
      { caption: reader.say('datum'), values: setUp?.note !== null && setUp?.note !== undefined && setUp.note.trim() !== '' ? [setUp.note] : reader.lines('datumUnsaid'), share: 180 },
      { caption: reader.say('address'), values: said(job.dispatch.address), share: 220 },
      { caption: reader.say('muster'), values: said(meeting), share: 180 },
    ],
  ]
  const title = linesOf(layout.title.trim() === '' ? reader.local(sheetWords.untitled) : layout.title, widthPt - 120, TITLE, lettering)
  const titlePt = title.length * TITLE_LINE_PT + 6
  const set = rows.map((row) => {
    const whole = row.reduce((sum, { share }) => sum + share, 0)
    const cells = row.map(({ caption, values, share }) => {
      const cellPt = (share / whole) * widthPt
      return { cellPt, caption: linesOf(caption, cellPt - 8, BODY, lettering), values: values.flatMap((value) => linesOf(value, cellPt - 8, BOLD, lettering)) }
    })
    return { cells, heightPt: Math.max(...cells.map((cell) => cell.caption.length + cell.values.length)) * LINE_PT + 5 }
  })
  const heightPt = titlePt + set.reduce((sum, row) => sum + row.heightPt, 0)
  return {
    heightPt: heightPt + 4,
    draw: (x0, y0) => {
      const list: Primitive[] = [box(x0, y0, widthPt, heightPt, { stroke: 'ink', weight: 'building' }), ...setLines(title, x0 + 5, y0 + 2, TITLE, lettering, TITLE_LINE_PT), ...lettering.line(reader.say('sheet'), x0 + widthPt - 5, y0 + 18, { ...BOLD, align: 'right' })]
      let y = y0 + titlePt
      for (const { cells, heightPt: rowPt } of set) {
        let x = x0
        for (const { cellPt, caption, values } of cells) {
          list.push(box(x, y, cellPt, rowPt, { stroke: 'ink', weight: 'context' }), ...setLines(caption, x + 4, y + 1, { ...BODY, ink: 'ink2' }, lettering), ...setLines(values, x + 4, y + 1 + caption.length * LINE_PT, BOLD, lettering))
          x += cellPt
        }
        y += rowPt
      }
      return list
    },
  }
}
