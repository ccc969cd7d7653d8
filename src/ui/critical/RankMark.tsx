import { useMemo, type ReactNode } from 'react'
import { rankShape, type RankLevel } from '../../drawing/rankShape.ts'
import { Picture } from '../common/Picture.tsx'

const SIZE_PX = 22
const BOX_PX = 30

/** Rank of a support, as on the drawing. */
export const RankMark = ({ rank, level, isOld }: { rank: number; level: RankLevel; isOld: boolean }): ReactNode => {
  const list = useMemo(() => [{ t: 'mark' as const, xM: 0, yM: 0, parts: rankShape(rank, level, SIZE_PX, isOld) }], [rank, level, isOld])
  const matrix = useMemo(() => ({ a: 1, b: 0, c: 0, d: -1, e: BOX_PX / 2, f: BOX_PX / 2 }), [])
  return <Picture list={list} widthPx={BOX_PX} heightPx={BOX_PX} matrix={matrix} className="level-mark" />
}
