import { deriveSite } from '../../derive/site.ts'
import type { PlacedItem } from '../../derive/types.ts'
import { thePlan } from '../../derive/whatIf.ts'
import type { YardDocument } from '../../scene/document.ts'
import { comparisonOf } from '../../state/comparison.ts'
import { paintShapes } from './paintItems.ts'
import { changedIds, drawnItem, isInPart, toPx, type Picture } from './picture.ts'

const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
/** Moves shorter than this on the screen have no line from old to new, px. */
const LEAST_LINE_PX = 10

const placedOf = new WeakMap<YardDocument, ReadonlyMap<string, PlacedItem>>()

/** Where things stood in the plan that is compared with; worked out once a document. */
function placedThen(document: YardDocument): ReadonlyMap<string, PlacedItem> {
  const known = placedOf.get(document)
  if (known !== undefined) return known
  const { placed } = deriveSite(document, thePlan)
  placedOf.set(document, placed)
  return placed
}

/** What stood otherwise in the plan that is compared with: gone, moved, or of another form. Empty while nothing is compared. */
export function earlierItems(app: object, now: ReadonlyMap<string, PlacedItem>): readonly PlacedItem[] {
  const { compared } = comparisonOf(app).getState()
  if (compared === null) return []
  const then = placedThen(compared.document)
  const changed = changedIds(now, then)
  return [...then.values()].filter(({ id }) => changed.has(id))
}

/** Thin outlines of how it stood, under the plan, with a line to where it stands now. */
export function paintEarlier(context: CanvasRenderingContext2D, items: readonly PlacedItem[], picture: Picture): void {
  for (const item of items) {
    if (picture.view.hiddenKinds.includes(item.kind) || !isInPart(item, picture)) continue
    const drawn = drawnItem(item, picture)
    paintShapes(context, drawn.shapes, picture, drawn.matrix, 'earlier')
    const now = picture.site.placed.get(item.id)
    if (now === undefined || drawn.isFeature) continue
    const [from, to] = [toPx(picture, item.xM, item.yM), toPx(picture, now.xM, now.yM)]
    if (Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) >= LEAST_LINE_PX) paintShapes(context, [{ t: 'path', points: [from.xPx, from.yPx, to.xPx, to.yPx], stroke: 'ink2', weight: 'hair', dash: 'tie' }], picture, identity)
  }
}
