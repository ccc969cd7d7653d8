import type { ReactNode } from 'react'
import { createPortal } from 'react-dom'
import { useStore } from 'zustand'
import { themes } from '../../drawing/theme.ts'
import type { Localized } from '../../messages/localized.ts'
import { asSentence } from '../../messages/render.ts'
import type { UiValues } from '../../messages/ui/text.ts'
import { talkWords as text } from '../../messages/ui/talkWords.ts'
import { jobOf, layoutOf } from '../../scene/document.ts'
import { Figure } from '../common/Figure.tsx'
import { useDocuments, useSite, useUi, useView } from '../context.tsx'
import { useSinceTalk } from './lastTalk.ts'
import { talkPictureSvg } from './planPicture.ts'
import { talkSession } from './session.ts'
import { useTalk, useTalkWords, type TalkWords } from './talkContext.tsx'
import { changeLines, nextLines, spotLine, timeIn, wrongLines } from './talkLines.ts'
import { classLine, roleName, type TalkLine } from './talkModel.ts'

const both = ['en', 'es'] as const
const PICTURE = { widthPx: 720, heightPx: 170 } as const
const SIGN_ROWS = 8

/** A line in both languages, one under the other. */
const Pair = ({ say, text: line, values = {} }: TalkLine & { say: TalkWords }): ReactNode => say.each(line, values).map(({ language, text: one }) => <p key={language} lang={language}><Figure text={asSentence(one, language)} /></p>)

/** The talk on one page in both languages, for the printer only: black on white, whatever the screen shows. */
export const TalkSheet = (): ReactNode => {
  const { app } = useUi()
  const { zones, spots, stops, stage, phaseName } = useTalk()
  const say = useTalkWords(both)
  const site = useSite((state) => state.site)
  const profile = useSite((state) => state.profile)
  const isTurned = useView((view) => view.turned)
  const layout = useDocuments((state) => layoutOf(state.document))
  const dispatch = useDocuments((state) => jobOf(state.document).dispatch)
  const { people, before, note, signed } = useStore(talkSession)
  const since = useSinceTalk(before)
  const when = signed?.when ?? app.env.now()
  const head = (line: Localized, values: UiValues = {}): string => say.label(line, values)
  const svg = talkPictureSvg({ site, profile, zones, chosen: null, spotIds: new Set(spots.map(({ item }) => item.id)), ringedId: null, isTurned, ...PICTURE, theme: themes.sun }, head(text.planAll))
  return createPortal(
    <section className="talk-print" aria-hidden="true">
      <header><h1>{head(text.printTitle, { phase: phaseName })}</h1><p>{head(text.printLine, { title: layout.title, letter: layout.revision, when: timeIn(when) })}</p><b className="talk-print-stop">STOP · ALTO</b></header>
      <div className="talk-print-plan" dangerouslySetInnerHTML={{ __html: svg }} />
      <div className="talk-print-columns">
        <div><h2>{head(text.whatNext)}</h2>{nextLines(site, stage, spots).map((line) => <Pair say={say} key={line.text.en} {...line} />)}</div>
        {zones.map((zone) => <div key={zone.key} className="talk-print-zone" data-class={zone.zoneClass}><h3>{head(zone.name)}</h3><p className="talk-print-class">{head(classLine(zone).text, classLine(zone).values)}</p><Pair say={say} text={zone.sentence} /></div>)}
        <div><h2>{head(text.whereStand)}</h2>{spots.map((spot) => <p key={spot.item.id}><b>{spot.item.label}</b> {head(roleName(spot.item.record.role))}: {head(spotLine(spot).text, spotLine(spot).values)}</p>)}</div>
        <div><h2>{head(text.whatStops)}</h2><Pair say={say} text={text.anybodyStop} />{stops.map((line) => <Pair say={say} key={line.text.en} {...line} />)}</div>
        <div><h2>{head(text.whatChanged)}</h2>{changeLines(since).map((line, i) => <Pair say={say} key={i} {...line} />)}</div>
        <div>
          <h2>{head(text.ifWrong)}</h2>
          {(['address', 'muster', 'caller'] as const).map((field) => <p key={field}>{head(text[field])}: <b>{dispatch[field] ?? '________________'}</b></p>)}
          {wrongLines(site).map((line) => <Pair say={say} key={line.text.en} {...line} />)}
          <p><b>{head(text.burn)}</b></p><Pair say={say} text={text.burnDo} /><p><b>{head(text.crush)}</b></p><Pair say={say} text={text.crushDo} /><Pair say={say} text={text.firstMinuteSource} />
        </div>
        <div><h2>{head(text.openQuestion)}</h2><p>{note === '' ? '________________' : note}</p></div>
      </div>
      <h2>{head(text.printSign)}</h2>
      <ol className="talk-print-names">{Array.from({ length: Math.max(SIGN_ROWS, people.length) }, (_, i) => <li key={i}>{people[i] ?? ''}</li>)}</ol>
      <footer><Pair say={say} text={text.spanishMark} /><Pair say={say} text={text.advice} /></footer>
    </section>,
    document.body,
  )
}
