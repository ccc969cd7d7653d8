import { useMemo, type ReactNode } from 'react'
import { zonesAt, type Zone } from '../../derive/zones.ts'
import { zoneWords as words } from '../../messages/ui/zoneWords.ts'
import { phases, type Phase } from '../../scene/parts.ts'
import { stageOf } from '../../state/viewStore.ts'
import { Panel } from '../common/Panel.tsx'
import { useSite, useUi, useView, useWords } from '../context.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'
import { classText, ZoneDetails } from './ZoneDetails.tsx'
import { ZoneSwatch } from './ZoneSwatch.tsx'

/** Zones live at the stage shown, one line each; a line opens the zone: what it is, why, who may enter, and what may be changed. */
export const ZonePanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { app } = useUi()
  const { local, say } = useWords()
  const site = useSite((state) => state.site)
  const phase = useView((view) => view.phase)
  const joint = useView((view) => view.joint)
  const noseM = useView((view) => view.noseM)
  const key = useView((view) => view.zoneKey)
  const zones = useMemo(() => zonesAt(site, stageOf({ phase, joint, noseM })), [site, phase, joint, noseM])
  const close = (): void => {
    app.view.setState({ zoneKey: null })
    onClose()
  }
  const show = (zoneKey: string | null): void => app.view.setState({ zoneKey })
  const open = key === null ? undefined : zones.find((zone) => zone.key === key)
  const title = open === undefined ? local(words.listTitle, { phase: say(`phase_${phase}`) }) : `${open.id === 'hand' ? '' : `${open.id} `}${local(open.name)}`
  return (
    <Panel title={title} onClose={close} wide {...(key === null ? {} : { foot: <button type="button" onClick={() => show(null)}>{local(words.back)}</button> })}>
      <ChoiceField<Phase> label={local(words.phase)} value={phase} layout="row" choices={phases.map((value) => ({ value, label: say(`phase_${value}`) }))} onCommit={(value) => app.view.setState({ phase: value })} />
      {key !== null && open === undefined ? <p>{local(words.gone)}</p> : null}
      {open === undefined ? <ZoneList zones={zones} onOpen={show} /> : <ZoneDetails key={open.key} zone={open} />}
    </Panel>
  )
}

const ZoneList = ({ zones, onOpen }: { zones: readonly Zone[]; onOpen: (key: string) => void }): ReactNode => {
  const { local } = useWords()
  if (zones.length === 0) return <p>{local(words.none)}</p>
  return (
    <ul className="zone-list">
      {zones.map((zone) => (
        <li key={zone.key}>
          <button type="button" onClick={() => onOpen(zone.key)}>
            <ZoneSwatch zoneClass={zone.zoneClass} isUnknown={zone.missing.length > 0} />
            <span>
              <strong>{zone.id === 'hand' ? '' : `${zone.id} `}{local(zone.name)}{zone.missing.length > 0 ? ' ?' : ''}</strong>
              <span className="quiet-text">{classText(zone, local)}{zone.changedBecause === null ? '' : ` · ${local(words.changedBecause, { reason: zone.changedBecause })}`}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}
