import type { ReactNode } from 'react'
import { layoutOf } from '../../scene/document.ts'
import type { UnitSystem } from '../../units/format.ts'
import { quantityKinds, type QuantityKind } from '../../units/quantity.ts'
import { setWet } from '../../state/wetMode.ts'
import { useCommand } from '../command.ts'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useUi, useView, useWords } from '../context.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'

const wetLabel = { en: 'wet mode', es: 'modo mojado' }

/** How this device shows things: language, day and night, hand, and the ways to the other panels. */
export const SettingsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { say, local } = useWords()
  const { app } = useUi()
  const wet = useView((view) => view.wet)
  const language = useView((view) => view.language)
  const theme = useView((view) => view.theme)
  const leftHanded = useView((view) => view.leftHanded)
  const snapping = useView((view) => view.snapping)
  const isPseudo = useView((view) => view.pseudoLanguage)
  const open = (panel: string): void => app.view.setState({ panel })
  return (
    <Panel title={say('settingsTitle')} onClose={onClose}>
      <div className="field-grid">
        <ChoiceField label={say('language')} value={isPseudo ? 'pseudo' : language} choices={[{ value: 'en', label: 'English' }, { value: 'es', label: 'Español' }, ...(isPseudo ? [{ value: 'pseudo' as const, label: 'Ƥšéûđö' }] : [])]} onCommit={(value) => app.view.setState(value === 'pseudo' ? { pseudoLanguage: true } : { language: value as 'en' | 'es', pseudoLanguage: false })} />
        <ChoiceField label={say('theme')} value={theme} choices={(['auto', 'day', 'sun', 'night'] as const).map((value) => ({ value, label: say(`theme_${value}`) }))} onCommit={(value) => app.view.setState({ theme: value })} />
        <ChoiceField label={say('hand')} value={leftHanded} choices={[{ value: false, label: say('handRight') }, { value: true, label: say('handLeft') }]} onCommit={(value) => app.view.setState({ leftHanded: value })} />
        <ChoiceField label={local(wetLabel)} value={wet} choices={[{ value: false, label: say('no') }, { value: true, label: say('yes') }]} onCommit={(value) => setWet(app.view, value)} />
        <ChoiceField label={say('snapping')} value={snapping} choices={[{ value: true, label: say('yes') }, { value: false, label: say('no') }]} onCommit={(value) => app.view.setState({ snapping: value })} />
      </div>
      <div className="menu-list">
        {([['units', 'unitsTitle'], ['gear', 'gearListTitle'], ['limits', 'limitsTitle'], ['layouts', 'layoutsTitle'], ['keys', 'keysTitle'], ['about', 'aboutTitle']] as const).map(([panel, key]) => (
          <button type="button" key={panel} onClick={() => open(panel)}>{say(key)}</button>
        ))}
        <button type="button" onClick={() => { onClose(); app.view.setState({ screen: 'start', panel: null, selection: [] }) }}>{say('startPage')}</button>
      </div>
    </Panel>
  )
}

/** Units of the layout, with an override for a single quantity. Switching changes no figure, only how it is written. */
export const UnitsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const layout = useDocuments((state) => layoutOf(state.document))
  const systems: readonly UnitSystem[] = ['feetInches', 'metric']
  const overridable: readonly QuantityKind[] = quantityKinds.filter((kind) => !['count', 'ratio', 'percent', 'angle', 'slope', 'voltage', 'duration'].includes(kind))
  const setOverride = (kind: QuantityKind, system: UnitSystem | null): void => {
    const { [kind]: _gone, ...others } = layout.unitOverrides
    run('setLayout', { path: 'unitOverrides', value: system === null ? others : { ...others, [kind]: system } })
  }
  return (
    <Panel title={say('unitsTitle')} onClose={onClose}>
      <p className="quiet-text">{say('unitsAbout')}</p>
      <ChoiceField label={say('unitsAll')} value={layout.displayUnits} choices={systems.map((value) => ({ value, label: say(`units_${value}`) }))} onCommit={(value) => { run('setLayout', { path: 'displayUnits', value }) }} />
      <details>
        <summary>{say('unitsSingle')}</summary>
        <div className="field-grid">
          {overridable.map((kind) => (
            <ChoiceField<UnitSystem | null> key={kind} label={say(`quantity_${kind}` as 'quantity_length')} value={layout.unitOverrides[kind] ?? null} choices={[{ value: null, label: say('unitsAsAll') }, ...systems.map((value) => ({ value, label: say(`units_${value}`) }))]} onCommit={(value) => setOverride(kind, value)} />
          ))}
        </div>
      </details>
    </Panel>
  )
}
