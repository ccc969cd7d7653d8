import type { ReactNode } from 'react'
import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { differenceText, standingText } from './asSetText.ts'
import { standingOf, type HeightRow } from './measured.ts'

/** A measured height: typed with its unit, its difference to the plan, its tolerance, and taken back. Each is a step of undo. */
export const AsSetField = ({ row, label }: { row: HeightRow; label: string }): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const run = useCommand()
  const { itemId, path, measuredM } = row
  const standing = standingOf(row)
  return (
    <div className="as-set-field" data-standing={standing}>
      <NumberField
        layout="row" label={label} kind="height" value={measuredM} nullable min={-1} max={12} name={fieldName(itemId, `asSet.${path}`)} placeholder={local(words.notMeasured)}
        onCommit={(value, mergeKey) => { run('setAsSet', { itemId, [path]: value }, undefined, mergeKey) }}
      />
      {measuredM === null ? null : (
        <div className="as-set-said">
          <span role="status">{standing === 'off' ? <strong aria-hidden="true">! </strong> : null}<Figure text={[differenceText(row, reader), standingText(row, reader)].filter((text) => text !== '').join(', ')} /></span>
          <button type="button" className="quiet square" aria-label={local(words.clearOf, { label })} onClick={() => { run('setAsSet', { itemId, [path]: null }) }}><Icon name="close" /></button>
        </div>
      )}
    </div>
  )
}
