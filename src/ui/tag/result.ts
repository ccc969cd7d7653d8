import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import type { Words } from '../context.tsx'

/** One line of result of a support: what it carries in the stage shown, or how far the pipe is above it. */
export const resultWords = (site: SiteModel, profile: SectionProfile, itemId: string, words: Words): string | null => {
  const supports = site.supports.filter((support) => support.itemId === itemId)
  if (supports.length === 0) return null
  if (profile.status !== 'ok') return words.say(profile.status === 'missing' ? 'resultMissing' : 'resultNone')
  const parts = supports.flatMap(({ key, label }) => {
    const load = profile.loads.get(key)
    const head = supports.length > 1 ? `${label} ` : ''
    if (load === undefined) return [`${head}${words.say('resultNotReached')}`]
    return [`${head}${load.floats ? words.say('resultFloats', { gap: { kind: 'shortLength', value: Math.max(0, load.gapM) } }) : words.say('resultCarries', { load: { kind: 'force', value: load.reactionN } })}`]
  })
  return parts.join('; ')
}

/** Room of the saddle of an item, in the range of its gear; null where it has none. */
export const rangeOf = (site: SiteModel, itemId: string): { lowM: number; highM: number; nowM: number | null } | null => {
  const support = site.supports.find((candidate) => candidate.itemId === itemId)
  if (support === undefined || support.lowestSaddleM === null || support.highestSaddleM === null) return null
  return { lowM: support.lowestSaddleM, highM: support.highestSaddleM, nowM: support.saddleM }
}
