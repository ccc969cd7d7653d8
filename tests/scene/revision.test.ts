import { describe, expect, it } from 'vitest'
import { layoutOf, recordsOf, type YardDocument } from '../../src/scene/document.ts'
import { isBeyondRelease, nextLetter, revisionHash, releaseNow, replacedLetter, withRevision, type ReleasedAs } from '../../src/scene/revision.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { createDocumentStore, type DocumentStore } from '../../src/state/documentStore.ts'
import { readFileSync } from 'node:fs'
import type { YardRecord } from '../../src/scene/document.ts'
import { free, item } from '../helpers/documents.ts'

const read = readFile(readFileSync('shared/examples/maple-fork-good.yard.json', 'utf8'))
if (!read.ok) throw new Error('the example cannot be read')
const start = read.document
const step = (en: string) => ({ text: { en, es: en } })
let count = 0
const env = { newId: (prefix: string) => `${prefix}:t${(count += 1)}`, now: () => '2026-01-02T08:00:00.000Z' }

const note = (text: string): YardRecord => item('note', 'note:t', free(0, 0), { text })
const write = (documents: DocumentStore, text: string): boolean => documents.getState().commit(step(text), { put: [note(text)], remove: [] })
const letter = (documents: DocumentStore): string => layoutOf(documents.getState().document).revision
const release = (documents: DocumentStore, what: ReleasedAs): void => {
  const { raised, row } = releaseNow(documents.getState().document, what, env)
  if (raised !== null) documents.getState().commit(step('letter'), { put: [raised], remove: [] })
  if (row !== null) documents.getState().append([row])
}

describe('letters', () => {
  it('count on like columns of a sheet, and on from what a person made up', () => {
    expect(['A', 'Y', 'Z', 'AZ', 'ZZ', 'AAA', '3', 'P9', 'p'].map(nextLetter)).toEqual(['B', 'Z', 'AA', 'BA', 'AAA', 'AAB', '4', 'P10', 'p2'])
    expect(['ZZZZ', '9999', 'abcd'].map(nextLetter)).toEqual([null, null, null])
  })
})

describe('the letter of a plan', () => {
  it('stays while nobody has the plan on paper, and goes up once with the first edit after it was printed', () => {
    const documents = createDocumentStore(start)
    write(documents, '1')
    expect(letter(documents)).toBe('A')
    release(documents, 'printed')
    expect(letter(documents)).toBe('A')
    const steps = documents.getState().past.length
    write(documents, '2')
    write(documents, '3')
    expect(letter(documents)).toBe('B')
    // In the same step as the edit: two edits, two steps.
    expect(documents.getState().past).toHaveLength(steps + 2)
    expect(replacedLetter(documents.getState().document)).toBe('A')
  })

  it('comes back with undo, as the plan does, and names no second plan when that is edited otherwise', () => {
    const documents = createDocumentStore(start)
    release(documents, 'printed')
    write(documents, '2')
    release(documents, 'shared')
    documents.getState().undo()
    expect([letter(documents), isBeyondRelease(documents.getState().document)]).toEqual(['A', false])
    write(documents, 'other')
    // B was shared with something else on it.
    expect(letter(documents)).toBe('C')
  })

  it('goes up at the printer where undo went behind what was printed', () => {
    const documents = createDocumentStore(start)
    write(documents, '1')
    release(documents, 'printed')
    documents.getState().undo()
    expect([letter(documents), isBeyondRelease(documents.getState().document)]).toEqual(['A', true])
    release(documents, 'printed')
    expect(letter(documents)).toBe('B')
    expect(recordsOf(documents.getState().document, 'release').map((row) => [row.letter, row.replaces])).toEqual([['A', null], ['B', 'A']])
  })

  it('stays when only heights as set, the log, units or the letter itself change', () => {
    const documents = createDocumentStore(start)
    release(documents, 'printed')
    const before = documents.getState().document
    const stand = recordsOf(before, 'stand')[0]!
    const asSet: YardRecord = { id: 'asSet:1', kind: 'asSet', itemId: stand.id, saddleM: 0.5, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '' }
    documents.getState().commit(step('as set'), { put: [asSet], remove: [] })
    const layout = layoutOf(before)
    documents.getState().commit(step('units'), { put: [{ ...layout, displayUnits: layout.displayUnits === 'metric' ? 'feetInches' : 'metric' }], remove: [] })
    expect(letter(documents)).toBe('A')
    documents.getState().commit(step('letter'), { put: [{ ...layoutOf(documents.getState().document), revision: 'K' }], remove: [] })
    expect(letter(documents)).toBe('K')
    expect(revisionHash(documents.getState().document)).toBe(revisionHash(before))
  })

  it('an edit taken back by another edit leaves the letter: the plan is the printed one', () => {
    const printed = ((): YardDocument => {
      const documents = createDocumentStore(start)
      release(documents, 'printed')
      return documents.getState().document
    })()
    const edited: YardDocument = { records: { ...printed.records, 'layout:this': { ...layoutOf(printed), note: 'x' } } }
    expect(layoutOf(withRevision(printed, edited)).revision).toBe('B')
    expect(withRevision(edited, printed)).toBe(printed)
  })

  it('the same plan shared again in the same way is one row of the log', () => {
    const documents = createDocumentStore(start)
    release(documents, 'shared')
    release(documents, 'shared')
    release(documents, 'printed')
    expect(recordsOf(documents.getState().document, 'release').map(({ what }) => what)).toEqual(['shared', 'printed'])
  })
})
