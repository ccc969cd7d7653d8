import { expect, it } from 'vitest'
import type { CheckRun, Finding, Level } from '../../src/checks/finding.ts'
import { levelByItem, missingFields, numberedFindings, worstLevel, worstOfPhase } from '../../src/ui/findings/order.ts'
import { sourceWords, valueWords } from '../../src/ui/findings/words.ts'
import { english } from './words.ts'

const finding = (key: string, level: Level, over: Partial<Finding> = {}): Finding => ({
  checkId: 'a-check', key, level, isUnknown: false, missing: [], itemIds: [], where: null, what: { text: { en: key, es: key } }, measured: null, limit: null, margin: null,
  source: { class: 'houseRule', cite: 'common practice' }, phases: [], move: null, remedy: null, ...over,
})
const runOf = (...findings: Finding[]): CheckRun => ({ findings, counts: { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0, toConfirm: 0 } })

it('numbers open findings STOP first, each level in the order of the checks; missing input and what is met are left out', () => {
  const run = runOf(finding('n', 'NOTE'), finding('c1', 'CHECK'), finding('u', 'CHECK', { isUnknown: true }), finding('m', 'met'), finding('s', 'STOP'), finding('c2', 'CHECK'))
  expect(numberedFindings(run).map(({ number, finding: { key } }) => `${number} ${key}`)).toEqual(['1 s', '2 c1', '3 c2', '4 n'])
})

it('names each missing field once', () => {
  const input = { recordId: 'stand:a', path: 'figures.ratedLoadN.value', label: { en: 'rated load', es: 'carga' } }
  expect(missingFields([finding('a', 'CHECK', { missing: [input] }), finding('b', 'CHECK', { missing: [input, { ...input, recordId: 'stand:b' }] })])).toHaveLength(2)
})

it('the worst level of nothing is none, and what is met is not open', () => {
  expect(worstLevel([])).toBeNull()
  expect(worstLevel([finding('m', 'met')])).toBeNull()
  expect(worstLevel([finding('n', 'NOTE'), finding('f', 'FIX')])).toBe('FIX')
})

it('a phase carries the worst of its own findings and of those of all phases', () => {
  const run = runOf(finding('p', 'STOP', { phases: ['pull'] }), finding('a', 'CHECK'))
  expect(worstOfPhase(run, 'pull')).toBe('STOP')
  expect(worstOfPhase(run, 'rest')).toBe('CHECK')
})

it('an item carries its worst level', () => {
  const run = runOf(finding('c', 'CHECK', { itemIds: ['stand:a', 'stand:b'] }), finding('f', 'FIX', { itemIds: ['stand:a'] }))
  expect([...levelByItem(run)]).toEqual([['stand:a', 'FIX'], ['stand:b', 'CHECK']])
})

it('reads off the margin whether a limit is a most or a least', () => {
  const inches = (value: number) => ({ kind: 'shortLength', value: value * 0.0254 }) as const
  // A nose 29 1/2 in low, 2 5/8 in allowed: margin 2.625 − 29.5 < 0.
  expect(valueWords(finding('n', 'FIX', { measured: inches(29.5), limit: inches(2.625), margin: inches(2.625 - 29.5) }), english)).toBe('29\u2009½ in, at most 2\u2009⅝ in')
  // 6 ft 5 in away, 10 ft wanted: margin 77 − 120 < 0.
  const length = (value: number) => ({ kind: 'length', value: value * 0.0254 }) as const
  expect(valueWords(finding('d', 'STOP', { measured: length(77), limit: length(120), margin: length(77 - 120) }), english)).toBe('6 ft 5 in, at least 10 ft 0 in')
  expect(valueWords(finding('x', 'NOTE'), english)).toBeNull()
})

it('a source says its class, and whether it was edited or is from memory', () => {
  expect(sourceWords({ class: 'houseRule', cite: '', edited: true }, english)).toBe('house rule, edited')
  expect(sourceWords({ class: 'published', cite: '', fromMemory: true }, english)).toBe('published, from memory, confirm')
})
