import type { ReactNode } from 'react'
import { leastRadiusM } from '../../derive/arch.ts'
import { archPitWords as text } from '../../messages/ui/archPitWords.ts'
import { jobOf } from '../../scene/document.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useWords } from '../context.tsx'
import { ArchSection } from './ArchSection.tsx'
import { ParkedSection, PitSection } from './PitSection.tsx'

/** Arch into a bore, insertion pit, string parked on a curve. */
export const ArchPitPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { local, figure } = useWords()
  const job = useDocuments((state) => jobOf(state.document))
  const site = useSite((state) => state.site)
  const leastM = leastRadiusM(site)
  return (
    <Panel title={local(text.title)} onClose={onClose} wide>
      <p><Figure text={leastM === null ? local(text.leastUnknown) : local(text.leastKnown, { least: figure({ kind: 'length', value: leastM }) })} /></p>
      <h3>{local(text.archTitle)}</h3>
      <ArchSection site={site} job={job} />
      <h3>{local(text.pitTitle)}</h3>
      <PitSection site={site} leastM={leastM} />
      <h3>{local(text.parkTitle)}</h3>
      <ParkedSection site={site} leastM={leastM} />
    </Panel>
  )
}
