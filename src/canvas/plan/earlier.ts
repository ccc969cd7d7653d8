import { deriveSite } from '../../derive/site.ts'
import type { PlacedItem } from '../../derive/types.ts'
import { thePlan } from '../../derive/whatIf.ts'
import type { YardDocument } from '../../scene/document.ts'
import { comparisonOf } from '../../state/comparison.ts'
import { paintShapes } from './paintItems.ts'
import { drawnItem, isInPart, signatureOf, toPx, type Picture } from './picture.ts'

const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
/** Closer than this is the same place, as in the list of changes: m, and rad of heading. */
const SAME_M = 0.001
const SAME_RAD = 1e-4
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
  return [...placedThen(compared.document).values()].filter((item) => {
    const present = now.get(item.id)
    return present === undefined || !standsAs(present, item)
  })
}

/** The records come from two documents, so that looks and place are compared, not identity. */
const standsAs = (a: PlacedItem, b: PlacedItem): boolean =>
  signatureOf(a.record) === signatureOf(b.record) && Math.abs(a.xM - b.xM) < SAME_M && Math.abs(a.yM - b.yM) < SAME_M && Math.abs(a.headingRad - b.headingRad) < SAME_RAD

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
