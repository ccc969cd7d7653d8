import type { ReleaseRecord } from '../../src/scene/records/beside.ts'
import { describe, expect, it } from 'vitest'
import type { YardRecord } from '../../src/scene/document.ts'
import type { Edit, StepLabel } from '../../src/scene/edit.ts'
import { createDocumentStore, HISTORY_BYTES, HISTORY_STEPS, shownDocument, stampOf } from '../../src/state/documentStore.ts'
import { free, item, yard } from '../helpers/documents.ts'

const label = (en: string): StepLabel => ({ text: { en, es: en } })
const note = (id: string, text: string): YardRecord => item('note', `note:${id}`, free(0, 0), { text })
const put = (...records: YardRecord[]): Edit => ({ put: records, remove: [] })
const textOf = (document: ReturnType<typeof yard>, id: string): unknown => (document.records[`note:${id}`] as { text?: string } | undefined)?.text
const steps = (store: ReturnType<typeof createDocumentStore>): string[] => store.getState().past.map((entry) => entry.label.text.en)

describe('a commit', () => {
  it('is one step with its name, raises the revision and clears what could be redone', () => {
    const store = createDocumentStore(yard())
    const { commit, undo } = store.getState()
    expect(commit(label('one'), put(note('a', '1')))).toBe(true)
    expect(commit(label('two'), put(note('a', '2')))).toBe(true)
    expect([store.getState().revision, steps(store)]).toEqual([3, ['one', 'two']])
    expect(undo()?.label.text.en).toBe('two')
    expect(textOf(store.getState().document, 'a')).toBe('1')
    commit(label('other'), put(note('b', 'x')))
    expect([store.getState().future, steps(store)]).toEqual([[], ['one', 'other']])
  })
  it('that changes nothing is no step and raises no revision', () => {
    const store = createDocumentStore(yard(note('a', '1')))
    expect(store.getState().commit(label('none'), { put: [], remove: ['note:gone'] })).toBe(false)
    expect([store.getState().revision, store.getState().past]).toEqual([1, []])
  })
  it('in a window that only reads is refused, undo and redo too', () => {
    const store = createDocumentStore(yard())
    store.getState().commit(label('one'), put(note('a', '1')))
    store.getState().setWritable(false)
    expect([store.getState().commit(label('two'), put(note('a', '2'))), store.getState().undo()]).toEqual([false, null])
    expect(textOf(store.getState().document, 'a')).toBe('1')
  })
  it('shares every record it did not touch', () => {
    const before = yard(note('a', '1'), note('b', '1'))
    const store = createDocumentStore(before)
    store.getState().commit(label('one'), put(note('a', '2')))
    expect(store.getState().document.records['note:b']).toBe(before.records['note:b'])
  })
})

describe('typing in one field', () => {
  it('is one step, undone to what was there before the first letter', () => {
    const store = createDocumentStore(yard(note('a', '')))
    for (const text of ['1', '12', '123']) store.getState().commit(label(`type ${text}`), put(note('a', text)), 'note:a.text@1')
    expect(steps(store)).toEqual(['type 123'])
    store.getState().undo()
    expect(textOf(store.getState().document, 'a')).toBe('')
    store.getState().redo()
    expect(textOf(store.getState().document, 'a')).toBe('123')
  })
  it('with another step between, or in another focus, is two', () => {
    const store = createDocumentStore(yard(note('a', '')))
    const type = (text: string, key: string): void => { store.getState().commit(label(text), put(note('a', text)), key) }
    type('1', 'k1')
    store.getState().commit(label('between'), put(note('b', 'x')))
    type('12', 'k1')
    type('123', 'k2')
    expect(steps(store)).toEqual(['1', 'between', '12', '123'])
  })
  it('back to what it was leaves no step at all', () => {
    const original = yard(note('a', ''))
    const store = createDocumentStore(original)
    store.getState().commit(label('1'), put(note('a', '1')), 'k')
    store.getState().commit(label('back'), { put: [original.records['note:a']!], remove: [] }, 'k')
    expect(steps(store)).toEqual([])
  })
})

describe('a gesture', () => {
  it('is shown and stamped while it runs, made against the committed document, and never in the history', () => {
    const store = createDocumentStore(yard(note('a', '0')))
    const { begin, showPreview } = store.getState()
    begin(label('drag'))
    const stamps = ['1', '2'].map((text) => {
      showPreview(put(note('a', text)))
      return stampOf(store.getState())
    })
    expect(stamps).toEqual(['1.1', '1.2'])
    expect([textOf(shownDocument(store.getState()), 'a'), textOf(store.getState().document, 'a')]).toEqual(['2', '0'])
    expect([store.getState().past, store.getState().revision]).toEqual([[], 1])
  })
  it('let go is one step under its own name', () => {
    const store = createDocumentStore(yard(note('a', '0')))
    store.getState().begin(label('drag'))
    for (const text of ['1', '2', '3']) store.getState().showPreview(put(note('a', text)))
    expect(store.getState().commitPreview()).toBe(true)
    expect([steps(store), store.getState().preview, store.getState().pending, stampOf(store.getState())]).toEqual([['drag'], null, null, '2.0'])
    store.getState().undo()
    expect(textOf(store.getState().document, 'a')).toBe('0')
  })
  it('cancelled leaves document, history and revision as they were, and a new stamp so that old results are old', () => {
    const before = yard(note('a', '0'))
    const store = createDocumentStore(before)
    store.getState().begin(label('drag'))
    store.getState().showPreview(put(note('a', '1')))
    const during = stampOf(store.getState())
    store.getState().cancelPreview()
    const { document, preview, past, revision, pending } = store.getState()
    expect(document).toBe(before)
    expect([preview, past, revision, pending]).toEqual([null, [], 1, null])
    expect(stampOf(store.getState())).not.toBe(during)
  })
  it('that ends where it began, or never moved, is no step', () => {
    const before = yard(note('a', '0'))
    const store = createDocumentStore(before)
    store.getState().begin(label('drag'))
    expect(store.getState().commitPreview()).toBe(false)
    store.getState().begin(label('drag'))
    store.getState().showPreview({ put: [before.records['note:a']!], remove: [] })
    expect(store.getState().commitPreview()).toBe(false)
    expect([store.getState().past, store.getState().preview, store.getState().pending]).toEqual([[], null, null])
  })
  it('does not show in a window that only reads', () => {
    const store = createDocumentStore(yard(note('a', '0')))
    store.getState().setWritable(false)
    store.getState().showPreview(put(note('a', '1')))
    expect(store.getState().preview).toBe(null)
  })
})

describe('the history', () => {
  it('holds 200 steps: the oldest goes, the rest can all be undone', () => {
    const store = createDocumentStore(yard(note('a', '0')))
    for (let i = 1; i <= HISTORY_STEPS + 30; i++) store.getState().commit(label(`s${i}`), put(note('a', String(i))))
    expect([HISTORY_STEPS, steps(store).length, steps(store)[0]]).toEqual([200, 200, 's31'])
    while (store.getState().undo() !== null);
    // Step 31 is the oldest kept: undone, the text is that of step 30.
    expect(textOf(store.getState().document, 'a')).toBe('30')
  })
  it('holds 8 MB at most, however few steps that is, and always the last', () => {
    const store = createDocumentStore(yard(note('a', '')))
    // Each step keeps two texts of 0.5 MB: eight make 8 MB and a little more, so seven stay.
    for (let i = 1; i <= 12; i++) store.getState().commit(label(`s${i}`), put(note('a', String(i).padEnd(500_000, '.'))))
    expect(HISTORY_BYTES).toBe(8_000_000)
    expect(steps(store)).toEqual(['s6', 's7', 's8', 's9', 's10', 's11', 's12'])
    store.getState().commit(label('huge'), put(note('a', '.'.repeat(9_000_000))))
    expect(steps(store)).toEqual(['huge'])
  })
  it('undo brings a deleted record back to its place in the order', () => {
    const store = createDocumentStore(yard(note('a', ''), note('b', ''), note('c', '')))
    const order = Object.keys(store.getState().document.records)
    store.getState().commit(label('delete'), { put: [], remove: ['note:b'] })
    store.getState().undo()
    expect(Object.keys(store.getState().document.records)).toEqual(order)
  })
  it('is that of the layout that is loaded, and an unfinished gesture ends', () => {
    const store = createDocumentStore(yard())
    store.getState().commit(label('one'), put(note('a', '1')))
    const { past, document } = store.getState()
    store.getState().begin(label('drag'))
    store.getState().showPreview(put(note('a', '2')))
    store.getState().load(yard())
    expect([store.getState().past, store.getState().preview, store.getState().revision]).toEqual([[], null, 3])
    store.getState().load(document, { past, future: [] })
    store.getState().undo()
    expect(store.getState().document).toEqual(yard())
  })
})

describe('the release log', () => {
  const entry = (id: string): ReleaseRecord => ({ id: `release:${id}`, kind: 'release', letter: 'A', what: 'talk', when: '2025-06-03T14:32:00.000Z', contentHash: 'x', replaces: null, text: null, stageId: 'pull:1', language: 'es', people: ['L', 'M'] })
  const ids = (store: ReturnType<typeof createDocumentStore>): string[] => Object.keys(store.getState().document.records).filter((id) => id.startsWith('release:'))
  it('is kept through undo and redo, and is no step of its own', () => {
    const store = createDocumentStore(yard(note('a', '0'), note('b', '0')))
    store.getState().commit(label('gone'), { put: [], remove: ['note:a'] })
    expect(store.getState().append([entry('1')])).toBe(true)
    expect(steps(store)).toEqual(['gone'])
    store.getState().undo()
    // The step restores the order of its own records; what was logged since stays, at the end.
    expect([ids(store), store.getState().document.records['note:a'] !== undefined]).toEqual([['release:1'], true])
    store.getState().redo()
    expect([ids(store), store.getState().document.records['note:a']]).toEqual([['release:1'], undefined])
  })
  it('is only added to, and not in a window that reads', () => {
    const store = createDocumentStore(yard())
    store.getState().append([entry('1')])
    const { revision } = store.getState()
    expect(store.getState().append([{ ...entry('1'), text: 'other' }])).toBe(false)
    store.getState().setWritable(false)
    expect(store.getState().append([entry('2')])).toBe(false)
    expect([ids(store), store.getState().revision]).toEqual([['release:1'], revision])
  })
  it('comes in during a gesture without ending it', () => {
    const store = createDocumentStore(yard(note('a', '0')))
    store.getState().begin(label('drag'))
    store.getState().showPreview(put(note('a', '1')))
    store.getState().append([entry('1')])
    expect(textOf(store.getState().preview!, 'a')).toBe('1')
    store.getState().commitPreview()
    expect([ids(store), textOf(store.getState().document, 'a')]).toEqual([['release:1'], '1'])
  })
})
