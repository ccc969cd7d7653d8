import { useState, type ReactNode } from 'react'
import { materials, type JobRecord } from '../../scene/records/frame.ts'
import { Figure } from '../common/Figure.tsx'
import { useUi, useWords } from '../context.tsx'
import { ChoiceField, type Choice } from '../fields/OtherFields.tsx'
import { fieldName } from '../fields/focus.ts'
import { odWords } from './pipeWords.ts'

type Pipe = NonNullable<JobRecord['pipe']>
type Draft = { [K in keyof Pipe]: Pipe[K] | null }

const none: Draft = { system: null, size: null, dr: null, material: null }

/** A pipe is whole or unknown: the parts chosen so far are kept here until all four are. */
export const PipeFields = ({ value, onChange, recordId = 'form' }: { value: JobRecord['pipe']; onChange: (pipe: JobRecord['pipe']) => void; recordId?: string }): ReactNode => {
  const words = useWords()
  const { services: { facts } } = useUi()
  const [partial, setPartial] = useState<Draft>(none)
  const draft: Draft = value ?? partial
  const { say } = words
  const change = (over: Partial<Draft>): void => {
    const next = { ...draft, ...over }
    setPartial(next)
    if (next.system !== null && next.size !== null && next.dr !== null && next.material !== null) onChange({ system: next.system, size: next.size, dr: next.dr, material: next.material })
    else if (value !== null) onChange(null)
  }
  const changeSystem = (system: Pipe['system']): void => {
    if (system === draft.system) return
    // The usual material of each system, shown and changeable; size and DR of another system never carry over.
    change({ system, size: null, dr: null, material: draft.material ?? (system === 'metric' ? 'PE100' : 'PE4710') })
  }
  const sizes = draft.system === null ? [] : facts.sizes(draft.system)
  const drs = draft.system === null || draft.size === null ? [] : facts.drs(draft.system, draft.size)
  const od = sizes.find(({ size }) => size === draft.size)?.odM ?? null
  const worked = value === null ? null : facts.pipe(value)
  const choose = <T extends string | number>(list: readonly T[], label: (entry: T) => string): readonly Choice<T | null>[] => list.map((entry) => ({ value: entry, label: label(entry) }))
  return (
    <div className="pipe-fields">
      <div className="field-grid">
        <ChoiceField<Pipe['system'] | null> label={say('pipeSystem')} name={fieldName(recordId, 'pipe')} value={draft.system} choices={choose(['IPS', 'DIPS', 'metric'] as const, (system) => say(`pipeSystem${system}`))} onCommit={(system) => { if (system !== null) changeSystem(system) }} />
        <ChoiceField<string | null>
          label={say('pipeSize')} value={draft.size} disabled={draft.system === null}
          choices={sizes.map(({ size, odM }) => ({ value: size, label: say('pipeSizeChoice', { size, unit: draft.system === 'metric' ? 'mm' : say('inches'), od: odWords(odM, words) }) }))}
          onCommit={(size) => change({ size, ...(draft.system !== null && size !== null && draft.dr !== null && !facts.drs(draft.system, size).includes(draft.dr) ? { dr: null } : {}) })}
        />
        <ChoiceField<number | null> label={say(draft.system === 'metric' ? 'pipeSdr' : 'pipeDr')} value={draft.dr} disabled={draft.size === null} choices={choose(drs, (dr) => `${draft.system === 'metric' ? 'SDR' : 'DR'} ${dr}`)} onCommit={(dr) => change({ dr })} />
        <ChoiceField<Pipe['material'] | null> label={say('pipeMaterial')} value={draft.material} choices={choose(materials, (material) => material)} onCommit={(material) => change({ material })} />
      </div>
      {od === null ? null : (
        <p className="quiet-text"><Figure text={worked === null ? say('pipeOd', { od: odWords(od, words) }) : say('pipeFacts', {
          od: odWords(od, words), wall: odWords(worked.minimumWallM, words), weight: { kind: 'lineLoad', value: worked.lineLoadNPerM },
        })} /></p>
      )}
    </div>
  )
}
