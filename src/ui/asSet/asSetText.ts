import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import type { Words } from '../context.tsx'
import { standingOf, type HeightRow } from './measured.ts'

/** '½ in low', 'as planned'; '' where there is nothing to compare. */
export const differenceText = ({ plannedM, measuredM }: HeightRow, { local, figure }: Words): string => {
  if (plannedM === null || measuredM === null) return ''
  const by = measuredM - plannedM
  const text = figure({ kind: 'shortLength', value: Math.abs(by) })
  if (text === figure({ kind: 'shortLength', value: 0 })) return local(words.even)
  return local(by > 0 ? words.high : words.low, { by: text })
}

/** 'within ± ¼ in', 'off: ± ¼ in allowed'; '' while not measured. */
export const standingText = (row: HeightRow, { local }: Words): string => {
  const tolerance = { kind: 'shortLength' as const, value: row.toleranceM }
  switch (standingOf(row)) {
    case 'open': return ''
    case 'unknown': return row.plannedM === null ? '' : local(words.noTolerance)
    case 'ok': return local(words.ok, { tolerance })
    case 'off': return local(words.off, { tolerance })
  }
}
