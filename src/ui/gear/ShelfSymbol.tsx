import { useMemo, type ReactNode } from 'react'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { footM } from '../../units/factors.ts'
import { Picture } from '../common/Picture.tsx'
import { patchOf, type ShelfEntry } from './left.ts'

/** One scale for all gear on the shelf, so that a rack looks as long beside a stand as it is: 2.75 px to the foot. */
export const SHELF_PX_PER_M = 2.75 / footM
const WIDTH_PX = 72
const LEAST_HEIGHT_PX = 18
const MOST_HEIGHT_PX = 52

const half = WIDTH_PX / 2 / SHELF_PX_PER_M - 0.25
/** A stretch of line or a small ring stands for what is drawn point by point. */
const samplePoints: Readonly<Record<string, readonly { xM: number; yM: number }[]>> = {
  polyline: [{ xM: -half, yM: 0 }, { xM: half, yM: 0 }],
  polygon: [{ xM: -3, yM: -1.6 }, { xM: 3, yM: -1.6 }, { xM: 3, yM: 1.6 }, { xM: -3, yM: 1.6 }],
  point: [{ xM: 0, yM: 0 }],
}

/** Record that is only drawn, never kept. */
export const sampleRecord = (entry: Pick<ShelfEntry, 'kind' | 'choices' | 'gear'>): PlacedRecord | null => {
  const kind = kindOf(entry.kind)
  if (kind === undefined) return null
  const points = samplePoints[kind.placing]
  const record = kind.create('sample:shelf', { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: 'setUp:shelf', runId: 'run:shelf', ...(points === undefined ? {} : { points }) })
  const { figures, gearId: _own, ...patch } = patchOf({ key: '', leftCount: null, ...entry }) as { figures?: Record<string, unknown>; gearId?: string }
  return { ...record, ...patch, ...('figures' in record ? { figures: { ...record.figures, ...figures } } : {}) } as PlacedRecord
}

export const ShelfSymbol = ({ entry }: { entry: ShelfEntry }): ReactNode => {
  const drawn = useMemo(() => {
    const record = sampleRecord(entry)
    const kind = kindOf(entry.kind)
    if (record === null || kind === undefined) return null
    const context = { pipeOuterDiameterM: null, stickLengthM: null, pxPerM: SHELF_PX_PER_M, onShelf: true }
    const outline = 'points' in record ? record.points.flatMap(({ xM, yM }) => [xM, yM]) : [...kind.footprint(record, context)]
    const xs = outline.filter((_, i) => i % 2 === 0)
    const ys = outline.filter((_, i) => i % 2 === 1)
    const [left, right, low, high] = [Math.min(...xs, 0), Math.max(...xs, 0), Math.min(...ys, 0), Math.max(...ys, 0)]
    const heightPx = Math.round(Math.min(MOST_HEIGHT_PX, Math.max(LEAST_HEIGHT_PX, (high - low) * SHELF_PX_PER_M + 6)))
    // Longer gear (a rack, a truck) shows the end nearest the jaws, as on a sheet that goes on under the edge.
    const middleXM = (right - left) * SHELF_PX_PER_M > WIDTH_PX ? right - WIDTH_PX / 2 / SHELF_PX_PER_M + 0.4 : (left + right) / 2
    const middleYM = (low + high) / 2
    const s = SHELF_PX_PER_M
    return { list: kind.planSymbol(record, context), heightPx, matrix: { a: s, b: 0, c: 0, d: -s, e: WIDTH_PX / 2 - s * middleXM, f: heightPx / 2 + s * middleYM } }
  }, [entry])
  if (drawn === null) return null
  return <Picture list={drawn.list} widthPx={WIDTH_PX} heightPx={drawn.heightPx} matrix={drawn.matrix} idPrefix={`shelf-${entry.key.replace(/[^a-zA-Z0-9]/g, '-')}`} className="shelf-symbol" />
}
