/** Lines of the pages of a talk, the same on the screen, read aloud and printed. */
import type { SiteModel, Stage } from '../../derive/types.ts'
import type { Localized } from '../../messages/localized.ts'
import { talkWords } from '../../messages/ui/talkWords.ts'
import { timeWords } from '../title/timeWords.ts'
import type { SinceTalk } from './lastTalk.ts'
import { classLine, listWords, musterLines, roleName, stageLines, type SpotInTalk, type TalkLine, type TalkStep } from './talkModel.ts'

/** Changes told one by one; the rest are counted. */
const MOST_CHANGES = 12

/** A time in each language. */
export const timeIn = (iso: string): Localized => ({ en: timeWords(iso, 'en'), es: timeWords(iso, 'es') })

export function nextLines(site: SiteModel, stage: Stage, spots: readonly SpotInTalk[]): readonly TalkLine[] {
  const people = [...new Set(spots.map(({ item }) => item.record.role))].map(roleName)
  return [{ text: talkWords[`doing_${stage.phase}`] }, ...stageLines(site, stage), ...(people.length === 0 ? [] : [{ text: talkWords.whoIsOn, values: { people: listWords(people) } }])]
}

/** At least one line. */
export function changeLines(since: SinceTalk): readonly TalkLine[] {
  switch (since.kind) {
    case 'first': return [{ text: talkWords.firstTalk }]
    case 'looking': return [{ text: talkWords.looking }]
    case 'same': return [{ text: talkWords.nothingChanged, values: { when: timeIn(since.talk.when) } }]
    case 'unknown': return [{ text: talkWords.changedUnknown, values: { when: timeIn(since.talk.when) } }]
    case 'changed': {
      const more = since.changes.length - MOST_CHANGES
      return [...since.changes.slice(0, MOST_CHANGES), ...(more > 0 ? [{ text: talkWords.moreChanges, values: { count: more } }] : [])]
    }
  }
}

export function spotLine({ item, inside }: SpotInTalk): TalkLine {
  const [deepest] = inside
  if (deepest === undefined) return { text: talkWords.clear }
  return { text: talkWords.inZone, values: { zone: deepest.zone.name, depth: { kind: 'length', value: deepest.depthM }, who: item.label } }
}

export const wrongLines = musterLines

export interface SpokenParts {
  site: SiteModel
  stage: Stage
  step: TalkStep
  spots: readonly SpotInTalk[]
  stops: readonly TalkLine[]
  since: SinceTalk
}

/** What a page says when it is read aloud. */
export function spokenLines({ site, stage, step, spots, stops, since }: SpokenParts): readonly TalkLine[] {
  switch (step.name) {
    case 'choose': return [{ text: talkWords.triggers }]
    case 'next': return nextLines(site, stage, spots)
    case 'zone': return step.zone === null ? [{ text: talkWords.noZones }] : [classLine(step.zone), { text: step.zone.sentence }]
    case 'stand': return [{ text: talkWords.whereStand }, { text: talkWords.fingerOn }]
    case 'stops': return [{ text: talkWords.anybodyStop }, ...stops]
    case 'changed': return changeLines(since)
    case 'wrong': return [...wrongLines(site), { text: talkWords.burn }, { text: talkWords.burnDo }, { text: talkWords.crush }, { text: talkWords.crushDo }]
    case 'question': return [{ text: talkWords.openQuestion }]
    case 'sign': return [{ text: talkWords.signOff }]
  }
}
