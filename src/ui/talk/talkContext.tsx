import { createContext, useContext, useMemo, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { limitsOf } from '../../checks/limits.ts'
import type { Stage } from '../../derive/types.ts'
import type { Zone } from '../../derive/zones.ts'
import type { Language, Localized } from '../../messages/localized.ts'
import { localizedOf, type UiValues } from '../../messages/ui/text.ts'
import { layoutOf } from '../../scene/document.ts'
import { stageOf } from '../../state/viewStore.ts'
import { useDocuments, useSite, useView, wordsFor, type Words } from '../context.tsx'
import { phaseKey } from '../heading/Heading.tsx'
import { talkSession } from './session.ts'
import { talkSpots, talkSteps, talkStops, talkZones, type SpotInTalk, type TalkLine, type TalkStep } from './talkModel.ts'

/** A talk speaks its own languages, whatever the rest of the screen is in. */
export interface TalkWords {
  languages: readonly Language[]
  words: readonly Words[]
  /** The same text in every language of the talk. */
  each: (text: Localized, values?: UiValues) => readonly { language: Language; text: string }[]
  /** One line for a button or a label: 'next · siguiente'. */
  label: (text: Localized, values?: UiValues) => string
}

export interface Talk {
  say: TalkWords
  stage: Stage
  phaseName: Localized
  zones: readonly Zone[]
  steps: readonly TalkStep[]
  step: TalkStep
  at: number
  spots: readonly SpotInTalk[]
  stops: readonly TalkLine[]
}

const TalkContext = createContext<Talk | null>(null)

export const useTalk = (): Talk => {
  const talk = useContext(TalkContext)
  if (talk === null) throw new Error('a page of the talk was drawn outside TalkProvider')
  return talk
}

export const wordsOfTalk = (words: readonly Words[]): TalkWords => {
  const each: TalkWords['each'] = (text, values = {}) => words.map((one) => ({ language: one.language, text: one.local(text, values) }))
  return { words, languages: words.map(({ language }) => language), each, label: (text, values) => [...new Set(each(text, values).map((one) => one.text))].join(' · ') }
}

/** Words in the languages named, in the units of the layout. */
export const useTalkWords = (languages: readonly Language[]): TalkWords => {
  const pseudo = useView((view) => view.pseudoLanguage)
  const system = useDocuments((state) => layoutOf(state.document).displayUnits)
  const overrides = useDocuments((state) => layoutOf(state.document).unitOverrides)
  return useMemo(() => wordsOfTalk(languages.map((language) => wordsFor(language, system, pseudo, overrides))), [languages, system, pseudo, overrides])
}

/** What the talk is about, worked out once a document and stage. */
export const TalkProvider = ({ children }: { children: ReactNode }): ReactNode => {
  const languages = useStore(talkSession, (session) => session.languages)
  const asked = useStore(talkSession, (session) => session.step)
  const say = useTalkWords(languages)
  const site = useSite((state) => state.site)
  const phase = useView((view) => view.phase)
  const joint = useView((view) => view.joint)
  const talk = useMemo((): Omit<Talk, 'say' | 'at' | 'step'> => {
    const stage = stageOf({ phase, joint, noseM: null })
    const zones = talkZones(site, stage)
    return { stage, zones, phaseName: localizedOf(phaseKey(phase)), steps: talkSteps(zones), spots: talkSpots(site, stage), stops: talkStops(site, stage, limitsOf(site.document)) }
  }, [site, phase, joint])
  const at = Math.min(asked, talk.steps.length - 1)
  const value = useMemo((): Talk => ({ ...talk, say, at, step: talk.steps[at]! }), [talk, say, at])
  return <TalkContext value={value}>{children}</TalkContext>
}
