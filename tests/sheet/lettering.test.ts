import { describe, expect, it } from 'vitest'
import { FRACTION_SLASH, guessedWidthPx } from '../../src/drawing/fractionText.ts'
import { lettering, textsOf } from './drawn.ts'

const look = { sizePx: 15 }
const pieces = (text: string, at: Parameters<ReturnType<typeof lettering>['line']>[3] = look): { text: string; sizePx: number; xM: number; yM: number }[] =>
  lettering().line(text, 100, 50, at).flatMap((primitive) => (primitive.t === 'text' ? [primitive] : []))

describe('fractions on the page', () => {
  it('are set with digits of at least 7 pt, the upper raised, the lower on the baseline', () => {
    const [whole, above, slash, below, rest] = pieces('28 5/16 in')
    expect([whole?.text, above?.text, slash?.text, below?.text, rest?.text]).toEqual(['28 ', '5', FRACTION_SLASH, '16', ' in'])
    // 0.8 × 15 = 12 px would be 6 pt: 14 px stands instead.
    expect([above?.sizePx, below?.sizePx]).toEqual([14, 14])
    expect(above!.yM).toBeLessThan(50)
    expect(below!.yM).toBe(50)
  })
  it('take ½, ¼ and ¾ apart too, parted from the whole by a thin space', () => {
    expect(pieces('28\u2009½ in').map(({ text }) => text)).toEqual(['28\u2009', '1', FRACTION_SLASH, '2', ' in'])
    expect(pieces('28½ in').map(({ text }) => text).join('')).toBe(`28\u20091${FRACTION_SLASH}2 in`)
    expect(pieces('a sink of ½ in').map(({ text }) => text)).toEqual(['a sink of ', '1', FRACTION_SLASH, '2', ' in'])
    expect(pieces('⅞ in').map(({ text }) => text)).toEqual(['7', FRACTION_SLASH, '8', ' in'])
  })
  it('leave ratios and dates alone', () => {
    expect(pieces('1/200').map(({ text }) => text)).toEqual(['1/200'])
    expect(pieces('6/16/2025').map(({ text }) => text)).toEqual(['6/16/2025'])
  })
  it('stand without gaps or overlaps, ending where an aligned line must end', () => {
    const boxes = textsOf(lettering().line('28 5/16 in', 100, 50, { ...look, align: 'right' }))
    boxes.slice(1).forEach((box, i) => expect(box.x0).toBeCloseTo(boxes[i]!.x1, 9))
    expect(boxes.at(-1)!.x1).toBeCloseTo(100, 9)
  })
})

describe('text cut to fit', () => {
  const { clipped } = lettering()
  it('stays whole where there is room', () => expect(clipped('pump house', 200, look)).toBe('pump house'))
  it('ends in an ellipsis and is as long as fits', () => {
    const text = clipped('a very long name of a very long yard', 100, look)
    expect(text.endsWith('…')).toBe(true)
    expect(guessedWidthPx(text, 15)).toBeLessThanOrEqual(100)
    // One more letter would not have fitted.
    const kept = text.length - 1
    expect(guessedWidthPx(`${'a very long name of a very long yard'.slice(0, kept + 1)}…`, 15)).toBeGreaterThan(100)
  })
  it('gives nothing where not even the ellipsis fits', () => expect(clipped('pump house', 2, look)).toBe(''))
})

describe('wrapped text', () => {
  const { wrapped } = lettering()
  const text = 'The nose spotter stands in the line of the tight rope and nobody has said why.'
  it('loses no word and keeps every line within the room', () => {
    const lines = wrapped(text, 150, { ...look, firstIndentPx: 60 })
    expect(lines.join(' ')).toBe(text)
    expect(lines.length).toBeGreaterThan(3)
    lines.forEach((line, i) => expect(guessedWidthPx(line, 15)).toBeLessThanOrEqual(i === 0 ? 90 : 150))
  })
  it('never parts a figure from its unit', () => {
    for (let room = 60; room < 300; room += 7) {
      for (const line of wrapped('its stand goes no lower than 18 in and carries 241 lb at 12 ft 6 in', room, look)) expect(line).not.toMatch(/^(in|lb|ft)\b/)
    }
  })
  it('ends in an ellipsis where lines are limited', () => {
    const lines = wrapped(text, 150, { ...look, most: 2 })
    expect(lines.length).toBe(2)
    expect(lines[1]).toMatch(/…$/)
  })
  it('cuts a word wider than the room instead of letting it run over', () => {
    expect(guessedWidthPx(wrapped('counterclockwisewardly', 50, look)[0]!, 15)).toBeLessThanOrEqual(50)
  })
  it('of nothing is no line', () => expect(wrapped('', 100, look)).toEqual([]))
})
