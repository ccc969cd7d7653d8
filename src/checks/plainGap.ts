/** Distance between two items in plan, outline to outline; a person's walk is longer where something stands between. */
import { distanceBetween, type Closest, type Shape } from '../geometry/distance.ts'
import { pointsOf } from '../derive/ways.ts'
import type { PlacedItem } from '../derive/types.ts'
import type { PlacedRecord } from '../scene/kinds/index.ts'

/** Kinds that are points on the plan: measured to their middle. */
const small: ReadonlySet<PlacedRecord['kind']> = new Set(['extinguisher', 'burnKit', 'crew', 'tree'])

const figureOf = (item: PlacedItem): Shape => (small.has(item.kind) || item.outlineM.length < 6 ? { kind: 'point', point: item } : { kind: 'polygon', points: pointsOf(item.outlineM) })

export const gapOf = (a: PlacedItem, b: PlacedItem): Closest => distanceBetween(figureOf(a), figureOf(b))

/** Nearest of some items to one, with the distance. */
export const nearestTo = <T extends PlacedItem>(one: PlacedItem, others: readonly T[]): { item: T; distanceM: number } | null =>
  others.map((item) => ({ item, distanceM: gapOf(one, item).distanceM })).toSorted((a, b) => a.distanceM - b.distanceM)[0] ?? null
