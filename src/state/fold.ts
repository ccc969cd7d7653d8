/**
 * What of a long string may be folded away (docs/decisions/0007-the-fold.md): a stretch where rollers stand evenly and
 * nothing else is. Machine end and nose end then stand at working scale on one sheet.
 * Pure: site, findings and view in, a proposal out. Running distances in m from the datum, exit positive.
 */
import type { Finding } from '../checks/finding.ts'
import type { PlacedItem, SiteModel, SupportView } from '../derive/types.ts'
import { kindOf } from '../scene/kinds/index.ts'
import { renderText } from '../messages/render.ts'
import type { Localized } from '../messages/localized.ts'
import { formatQuantity, type FormatOptions } from '../units/format.ts'
import { FOLD_PX, type FrameView } from './frames.ts'
import type { Fold, ViewState } from './viewStore.ts'

export type FoldView = FrameView & Pick<ViewState, 'form' | 'selection' | 'hiddenKinds' | 'language'>

/** What the fold says: its length and what it hides, for the plan; how the ground goes on, for the side view. */
export interface FoldWords {
  along: string
  ground: string
  /** `along` without the features hidden beside the line, and those alone ('' where there are none): for a low plan. */
  short: string
  beside: string
}

export interface FoldPlan extends Fold {
  words: FoldWords
  /** Scale at which both ends fit beside the fold. */
  pxPerM: number
  /** First running distance on the sheet. */
  leftRunningM: number
}

const FOOT_M = 0.3048
/** A whole tape that fits at this scale is shown whole, px per ft. */
const WHOLE_FROM_PX_PER_FT = 4
const WORKING_PX_PER_FT: Readonly<Record<ViewState['form'], number>> = { desktop: 4.7, tabletLandscape: 5.6, tabletPortrait: 5.6, phone: 7 }

/** Rooms a fold is laid with, m: clear of a roller, of anything else that stands or is marked, of a corner of a feature. */
interface Rooms {
  roller: number
  item: number
  corner: number
}
const ROOMS: Rooms = { roller: 0.6, item: 1.5, corner: 1 }
/** A fold that stands is left as it is until something is in it: the sheet must not jump for what is merely near. */
const TIGHT_ROOMS: Rooms = { roller: 0.1, item: 0.1, corner: 0.1 }
const END_ROOM_M = 1
/** People and gear this far behind the stick are still shown, m. */
const BEHIND_ROOM_M = 3
const TYPICAL_STICK_M = 12
/** A fold has to draw both ends at least this much larger than the whole tape would be. */
const WORTH_RATIO = 1.25
/** Rollers count as alike within these: spacing, saddle height, offset, kink of the ground under one, m. */
const ALIKE_M = { gap: 0.08, saddle: 0.02, offset: 0.1, kink: 0.1 }
/**
 * Corners of features this near to the line are kept in sight: first all within 50 ft, and where the two ends then find no
 * room, those within 13 ft, the room a loader takes beside a string (common practice, no published source). What is hidden is named.
 */
const NEAR_REACHES_M = [15, 4] as const

type Span = readonly [fromM: number, toM: number]

/** Runs of three and more rollers on the exit side that are alike in all that shows, each as its supports in order. */
const alikeRows = (site: SiteModel): SupportView[][] => {
  const alike = (a: SupportView, b: SupportView): boolean =>
    [a, b].every(({ kind, runningM, saddleM }) => kind === 'roller' && runningM > 0 && saddleM !== null) && a.roller === b.roller && a.landingAid === b.landingAid
    && Math.abs(a.saddleM! - b.saddleM!) <= ALIKE_M.saddle && Math.abs(a.offsetM - b.offsetM) <= ALIKE_M.offset
  const rows: SupportView[][] = []
  let row: SupportView[] = []
  for (const next of site.supports) {
    const [before, last] = [row.at(-2), row.at(-1)]
    if (last !== undefined && alike(last, next)) {
      const isEven = before === undefined || (Math.abs(next.runningM - 2 * last.runningM + before.runningM) <= ALIKE_M.gap && Math.abs(next.groundLevelM - 2 * last.groundLevelM + before.groundLevelM) <= 2 * ALIKE_M.kink)
      // The last of one row may be the first of the next, at another spacing.
      if (!isEven) rows.push(row)
      row = isEven ? [...row, next] : [last, next]
    } else {
      rows.push(row)
      row = [next]
    }
  }
  return [...rows, row].filter(({ length }) => length >= 3)
}

const runningOutline = (site: SiteModel, item: PlacedItem): { runningM: number; offsetM: number }[] => {
  const points: { runningM: number; offsetM: number }[] = []
  for (let i = 0; i + 1 < item.outlineM.length; i += 2) points.push(site.toRunning(item.outlineM[i]!, item.outlineM[i + 1]!))
  return points
}

const isFeature = (item: PlacedItem): boolean => !('place' in item.record)

/** Where corners of a feature lie near the line, or its edge crosses the line. */
const featureSpans = (site: SiteModel, item: PlacedItem, reachM: number, rooms: Rooms): Span[] => {
  const points = runningOutline(site, item)
  const isClosed = kindOf(item.kind)?.placing === 'polygon'
  return points.flatMap((point, i): Span[] => {
    const spans: Span[] = Math.abs(point.offsetM) <= reachM ? [[point.runningM - rooms.corner, point.runningM + rooms.corner]] : []
    const next = points[i + 1] ?? (isClosed ? points[0] : undefined)
    if (next === undefined || point.offsetM * next.offsetM >= 0) return spans
    const crossingM = point.runningM + ((next.runningM - point.runningM) * point.offsetM) / (point.offsetM - next.offsetM)
    return [...spans, [crossingM - rooms.item, crossingM + rooms.item]]
  })
}

/** Stretches that nothing may fold away, for a row of rollers. */
const keptSpans = (site: SiteModel, findings: readonly Finding[], view: FoldView, row: readonly SupportView[], tipM: number | null, reachM: number, rooms: Rooms): Span[] => {
  const inRow = new Set(row.map(({ itemId }) => itemId))
  const spans: Span[] = []
  for (const item of site.placed.values()) {
    const isChosen = view.selection.includes(item.id)
    if (!isChosen && (item.kind === 'level' || inRow.has(item.id) || view.hiddenKinds.includes(item.kind))) continue
    if (isFeature(item)) {
      spans.push(...featureSpans(site, item, isChosen ? Infinity : reachM, rooms))
      continue
    }
    // Trees and the like are part of the site; gear and people are kept in sight however far beside the line they stand.
    if (!isChosen && kindOf(item.kind)?.gear === 'site' && Math.abs(item.offsetM ?? 0) > reachM) continue
    const along = [...runningOutline(site, item).map(({ runningM }) => runningM), ...(item.runningM === null ? [] : [item.runningM])]
    if (along.length > 0) spans.push([Math.min(...along) - rooms.item, Math.max(...along) + rooms.item])
  }
  const around = (runningM: number): Span => [runningM - rooms.item, runningM + rooms.item]
  if (tipM !== null) spans.push(around(tipM))
  for (const { level, isUnknown, itemIds, where } of findings) {
    if (isUnknown || itemIds.length === 0 || level === 'met' || level === 'NOTE') continue
    if (where?.at === 'run') spans.push(around(where.runningM))
    else if (where?.at === 'site') spans.push(around(site.toRunning(where.xM, where.yM).runningM))
    // What is said of several neighbours alike is as true of those in sight: the first and the last of them stay.
    const isListed = (i: number): boolean => row[i] !== undefined && itemIds.includes(row[i].itemId)
    row.forEach(({ runningM }, i) => { if (isListed(i) && !(isListed(i - 1) && isListed(i + 1))) spans.push(around(runningM)) })
  }
  return spans
}

/** A stretch less the spans to keep. */
const lessSpans = (stretch: Span, kept: readonly Span[]): Span[] =>
  kept.reduce<Span[]>((free, [a, b]) => free.flatMap(([from, to]): Span[] => (b <= from || a >= to ? [[from, to]] : [[from, a], [b, to]].filter((part): part is [number, number] => part[1]! > part[0]!))), [stretch])

interface FreeStretch {
  row: readonly SupportView[]
  fromM: number
  toM: number
}

/** Every stretch that could be folded away, with at least one roller of its row left in sight at either end. */
const freeStretches = (site: SiteModel, findings: readonly Finding[], view: FoldView, tipM: number | null, reachM: number, rooms: Rooms = ROOMS): FreeStretch[] => {
  // Beyond a bend the plan leaves the tape's line: nothing is folded there.
  if (site.run === null || site.bends.length > 0) return []
  return alikeRows(site).flatMap((row) => {
    const stretch: Span = [row[0]!.runningM + rooms.roller, row.at(-1)!.runningM - rooms.roller]
    return lessSpans(stretch, keptSpans(site, findings, view, row, tipM, reachM, rooms)).map(([fromM, toM]) => ({ row, fromM, toM }))
  })
}

const hiddenIn = (row: readonly SupportView[], { fromM, toM }: Fold): SupportView[] => row.filter(({ runningM }) => runningM > fromM && runningM < toM)

/** First and last running distance the sheet has to show: a stick behind the machine and who stands there, the nose, the puller, all gear and people beyond. */
const wholeSpan = (site: SiteModel, view: FoldView): Span => {
  const behindM = -(site.job.stickLengthM ?? site.sticks.stickLengthM ?? TYPICAL_STICK_M)
  const ends = [behindM, site.sticks.stringLengthM(site.sticks.stickCount)]
  for (const item of site.placed.values()) {
    if (isFeature(item) || kindOf(item.kind)?.gear === 'site' || view.hiddenKinds.includes(item.kind)) continue
    ends.push(...runningOutline(site, item).map(({ runningM }) => runningM).filter((runningM) => runningM > behindM - BEHIND_ROOM_M))
  }
  return [Math.min(...ends) - END_ROOM_M, Math.max(...ends) + END_ROOM_M]
}

/** Folds begin and end on the half foot or the tenth of a metre, m. */
const stepOf = (site: SiteModel, view: FoldView): number => (readerOf(site, view).system === 'metric' ? 0.1 : FOOT_M / 2)

const readerOf = (site: SiteModel, view: Pick<ViewState, 'language'>): FormatOptions => ({ system: site.layout.unitOverrides['length'] ?? site.layout.displayUnits, language: view.language })

/** An edge on a round distance, and not on a roller: that is wholly in sight or wholly hidden. */
const setEdge = (edgeM: number, row: readonly SupportView[], stretch: Fold, away: 1 | -1, stepM: number): number => {
  const near = row.find(({ runningM }) => Math.abs(runningM - edgeM) < ROOMS.roller + stepM)
  const [outwards, inwards] = away === 1 ? [Math.ceil, Math.floor] : [Math.floor, Math.ceil]
  // Hiding a little more, or the roller, keeps both ends at scale; where the stretch ends before that, it is shown.
  const wide = outwards((near === undefined ? edgeM : near.runningM + away * ROOMS.roller) / stepM) * stepM
  return wide <= stretch.toM && wide >= stretch.fromM ? wide : inwards((near === undefined ? edgeM : near.runningM - away * ROOMS.roller) / stepM) * stepM
}

/**
 * The fold that brings machine end and nose end to working scale on one sheet, or as near to it as like rollers allow; null
 * where the whole tape fits at 4 px/ft, where folding would gain less than a quarter, or where the sheet does not lie along a
 * straight level tape.
 *
 * Never folded away: gear and people other than the rollers of one even row, anything chosen, the place and the items of a
 * STOP, FIX or CHECK, the nose as it lies (`tipM`), a corner of a feature near the line, a crossing of the line.
 * The stretch lies as near the nose as it can. O(supports · items).
 */
export const foldFor = (site: SiteModel, findings: readonly Finding[], view: FoldView, tipM: number | null = null): FoldPlan | null => {
  if (site.setUp === null || view.orientation !== 'alongTape' || view.tapeVertical) return null
  const [startM, endM] = wholeSpan(site, view)
  const { widthPx } = view.bandSizePx.plan
  const wholePxPerM = widthPx / (endM - startM)
  if (wholePxPerM >= WHOLE_FROM_PX_PER_FT / FOOT_M) return null
  const roomPx = widthPx - FOLD_PX
  const workingPxPerM = WORKING_PX_PER_FT[view.form] / FOOT_M
  const neededM = endM - startM - roomPx / workingPxPerM
  const stepM = stepOf(site, view)
  let found: FoldPlan | null = null
  for (const reachM of NEAR_REACHES_M) {
    const longest = freeStretches(site, findings, view, tipM, reachM).reduce<FreeStretch | null>((best, one) => (best === null || one.toM - one.fromM > best.toM - best.fromM ? one : best), null)
    if (longest === null) continue
    const { row } = longest
    const toM = setEdge(longest.toM, row, longest, 1, stepM)
    const fromM = setEdge(Math.max(longest.fromM, toM - neededM), row, longest, -1, stepM)
    const pxPerM = Math.min(workingPxPerM, roomPx / (endM - startM - (toM - fromM)))
    if (hiddenIn(row, { fromM, toM }).length < 2 || pxPerM < WORTH_RATIO * wholePxPerM) continue
    found = { fromM, toM, words: foldWords(site, { fromM, toM }, view), pxPerM, leftRunningM: startM }
    if (pxPerM >= WHOLE_FROM_PX_PER_FT / FOOT_M) break
  }
  return found
}

/**
 * A fold as it may stand now: itself while nothing in it has to be in sight; else the largest stretch of it that may stay
 * folded; null where none is worth it, or something chosen is in it. For edits, selections and findings that come later.
 */
export const keptFold = (site: SiteModel, findings: readonly Finding[], view: FoldView, tipM: number | null = null): Fold | null => {
  const { fold } = view
  if (fold === null || fold === undefined || site.setUp === null || view.orientation !== 'alongTape' || view.tapeVertical) return null
  const isHidden = (id: string): boolean => {
    const runningM = site.placed.get(id)?.runningM ?? null
    return runningM !== null && runningM > fold.fromM && runningM < fold.toM && !isFeature(site.placed.get(id)!)
  }
  if (view.selection.some(isHidden)) return null
  const standing = freeStretches(site, findings, view, tipM, NEAR_REACHES_M[1], TIGHT_ROOMS)
  if (standing.some(({ fromM, toM }) => fromM <= fold.fromM + 1e-6 && toM >= fold.toM - 1e-6)) return fold
  const stepM = stepOf(site, view)
  let best: Fold | null = null
  for (const { row, ...free } of freeStretches(site, findings, view, tipM, NEAR_REACHES_M[1])) {
    const isCut = (edgeM: number): SupportView | undefined => row.find(({ runningM }) => Math.abs(runningM - edgeM) < ROOMS.roller)
    const [fromM, toM] = [Math.max(fold.fromM, free.fromM), Math.min(fold.toM, free.toM)]
    const [afterM, beforeM] = [isCut(fromM)?.runningM, isCut(toM)?.runningM]
    // A roller at a new edge is shown.
    const part = {
      fromM: fromM === fold.fromM ? fromM : Math.ceil((afterM === undefined ? fromM : afterM + ROOMS.roller) / stepM) * stepM,
      toM: toM === fold.toM ? toM : Math.floor((beforeM === undefined ? toM : beforeM - ROOMS.roller) / stepM) * stepM,
    }
    if (hiddenIn(row, part).length >= 2 && (best === null || part.toM - part.fromM > best.toM - best.fromM)) best = part
  }
  // A fold that hides hardly more than its own width is no help.
  return best !== null && (best.toM - best.fromM) * view.pxPerM > 2 * FOLD_PX ? best : null
}

const words = {
  alike: { en: 'folded: {length}, {first} to {last} alike', es: 'plegado: {length}, {first} a {last} iguales' },
  one: { en: 'folded: {length}', es: 'plegado: {length}' },
  beside: { en: '{names} beside', es: 'al lado {names}' },
  falls: { en: 'ground falls {by}', es: 'el suelo baja {by}' },
  rises: { en: 'ground rises {by}', es: 'el suelo sube {by}' },
  level: { en: 'ground level', es: 'suelo a nivel' },
} as const satisfies Record<string, Localized>

/** Less than this is level, m: it would round to nothing. */
const LEVEL_M = FOOT_M / 48

/** Length and contents of a fold in the reader's words: like rollers by their labels, features near the line by name, the fall of the ground. */
export const foldWords = (site: SiteModel, fold: Fold, view: Pick<ViewState, 'language'>): FoldWords => {
  const reader = readerOf(site, view)
  const length = formatQuantity({ kind: 'length', value: fold.toM - fold.fromM }, reader)
  const hidden = hiddenIn(site.supports, fold)
  const [first, last] = [hidden[0], hidden.at(-1)]
  const short = first === undefined || last === undefined ? renderText(words.one, { length }, reader) : renderText(words.alike, { length, first: first.label, last: last.label }, reader)
  const names = [...new Set([...site.placed.values()].filter(isFeature).flatMap((item) => {
    const isIn = runningOutline(site, item).some(({ runningM, offsetM }) => runningM > fold.fromM && runningM < fold.toM && Math.abs(offsetM) <= NEAR_REACHES_M[0])
    return isIn ? [nameOf(item, view)] : []
  }))]
  const fallM = site.groundLevelAt(fold.fromM) - site.groundLevelAt(fold.toM)
  // The half inch or centimetre is near enough for a look along the ground.
  const nearM = reader.system === 'metric' ? 0.01 : FOOT_M / 24
  const by = formatQuantity({ kind: 'length', value: Math.round(Math.abs(fallM) / nearM) * nearM }, reader)
  const ground = site.ground.from === 'unknown' ? '' : renderText(Math.abs(fallM) < LEVEL_M ? words.level : fallM > 0 ? words.falls : words.rises, { by }, reader)
  const beside = names.length === 0 ? '' : renderText(words.beside, { names: names.join(', ') }, reader)
  return { along: beside === '' ? short : `${short}; ${beside}`, ground, short, beside }
}

const nameOf = ({ record, kind }: PlacedItem, { language }: Pick<ViewState, 'language'>): string => {
  if ('name' in record && typeof record.name === 'string' && record.name !== '') return record.name
  return kindOf(kind)?.name[language] ?? kind
}
