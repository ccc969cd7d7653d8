import type { ReactNode } from 'react'
import { tapeModeWords as text } from '../../messages/ui/tapeModeWords.ts'
import { recordsOf } from '../../scene/document.ts'
import { stakedIds } from '../../scene/commands/index.ts'
import { differenceText, standingText } from '../asSet/asSetText.ts'
import { standingOf } from '../asSet/measured.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useDocuments, useWords } from '../context.tsx'
import { JawsLine } from './JawsLine.tsx'
import type { Mark } from './marks.ts'
import type { JawsAsSet } from './useJaws.ts'

/** After the last mark: what is left, what stands off, and the offer to lock what is staked. */
export const EndPage = ({ marks, jaws, nameOf, onGo }: { marks: readonly Mark[]; jaws: JawsAsSet; nameOf: (mark: Mark) => string; onGo: (at: number) => void }): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const run = useCommand()
  const document = useDocuments((state) => state.document)
  const loose = stakedIds(document).length
  const isStaked = recordsOf(document, 'asSet').length > 0
  const numbered = marks.map((mark, at) => ({ mark, at }))
  const open = numbered.filter(({ mark }) => !mark.isTicked)
  const off = numbered.filter(({ mark }) => mark.height !== null && standingOf(mark.height) === 'off')
  return (
    <>
      <JawsLine jaws={jaws} />
      <section className="tapemode-lock">
        <p className="tapemode-line" role="status">{local(loose > 0 ? (loose === 1 ? text.lockOne : text.lockMany) : isStaked ? text.locked : text.lockNone, { count: loose })}</p>
        {loose === 0 ? null : (
          <>
            <button type="button" className="primary tapemode-wide" onClick={() => { run('lockStaked', {}) }}><Icon name="lock" sizePx={28} />{local(text.lock)}</button>
            <p className="quiet-text">{local(text.lockAbout)}</p>
          </>
        )}
      </section>
      {open.length === 0 ? <p className="tapemode-line"><strong>{local(text.allSet, { count: marks.length })}</strong></p> : (
        <>
          <p className="tapemode-line">{local(text.left, { open: open.length, count: marks.length })}</p>
          <ul className="tapemode-open">{open.map(({ mark, at }) => <li key={mark.key}><button type="button" onClick={() => onGo(at)}>{nameOf(mark)}</button></li>)}</ul>
        </>
      )}
      {off.length === 0 ? null : (
        <>
          <p className="tapemode-line">{local(text.offTitle)}</p>
          <ul className="tapemode-open">{off.map(({ mark, at }) => <li key={mark.key}><button type="button" onClick={() => onGo(at)}><span>{nameOf(mark)}: <Figure text={mark.height === null ? '' : [differenceText(mark.height, reader), standingText(mark.height, reader)].join(', ')} /></span></button></li>)}</ul>
        </>
      )}
    </>
  )
}
