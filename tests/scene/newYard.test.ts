import { expect, it } from 'vitest'
import { jobOf, layoutOf, recordsOf, setUpsOf } from '../../src/scene/document.ts'
import { emptyDocument, newDocument, type NewYardForm } from '../../src/scene/newYard.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { testEnv } from '../helpers/documents.ts'

const skipped: NewYardForm = { pipe: null, neededLengthM: null, stickLengthM: null, stripLengthM: null, stripWidthM: null, fallRatio: null }

it('with every field skipped there is datum, axis and machine, and all that was not said stays unknown', () => {
  const document = newDocument(skipped, testEnv(), 'metric')
  expect(Object.values(document.records).map(({ kind }) => kind)).toEqual(['layout', 'job', 'setUp', 'run', 'machine'])
  expect(jobOf(document)).toMatchObject({ pipe: null, stickLengthM: null, neededLengthM: null, noseHold: null })
  expect(setUpsOf(document)[0]).toMatchObject({ datum: { xM: 0, yM: 0 }, headingRad: 0, fallRatio: null })
  expect(layoutOf(document)).toMatchObject({ displayUnits: 'metric', profile: 'metric-generic', title: '' })
  expect(documentIssues(document)).toEqual([])
})
it('with all fields the strip lies about the datum: one stick and 10 ft behind it, the rest before it', () => {
  const form: NewYardForm = { title: 'Lot 4', pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, neededLengthM: 85.344, stickLengthM: 12.192, stripLengthM: 128.016, stripWidthM: 21.336, fallRatio: 0.01 }
  const document = newDocument(form, testEnv(), 'feetInches')
  // 12.192 + 3.048 = 15.24 behind; 128.016 − 15.24 = 112.776 before; half of 21.336 = 10.668 each side.
  expect(recordsOf(document, 'boundary')[0]?.points).toEqual([{ xM: -15.24, yM: -10.668 }, { xM: 112.776, yM: -10.668 }, { xM: 112.776, yM: 10.668 }, { xM: -15.24, yM: 10.668 }])
  expect(setUpsOf(document)[0]?.fallRatio).toBe(0.01)
  expect([layoutOf(document).title, layoutOf(document).profile]).toEqual(['Lot 4', 'US'])
  expect(documentIssues(document)).toEqual([])
})
it('a strip of unknown width has no boundary: nothing is invented', () => {
  expect(recordsOf(newDocument({ ...skipped, stripLengthM: 100 }, testEnv(), 'metric'), 'boundary')).toEqual([])
})
it('the blank sheet holds layout and job alone, each with an id of its own', () => {
  const env = testEnv()
  const [one, two] = [emptyDocument(env, 'feetInches'), emptyDocument(env, 'feetInches')]
  expect(Object.keys(one.records)).toEqual(['layout:this', 'job:this'])
  expect(layoutOf(one).layoutId).not.toBe(layoutOf(two).layoutId)
  expect(documentIssues(one)).toEqual([])
})
