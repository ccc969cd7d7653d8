import { expect, it } from 'vitest'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { after, recordOf } from '../../helpers/commands.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'

const stand = (height: object) => yard(item('stand', 'stand:1', onRun(6), { height }))
const dropped = (height: object, dLevelM: number): unknown => recordOf(after(stand(height), 'dropBy', { ids: ['stand:1'], dLevelM }), 'stand:1')['height']

it('raising keeps the kind of the rule: a saddle grows, a drop shrinks', () => {
  expect(dropped({ rule: 'aboveGround', saddleM: 0.7 }, 0.05)).toEqual({ rule: 'aboveGround', saddleM: 0.75 })
  expect(dropped({ rule: 'belowAxis', dropM: 0.2 }, 0.05)).toEqual({ rule: 'belowAxis', dropM: 0.15 })
})
it('a support on the jaw line becomes one a drop below it, negative when raised', () => {
  expect(dropped({ rule: 'onAxis' }, -0.0762)).toEqual({ rule: 'belowAxis', dropM: 0.0762 })
  expect(dropped({ rule: 'onAxis' }, 0.01)).toEqual({ rule: 'belowAxis', dropM: -0.01 })
})
it('an unknown height stays unknown, and a step of nothing changes nothing', () => {
  expect(dropped({ rule: 'unknown' }, 0.1)).toEqual({ rule: 'unknown' })
  expect(dropped({ rule: 'onAxis' }, 0)).toEqual({ rule: 'onAxis' })
})
it('the height rule is set on supports and passes over what has none', () => {
  const document = yard(item('stand', 'stand:1', onRun(6)), item('puller', 'puller:1', onRun(60)))
  const now = after(document, 'setHeight', { ids: ['stand:1', 'puller:1'], height: { rule: 'aboveGround', saddleM: 0.8 } })
  expect(recordOf(now, 'stand:1')['height']).toEqual({ rule: 'aboveGround', saddleM: 0.8 })
  expect(recordOf(now, 'puller:1')).toBe(recordOf(document, 'puller:1'))
})
it('a rule that is none is refused', () => {
  expect(() => after(stand({ rule: 'onAxis' }), 'setHeight', { ids: ['stand:1'], height: { rule: 'floating' } })).toThrow('height.rule "floating" is not known here; must be one of: onAxis, belowAxis, aboveGround, unknown')
})
it('the step says which way and how far', () => {
  expect(commandOf('dropBy')?.label(stand({ rule: 'onAxis' }), { ids: ['stand:1'], dLevelM: -0.1 })).toEqual({ text: { en: 'lower E1 by {step}', es: 'bajar E1 {step}' }, values: { step: { kind: 'height', value: 0.1 } } })
})
