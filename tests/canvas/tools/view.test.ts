import { describe, expect, it } from 'vitest'
import { edgePush, pinchOf, pinchStep, wheelFactor } from '../../../src/canvas/tools/pan.ts'
import { typeKey } from '../../../src/canvas/tools/typed.ts'
import { readDistance } from '../../../src/canvas/plan/toolContext.ts'

describe('moving the view by hand', () => {
  it('a wheel notch of 100 px is 1.25 times, whichever unit the browser counts in, and never more than three notches at once', () => {
    expect(wheelFactor(-100, 0, false)).toBeCloseTo(1.25, 12)
    expect(wheelFactor(100, 0, false)).toBeCloseTo(0.8, 12)
    expect(wheelFactor(-5000, 0, false)).toBeCloseTo(1.25 ** 3, 12)
    // 3 lines of 33 px
    expect(wheelFactor(-3, 1, false)).toBeCloseTo(1.25 ** 0.99, 12)
  })

  it('a pinch is the way of its middle and the ratio of its spread', () => {
    const before = pinchOf({ xPx: 100, yPx: 100 }, { xPx: 200, yPx: 100 })
    const now = pinchOf({ xPx: 90, yPx: 120 }, { xPx: 290, yPx: 120 })
    expect(pinchStep(before, now)).toEqual({ dxPx: 40, dyPx: 20, factor: 2, xPx: 190, yPx: 120 })
  })

  it('fingers on one spot do not divide by nothing', () => {
    expect(Number.isFinite(pinchStep(pinchOf({ xPx: 5, yPx: 5 }, { xPx: 5, yPx: 5 }), pinchOf({ xPx: 5, yPx: 5 }, { xPx: 9, yPx: 5 })).factor)).toBe(true)
  })

  it('the edge pushes the more the nearer, the middle not at all', () => {
    expect(edgePush(500, 1000)).toBe(0)
    expect(edgePush(0, 1000)).toBeGreaterThan(edgePush(20, 1000))
    expect(edgePush(1000, 1000)).toBe(-edgePush(0, 1000))
    // A pointer far outside pushes no harder than one on the edge.
    expect(edgePush(-400, 1000)).toBe(edgePush(0, 1000))
  })
})

describe('typing during a gesture', () => {
  const read = readDistance('feetInches', 'en')

  it('digits, marks and units collect; letters alone are shortcuts', () => {
    expect(typeKey('', '2', read)).toEqual({ is: 'typing', typed: '2' })
    expect(typeKey("12'", ' ', read)).toEqual({ is: 'typing', typed: "12' " })
    expect(typeKey('', 'f', read)).toEqual({ is: 'other' })
    expect(typeKey('', 'Enter', read)).toEqual({ is: 'other' })
  })

  it('Enter commits what can be read and keeps what cannot', () => {
    expect(typeKey('12-6', 'Enter', read)).toMatchObject({ is: 'enter', valueM: expect.closeTo(3.81, 9) as number })
    expect(typeKey('12..', 'Enter', read)).toEqual({ is: 'unread', typed: '12..' })
  })

  it('a bare number is feet or metres', () => {
    expect(read('25')).toEqual({ valueM: expect.closeTo(7.62, 9) as number, read: '25 ft 0 in' })
    expect(readDistance('metric', 'en')('25')?.valueM).toBe(25)
  })

  it('Backspace takes one back, Esc all', () => {
    expect(typeKey('25', 'Backspace', read)).toEqual({ is: 'typing', typed: '2' })
    expect(typeKey('25', 'Escape', read)).toEqual({ is: 'typing', typed: '' })
    expect(typeKey('', 'Escape', read)).toEqual({ is: 'other' })
  })
})
