import type { PlacedRecord } from '../scene/kinds/index.ts'
import type { PlacedItem, SiteModel } from './types.ts'

/** A placed item whose record is of one kind. */
export interface ItemOf<K extends PlacedRecord['kind']> extends PlacedItem {
  record: Extract<PlacedRecord, { kind: K }>
}

const sorted = new WeakMap<SiteModel, ReadonlyMap<string, readonly PlacedItem[]>>()

/** Items of a kind in the order they were placed, sorted out once a site: a yard has a thousand, and zones and checks ask some sixty times. */
export function itemsOf<K extends PlacedRecord['kind']>(site: SiteModel, kind: K): readonly ItemOf<K>[] {
  let byKind = sorted.get(site)
  if (byKind === undefined) {
    const made = new Map<string, PlacedItem[]>()
    for (const item of site.placed.values()) {
      const alike = made.get(item.kind)
      if (alike === undefined) made.set(item.kind, [item])
      else alike.push(item)
    }
    sorted.set(site, (byKind = made))
  }
  return (byKind.get(kind) ?? []) as readonly ItemOf<K>[]
}
