import { expect, it } from 'vitest'
import { odWords, pipeWords, stickSentences, stickWords } from '../../src/ui/title/pipeWords.ts'
import { english, metric, spanish } from './words.ts'

const ft = 0.3048
// Maple Fork: 40 ft sticks, 280 ft needed, joint loss 7/8 in. Eight sticks: 320 ft − 7 × 7/8 in = 319 ft 5.875 in;
// seven: 280 ft − 6 × 7/8 in = 279 ft 6.75 in, 5 1/4 in short.
const lossM = 0.875 * 0.0254
const made = (sticks: number): number => sticks * 40 * ft - (sticks - 1) * lossM
const answer = { sticks: 8, joints: 7, madeLengthM: made(8), overM: made(8) - 280 * ft, oneFewer: { sticks: 7, joints: 6, madeLengthM: made(7), shortM: 280 * ft - made(7) } }

it('says sticks, joints, made length, over or short, and what one stick fewer gives', () => {
  expect(stickSentences(answer, english)).toEqual([
    '8 sticks, 7 joints: 319 ft 5\u2009⅞ in made, 39 ft 5\u2009⅞ in over.',
    'One stick fewer, 7, gives 279 ft 6\u2009¾ in, 5\u2009¼ in short.',
  ])
})

it('says it in Spanish and metres', () => {
  // 279 ft 6.75 in = 279.5625 × 0.3048 = 85.2107 m; 5.25 in = 133.35 mm
  expect(stickSentences(answer, spanish)[1]).toBe('Con un tubo menos, 7, resultan 85.21 m, faltan 133 mm.')
})

it('a single stick has no joint and nothing fewer', () => {
  const one = { sticks: 1, joints: 0, madeLengthM: 12, overM: 2, oneFewer: null }
  expect(stickSentences(one, metric)).toEqual(['One stick, no joint: 12 m, 2000 mm over.'])
})

it('the title block writes sticks times length, a round foot without its 0 in', () => {
  expect(stickWords(answer, 40 * ft, english)).toBe('8 × 40 ft = 319 ft 5\u2009⅞ in')
  expect(stickWords(answer, 40.5 * ft, english)).toBe('8 × 40 ft 6 in = 319 ft 5\u2009⅞ in')
  expect(stickWords(null, 40 * ft, english)).toBe('not known yet')
})

it('names the pipe and its true outside diameter in both units', () => {
  expect(pipeWords({ system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, english)).toBe('10 in IPS DR 17 PE4710')
  expect(pipeWords({ system: 'metric', size: '450', dr: 17.6, material: 'PE100' }, english)).toBe('450 mm SDR 17.6 PE100')
  expect(pipeWords(null, english)).toBeNull()
  // 12.75 in × 25.4 = 323.85 mm
  expect(odWords(12.75 * 0.0254, english)).toBe('12.75 in (323.85 mm)')
})
