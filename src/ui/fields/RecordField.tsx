import type { ReactNode } from 'react'
import type { FieldDefinition } from '../../scene/kindDefinition.ts'
import type { UiKey } from '../../messages/ui/text.ts'
import type { Basis, Phase } from '../../scene/parts.ts'
import { useWords } from '../context.tsx'
import { ChoiceField, TextField, YesNoField } from './OtherFields.tsx'
import { NumberField } from './NumberField.tsx'
import { PhasesField } from './PhasesField.tsx'

export const basisKey = (basis: Basis): UiKey => (({ typical: 'basisTypical', plate: 'basisPlate', measured: 'basisMeasured', jobRule: 'basisJobRule' }) as const)[basis]

interface RecordFieldProps {
  field: FieldDefinition
  value: unknown
  isMixed?: boolean
  basis?: Basis | null
  name?: string
  disabled?: boolean
  layout?: 'row' | 'stacked'
  onCommit: (value: string | number | boolean | readonly string[] | null, mergeKey?: string) => void
}

/** A field as its kind describes it: a number with its unit, words, a choice, yes and no, or a set of phases. */
export const RecordField = ({ field, value, isMixed = false, basis = null, name, disabled = false, layout = 'row', onCommit }: RecordFieldProps): ReactNode => {
  const words = useWords()
  const { input } = field
  const common = { label: words.local(field.label), disabled, layout, isMixed, ...(name === undefined ? {} : { name }) }
  switch (input.as) {
    case 'quantity':
      return (
        <NumberField
          {...common} kind={input.kind} value={typeof value === 'number' ? value : null} nullable={input.nullable === true}
          {...(input.min === undefined ? {} : { min: input.min })} {...(input.max === undefined ? {} : { max: input.max })}
          {...(basis === null || value === null || isMixed ? {} : { aside: words.say(basisKey(basis)) })}
          onCommit={(next, mergeKey) => onCommit(next, mergeKey)}
        />
      )
    case 'choice':
      return <ChoiceField<string | null> {...common} value={typeof value === 'string' ? value : null} choices={input.choices.map((choice) => ({ value: choice.value, label: words.local(choice.label) }))} onCommit={(next) => onCommit(next)} />
    case 'yesNo':
      return <YesNoField {...common} nullable={input.nullable === true} value={typeof value === 'boolean' ? value : null} onCommit={(next) => onCommit(next)} />
    case 'phases':
      return <PhasesField {...common} value={Array.isArray(value) ? (value as readonly Phase[]) : []} onCommit={(next) => onCommit(next)} />
    case 'text':
      return <TextField {...common} value={typeof value === 'string' ? value : ''} onCommit={(next, mergeKey) => onCommit(next, mergeKey)} />
  }
}
