import { describe, expect, it } from 'vitest'
import { idleField, stepField, type FieldRules, type FieldState } from '../../src/ui/fields/numberFieldState.ts'
import { readFor, shownText } from '../../src/ui/fields/reading.ts'
import { plainFractions } from '../../src/ui/common/Figure.tsx'
import { english, metric, spanish } from './words.ts'

// 28.5 in = 0.7239 m
const shown = plainFractions(shownText(0.7239, 'height', 'plain', english))
const rules = (over: Partial<FieldRules> = {}): FieldRules => ({ shown, read: (text) => readFor(text, 'height', 'plain', english), isNullable: true, outOfBounds: () => null, ...over })
const typed = (text: string, from: FieldState = idleField): FieldState => stepField(from, { type: 'typed', text }, rules()).state

describe('a number field', () => {
  it('that nobody touched writes nothing, even where its text is rounded', () => {
    expect(stepField(idleField, { type: 'left' }, rules()).commit).toBeUndefined()
  })

  it('with the shown text typed again writes nothing', () => {
    expect(stepField(typed(shown), { type: 'left' }, rules()).commit).toBeUndefined()
  })

  it('writes what was read once it is left, and echoes how it was understood', () => {
    const step = stepField(typed('30'), { type: 'left' }, rules())
    expect(step.commit?.value).toBeCloseTo(0.762, 12) // 30 in
    expect(step.state).toEqual({ draft: null, problem: null, echo: { typed: '30', value: step.commit?.value } })
  })

  it('leaves the old value where nothing can be read, and says what could be', () => {
    const step = stepField(typed('about two'), { type: 'left' }, rules())
    expect(step.commit).toBeUndefined()
    expect(step.state.draft).toBe('about two')
    expect(step.state.problem?.as).toBe('unreadable')
    expect(step.state.problem?.as === 'unreadable' ? step.state.problem.reason : '').toMatch(/for example .+ The old value stays/)
  })

  it('asks where a bare number reads two ways, and takes the answer', () => {
    const length = rules({ shown: '', read: (text) => readFor(text, 'length', 'plain', english) })
    const asked = stepField(stepField(idleField, { type: 'typed', text: '12' }, length).state, { type: 'left' }, length)
    expect(asked.commit).toBeUndefined()
    const { problem } = asked.state
    expect(problem?.as === 'ask' ? problem.choices.map(({ text }) => text) : []).toEqual(['12 ft', '12 in'])
    const answered = stepField(asked.state, { type: 'answered', value: 3.6576 }, length)
    expect(answered.commit).toEqual({ value: 3.6576 })
  })

  it('emptied becomes unknown where it may, else keeps its value', () => {
    expect(stepField(typed('  '), { type: 'left' }, rules()).commit).toEqual({ value: null })
    expect(stepField(typed(''), { type: 'left' }, rules({ isNullable: false })).commit).toBeUndefined()
  })

  it('refuses what is out of bounds with the reason', () => {
    const step = stepField(typed('900'), { type: 'left' }, rules({ outOfBounds: () => 'too high' }))
    expect(step.commit).toBeUndefined()
    expect(step.state.problem).toEqual({ as: 'unreadable', reason: 'too high' })
  })

  it('drops the draft on Esc', () => {
    expect(stepField(typed('99'), { type: 'escaped' }, rules())).toEqual({ state: idleField })
  })
})

describe('running distances and offsets', () => {
  it.each([
    ['exit 25 ft', 7.62], ['25 ft 0 in', 7.62], ['infeed 8 ft 4 in', -2.54], ['-2.54 m', -2.54], ['entrada 2.54 m', -2.54], ['E 25 ft', 7.62], ['at the datum', 0],
  ])('%s reads as %f m', (text, valueM) => {
    const reading = readFor(text, 'length', 'running', english)
    expect(reading.as === 'value' ? reading.value : null).toBeCloseTo(valueM, 9)
  })

  it.each([['R 6 in', 0.1524], ['left 6 in', -0.1524], ['I 150 mm', -0.15], ['D 150 mm', 0.15], ['on the line', 0]])('%s is %f m across', (text, valueM) => {
    const reading = readFor(text, 'shortLength', 'offset', english)
    expect(reading.as === 'value' ? reading.value : null).toBeCloseTo(valueM, 9)
  })

  it('read back what they show, in both systems and languages', () => {
    for (const words of [english, metric, spanish]) {
      for (const valueM of [7.62, -2.54, 0, 12.7]) {
        const reading = readFor(shownText(valueM, 'length', 'running', words), 'length', 'running', words)
        expect(reading.as === 'value' ? reading.value : null).toBeCloseTo(valueM, 2)
      }
    }
  })

  it('a side word keeps its side through a question', () => {
    const reading = readFor('infeed 12', 'length', 'running', english)
    expect(reading.as === 'ask' ? reading.choices.map(({ value }) => Math.sign(value)) : []).toEqual([-1, -1])
  })
})

it('eighths stand in a field as plain letters, which the reader of numbers knows', () => {
  expect(plainFractions('28\u2009⅛ in')).toBe('28\u20091/8 in')
  const reading = readFor('28\u20091/8 in', 'height', 'plain', english)
  // 28.125 in × 0.0254
  expect(reading.as === 'value' ? reading.value : null).toBeCloseTo(0.714375, 12)
})
