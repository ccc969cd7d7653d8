import { useDeferredValue, useMemo, useState, type ReactNode } from 'react'
import { importWords as words } from '../../messages/ui/importWords.ts'
import { findColumns, unitInHead, type Columns } from '../../read/levelBook/columns.ts'
import { bookUnits, openChoices, readLevels, type BookChoices, type BookFault, type BookLevel } from '../../read/levelBook/levels.ts'
import { readTable, type Table } from '../../read/levelBook/table.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useSite, useUi, useWords } from '../context.tsx'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField, type Choice } from '../fields/OtherFields.tsx'
import '../styles/bringIn.css'
import { FilePick } from './FilePick.tsx'
import { pickedText } from './pickedText.ts'

const SHOWN_ROWS = 8
const SHOWN_FAULTS = 20
/** Four bytes a character at most, and then a text of the length that the table reader takes. */
const MOST_BOOK_BYTES = 8_000_000

const marks: Readonly<Record<string, keyof typeof words>> = { ',': 'mark_comma', ';': 'mark_semicolon', '\t': 'mark_tab', '|': 'mark_stroke', '': 'mark_none' }

type Said = Omit<BookChoices, 'columns'>

/** A level book: paste or file, what its columns and unit are, what was understood, what was not; then one step. */
export const LevelsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { local } = useWords()
  const { app } = useUi()
  const run = useCommand()
  const site = useSite((state) => state.site)
  const [text, setText] = useState('')
  const [fileName, setFileName] = useState<string | null>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [chosen, setChosen] = useState<Partial<Columns>>({})
  const [said, setSaid] = useState<Said>({ unit: null, datumStationM: null, datumLevelM: site.setUp?.groundLevelM ?? null, stationsRise: 'exit', plusOffset: 'right' })
  const [isLeavingOut, setLeavingOut] = useState(false)
  const settledText = useDeferredValue(text)
  const book = useMemo(() => (settledText.trim() === '' ? null : readTable(settledText)), [settledText])
  const table = book?.ok === true ? book.table : null
  const found = useMemo(() => (table === null ? null : findColumns(table)), [table])
  const columns: Columns = { station: null, offset: null, level: null, ...found?.columns, ...chosen }
  const choices: BookChoices = { ...said, columns }
  const { station, offset, level } = columns
  const read = useMemo(
    () => (table === null || found === null ? null : readLevels(found.hasHeader ? table.rows.slice(1) : table.rows, { ...said, columns: { station, offset, level } })),
    [table, found, said, station, offset, level],
  )
  if (site.setUp === null || site.run === null) return <Panel title={local(words.levelsTitle)} onClose={onClose} wide><p>{local(words.needsSetUp)}</p></Panel>
  const { groundLevelM } = site.setUp
  const take = (next: string, name: string | null): void => {
    setText(next)
    setFileName(name)
    setRefusal(null)
    setChosen({})
    setLeavingOut(false)
  }
  const pick = async (file: File): Promise<void> => {
    const picked = await pickedText(file, MOST_BOOK_BYTES)
    if (picked.ok) take(picked.text, picked.name)
    else setRefusal(local(words.tooLarge, { name: picked.name, size: String(picked.sizeMB), most: String(picked.mostMB) }))
  }
  const bring = (levels: readonly BookLevel[]): void => {
    const records = levels.map(({ line, runningM, offsetM, aboveDatumM }) => {
      const { xM, yM } = site.atRunning(runningM, offsetM)
      return {
        kind: 'level', place: { at: 'free', xM, yM, headingRad: 0 },
        // Levels lie in the layout's own level book, whose figure at the datum may be another.
        patch: { source: local(words.levelSource, { line: String(line) }), figures: { levelM: { value: aboveDatumM + (groundLevelM ?? 0), basis: 'measured' } } },
      }
    })
    if (!run('bringIn', { records, mapOrigin: null })) return
    app.view.setState({ panel: null, notice: { text: local(words.broughtLevels, { count: levels.length }), undo: true, atRevision: app.documents.getState().revision } })
  }
  const reason = refusal ?? (book?.ok === false ? local(book.reason) : null)
  const result = read?.ok === true ? read : null
  const badRows = result === null ? 0 : new Set(result.faults.map(({ line }) => line)).size
  const isReady = result !== null && result.levels.length > 0 && (badRows === 0 || isLeavingOut) && settledText === text
  return (
    <Panel
      title={local(words.levelsTitle)} onClose={onClose} wide
      foot={<button type="button" className="primary" disabled={!isReady} onClick={() => { if (result !== null) bring(result.levels) }}>{local(words.bringLevels, { count: result?.levels.length ?? 0 })}</button>}
    >
      <div className="field field-stacked bring-text">
        <label htmlFor="level-book">{local(words.paste)}</label>
        <textarea id="level-book" rows={6} spellCheck={false} value={fileName === null ? text : text.slice(0, 4000)} readOnly={fileName !== null} onChange={(event) => take(event.currentTarget.value, null)} />
      </div>
      <div className="buttons">
        <FilePick label={local(words.openBook)} accept=".csv,.txt,.tsv,text/csv,text/plain" onPick={(file) => void pick(file)} />
        {fileName === null ? null : <span className="bring-name">{local(words.fromFile, { name: fileName })}</span>}
      </div>
      {reason === null ? null : <p role="alert" className="bring-refused"><strong>{local(words.notRead, { reason })}</strong> {local(words.untouched)}</p>}
      {table === null || found === null || refusal !== null ? null : (
        <>
          <BookFacts table={table} hasHeader={found.hasHeader} heads={found.heads} />
          <BookFields table={table} heads={found.heads} choices={choices} onColumns={(part) => { setChosen({ ...chosen, ...part }); setLeavingOut(false) }} onSaid={(part) => { setSaid({ ...said, ...part }); setLeavingOut(false) }} />
          <OpenChoices choices={choices} />
          {result === null ? null : <BookPreview levels={result.levels} />}
          {result === null || result.faults.length === 0 ? null : (
            <BookFaults faults={result.faults}>
              <label className="bring-check"><input type="checkbox" checked={isLeavingOut} onChange={(event) => setLeavingOut(event.currentTarget.checked)} />{local(words.leaveOut, { count: badRows })}</label>
            </BookFaults>
          )}
        </>
      )}
    </Panel>
  )
}

const BookFacts = ({ table, hasHeader, heads }: { table: Table; hasHeader: boolean; heads: readonly string[] }): ReactNode => {
  const { local } = useWords()
  const units = [...new Set(heads.flatMap((head) => unitInHead(head) ?? []))]
  return (
    <p className="bring-facts">
      {local(words.rowsFound, { count: table.rows.length - (hasHeader ? 1 : 0), mark: local(words[marks[table.delimiter] ?? 'mark_none']) })}
      {hasHeader ? '' : ` ${local(words.noHeader)}`}
      {units.length === 0 ? '' : ` ${local(words.headUnit, { units: units.join(', ') })}`}
    </p>
  )
}

interface BookFieldsProps {
  table: Table
  heads: readonly string[]
  choices: BookChoices
  onColumns: (part: Partial<Columns>) => void
  onSaid: (part: Partial<Said>) => void
}

const BookFields = ({ table, heads, choices, onColumns, onSaid }: BookFieldsProps): ReactNode => {
  const { local } = useWords()
  const { columns } = choices
  const columnChoices: Choice<number | 'none' | null>[] = Array.from({ length: table.columns }, (_, i) => ({ value: i, label: local(words.column, { n: String(i + 1), name: heads[i] ?? table.rows[0]?.cells[i] ?? '' }) }))
  return (
    <div className="field-grid">
      <ChoiceField label={local(words.unit)} value={choices.unit} choices={bookUnits.map((value) => ({ value, label: local(words[`unit_${value}`]) }))} onCommit={(unit) => onSaid({ unit })} />
      <ChoiceField label={local(words.stationColumn)} value={columns.station} choices={columnChoices} onCommit={(value) => { if (value !== 'none') onColumns({ station: value }) }} />
      <ChoiceField label={local(words.offsetColumn)} value={columns.offset} choices={[{ value: 'none', label: local(words.noOffset) }, ...columnChoices]} onCommit={(value) => onColumns({ offset: value })} />
      <ChoiceField label={local(words.levelColumn)} value={columns.level} choices={columnChoices} onCommit={(value) => { if (value !== 'none') onColumns({ level: value }) }} />
      <NumberField label={local(words.datumStation)} kind="length" value={choices.datumStationM} nullable onCommit={(datumStationM) => onSaid({ datumStationM })} />
      <NumberField label={local(words.datumLevel)} kind="length" value={choices.datumLevelM} nullable onCommit={(datumLevelM) => onSaid({ datumLevelM })} />
      <ChoiceField label={local(words.rise)} value={choices.stationsRise} choices={(['exit', 'infeed'] as const).map((value) => ({ value, label: local(words[`rise_${value}`]) }))} onCommit={(stationsRise) => onSaid({ stationsRise })} />
      {columns.offset === 'none' ? null : <ChoiceField label={local(words.plus)} value={choices.plusOffset} choices={(['right', 'left'] as const).map((value) => ({ value, label: local(words[`plus_${value}`]) }))} onCommit={(plusOffset) => onSaid({ plusOffset })} />}
    </div>
  )
}

const nameOfChoice = { unit: words.unit, station: words.stationColumn, offset: words.offsetColumn, level: words.levelColumn, sameColumn: words.sameColumn, datumStation: words.datumStation, datumLevel: words.datumLevel } as const

const OpenChoices = ({ choices }: { choices: BookChoices }): ReactNode => {
  const { local } = useWords()
  const open = openChoices(choices)
  return <p role="status" className="bring-open">{open.length === 0 ? '' : local(words.stillOpen, { what: open.map((one) => local(nameOfChoice[one])).join('; ') })}</p>
}

const BookPreview = ({ levels }: { levels: readonly BookLevel[] }): ReactNode => {
  const { local, figure, running, offset } = useWords()
  const height = (value: number): string => figure({ kind: 'length', value })
  const all = levels.map(({ aboveDatumM }) => aboveDatumM)
  const [low, high] = [all.reduce((a, b) => Math.min(a, b), Infinity), all.reduce((a, b) => Math.max(a, b), -Infinity)]
  return (
    <section aria-label={local(words.preview)}>
      <div className="answer" role="status">
        <span>{local(words.levelsRead, { count: levels.length })}</span>
        {levels.length === 0 ? null : <span className="quiet-text"><Figure text={local(words.lowHigh, { low: height(low), high: height(high) })} /></span>}
      </div>
      {levels.length === 0 ? null : (
        <div className="table-scroll" tabIndex={0} role="group" aria-label={local(words.preview)}>
          <table>
            <thead><tr>{[words.line, words.where, words.inBook, words.level].map((head) => <th scope="col" key={head.en}>{local(head)}</th>)}</tr></thead>
            <tbody>
              {levels.slice(0, SHOWN_ROWS).map((row) => (
                <tr key={row.line}>
                  <th scope="row">{row.line}</th><td><Figure text={`${running(row.runningM)}, ${offset(row.offsetM)}`} /></td>
                  <td><Figure text={height(row.bookLevelM)} /></td><td><Figure text={height(row.aboveDatumM)} /></td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {levels.length > SHOWN_ROWS ? <p className="quiet-text">{local(words.moreRows, { count: levels.length - SHOWN_ROWS })}</p> : null}
    </section>
  )
}

const BookFaults = ({ faults, children }: { faults: readonly BookFault[]; children: ReactNode }): ReactNode => {
  const { local } = useWords()
  return (
    <section className="bring-faults">
      <h3>{local(words.faultsTitle, { count: faults.length })}</h3>
      <ul>{faults.slice(0, SHOWN_FAULTS).map((one) => <li key={`${one.line} ${one.role}`}>{local(words.faultLine, { line: String(one.line), column: local(words[`role_${one.role}`]), why: local(one.message) })}</li>)}</ul>
      {faults.length > SHOWN_FAULTS ? <p className="quiet-text">{local(words.moreRows, { count: faults.length - SHOWN_FAULTS })}</p> : null}
      {children}
    </section>
  )
}
