import type { ReactNode } from 'react'
import { Panel } from '../common/Panel.tsx'
import { SheetPrint } from './SheetPrint.tsx'
import { LinkShare } from '../share/LinkShare.tsx'
import { useIsStale, useTell, useUi, useWords } from '../context.tsx'

export const SharePanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { say } = useWords()
  const { services } = useUi()
  const tell = useTell()
  return (
    <Panel title={say('shareTitle')} onClose={onClose}>
      <p>{say('shareAbout')}</p>
      <div className="buttons">
        <button type="button" className="primary" onClick={() => void services.shareFile().then(tell)}>{say('shareFile')}</button>
        <button type="button" onClick={() => void services.saveFile().then(tell)}>{say('saveFile')}</button>
      </div>
      <SheetPrint />
      <LinkShare />
      <p className="quiet-text">{say('caution')}</p>
    </Panel>
  )
}

export const ImagePanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { say } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const isStale = useIsStale()
  return (
    <Panel title={say('imageTitle')} onClose={onClose}>
      <p>{say('imageAbout')}</p>
      {isStale ? <p role="status"><strong>{say('notSettled')}</strong></p> : null}
      <div className="buttons">
        {([1, 2, 4] as const).map((scale) => <button type="button" key={scale} className={scale === 2 ? 'primary' : ''} onClick={() => void services.saveImage(scale).then(tell)}>{say('imageScale', { scale: `${scale}×` })}</button>)}
        <button type="button" onClick={() => { onClose(); requestAnimationFrame(() => window.print()) }}>{say('printScreen')}</button>
      </div>
      <p className="quiet-text">{say('caution')}</p>
    </Panel>
  )
}
