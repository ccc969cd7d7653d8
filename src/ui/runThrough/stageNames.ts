import type { Level } from '../../checks/finding.ts'
import type { JobStage } from '../../derive/stages/types.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { asSentence } from '../../messages/render.ts'
import type { Words } from '../context.tsx'
import { levelKey } from '../findings/words.ts'
import type { Said } from './toDo.ts'

/** 'pull 3 of 7', 'set-up'. */
export const stageName = (stage: JobStage, jointCount: number, words: Words): string => {
  const phase = words.say(`phase_${stage.phase}`)
  return stage.joint === null ? phase : words.local(text.jointStage, { phase, joint: stage.joint, count: jointCount })
}

/** 'pull 3'. */
export const shortStageName = (stage: JobStage, words: Words): string => {
  const phase = words.say(`phase_${stage.phase}`)
  return stage.joint === null ? phase : words.local(text.shortStage, { phase, joint: stage.joint })
}

export const levelName = (level: Level | null, words: Words): string => (level === null || level === 'met' ? words.local(text.nothing) : words.say(levelKey(level)))

/** A said text with a capital and a full stop. */
export const sentence = ({ text: words, values }: Said, { local, language }: Words): string => `${asSentence(local(words, values), language)}.`
export const plain = ({ text: words, values }: Said, { local }: Words): string => local(words, values)

/** What happens, and what to do first: one sentence. */
export const nowSentence = (now: Said, first: Said | null, words: Words): string => (first === null ? sentence(now, words) : `${asSentence(plain(now, words), words.language)}: ${plain(first, words)}.`)
