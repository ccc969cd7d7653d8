import { expect, it } from 'vitest'
import { beamLabels, labelsOf } from '../../src/scene/resolve.ts'
import { free, item, onItem, onRun, run, setUp, yard } from '../helpers/documents.ts'

it('stands count from the datum outward, E on the exit and I on the infeed, whatever their order in the document', () => {
  const labels = labelsOf(yard(
    item('stand', 'stand:far', onRun(20)), item('stand', 'stand:near', onRun(5)), item('stand', 'stand:in2', onRun(-9)), item('stand', 'stand:in1', onRun(-3)),
  ))
  expect(Object.fromEntries(labels)).toEqual({ 'stand:near': 'E1', 'stand:far': 'E2', 'stand:in1': 'I1', 'stand:in2': 'I2' })
})
it('a free stand takes its place in the order by its distance along the run', () => {
  const labels = labelsOf(yard(item('stand', 'stand:a', onRun(20)), item('stand', 'stand:b', free(6, 0))))
  expect([labels.get('stand:b'), labels.get('stand:a')]).toEqual(['E1', 'E2'])
})
it('single gear has a letter alone, more than one are numbered along the run', () => {
  const one = labelsOf(yard(item('machine', 'machine:1', onRun(0)), item('puller', 'puller:1', onRun(90)), item('rack', 'rack:1', onRun(-6)), item('roller', 'roller:1', onRun(30))))
  expect(Object.fromEntries(one)).toEqual({ 'machine:1': 'M', 'puller:1': 'P', 'rack:1': 'R', 'roller:1': 'G1' })
  const two = labelsOf(yard(item('puller', 'puller:b', onRun(90)), item('puller', 'puller:a', onRun(50)), item('rack', 'rack:b', onRun(-5)), item('rack', 'rack:a', onRun(-16))))
  expect(Object.fromEntries(two)).toEqual({ 'puller:a': 'P1', 'puller:b': 'P2', 'rack:a': 'Ra', 'rack:b': 'Rb' })
  expect(beamLabels('R')).toEqual({ near: 'R1', far: 'R2' })
})
it('crew have the letter of their task, with a small letter behind it where two share one', () => {
  const labels = labelsOf(yard(
    item('machine', 'machine:1', onRun(0)), item('crew', 'crew:1', onItem('machine:1'), { role: 'operator' }),
    item('crew', 'crew:2', onRun(40), { role: 'spotter' }), item('crew', 'crew:3', onRun(10), { role: 'spotter' }),
  ))
  expect([labels.get('crew:1'), labels.get('crew:2'), labels.get('crew:3')]).toEqual(['O', 'Sb', 'Sa'])
})
it('a second run has its own numbers behind its own figure', () => {
  const labels = labelsOf(yard(
    setUp({ id: 'setUp:2', datum: { xM: 0, yM: 40 } }), run({ id: 'run:2', setUpId: 'setUp:2' }),
    item('stand', 'stand:1', onRun(5)), item('stand', 'stand:2', onRun(5, { runId: 'run:2' })),
  ))
  expect([labels.get('stand:1'), labels.get('stand:2')]).toEqual(['E1', '2-E1'])
})
it('obstacles of the site carry no label', () => {
  expect(labelsOf(yard(item('tree', 'tree:1', free(3, 3)))).size).toBe(0)
})
