import { useState, type ReactNode } from 'react'
import type { Zone } from '../../derive/zones.ts'
import { zoneWords as words } from '../../messages/ui/zoneWords.ts'
import { recordsOf } from '../../scene/document.ts'
import { crewRoles } from '../../scene/kinds/crew.ts'
import { zoneClassSchema, type Phase, type ZoneClass } from '../../scene/parts.ts'
import { useCommand } from '../command.ts'
import { useDocuments, useWords, type Words } from '../context.tsx'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField, TextField } from '../fields/OtherFields.tsx'
import { PhasesField } from '../fields/PhasesField.tsx'
import { ZoneSwatch } from './ZoneSwatch.tsx'

/** The class in words; a RED zone names who may enter all the same. */
export const classText = ({ zoneClass, mayEnter }: Pick<Zone, 'zoneClass' | 'mayEnter'>, local: Words['local']): string =>
  zoneClass === 'RED' && mayEnter.length > 0 ? local(words.only_RED, { who: [...new Set(mayEnter)].map((role) => local(crewRoles.find(({ value }) => value === role)!.label)).join(', ') }) : local(words[`class_${zoneClass}`])

/** What a zone is and says, whence its size, who may enter; and its change by hand. */
export const ZoneDetails = ({ zone }: { zone: Zone }): ReactNode => {
  const { local, say } = useWords()
  const names = (labels: readonly { en: string; es: string }[]): string => labels.map((label) => local(label)).join(', ')
  return (
    <>
      <p className="zone-class"><ZoneSwatch zoneClass={zone.zoneClass} isUnknown={zone.missing.length > 0} /> <strong>{classText(zone, local)}</strong></p>
      <p className="zone-sentence">{local(zone.sentence)}</p>
      {zone.missing.length === 0 ? null : <p><strong>?</strong> {local(words.isUnknown, { what: names(zone.missing.map(({ label }) => label)) })}</p>}
      {zone.changedBecause === null ? null : <p>{local(words.changedBecause, { reason: zone.changedBecause })}</p>}
      <dl className="zone-facts">
        <dt>{local(words.size)}</dt><dd>{local(zone.size)}</dd>
        <dt>{local(words.source)}</dt><dd>{local(words[`cite_${zone.source.class}`])}: {zone.source.cite}</dd>
        <dt>{local(words.live)}</dt><dd>{zone.phases.map((phase) => say(`phase_${phase}`)).join(', ')}</dd>
        <dt>{local(words.who)}</dt>
        <dd>
          {zone.entering.length === 0 ? local(words.nobody) : (
            <ul>{zone.entering.map(({ task, condition }, i) => <li key={`${task}${i}`}>{local(crewRoles.find(({ value }) => value === task)!.label)}{condition === null ? '' : `: ${local(condition)}`}</li>)}</ul>
          )}
        </dd>
      </dl>
      {zone.id === 'hand' ? <p className="quiet-text">{local(words.byHand)}</p> : <ZoneChange zone={zone} />}
    </>
  )
}

/** Class, margin and phases replaced, with the reason; nothing is written before it is given. */
const ZoneChange = ({ zone }: { zone: Zone }): ReactNode => {
  const { local } = useWords()
  const run = useCommand()
  const change = useDocuments((state) => recordsOf(state.document, 'zoneChange').find(({ zoneKey }) => zoneKey === zone.key))
  const [reason, setReason] = useState(change?.reason ?? '')
  const [zoneClass, setZoneClass] = useState<ZoneClass | null>(change?.zoneClass ?? null)
  const [marginM, setMarginM] = useState<number | null>(change?.marginM ?? null)
  const [live, setLive] = useState<readonly Phase[]>(change?.phases ?? zone.phases)
  const [isAsked, setIsAsked] = useState(false)
  const keep = (): void => {
    if (reason.trim() === '') return setIsAsked(true)
    setIsAsked(false)
    const isSame = change?.phases === undefined && live.length === zone.phases.length && live.every((phase) => zone.phases.includes(phase))
    run('changeZone', { zoneKey: zone.key, zoneClass, marginM, phases: isSame ? null : live, reason: reason.trim() })
  }
  const putBack = (): void => {
    run('clearZoneChange', { zoneKey: zone.key })
    setReason('')
    setZoneClass(null)
    setMarginM(null)
  }
  return (
    <fieldset className="zone-change">
      <legend>{local(words.change)}</legend>
      <p className="quiet-text">{local(words.changeAbout)}</p>
      <ChoiceField<ZoneClass | null> label={local(words.className)} value={zoneClass} choices={[{ value: null, label: local(words.asDerived) }, ...zoneClassSchema.options.map((value) => ({ value, label: local(words[`class_${value}`]) }))]} onCommit={setZoneClass} />
      <NumberField label={local(words.wider)} kind="length" value={marginM} nullable min={0} max={100} placeholder={local(words.asDerived)} onCommit={setMarginM} />
      <PhasesField label={local(words.live)} value={live} onCommit={setLive} />
      <TextField label={local(words.reason)} value={reason} onCommit={setReason} />
      {isAsked ? <p role="alert">{local(words.needReason)}</p> : null}
      <div className="buttons">
        <button type="button" className="primary" onClick={keep}>{local(words.keep)}</button>
        {change === undefined ? null : <button type="button" onClick={putBack}>{local(words.putBack)}</button>}
      </div>
    </fieldset>
  )
}
