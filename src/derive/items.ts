/** Placed items of the document in the site frame and beside the shown run. */
import type { SymbolContext } from '../drawing/primitives.ts'
import { projectOnPath, pointOnPath, type Path } from '../geometry/arc.ts'
import { wrapAngleRad } from '../geometry/vector.ts'
import type { YardDocument, YardRecord } from '../scene/document.ts'
import { kindOf, type PlacedRecord } from '../scene/kinds/index.ts'
import { isFeature, isItem, labelsOf, PlaceError, resolvePlace } from '../scene/resolve.ts'
import type { PlacedItem } from './types.ts'

/** What an item's place depends on besides its own record. */
export interface ShownRun {
  runId: string
  path: Path
}

interface Made {
  shown: ShownRun | null
  /** What an attached item hangs on: its run's path, or the item that carries it. */
  carrier: unknown
  context: SymbolContext
  item: PlacedItem
}

const made = new WeakMap<PlacedRecord, Made>()

/**
 * Every placed item and feature, in document order. An item whose place leads nowhere (PlaceError) is left out; the
 * reader of files refuses such a document, so this only guards previews. Items that did not change, nor what carries
 * them, keep their object from one document to the next.
 */
export function placedItems(document: YardDocument, shown: ShownRun | null, context: SymbolContext): ReadonlyMap<string, PlacedItem> {
  const labels = labelsOf(document)
  const placed = new Map<string, PlacedItem>()
  for (const record of Object.values(document.records)) {
    if (!isPlaced(record)) continue
    const item = itemFor(document, record, shown, context, labels.get(record.id) ?? '')
    if (item !== null) placed.set(record.id, item)
  }
  return placed
}

const isPlaced = (record: YardRecord): record is PlacedRecord => (isItem(record) || isFeature(record)) && kindOf(record.kind) !== undefined

function itemFor(document: YardDocument, record: PlacedRecord, shown: ShownRun | null, context: SymbolContext, label: string): PlacedItem | null {
  const carrier = carrierOf(document, record, shown)
  const before = made.get(record)
  if (before !== undefined && before.shown === shown && before.carrier === carrier && before.context === context) {
    if (before.item.label === label) return before.item
    const item = { ...before.item, label }
    made.set(record, { ...before, item })
    return item
  }
  try {
    const item = isItem(record) ? placedItem(document, record, shown, context, label) : placedFeature(record, shown, label)
    // An item on an item depends on a chain of others; it is not kept.
    if (!(isItem(record) && record.place.at === 'onItem')) made.set(record, { shown, carrier, context, item })
    return item
  } catch (error) {
    if (error instanceof PlaceError) return null
    throw error
  }
}

/** For an item on a run: the pair of run and set-up records that fix its path. Free items and features depend on nothing. */
function carrierOf(document: YardDocument, record: PlacedRecord, shown: ShownRun | null): unknown {
  if (!isItem(record) || record.place.at !== 'onRun') return null
  if (shown !== null && record.place.runId === shown.runId) return shown
  // Runs that are not shown are rare: their items are made anew.
  return document
}

function placedItem(document: YardDocument, record: Extract<PlacedRecord, { place: unknown }>, shown: ShownRun | null, context: SymbolContext, label: string): PlacedItem {
  const at = resolvePlace(document, record)
  const { place } = record
  const isOnShown = shown !== null && place.at === 'onRun' && place.runId === shown.runId
  const beside = shown === null ? null : isOnShown ? { runningM: place.runningM, offsetM: place.offsetM } : projectOnPath(shown.path, at)
  const turnRad = isOnShown ? place.turnRad : shown === null || beside === null ? 0 : wrapAngleRad(at.headingRad - pointOnPath(shown.path, beside.runningM).headingRad)
  return {
    id: record.id,
    kind: record.kind,
    record,
    label,
    xM: at.xM,
    yM: at.yM,
    headingRad: at.headingRad,
    runningM: beside?.runningM ?? null,
    offsetM: beside?.offsetM ?? null,
    turnRad,
    outlineM: inSite(kindOf(record.kind)?.footprint(record, context) ?? [], at),
    isAttached: isAttached(document, record),
  }
}

function placedFeature(record: Extract<PlacedRecord, { points: unknown }>, shown: ShownRun | null, label: string): PlacedItem {
  const outlineM = record.points.flatMap(({ xM, yM }) => [xM, yM])
  const n = Math.max(1, record.points.length)
  const middle = { xM: record.points.reduce((sum, p) => sum + p.xM, 0) / n, yM: record.points.reduce((sum, p) => sum + p.yM, 0) / n }
  const beside = shown === null ? null : projectOnPath(shown.path, middle)
  return { id: record.id, kind: record.kind, record, label, ...middle, headingRad: 0, runningM: beside?.runningM ?? null, offsetM: beside?.offsetM ?? null, turnRad: 0, outlineM, isAttached: false }
}

/** Flat local points (x along the heading, y left) in the site frame. */
function inSite(local: readonly number[], at: { xM: number; yM: number; headingRad: number }): number[] {
  const [cos, sin] = [Math.cos(at.headingRad), Math.sin(at.headingRad)]
  const out = new Array<number>(local.length)
  for (let i = 0; i + 1 < local.length; i += 2) {
    const [x, y] = [local[i]!, local[i + 1]!]
    out[i] = at.xM + cos * x - sin * y
    out[i + 1] = at.yM + sin * x + cos * y
  }
  return out
}

function isAttached(document: YardDocument, record: Extract<PlacedRecord, { place: unknown }>): boolean {
  let { place } = record
  for (let steps = 0; place.at === 'onItem' && steps < 100; steps += 1) {
    const parent = document.records[place.itemId]
    if (!isItem(parent)) return false
    place = parent.place
  }
  return place.at === 'onRun'
}
