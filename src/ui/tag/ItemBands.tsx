import { lazy, Suspense, type ReactNode } from 'react'
import { useLaggingRun } from '../context.tsx'

const FindingBand = lazy(() => import('../findings/FindingBand.tsx'))

/** Findings of one item asked for; each band is three solves in the worker. */
const MOST_BANDS = 3

/** Bands of what is found about an item, the worst first; nothing where none has one. */
export const ItemBands = ({ itemId }: { itemId: string }): ReactNode => {
  const { run, isStale } = useLaggingRun()
  const about = (run?.findings ?? []).filter(({ itemIds, measured, isUnknown }) => itemIds.includes(itemId) && measured !== null && !isUnknown).slice(0, MOST_BANDS)
  if (isStale || about.length === 0) return null
  return <Suspense>{about.map((finding) => <FindingBand key={finding.key} finding={finding} named />)}</Suspense>
}
