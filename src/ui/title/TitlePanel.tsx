import type { ReactNode } from 'react'
import { jobOf, layoutOf } from '../../scene/document.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useUi, useWords } from '../context.tsx'
import { useStickPlan } from './TitleBlock.tsx'
import { pipeWords, stickWords } from './pipeWords.ts'

/** The phone's title block unfolded: the same cells, one under the other. */
export const TitlePanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const layout = useDocuments((state) => layoutOf(state.document))
  const job = useDocuments((state) => jobOf(state.document))
  const plan = useStickPlan()
  const rows: readonly (readonly [panel: string, label: string, value: string])[] = [
    ['job', say('jobTitle'), [pipeWords(job.pipe, words) ?? say('pipeUnknown'), stickWords(plan, job.stickLengthM, words)].join(', ')],
    ['units', say('units'), say(`units_${layout.displayUnits}`)],
    ['limits', say('limitsTitle'), ''],
    ['layouts', say('layoutsTitle'), say('revisionShort', { revision: layout.revision })],
    ['share', say('share'), ''],
    ['image', say('image'), ''],
    ['more', say('moreTitle'), ''],
  ]
  return (
    <Panel title={layout.title === '' ? say('untitled') : layout.title} onClose={onClose}>
      <div className="menu-list">
        {rows.map(([panel, label, value]) => (
          <button type="button" key={panel} onClick={() => app.view.setState({ panel })}><strong>{label}</strong>{value === '' ? null : <span className="quiet-text block"><Figure text={value} /></span>}</button>
        ))}
      </div>
    </Panel>
  )
}
