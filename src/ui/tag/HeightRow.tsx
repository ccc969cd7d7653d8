import type { ReactNode } from 'react'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import type { HeightRule } from '../../scene/parts.ts'
import { useCommand } from '../command.ts'
import { useSite, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'

type WithHeight = Extract<PlacedRecord, { height: HeightRule }>
export const hasHeight = (record: PlacedRecord): record is WithHeight => 'height' in record

/** Saddle of a support: bottom of pipe above the ground there, whichever rule it comes from. Typing one sets that height above ground. */
export const SaddleRow = ({ record }: { record: WithHeight }): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const saddleM = useSite((state) => state.site.supports.find(({ itemId }) => itemId === record.id)?.saddleM ?? null)
  return (
    <NumberField
      layout="row" label={say('saddle')} kind="height" value={saddleM} min={-1} max={12} name={fieldName(record.id, 'height')} disabled={record.locked}
      onCommit={(value, mergeKey) => { if (value !== null) run('setHeight', { ids: [record.id], height: { rule: 'aboveGround', saddleM: value } }, undefined, mergeKey) }}
    />
  )
}

/** Which rule the height follows; changing the rule keeps the height it has now. */
export const HeightRuleRow = ({ record }: { record: WithHeight }): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const support = useSite((state) => state.site.supports.find(({ itemId }) => itemId === record.id))
  const set = (rule: HeightRule['rule']): void => {
    const saddleM = support?.saddleM ?? null
    const dropM = saddleM === null || support === undefined || support.jawLineSaddleM === null ? 0 : support.jawLineSaddleM - saddleM
    const height: HeightRule = rule === 'aboveGround' ? { rule, saddleM: saddleM ?? 0.5 } : rule === 'belowAxis' ? { rule, dropM } : { rule }
    run('setHeight', { ids: [record.id], height })
  }
  return (
    <>
      <ChoiceField<HeightRule['rule']>
        layout="row" label={say('heightRule')} value={record.height.rule} disabled={record.locked}
        choices={(['onAxis', 'belowAxis', 'aboveGround', 'unknown'] as const).map((rule) => ({ value: rule, label: say(`heightRule_${rule}`) }))} onCommit={set}
      />
      {record.height.rule === 'belowAxis'
        ? <NumberField layout="row" label={say('heightDrop')} kind="height" value={record.height.dropM} min={-3} max={6} disabled={record.locked} onCommit={(value, mergeKey) => { if (value !== null) run('setHeight', { ids: [record.id], height: { rule: 'belowAxis', dropM: value } }, undefined, mergeKey) }} />
        : null}
    </>
  )
}
