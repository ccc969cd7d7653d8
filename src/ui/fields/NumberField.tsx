import { useId, useRef, useState, type KeyboardEvent, type ReactNode } from 'react'
import type { Quantity, QuantityKind } from '../../units/quantity.ts'
import { Figure, plainFractions } from '../common/Figure.tsx'
import { useWords } from '../context.tsx'
import { idleField, stepField, type FieldEvent, type FieldRules } from './numberFieldState.ts'
import { readFor, shownText, type NumberManner } from './reading.ts'

export interface NumberFieldProps {
  label: string
  value: number | null
  kind: QuantityKind
  /** `running` and `offset` carry a side word: 'exit 25 ft 0 in', 'R 6 in'. */
  manner?: NumberManner
  min?: number
  max?: number
  nullable?: boolean
  /** Several chosen items differ here. */
  isMixed?: boolean
  /** Called once on Enter or on leaving; the key joins what is typed within one focus into one step. */
  onCommit: (value: number | null, mergeKey: string) => void
  /** Names the field so that a finding can lead to it (fieldName). */
  name?: string
  /** Small words after the value: its basis, or what an empty field means. */
  aside?: string
  disabled?: boolean
  /** `row`: label, field and second reading on one line, as in a tag. */
  layout?: 'row' | 'stacked'
  hideOther?: boolean
  /** Words in an empty field; 'not known' unless said. */
  placeholder?: string
}

/** One number with its unit: what was understood is echoed, what can't be read leaves the old value. */
export const NumberField = (props: NumberFieldProps): ReactNode => {
  const { label, value, kind, manner = 'plain', min, max, nullable = false, isMixed = false, onCommit, name, aside, disabled = false, layout = 'stacked', hideOther = false, placeholder } = props
  const words = useWords()
  const [state, setState] = useState(idleField)
  const focusCount = useRef(0)
  const input = useRef<HTMLInputElement>(null)
  const id = useId()
  const quantity: Quantity = { kind, value }
  const shown = isMixed ? '' : plainFractions(shownText(value, kind, manner, words))
  const rules: FieldRules = {
    shown,
    read: (text) => readFor(text, kind, manner, words),
    isNullable: nullable,
    outOfBounds: (found) => (min !== undefined && found < min - 1e-9) || (max !== undefined && found > max + 1e-9)
      ? words.say('fieldBounds', { least: min === undefined ? '' : words.figure({ kind, value: min }), most: max === undefined ? '' : words.figure({ kind, value: max }) })
      : null,
  }
  const send = (event: FieldEvent): void => {
    const step = stepField(state, event, rules)
    setState(step.state)
    if (step.commit !== undefined && (isMixed || step.commit.value !== value)) onCommit(step.commit.value, `${name ?? label}#${id}#${focusCount.current}`)
  }
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      event.preventDefault()
      send({ type: 'left' })
    } else if (event.key === 'Escape' && state.draft !== null) {
      event.stopPropagation()
      event.preventDefault()
      send({ type: 'escaped' })
    } else if (event.key !== 'Escape' && event.key !== 'Tab') event.stopPropagation()
  }
  const live = state.draft === null || state.draft.trim() === '' ? null : rules.read(state.draft)
  const { problem } = state
  const echo = state.echo !== null && state.echo.typed.trim() !== ''
    ? words.say('fieldEcho', { typed: state.echo.typed.trim(), read: shownText(state.echo.value, kind, manner, words) })
    : live?.as === 'value' ? words.say('fieldLive', { read: shownText(live.value, kind, manner, words), other: words.otherFigure({ kind, value: Math.abs(live.value) }) }) : null
  const other = value === null || isMixed ? (aside ?? '') : manner === 'offset' && words.offset(value) === words.offset(0) ? '' : words.otherFigure(manner === 'plain' ? quantity : { kind, value: Math.abs(value) })
  // The same text twice says nothing.
  const isSame = plainFractions(other) === shown
  const said = [problem !== null || echo !== null ? `${id}-said` : '', aside !== undefined && aside !== '' ? `${id}-aside` : ''].filter((part) => part !== '').join(' ')
  return (
    <div className={`field field-${layout}`} data-row={manner}>
      <label htmlFor={id}>{label}</label>
      <input
        ref={input} id={id} type="text" inputMode="text" autoComplete="off" autoCorrect="off" spellCheck={false} enterKeyHint="done"
        className="number" value={state.draft ?? shown} placeholder={isMixed ? words.say('fieldMixed') : (placeholder ?? words.say('fieldUnknown'))} disabled={disabled}
        data-field={name} aria-invalid={problem?.as === 'unreadable' ? true : undefined} aria-describedby={said === '' ? undefined : said}
        onFocus={(event) => { focusCount.current += 1; event.currentTarget.select() }}
        onChange={(event) => send({ type: 'typed', text: event.currentTarget.value })}
        onBlur={() => send({ type: 'left' })} onKeyDown={onKeyDown}
      />
      {hideOther ? null : <span className="field-other" id={`${id}-aside`}><Figure text={isSame ? '' : other} />{other !== aside && aside !== undefined && aside !== '' ? <em> {aside}</em> : null}</span>}
      {problem === null && echo === null ? null : (
        <div className={problem?.as === 'unreadable' ? 'field-said field-problem' : 'field-said'} id={`${id}-said`} role="status">
          {problem === null ? <Figure text={echo ?? ''} />
            : problem.as === 'unreadable' ? problem.reason
              : <>
                  <span>{words.say('fieldWhich')}</span>
                  {problem.choices.map((choice) => (
                    <button type="button" key={choice.text} onPointerDown={(event) => event.preventDefault()} onClick={() => { send({ type: 'answered', value: choice.value }); input.current?.focus() }}>{choice.text}</button>
                  ))}
                </>}
        </div>
      )}
    </div>
  )
}
