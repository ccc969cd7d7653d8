import { useRef, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { kindOf, kinds } from '../../scene/kinds/index.ts'
import type { Basis } from '../../scene/parts.ts'
import { Panel } from '../common/Panel.tsx'
import { useAsk, useDocuments, useTell, useUi, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField, TextField } from '../fields/OtherFields.tsx'
import { RecordField } from '../fields/RecordField.tsx'
import type { GearItem } from '../../scene/gear.ts'
import { leftOf } from './left.ts'

/** Kinds a crew owns some of. */
const ownable = kinds.filter(({ gear, placing, fields }) => (gear === 'line' || gear === 'lift') && placing === 'item' && fields.some(({ path }) => path.startsWith('figures.')))

/** What the crew owns, apart from any layout: counts, sizes and ratings read off the plates. */
export const GearPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { say } = words
  const { services } = useUi()
  const ask = useAsk()
  const tell = useTell()
  const items = useStore(services.gear, (state) => state.items)
  const document = useDocuments((state) => state.document)
  const [openId, setOpenId] = useState<string | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const add = (kind: GearItem['kind']): void => {
    const definition = kindOf(kind)
    if (definition === undefined) return
    const id = services.newId('gear')
    services.putGear({ id, kind, name: words.local(definition.name), count: null, choices: {}, figures: {} })
    setOpenId(id)
  }
  const remove = async (item: GearItem): Promise<void> => {
    if (await ask({ title: say('gearRemoveTitle', { name: item.name }), lines: [say('gearRemoveLines')], yes: say('remove'), no: say('cancel'), danger: true })) services.removeGear(item.id)
  }
  return (
    <Panel title={say('gearListTitle')} onClose={onClose} wide>
      <p className="quiet-text">{say('gearListAbout')}</p>
      {items.length === 0 ? <p>{say('gearListEmpty')}</p> : (
        <ul className="rows">
          {items.map((item) => {
            const left = leftOf(item, items, document)
            return (
              <li key={item.id} className="gear-row">
                <details open={openId === item.id} onToggle={(event) => { if (event.currentTarget.open) setOpenId(item.id) }}>
                  <summary><strong>{item.name}</strong><span className="quiet-text"> {item.count === null ? say('gearNotCounted') : say('gearOwned', { count: item.count, left: left ?? 0 })}</span></summary>
                  <GearEditor item={item} />
                  <div className="buttons"><button type="button" onClick={() => void remove(item)}>{say('remove')}</button></div>
                </details>
              </li>
            )
          })}
        </ul>
      )}
      <div className="buttons">
        <ChoiceField<GearItem['kind'] | null> label={say('gearAdd')} value={null} choices={ownable.map(({ kind, name }) => ({ value: kind, label: words.local(name) }))} onCommit={(kind) => { if (kind !== null) add(kind) }} />
      </div>
      <div className="buttons">
        <button type="button" onClick={() => void services.exportGear().then(tell)}>{say('gearExport')}</button>
        <button type="button" onClick={() => input.current?.click()}>{say('gearImport')}</button>
        <input
          ref={input} type="file" accept=".json,application/json" className="visually-hidden" tabIndex={-1} aria-label={say('gearImport')}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file !== undefined) void services.importGear(file).then(tell)
          }}
        />
      </div>
    </Panel>
  )
}

const GearEditor = ({ item }: { item: GearItem }): ReactNode => {
  const words = useWords()
  const { services } = useUi()
  const definition = kindOf(item.kind)
  if (definition === undefined) return null
  const put = (over: Partial<GearItem>): void => services.putGear({ ...item, ...over })
  const setFigure = (key: string, value: number | null): void => {
    const { [key]: _gone, ...others } = item.figures
    // A figure typed here was read off a plate or measured by the crew; emptied, the typical one stands again.
    put({ figures: value === null ? others : { ...others, [key]: { value, basis: 'plate' as Basis } } })
  }
  const figures = definition.fields.flatMap((field) => {
    const key = /^figures\.(\w+)\.value$/.exec(field.path)?.[1]
    return key === undefined ? [] : [{ field, key }]
  })
  const choices = definition.fields.filter(({ input, path }) => input.as === 'choice' && !path.includes('.') && path !== 'landingAid')
  return (
    <div className="field-grid">
      <TextField label={words.say('name')} value={item.name} name={fieldName(item.id, 'name')} onCommit={(name) => put({ name })} />
      <NumberField label={words.say('gearCount')} kind="count" value={item.count} nullable min={0} max={9999} onCommit={(count) => put({ count: count === null ? null : Math.round(count) })} />
      {choices.map((field) => <RecordField key={field.path} layout="stacked" field={field} value={item.choices[field.path] ?? null} onCommit={(value) => { if (typeof value !== 'object' || value === null) put({ choices: { ...item.choices, [field.path]: value } }) }} />)}
      {figures.map(({ field, key }) => {
        const input = field.input.as === 'quantity' ? { ...field.input, nullable: true } : field.input
        return <RecordField key={key} layout="stacked" field={{ ...field, input }} value={item.figures[key]?.value ?? null} basis={item.figures[key]?.basis ?? null} onCommit={(value) => setFigure(key, typeof value === 'number' ? value : null)} />
      })}
    </div>
  )
}
