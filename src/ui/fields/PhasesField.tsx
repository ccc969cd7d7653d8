import { useId, type ReactNode } from 'react'
import { phases, type Phase } from '../../scene/parts.ts'
import { useWords } from '../context.tsx'

interface PhasesFieldProps {
  label: string
  value: readonly Phase[]
  onCommit: (value: readonly Phase[]) => void
  name?: string
  disabled?: boolean
  layout?: 'row' | 'stacked'
  isMixed?: boolean
}

/** A set of phases: one chip each, pressed where it is in the set. Chosen items that differ start from an empty set. */
export const PhasesField = ({ label, value, onCommit, name, disabled = false, layout = 'stacked', isMixed = false }: PhasesFieldProps): ReactNode => {
  const { say } = useWords()
  const id = useId()
  const chosen = isMixed ? [] : value
  const turn = (phase: Phase): void => onCommit(phases.filter((one) => (one === phase ? !chosen.includes(one) : chosen.includes(one))))
  return (
    <div className={`field field-${layout} field-phases`} role="group" aria-labelledby={id}>
      <span id={id}>{label}{isMixed ? ` (${say('fieldMixed')})` : null}</span>
      <div>
        {phases.map((phase, i) => (
          <button type="button" key={phase} aria-pressed={chosen.includes(phase)} disabled={disabled} {...(i === 0 && name !== undefined ? { 'data-field': name } : {})} onClick={() => turn(phase)}>
            {say(`phase_${phase}`)}
          </button>
        ))}
      </div>
    </div>
  )
}
