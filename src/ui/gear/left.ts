import type { YardDocument } from '../../scene/document.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { placedByGear, type GearItem } from '../../scene/gear.ts'

/** One entry of the shelf: a kind, or one variety of it ('stand, V'), with the fields a placed one starts with. */
export interface ShelfEntry {
  key: string
  kind: string
  /** Fields that tell it from others of its kind. */
  choices: Readonly<Record<string, string | number | boolean | null>>
  gear: GearItem | null
  /** Left of what the crew owns; null: not counted. */
  leftCount: number | null
}

/** Varieties shown apart on the shelf: a field of the kind whose choices look different on the plan. */
const varieties: Readonly<Record<string, { field: string; values: readonly string[] }>> = {
  stand: { field: 'roller', values: ['flat', 'V', 'cradle'] },
}

export const leftOf = (item: GearItem, gear: readonly GearItem[], document: YardDocument): number | null =>
  item.count === null ? null : item.count - (placedByGear(document, gear).get(item.id)?.length ?? 0)

/** The shelf of one kind: each of the crew's own, or its varieties as generic gear where they own none. */
export const shelfOf = (kind: string, gear: readonly GearItem[], document: YardDocument): readonly ShelfEntry[] => {
  if (kindOf(kind) === undefined) return []
  const own = gear.filter((item) => item.kind === kind)
  const variety = varieties[kind]
  const generic: ShelfEntry[] = variety === undefined
    ? [{ key: kind, kind, choices: {}, gear: null, leftCount: null }]
    : variety.values.map((value) => ({ key: `${kind}.${value}`, kind, choices: { [variety.field]: value }, gear: null, leftCount: null }))
  const covered = (entry: ShelfEntry): boolean => own.some(({ choices }) => Object.entries(entry.choices).every(([field, value]) => choices[field] === undefined || choices[field] === value))
  return [
    ...own.map((item) => ({ key: item.id, kind, choices: item.choices, gear: item, leftCount: leftOf(item, gear, document) })),
    ...generic.filter((entry) => !covered(entry)),
  ]
}

/** What a placed item takes over from the shelf: its variety, and the crew's own figures with their basis. */
export const patchOf = (entry: ShelfEntry): Record<string, unknown> => ({
  ...entry.choices,
  ...(entry.gear === null ? {} : { gearId: entry.gear.id, ...(Object.keys(entry.gear.figures).length === 0 ? {} : { figures: entry.gear.figures }) }),
})
