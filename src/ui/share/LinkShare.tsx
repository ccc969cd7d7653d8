import { useState, type ReactNode } from 'react'
import { shareWords as words } from '../../messages/ui/shareWords.ts'
import { layoutOf } from '../../scene/document.ts'
import { useDocuments, useTell, useUi, useWords } from '../context.tsx'
import type { LayoutLink } from '../services.ts'
import '../styles/share.css'

/** The layout as a link and, where one holds it, as a QR code. Made when asked for: a link is a share, and is noted as one. */
export const LinkShare = (): ReactNode => {
  const { local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const document = useDocuments((state) => state.document)
  const letter = layoutOf(document).revision
  const [made, setMade] = useState<{ link: LayoutLink; of: object } | null>(null)
  const make = async (): Promise<void> => {
    const outcome = await services.makeLink()
    if (outcome.ok) setMade({ link: outcome.link, of: document })
    else tell(outcome)
  }
  return (
    <section className="link-share" aria-label={local(words.linkTitle)}>
      <h3>{local(words.linkTitle)}</h3>
      <p>{local(words.linkAbout)}</p>
      {made === null ? <div className="buttons"><button type="button" onClick={() => void make()}>{local(words.make)}</button></div> : <MadeLink link={made.link} letter={letter} />}
    </section>
  )
}

const MadeLink = ({ link, letter }: { link: LayoutLink; letter: string }): ReactNode => {
  const { local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const { address, chars, left, qr, easyQrChars, mostQrChars } = link
  return (
    <>
      <label className="field link-field"><span>{local(words.link)}</span><input type="text" readOnly value={address} onFocus={(event) => event.target.select()} /></label>
      <div className="buttons">
        <button type="button" className="primary" onClick={() => void services.shareLink(address).then(tell)}>{local(words.share)}</button>
        <button type="button" onClick={() => void services.copyLink(address).then(tell)}>{local(words.copy)}</button>
      </div>
      <p role="status">{[local(words.length, { chars }), ...(left.talks > 0 ? [local(words.leftTalks, { count: left.talks })] : []), ...(left.photos > 0 ? [local(words.leftPhotos, { count: left.photos })] : []), local(words.logged, { letter })].join(' ')}</p>
      {qr === null ? <p>{local(words.qrNone, { most: mostQrChars })}</p> : (
        <figure className="link-qr">
          <svg viewBox={`0 0 ${qr.side} ${qr.side}`} role="img" aria-label={local(words.qr)} shapeRendering="crispEdges"><rect width={qr.side} height={qr.side} fill="#fff" /><path d={qr.path} fill="#000" /></svg>
          <figcaption>{qr.isEasy ? local(words.qrEasy) : local(words.qrDense, { easy: easyQrChars })}</figcaption>
        </figure>
      )}
    </>
  )
}
