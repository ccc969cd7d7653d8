import { describe, expect, it } from 'vitest'
import { documentIssues } from '../../../src/scene/references.ts'
import { recordsOf, setUpsOf, type YardDocument } from '../../../src/scene/document.ts'
import { after, recordOf, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const near = (x: number): unknown => expect.closeTo(x, 7)
const blank = documentOf(layout(), job({ stickLengthM: 12.192 }))
const strip = { xM: 0, yM: 0, headingRad: 0, lengthM: 128, widthM: 20 }
const ring = (document: YardDocument): unknown => recordsOf(document, 'boundary')[0]?.points

describe('drawing the strip', () => {
  it('on a blank sheet brings boundary, datum, axis, path and machine, one stick and 10 ft behind the datum', () => {
    const drawn = after(blank, 'drawStrip', strip)
    expect(ring(drawn)).toEqual([{ xM: 0, yM: -10 }, { xM: 128, yM: -10 }, { xM: 128, yM: 10 }, { xM: 0, yM: 10 }])
    // 12.192 + 3.048 = 15.24.
    expect(setUpsOf(drawn)[0]).toMatchObject({ datum: { xM: 15.24, yM: 0 }, headingRad: 0 })
    expect(recordsOf(drawn, 'machine')[0]?.place).toMatchObject({ at: 'onRun', runningM: 0 })
    expect(documentIssues(drawn)).toEqual([])
  })
  it('askew puts axis and boundary askew', () => {
    const drawn = after(blank, 'drawStrip', { ...strip, xM: 5, yM: 5, headingRad: Math.PI / 2 })
    expect(setUpsOf(drawn)[0]).toMatchObject({ datum: { xM: near(5), yM: near(20.24) }, headingRad: near(Math.PI / 2) })
    expect(ring(drawn)).toEqual([{ xM: near(15), yM: near(5) }, { xM: near(15), yM: near(133) }, { xM: near(-5), yM: near(133) }, { xM: near(-5), yM: near(5) }])
  })
  it('too short for that puts the datum in the middle; without a stick length it counts on 40 ft', () => {
    expect(setUpsOf(after(blank, 'drawStrip', { ...strip, lengthM: 20 }))[0]?.datum.xM).toBe(10)
    expect(setUpsOf(after(documentOf(layout(), job()), 'drawStrip', strip))[0]?.datum.xM).toBe(15.24)
  })
  it('round a set-up that is there moves it in, with what is attached; a second boundary moves nothing', () => {
    const first = after(yard(item('machine', 'machine:1', onRun(0)), item('stand', 'stand:1', onRun(6))), 'drawStrip', strip)
    expect(setUpsOf(first)).toHaveLength(1)
    expect(whereIs(first, 'stand:1').xM).toBeCloseTo(21.24, 9)
    const second = after(first, 'drawStrip', { ...strip, yM: 30 }, { newId: (prefix) => `${prefix}:second`, now: () => '' })
    expect(recordsOf(second, 'boundary')).toHaveLength(2)
    expect(whereIs(second, 'stand:1').xM).toBeCloseTo(21.24, 9)
  })
})

describe('swapping infeed and exit', () => {
  const line = yard(item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(-6)), item('stand', 'stand:1', onRun(6, { offsetM: 1 })), item('tree', 'tree:1', free(40, 4)))
  it('turns the line half round about the datum where no boundary is drawn', () => {
    const now = after(line, 'reverse', { setUpId: 'setUp:1' })
    expect(whereIs(now, 'stand:1')).toMatchObject({ xM: near(-6), yM: near(1), runningM: 6, offsetM: 1 })
    expect(whereIs(now, 'rack:1').xM).toBeCloseTo(6, 7)
    expect(whereIs(now, 'tree:1')).toMatchObject({ xM: 40, yM: 4 })
  })
  it('keeps the room at each end: in a strip it turns about the middle of the strip', () => {
    const drawn = after(blank, 'drawStrip', strip)
    const [before] = setUpsOf(drawn)
    const now = after(drawn, 'reverse', { setUpId: before!.id })
    // Datum 15.24 from the old infeed end lies 15.24 from the other end: 128 − 15.24 = 112.76.
    expect(setUpsOf(now)[0]).toMatchObject({ datum: { xM: near(112.76), yM: near(0) } })
    expect(Math.abs(setUpsOf(now)[0]!.headingRad)).toBeCloseTo(Math.PI, 8)
  })
  it('twice is the start again, bends and fall included', () => {
    const bent = documentOf(layout(), job(), setUp({ fallRatio: 0.01, crossFallRatio: -0.02, pitchRad: null }), run({ vertices: [{ xM: 30, yM: 0, radiusM: 5 }, { xM: 40, yM: 20, radiusM: null }] }))
    const once = after(bent, 'reverse', { setUpId: 'setUp:1' })
    expect(recordOf(once, 'setUp:1')).toMatchObject({ fallRatio: -0.01, crossFallRatio: 0.02, pitchRad: null })
    expect(recordOf(once, 'run:1')['vertices']).toEqual([{ xM: near(-30), yM: near(0), radiusM: 5 }, { xM: -40, yM: -20, radiusM: null }])
    const twice = after(once, 'reverse', { setUpId: 'setUp:1' })
    expect(recordOf(twice, 'setUp:1')).toMatchObject({ datum: { xM: near(0), yM: near(0) }, headingRad: near(0), fallRatio: 0.01 })
    expect(recordOf(twice, 'run:1')['vertices']).toEqual([{ xM: near(30), yM: near(0), radiusM: 5 }, { xM: 40, yM: 20, radiusM: null }])
  })
})
