import type { JobRecord } from '../../scene/records/frame.ts'
import { inchM } from '../../units/factors.ts'
import { numberText, roundToStep } from '../../units/numberText.ts'
import type { Quantity } from '../../units/quantity.ts'
import type { Words } from '../context.tsx'
import type { StickAnswer } from '../services.ts'

/** True outside diameter in both units: a nominal 12 is 12.75 in, 13.2 in or 315 mm, so the size alone says too little. */
export const odWords = (odM: number, words: Words): string =>
  words.say('odBoth', { inches: numberText(roundToStep(odM / inchM, 0.001), 3), millimetres: numberText(roundToStep(odM * 1000, 0.01), 2) })

/** '10 in IPS DR 17 PE4710' or '315 mm SDR 17 PE100'. */
export const pipeWords = (pipe: JobRecord['pipe'], words: Words): string | null => {
  if (pipe === null) return null
  const { system, size, dr, material } = pipe
  const values = { size, system, dr: numberText(dr, 1), material }
  return words.say(system === 'metric' ? 'pipeMetric' : 'pipeInches', values)
}

/** '8 × 40 ft = 319 ft 6 in', or as much of it as is known. */
export const stickWords = (answer: { sticks: number; madeLengthM: number } | null, stickLengthM: number | null, words: Words): string => {
  if (answer === null || stickLengthM === null) return words.say('sticksUnknown')
  const made: Quantity = { kind: 'length', value: answer.madeLengthM }
  // The Spanish words for feet and inches are too long for one line of the title block.
  if (words.language === 'es') return words.say('sticksTimes', { sticks: answer.sticks, stick: words.figure({ kind: 'length', value: stickLengthM }, { style: 'tape' }).replace(/ 0"$/, ''), made: words.figure(made, { style: 'tape' }) })
  return words.say('sticksTimes', { sticks: answer.sticks, stick: plainFeet(stickLengthM, words), made })
}

/** A round 40 ft reads better as '40 ft' than as '40 ft 0 in'. */
const plainFeet = (lengthM: number, words: Words): string => words.figure({ kind: 'length', value: lengthM }).replace(/ 0 (in|pulg)$/, '')

/** The answer of the short form in sentences: sticks, joints, made length, over or short, and what one stick fewer gives. */
export const stickSentences = (answer: StickAnswer, words: Words): readonly string[] => {
  const { sticks, joints, madeLengthM, overM, oneFewer } = answer
  const overOrShort = (valueM: number): string => words.say(valueM < 0 ? 'sticksShort' : 'sticksOver', { length: { kind: 'height', value: Math.abs(valueM) } })
  return [
    words.say(sticks === 1 ? 'sticksOne' : 'sticksMany', { sticks, joints, made: { kind: 'length', value: madeLengthM }, over: overOrShort(overM) }),
    ...(oneFewer === null ? [] : [words.say('sticksFewer', { sticks: oneFewer.sticks, made: { kind: 'length', value: oneFewer.madeLengthM }, over: overOrShort(-oneFewer.shortM) })]),
  ]
}
