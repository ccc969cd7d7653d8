import { useMemo } from 'react'
import { useStore } from 'zustand'
import { changesBetween, type Change } from '../../scene/changeWords.ts'
import { comparisonOf, type Compared } from '../../state/comparison.ts'
import { useDocuments, useUi } from '../context.tsx'

/** What is compared with, and what differs; null while nothing is. A gesture under way does not count. */
export const useComparison = (): { compared: Compared; changes: readonly Change[] } | null => {
  const { app } = useUi()
  const compared = useStore(comparisonOf(app), (state) => state.compared)
  const document = useDocuments((state) => state.document)
  return useMemo(() => (compared === null ? null : { compared, changes: changesBetween(compared.document, document) }), [compared, document])
}
