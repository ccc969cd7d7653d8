import type { ReactNode } from 'react'
import type { Localized } from '../../messages/localized.ts'
import type { UiValues } from '../../messages/ui/text.ts'
import { talkWords } from '../../messages/ui/talkWords.ts'
import { asSentence } from '../../messages/render.ts'
import { Figure } from '../common/Figure.tsx'
import { useTalk } from './talkContext.tsx'

/** The one sentence of a page, large, in each language of the talk. */
export const Sentence = ({ text, values = {} }: { text: Localized; values?: UiValues }): ReactNode => {
  const { say } = useTalk()
  const lines = say.each(text, values)
  return (
    <div className="talk-sentences">
      {lines.map(({ language, text: line }) => (
        <div key={language} lang={language} className="talk-language">
          {lines.length > 1 ? <p className="talk-tongue">{talkWords[language === 'en' ? 'english' : 'spanish'].en}</p> : null}
          <p className="talk-sentence"><Figure text={line} /></p>
        </div>
      ))}
    </div>
  )
}

/** A lesser line, one language under the other. */
export const Line = ({ text, values = {}, className = 'talk-line' }: { text: Localized; values?: UiValues; className?: string }): ReactNode => {
  const { say } = useTalk()
  return <div className={className}>{say.each(text, values).map(({ language, text: line }) => <p key={language} lang={language}><Figure text={asSentence(line, language)} /></p>)}</div>
}

/** Words of a heading or a button side by side. */
export const Label = ({ text, values = {} }: { text: Localized; values?: UiValues }): ReactNode => {
  const { say } = useTalk()
  const lines = say.each(text, values)
  const isSame = new Set(lines.map((one) => one.text)).size === 1
  return (isSame ? lines.slice(0, 1) : lines).map(({ language, text: line }, i) => <span key={language} lang={language} className={i === 0 ? 'talk-word' : 'talk-word talk-word-other'}>{i === 0 ? null : <span className="talk-slash"> / </span>}<Figure text={line} /></span>)
}

export const StopSign = (): ReactNode => (
  <span className="talk-stop" role="img" aria-label={talkWords.stopSign.en}><b aria-hidden="true">STOP</b><b aria-hidden="true">ALTO</b></span>
)
