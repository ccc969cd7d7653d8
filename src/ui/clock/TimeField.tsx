import { useId, type ReactNode } from 'react'
import { minutesOf, timeText } from '../../units/timeOfDay.ts'

/** A time of day in the platform's own field; emptied, it is not known. */
export const TimeField = ({ label, valueMin, name, onCommit }: { label: string; valueMin: number | null; name?: string; onCommit: (valueMin: number | null) => void }): ReactNode => {
  const id = useId()
  return (
    <div className="field field-stacked">
      <label htmlFor={id}>{label}</label>
      <input
        id={id} type="time" data-field={name} key={valueMin ?? 'none'} defaultValue={valueMin === null ? '' : timeText(valueMin)}
        onBlur={(event) => { const read = minutesOf(event.currentTarget.value); if (read !== valueMin) onCommit(read) }}
        onKeyDown={(event) => { if (event.key === 'Enter') event.currentTarget.blur(); else if (event.key !== 'Escape' && event.key !== 'Tab') event.stopPropagation() }}
      />
    </div>
  )
}
