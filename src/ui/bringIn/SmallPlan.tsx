import { useMemo, type ReactNode } from 'react'
import type { Primitive } from '../../drawing/primitives.ts'
import { importWords as words } from '../../messages/ui/importWords.ts'
import type { LaidShape } from '../../read/plan/layPlan.ts'
import { Picture } from '../common/Picture.tsx'
import { useWords } from '../context.tsx'

const WIDTH_PX = 780
const HEIGHT_PX = 300
const EDGE_PX = 20

const primitiveOf = ({ as, points }: LaidShape): Primitive[] => {
  const [first] = points
  if (as === 'point' && first !== undefined) return [{ t: 'mark', ...first, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 3, fill: 'ink' }] }]
  const flat = points.flatMap(({ xM, yM }) => [xM, yM])
  return [as === 'area' ? { t: 'path', points: flat, closed: true, stroke: 'ink', weight: 'context', fill: 'lot', fillOpacity: 0.5 } : { t: 'path', points: flat, stroke: 'ink', weight: 'context' }]
}

/** What comes in, at the scale at which all of it is seen, with the datum nail as a cross where one is near. */
export const SmallPlan = ({ shapes, datum }: { shapes: readonly LaidShape[]; datum: { xM: number; yM: number } | null }): ReactNode => {
  const { local } = useWords()
  const { list, matrix } = useMemo(() => {
    const all = [...shapes.flatMap(({ points }) => points), ...(datum === null ? [] : [datum])]
    const low = { xM: Infinity, yM: Infinity }
    const high = { xM: -Infinity, yM: -Infinity }
    for (const { xM, yM } of all) {
      low.xM = Math.min(low.xM, xM)
      low.yM = Math.min(low.yM, yM)
      high.xM = Math.max(high.xM, xM)
      high.yM = Math.max(high.yM, yM)
    }
    const pxPerM = Math.min((WIDTH_PX - 2 * EDGE_PX) / Math.max(1e-3, high.xM - low.xM), (HEIGHT_PX - 2 * EDGE_PX) / Math.max(1e-3, high.yM - low.yM), 200)
    const [midX, midY] = [(low.xM + high.xM) / 2, (low.yM + high.yM) / 2]
    const cross: Primitive[] = datum === null ? [] : [{ t: 'mark', ...datum, parts: [{ t: 'path', points: [-8, 0, 8, 0], stroke: 'chosen', weight: 'gear' }, { t: 'path', points: [0, -8, 0, 8], stroke: 'chosen', weight: 'gear' }] }]
    return {
      list: [...shapes.filter(({ as }) => as === 'area'), ...shapes.filter(({ as }) => as !== 'area')].flatMap(primitiveOf).concat(cross),
      matrix: { a: pxPerM, b: 0, c: 0, d: -pxPerM, e: WIDTH_PX / 2 - midX * pxPerM, f: HEIGHT_PX / 2 + midY * pxPerM },
    }
  }, [shapes, datum])
  if (shapes.length === 0) return null
  return (
    <figure className="bring-plan">
      <Picture list={list} widthPx={WIDTH_PX} heightPx={HEIGHT_PX} matrix={matrix} title={local(words.smallPlan)} idPrefix="bring-plan" />
      <figcaption className="quiet-text">{local(words.smallPlan)}</figcaption>
    </figure>
  )
}
