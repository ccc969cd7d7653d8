import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import { en } from '../../src/messages/ui/en.ts'
import { es } from '../../src/messages/ui/es.ts'
import { assertPlaceholders } from '../../src/messages/render.ts'
import { placeholdersOf } from '../../src/messages/render.ts'
import { readerOf } from '../../src/sheet/content.ts'
import { openFindings, sourceWords, valueWords } from '../../src/sheet/findings.ts'
import { sheetWords } from '../../src/sheet/words.ts'
import { regionOf, wordsOf } from './drawn.ts'
import { contentOf, findingOf, ft, lotYard, runOf, someFindings } from './samples.ts'

const yard = lotYard()
const content = contentOf(yard)
const reader = readerOf(content)
const said = (findings: readonly Finding[], over: Parameters<typeof contentOf>[1] = {}): string => wordsOf(regionOf(contentOf(yard, { run: runOf(findings), ...over }), 'findings'))
const length = (value: number): { kind: 'length'; value: number } => ({ kind: 'length', value })

describe('open findings on the page', () => {
  it('stand in reading order with the numbers of the screen: missing input and met ones have none', () => {
    const shuffled = [...someFindings].reverse()
    expect(openFindings(runOf(shuffled)).map(({ number, level }) => [number, level])).toEqual([[1, 'STOP'], [2, 'FIX'], [3, 'CHECK'], [4, 'CHECK'], [5, 'NOTE']])
    expect(openFindings(null)).toEqual([])
  })
  it('say sentence, value against limit in both units, source class and the move', () => {
    const words = said(someFindings)
    expect(words).toContain('The nose spotter stands in the line of the tight rope.')
    // 77 in = 1.9558 m, 10 ft = 3.048 m
    expect(words).toContain('6 ft 5 in (1.96 m), at least 10 ft 0 in (3.05 m); house rule')
    expect(words).toContain('Move the spot to exit 304 ft 6 in, R 18 ft 0 in.')
    expect(words).toContain('29 CFR 1926.1408 Table A, from memory, confirm')
  })
  it('count levels, what is to be confirmed with its fields, and what is met', () => {
    const words = said(someFindings)
    expect(words).toContain('to confirm 1: rated load of E1; wall temperature of the pipe · met 1')
  })
  it('that do not fit are counted by level, none is lost', () => {
    const all = Array.from({ length: 40 }, (_, i) => findingOf(i < 3 ? 'STOP' : i < 20 ? 'CHECK' : 'NOTE', { key: `k@${i}` }))
    const words = said(all)
    const [, left, levels] = /and (\d+) more in the app: ([^t]+)/u.exec(words)!
    const shown = (words.match(/Something stands where it should not\./gu) ?? []).length
    expect(shown).toBeGreaterThan(8)
    expect(shown + Number(left)).toBe(40)
    // The worst are shown first, so only CHECK and NOTE are left out, and their counts add up.
    expect(levels).not.toContain('STOP')
    expect([...levels!.matchAll(/(\d+) [A-Z]+/gu)].reduce((sum, [, count]) => sum + Number(count), 0)).toBe(Number(left))
  })
  it('give up their moves before they are left out', () => {
    const move = { text: { en: 'Slide it over there.', es: 'Córralo allá.' } }
    const few = Array.from({ length: 3 }, (_, i) => findingOf('FIX', { key: `k@${i}`, move }))
    const more = Array.from({ length: 11 }, (_, i) => findingOf('FIX', { key: `k@${i}`, move }))
    expect(said(few)).toContain('Slide it over there.')
    expect(said(more)).not.toContain('Slide it over there.')
    expect(said(more)).not.toContain('more in the app')
  })
  it('that are many fields to confirm are cut with their count', () => {
    const missing = Array.from({ length: 60 }, (_, i) => ({ recordId: `stand:${i}`, path: 'figures.ratedLoadN.value', label: { en: `rated load of E${i}`, es: `carga nominal de E${i}` } }))
    const words = said([findingOf('CHECK', { isUnknown: true, missing })])
    const [, named, left] = /to confirm 1: (.+) and (\d+) more · met 0/u.exec(words)!
    expect(named!.split('; ').length + Number(left)).toBe(60)
    expect(words).toContain('No open findings.')
  })
  it('of no run say that the checks have not run', () => expect(said([], { run: null })).toContain('The checks have not run on this drawing.'))
})

describe('value against limit', () => {
  it('is a most where the margin is limit less value, a least where it is value less limit', () => {
    expect(valueWords(findingOf('FIX', { measured: length(ft(3)), limit: length(ft(2)), margin: length(ft(-1)) }), reader)).toBe('3 ft 0 in (0.91 m), at most 2 ft 0 in (0.61 m)')
    expect(valueWords(findingOf('FIX', { measured: length(ft(1)), limit: length(ft(2)), margin: length(ft(-1)) }), reader)).toBe('1 ft 0 in (0.3 m), at least 2 ft 0 in (0.61 m)')
  })
  it('stands alone where there is no limit, and is left out where there is neither', () => {
    expect(valueWords(findingOf('NOTE', { measured: { kind: 'force', value: 124.6 } }), reader)).toBe('28 lb (125 N)')
    expect(valueWords(findingOf('NOTE', { limit: length(ft(2)) }), reader)).toBe('limit 2 ft 0 in (0.61 m)')
    expect(valueWords(findingOf('NOTE'), reader)).toBeNull()
  })
  it('shows an unknown value as a question mark', () => {
    expect(valueWords(findingOf('CHECK', { measured: { kind: 'length', value: null }, limit: length(ft(2)) }), reader)).toBe('?, limit 2 ft 0 in (0.61 m)')
  })
  it('is in one unit on a metric page', () => {
    const metric = readerOf({ ...content, system: 'metric' })
    expect(valueWords(findingOf('FIX', { measured: length(3), limit: length(2), margin: length(-1) }), metric)).toBe('3 m, at most 2 m')
  })
})

describe('sources', () => {
  it('name their class; a published one its document; edits and memory are said', () => {
    expect(sourceWords({ class: 'houseRule', cite: 'common practice, no published source' }, reader)).toBe('house rule')
    expect(sourceWords({ class: 'houseRule', cite: 'x', edited: true }, reader)).toBe('house rule, edited')
    expect(sourceWords({ class: 'published', cite: '29 CFR 1926.651(j)(2)' }, reader)).toBe('published, 29 CFR 1926.651(j)(2)')
    expect(sourceWords({ class: 'published', cite: 'ASTM F3190, from memory, confirm', fromMemory: true }, reader)).toBe('published, ASTM F3190, from memory, confirm')
  })
})

describe('words of the page', () => {
  it('are those of the screen for levels, values and sources', () => {
    const pairs = [['STOP', 'levelStop'], ['FIX', 'levelFix'], ['CHECK', 'levelCheck'], ['NOTE', 'levelNote'], ['valueAtMost', 'valueAtMost'], ['valueAtLeast', 'valueAtLeast'], ['published', 'sourcePublished'], ['mechanics', 'sourceMechanics'], ['plate', 'sourcePlate'], ['jobRule', 'sourceJobRule'], ['houseRule', 'sourceHouseRule'], ['fromMemory', 'sourceFromMemory']] as const
    for (const [ours, theirs] of pairs) expect(sheetWords[ours], ours).toEqual({ en: en[theirs], es: es[theirs] })
  })
  it('have both languages with the same places for values', () => {
    for (const [key, text] of Object.entries(sheetWords)) {
      expect(text.es, key).not.toBe('')
      assertPlaceholders(text, placeholdersOf(text.en))
    }
  })
})
