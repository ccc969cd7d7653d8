import type { ReactNode } from 'react'
import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import { Figure } from '../common/Figure.tsx'
import { useIsStale, useResults, useSite, useWords } from '../context.tsx'
import { AsSetField } from './AsSetField.tsx'
import { heightRows } from './measured.ts'

/** In the tag of a support or the machine: how exactly it is to be set, the most it carries, and the height as measured. */
const AsSetRows = ({ itemId }: { itemId: string }): ReactNode => {
  const { local, figure, system } = useWords()
  const site = useSite((state) => state.site)
  const run = useResults((state) => state.run)
  const isStale = useIsStale()
  const rows = heightRows(site, run, system).filter((row) => row.itemId === itemId)
  if (rows.length === 0) return null
  const isOne = rows.length === 1
  return (
    <div className="as-set">
      {rows.map((row) => {
        const figures = run?.quantities?.supports[row.key]
        const head = isOne ? '' : `${row.label ?? ''} `
        const load = figures?.loadN ?? null
        const when = figures?.when ?? null
        return (
          <div key={row.key}>
            {figures === undefined ? null : (
              <p className="as-set-figures" data-stale={isStale}>
                <span><Figure text={`${head}${local(words.setTo)} ${row.toleranceM === null ? local(words.notKnown) : figure({ kind: 'shortLength', value: row.toleranceM })}`} /></span>
                {load === null || when === null ? null : <span><Figure text={`${local(words.load)} ${figure({ kind: 'force', value: load })}, ${local(words[`when_${when}`])}`} /></span>}
              </p>
            )}
            <AsSetField row={row} label={isOne ? local(words.field) : local(words.fieldNear, { label: row.label ?? '' })} />
          </div>
        )
      })}
    </div>
  )
}
export default AsSetRows
