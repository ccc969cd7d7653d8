import { useId, useRef, useState, type ReactNode } from 'react'
import { useWords } from '../context.tsx'

interface CommonProps {
  label: string
  name?: string
  disabled?: boolean
  layout?: 'row' | 'stacked'
}

/** Free words; written once on Enter or on leaving, and only where they changed. */
export const TextField = ({ label, value, onCommit, name, disabled = false, layout = 'stacked', long = false, isMixed = false }: CommonProps & { value: string; onCommit: (value: string, mergeKey: string) => void; long?: boolean; isMixed?: boolean }): ReactNode => {
  const { say } = useWords()
  const [draft, setDraft] = useState<string | null>(null)
  const focusCount = useRef(0)
  const id = useId()
  const leave = (): void => {
    if (draft !== null && draft !== value) onCommit(draft, `${name ?? label}#${id}#${focusCount.current}`)
    setDraft(null)
  }
  const shared = {
    id, value: draft ?? (isMixed ? '' : value), disabled, placeholder: isMixed ? say('fieldMixed') : '', 'data-field': name, autoComplete: 'off',
    onFocus: () => { focusCount.current += 1 },
    onBlur: leave,
  }
  return (
    <div className={`field field-${layout}`}>
      <label htmlFor={id}>{label}</label>
      {long
        ? <textarea {...shared} rows={3} maxLength={2000} onChange={(event) => setDraft(event.currentTarget.value)} onKeyDown={(event) => { if (event.key !== 'Escape') event.stopPropagation() }} />
        : <input
            {...shared} type="text" maxLength={200} enterKeyHint="done" onChange={(event) => setDraft(event.currentTarget.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') leave()
              if (event.key === 'Escape' && draft !== null) { event.stopPropagation(); event.preventDefault(); setDraft(null) }
              else if (event.key !== 'Escape' && event.key !== 'Tab') event.stopPropagation()
            }}
          />}
    </div>
  )
}

export type ChoiceValue = string | number | boolean | null
export interface Choice<T extends ChoiceValue> {
  value: T
  label: string
}

/** One of a few: the platform's own list, which a glove and a keyboard both know. */
export const ChoiceField = <T extends ChoiceValue>({ label, value, choices, onCommit, name, disabled = false, layout = 'stacked', isMixed = false }: CommonProps & { value: T; choices: readonly Choice<T>[]; onCommit: (value: T) => void; isMixed?: boolean }): ReactNode => {
  const { say } = useWords()
  const id = useId()
  const at = isMixed ? -1 : choices.findIndex((choice) => choice.value === value)
  return (
    <div className={`field field-${layout}`}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id} value={String(at)} disabled={disabled} data-field={name} onKeyDown={(event) => { if (event.key !== 'Escape') event.stopPropagation() }}
        onChange={(event) => {
          const chosen = choices[Number(event.currentTarget.value)]
          if (chosen !== undefined) onCommit(chosen.value)
        }}
      >
        {at === -1 ? <option value="-1">{isMixed ? say('fieldMixed') : say('fieldChoose')}</option> : null}
        {choices.map((choice, i) => <option key={String(choice.value)} value={String(i)}>{choice.label}</option>)}
      </select>
    </div>
  )
}

/** Yes, no, or nobody has said. */
export const YesNoField = ({ nullable, ...props }: Omit<Parameters<typeof ChoiceField<boolean | null>>[0], 'choices'> & { nullable: boolean }): ReactNode => {
  const { say } = useWords()
  const choices: readonly Choice<boolean | null>[] = [
    ...(nullable ? [{ value: null, label: say('notSaid') }] : []),
    { value: true, label: say('yes') },
    { value: false, label: say('no') },
  ]
  return <ChoiceField<boolean | null> {...props} choices={choices} />
}
