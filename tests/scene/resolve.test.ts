import { describe, expect, it } from 'vitest'
import { pathOf, PlaceError, resolvePlace } from '../../src/scene/resolve.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp, yard } from '../helpers/documents.ts'

const near = (x: number): unknown => expect.closeTo(x, 9)

describe('the path of a run', () => {
  it('starts at the datum along the axis and goes on straight both ways without vertices', () => {
    const document = documentOf(layout(), job(), setUp({ datum: { xM: 10, yM: 5 }, headingRad: Math.PI / 2 }), run())
    expect(resolvePlace(document, onRun(20))).toEqual({ xM: near(10), yM: near(25), headingRad: near(Math.PI / 2), runningM: 20, offsetM: 0 })
    expect(resolvePlace(document, onRun(-20))).toMatchObject({ xM: near(10), yM: near(-15) })
  })
  it('takes only the distance along the axis from its first vertex, so that path and axis never disagree', () => {
    const document = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: 30, yM: 4, radiusM: null }, { xM: 30, yM: 50, radiusM: null }] }))
    // The corner lies at (30, 0), not (30, 4): 40 m along the path is 10 m up the second leg.
    expect(resolvePlace(document, onRun(40))).toMatchObject({ xM: near(30), yM: near(10), headingRad: near(Math.PI / 2) })
    expect(resolvePlace(document, onRun(29))).toMatchObject({ xM: near(29), yM: near(0), headingRad: near(0) })
  })
  it('keeps the direction of the axis where the first vertex lies behind the datum', () => {
    const document = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: -30, yM: 0, radiusM: null }, { xM: 0, yM: 50, radiusM: null }] }))
    expect(pathOf(document, 'run:1').start.headingRad).toBe(0)
  })
  it('names a run or a set-up that is not there', () => {
    expect(() => pathOf(yard(), 'run:9')).toThrow('run run:9 is not in the document')
    expect(() => pathOf(documentOf(layout(), job(), run()), 'run:1')).toThrow('set-up setUp:1 of run run:1')
  })
})

describe('the place of an item', () => {
  it('is right of the run for a positive offset, looking down-string, and turns counter-clockwise', () => {
    // Heading +x: right is −y.
    expect(resolvePlace(yard(), onRun(12, { offsetM: 2, turnRad: 0.1 }))).toEqual({ xM: near(12), yM: near(-2), headingRad: near(0.1), runningM: 12, offsetM: 2 })
  })
  it('of a free item is projected on to the run', () => {
    expect(resolvePlace(yard(), free(7, 3, 1))).toEqual({ xM: 7, yM: 3, headingRad: 1, runningM: near(7), offsetM: near(-3) })
  })
  it('has no distances where the layout has no run', () => {
    expect(resolvePlace(documentOf(layout(), job()), free(7, 3))).toEqual({ xM: 7, yM: 3, headingRad: 0, runningM: null, offsetM: null })
  })
  it('on an item follows it, and an item on that follows both', () => {
    const machine = item('machine', 'machine:1', onRun(0, { turnRad: Math.PI / 2 }))
    const crew = item('crew', 'crew:1', onItem('machine:1', 1, 2))
    const note = item('note', 'note:1', onItem('crew:1', 1, 0, 0.5))
    const document = yard(machine, crew, note)
    // Machine heads +y: its x is +y, its y is −x. Crew at (−2, 1); the note 1 m further along +y.
    expect(resolvePlace(document, crew)).toMatchObject({ xM: near(-2), yM: near(1), headingRad: near(Math.PI / 2) })
    expect(resolvePlace(document, note)).toMatchObject({ xM: near(-2), yM: near(2), headingRad: near(Math.PI / 2 + 0.5) })
  })
  it('of a feature is the middle of its points', () => {
    const fence = item('fence', 'fence:1', [{ xM: 0, yM: 0 }, { xM: 10, yM: 4 }])
    expect(resolvePlace(yard(fence), fence)).toMatchObject({ xM: 5, yM: 2, headingRad: 0 })
  })
  it('that goes round in a loop is refused with the names of the loop', () => {
    const document = yard(item('crew', 'crew:a', onItem('crew:b')), item('crew', 'crew:b', onItem('crew:a')))
    expect(() => resolvePlace(document, document.records['crew:a'] as never)).toThrow('places go round in a loop: crew:a → crew:b → crew:a')
  })
  it('on something that is not there is refused with its name', () => {
    const document = yard(item('crew', 'crew:a', onItem('machine:9')))
    expect(() => resolvePlace(document, document.records['crew:a'] as never)).toThrow(PlaceError)
    expect(() => resolvePlace(document, document.records['crew:a'] as never)).toThrow('machine:9')
  })
  it('of an unchanged record in a new document follows the new set-up', () => {
    const stand = item('stand', 'stand:1', onRun(10))
    expect(resolvePlace(yard(stand), stand).yM).toBeCloseTo(0, 12)
    const moved = documentOf(layout(), job(), setUp({ datum: { xM: 0, yM: 5 } }), run(), stand)
    expect(resolvePlace(moved, stand).yM).toBeCloseTo(5, 12)
  })
})
