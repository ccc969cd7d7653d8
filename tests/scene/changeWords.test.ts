import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { renderText } from '../../src/messages/render.ts'
import { changesBetween } from '../../src/scene/changeWords.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { jobOf, recordsOf, type YardDocument, type YardRecord } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { labelsOf } from '../../src/scene/resolve.ts'

const read = readFile(readFileSync(new URL('../../shared/examples/maple-fork-good.yard.json', import.meta.url), 'utf8'))
if (!read.ok) throw new Error('the example does not open')
const yard = read.document
const inch = 0.0254

const after = (name: string, args: unknown, document: YardDocument = yard): YardDocument => applyEdit(document, commandOf(name)!.run(document, args, { newId: (prefix) => `${prefix}:new`, now: () => '2026-01-01T00:00:00Z' }))
const withRecord = (record: YardRecord): YardDocument => applyEdit(yard, { put: [record], remove: [] })
const english = (from: YardDocument, to: YardDocument): string[] => changesBetween(from, to).map(({ text, values }) => renderText(text, values, { language: 'en', system: 'feetInches' }).replaceAll('\u2009', ' '))
const spanish = (from: YardDocument, to: YardDocument): string[] => changesBetween(from, to).map(({ text, values }) => renderText(text, values, { language: 'es', system: 'metric' }))

const idOf = (label: string): string => [...labelsOf(yard)].find(([, one]) => one === label)![0]
const [crew] = recordsOf(yard, 'crew')
const [rack] = recordsOf(yard, 'rack')

describe('what changed, in words', () => {
  it('is nothing between a document and itself, nor for a copy of it', () => {
    expect(english(yard, yard)).toEqual([])
    expect(english(yard, structuredClone(yard))).toEqual([])
  })
  it('says a stand moved along the line, and which way', () => {
    const id = idOf('E2')
    expect(english(yard, after('slideBy', { ids: [id], dRunningM: -8 * inch, dOffsetM: 0 }))).toEqual(['pipe stand E2 moved 8 in up-string'])
    // 8 in = 203.2 mm, written to the millimetre.
    expect(spanish(yard, after('slideBy', { ids: [id], dRunningM: 8 * inch, dOffsetM: 0 }))).toEqual(['soporte de tubo E2 se movió 203 mm hacia la salida'])
  })
  it('says along and across together', () => {
    expect(english(yard, after('slideBy', { ids: [idOf('E2')], dRunningM: 0.3048 * 2, dOffsetM: 3 * inch }))).toEqual(['pipe stand E2 moved 2 ft 0 in down-string and 3 in to the right'])
  })
  it('says a rack that is loaded from the other side swapped side', () => {
    const to = rack!.openSide === 'R' ? 'L' : 'R'
    const [line] = english(yard, after('setField', { ids: [rack!.id], path: 'openSide', value: to }))
    expect(line).toBe(`loading rack R swapped side: open side ${rack!.openSide === 'R' ? 'right → left' : 'left → right'}`)
  })
  it('says an item that went across the line swapped side', () => {
    const placed = { ...crew!, place: { at: 'onRun' as const, runId: recordsOf(yard, 'run')[0]!.id, runningM: 5, offsetM: 2, turnRad: 0 } }
    const [from, to] = [withRecord(placed), withRecord({ ...placed, place: { ...placed.place, offsetM: -2 } })]
    // 2 m is 78.74 in, written to the quarter.
    expect(english(from, to)[0]).toMatch(/^crew spot \S+ swapped side, now L 78 ¾ in$/)
  })
  it('says heights raised and lowered, with what they are now', () => {
    const id = idOf('E2')
    const [from, to] = [28, 30.5].map((saddleIn) => after('setHeight', { ids: [id], height: { rule: 'aboveGround', saddleM: saddleIn * inch } })) as [YardDocument, YardDocument]
    // 30.5 − 28 = 2.5 in.
    expect(english(from, to)).toEqual(['pipe stand E2 raised 2 ½ in: now 30 ½ in above ground'])
    expect(english(to, from)).toEqual(['pipe stand E2 lowered 2 ½ in: now 28 in above ground'])
  })
  it('says what was added with its place, and what was taken away', () => {
    const less = after('remove', { ids: [idOf('E2')] })
    expect(english(yard, less)[0]).toBe('pipe stand E2 taken away')
    expect(english(less, yard)[0]).toMatch(/^pipe stand E2 added at exit /)
  })
  it('names an item whose label has gone on by both', () => {
    const less = after('remove', { ids: [idOf('E1')] })
    const moved = after('slideBy', { ids: [idOf('E2')], dRunningM: inch, dOffsetM: 0 }, less)
    expect(english(yard, moved)).toContain('pipe stand E1 (was E2) moved 1 in down-string')
  })
  it('says fields of the job with old and new value', () => {
    const job = jobOf(yard)
    const to = after('setJob', { path: 'stickLengthM', value: (job.stickLengthM ?? 0) + 0.3048 * 10 })
    // 40 ft sticks of the example become 50 ft.
    expect(english(yard, to)).toEqual(['stick length: 40 ft 0 in → 50 ft 0 in'])
    const said = withRecord({ ...job, dispatch: { ...job.dispatch, muster: 'gate {north}' } })
    expect(english(withRecord({ ...job, dispatch: { ...job.dispatch, muster: null } }), said)).toEqual(['where to meet: nothing → gate {north}'])
  })
  it('says a figure that now comes from the plate, though it is the same number', () => {
    const [machine] = recordsOf(yard, 'machine')
    const figure = { ...machine!.figures.lengthM, value: 3 }
    const [from, to] = (['typical', 'plate'] as const).map((basis) => withRecord({ ...machine!, figures: { ...machine!.figures, lengthM: { ...figure, basis } } })) as [YardDocument, YardDocument]
    expect(english(from, to)[0]).toMatch(/9 ft 10.*now from the plate$/)
  })
  it('leaves the release log out and says heights as set', () => {
    const release = { id: 'release:1', kind: 'release' as const, letter: 'A', what: 'printed' as const, when: '2026-01-01T00:00:00Z', contentHash: 'x', replaces: null, text: null, stageId: null, language: null, people: [] }
    expect(english(yard, withRecord(release))).toEqual([])
    expect(english(yard, after('setAsSet', { itemId: idOf('E2'), saddleM: 28 * inch }))).toEqual(['pipe stand E2: measured at 28 in after setting'])
  })
  it('passes nothing silently: any one value changed gives a line that renders in both languages', () => {
    const leaves = Object.values(yard.records).flatMap((record) => leavesOf(record).map((path) => ({ record, path })))
    expect(leaves.length).toBeGreaterThan(200)
    fc.assert(fc.property(fc.nat(leaves.length - 1), (i) => {
      const { record, path } = leaves[i]!
      const to = applyEdit(yard, { put: [changedAt(record, path)], remove: [] })
      expect(english(yard, to).length, `${record.id} ${path.join('.')}`).toBeGreaterThan(0)
      for (const line of spanish(yard, to)) expect(line).not.toMatch(/\{[a-z]/)
    }), { numRuns: 300 })
  })
})

/** Paths to every number, boolean and free text of a record but its id and kind. */
function leavesOf(record: YardRecord): (string | number)[][] {
  const found: (string | number)[][] = []
  const walk = (value: unknown, path: (string | number)[]): void => {
    if (typeof value === 'number' || typeof value === 'boolean') found.push(path)
    else if (Array.isArray(value)) value.forEach((one: unknown, i) => walk(one, [...path, i]))
    else if (typeof value === 'object' && value !== null) for (const [key, one] of Object.entries(value)) walk(one, [...path, key])
  }
  walk(record, [])
  return found
}

/** A number goes up by 1, a boolean turns. */
function changedAt(record: YardRecord, path: readonly (string | number)[]): YardRecord {
  const copy = structuredClone(record) as unknown as Record<string | number, unknown>
  let holder = copy
  for (const part of path.slice(0, -1)) holder = holder[part] as Record<string | number, unknown>
  const last = path.at(-1)!
  const value = holder[last]
  holder[last] = typeof value === 'number' ? value + 1 : value !== true
  return copy as unknown as YardRecord
}

