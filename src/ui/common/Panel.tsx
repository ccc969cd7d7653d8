import { useId, type ReactNode } from 'react'
import { useWords } from '../context.tsx'
import { Icon } from './Icon.tsx'
import { useModal } from './useModal.ts'

interface PanelProps {
  title: string
  onClose: () => void
  children: ReactNode
  /** Buttons at the foot, always in sight. */
  foot?: ReactNode
  wide?: boolean
  /** Questions have no cross: one of their buttons answers. */
  question?: boolean
  /** Nothing in it takes the focus: the text itself does, so that keys can scroll it. */
  reading?: boolean
}

/**
 * A dialog of the platform: Esc closes it, the page behind is inert, and the focus goes back to what opened it.
 */
export const Panel = ({ title, onClose, children, foot, wide = false, question = false, reading = false }: PanelProps): ReactNode => {
  const dialog = useModal()
  const titleId = useId()
  const { say } = useWords()
  return (
    <dialog
      ref={dialog} className={wide ? 'panel panel-wide' : 'panel'} aria-labelledby={titleId} role={question ? 'alertdialog' : 'dialog'}
      onCancel={(event) => { event.preventDefault(); onClose() }}
      onPointerDown={(event) => { if (event.target === dialog.current && !question) onClose() }}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <div className="panel-sheet">
        <header className="panel-head">
          <h2 id={titleId}>{title}</h2>
          {question ? null : <button type="button" className="quiet square" aria-label={say('close')} onClick={onClose}><Icon name="close" /></button>}
        </header>
        <div className="panel-body" {...(reading ? { tabIndex: 0, role: 'group', 'aria-labelledby': titleId } : {})}>{children}</div>
        {foot === undefined ? null : <footer className="panel-foot">{foot}</footer>}
      </div>
    </dialog>
  )
}
