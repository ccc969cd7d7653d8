import type { SectionProfile, PlacedItem, SiteModel } from '../../derive/types.ts'
import { pullerAhead } from '../../derive/stages/pullerAhead.ts'
import { itemMatrix, type Matrix } from '../../drawing/matrix.ts'
import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { themes, type Theme } from '../../drawing/theme.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import type { SetUpRecord } from '../../scene/records/frame.ts'
import type { App } from '../../state/app.ts'
import { applyMatrix, foldOf, partOfAlong, partPx, planMatrix, planToPx, type PlanPart } from '../../state/frames.ts'
import { stageOf, type ViewState } from '../../state/viewStore.ts'
import { applyEdit, type Edit } from '../../scene/edit.ts'
import { deriveSite } from '../../derive/site.ts'
import { boundsOfPoints } from './rings.ts'
import { shownZones, type ShownZone } from './shownZones.ts'
import { frameSetUp, lengthSystem } from './toolContext.ts'
import type { BoxPx } from './labels.ts'

type TextPrimitive = Extract<Primitive, { t: 'text' }>

/** A symbol split into what is drawn in place and words that are set apart from one another. */
export interface DrawnItem {
  item: PlacedItem
  shapes: readonly Primitive[]
  texts: readonly TextPrimitive[]
  matrix: Matrix
  /** Bounds of outline and at least 6 px, for culling and for labels. */
  boxPx: BoxPx
  isFeature: boolean
}

/** Everything the layers are painted from, taken from the stores once per draw. */
export interface Picture {
  app: App
  view: ViewState
  site: SiteModel
  profile: SectionProfile
  frame: SetUpRecord | null
  matrix: Matrix
  theme: Theme
  isTouch: boolean
  band: { widthPx: number; heightPx: number }
  /** Which part of a folded sheet `matrix` is of, and where on the band that part is drawn. Without a fold: the whole band. */
  part: PlanPart
  boundsPx: BoxPx
  symbol: SymbolContext
  zones: readonly ShownZone[]
  chosen: ReadonlySet<string>
  /** Run-through: the puller gone ahead of the nose, drawn in place of the one in the plan; null: it stands as drawn. */
  ahead: PlacedItem | null
}

export const themeNow = (view: Pick<ViewState, 'theme'>, prefersDark: boolean): Theme => (view.theme === 'auto' ? themes[prefersDark ? 'night' : 'day'] : themes[view.theme])

export const pictureOf = (app: App, prefersDark: boolean, isTouch: boolean): Picture => {
  const view = app.view.getState()
  const { site, profile } = app.site.getState()
  const frame = frameSetUp(app)
  return {
    app, view, site, profile, frame, matrix: planMatrix(view, frame), part: 'before', boundsPx: { x0: 0, y0: 0, x1: view.bandSizePx.plan.widthPx, y1: view.bandSizePx.plan.heightPx }, theme: themeNow(view, prefersDark), isTouch, band: view.bandSizePx.plan,
    symbol: { pipeOuterDiameterM: site.pipe.odM, stickLengthM: site.job.stickLengthM, pxPerM: view.pxPerM, reader: { system: lengthSystem(site), language: view.language } },
    zones: shownZones(site, stageOf(view)), chosen: new Set(view.selection),
    ahead: view.runThrough ? pullerAhead(site, profile.stage, profile.tipM) : null,
  }
}

/** The picture of each part of the sheet: the one before the fold and the one after it; without a fold the picture itself. */
export const partsOf = (picture: Picture): readonly Picture[] => {
  const { view, frame, band } = picture
  if (foldOf(view) === null) return [picture]
  return (['before', 'after'] as const).map((part) => ({ ...picture, part, matrix: planMatrix(view, frame, part), boundsPx: { ...partPx(view, part), y0: 0, y1: band.heightPx } }))
}

/** Site point → px of the band, in whichever part of the sheet it lies. */
export const toPx = ({ view, frame, matrix }: Picture, xM: number, yM: number): { xPx: number; yPx: number } =>
  foldOf(view) === null ? applyMatrix(matrix, xM, yM) : planToPx(view, frame, xM, yM)

/** Whether an item is drawn in this part: features run on through the fold, gear stands on one side of it or is folded away. */
export const isInPart = (item: PlacedItem, { view, part }: Picture): boolean =>
  foldOf(view) === null || !('place' in item.record) || item.runningM === null || partOfAlong(view, item.runningM) === part

const signatures = new WeakMap<object, string>()

/** What a symbol looks like, apart from where it stands: its record without name and place. Equal gear shares one. */
export const signatureOf = (record: object): string => {
  const known = signatures.get(record)
  if (known !== undefined) return known
  const signature = JSON.stringify({ ...record, id: '', place: null, note: null, gearId: null, locked: false })
  signatures.set(record, signature)
  return signature
}

interface Split {
  shapes: readonly Primitive[]
  texts: readonly TextPrimitive[]
}
const splits = new Map<string, Split>()
const MOST_SPLITS = 3000

/** The plan symbol of a record at this scale, its words apart from the rest; kept for all records that look the same. */
const splitOf = (item: PlacedItem, picture: Picture): Split => {
  const { symbol } = picture
  const isChosen = picture.chosen.has(item.id)
  const key = `${symbol.pxPerM}|${symbol.pipeOuterDiameterM}|${symbol.stickLengthM}|${symbol.reader?.system}|${symbol.reader?.language}|${isChosen}|${signatureOf(item.record)}`
  const known = splits.get(key)
  if (known !== undefined) return known
  const list = kindOf(item.kind)?.planSymbol(item.record, isChosen ? { ...symbol, isChosen } : symbol) ?? []
  const split: Split = { shapes: list.filter(({ t }) => t !== 'text'), texts: list.filter((primitive): primitive is TextPrimitive => primitive.t === 'text') }
  // Zooming leaves a set behind at each scale.
  if (splits.size >= MOST_SPLITS) splits.clear()
  splits.set(key, split)
  return split
}

/** Least half size of a symbol on screen, px: a dot in the distance still has room round it. */
const leastHalfPx = 4

/** Half the size of the marks in a symbol, px: they keep their size on screen and may be wider than the thing they stand for. */
const markHalfPx = (shapes: readonly Primitive[]): number => {
  let half = leastHalfPx
  for (const shape of shapes) {
    if (shape.t !== 'mark') continue
    for (const part of shape.parts) {
      if (part.t === 'circle') half = Math.max(half, Math.abs(part.xM) + part.radiusM)
      if (part.t === 'path') for (const value of part.points) half = Math.max(half, Math.abs(value))
    }
  }
  return half
}

export const drawnItem = (item: PlacedItem, picture: Picture): DrawnItem => {
  const { matrix } = picture
  const isFeature = !('place' in item.record)
  const box = boundsOfPoints(item.outlineM) ?? { leastX: item.xM, leastY: item.yM, mostX: item.xM, mostY: item.yM }
  const { shapes, texts } = splitOf(item, picture)
  return { item, shapes, texts, matrix: isFeature ? matrix : itemMatrix(matrix, item.xM, item.yM, item.headingRad), boxPx: boxOf(matrix, box, isFeature ? leastHalfPx : markHalfPx(shapes)), isFeature }
}

const boxOf = (m: Matrix, box: { leastX: number; leastY: number; mostX: number; mostY: number }, leastPx: number): BoxPx => {
  const [halfX, halfY] = [(box.mostX - box.leastX) / 2, (box.mostY - box.leastY) / 2]
  const [midX, midY] = [(box.mostX + box.leastX) / 2, (box.mostY + box.leastY) / 2]
  const [xPx, yPx] = [m.a * midX + m.c * midY + m.e, m.b * midX + m.d * midY + m.f]
  const [hx, hy] = [Math.max(leastPx, Math.abs(m.a) * halfX + Math.abs(m.c) * halfY), Math.max(leastPx, Math.abs(m.b) * halfX + Math.abs(m.d) * halfY)]
  return { x0: xPx - hx, y0: yPx - hy, x1: xPx + hx, y1: yPx + hy }
}

/** Symbols reach beyond their outline: sticks on a rack, facers, crew marks. */
const reachPx = (picture: Picture): number => 40 + 13 * picture.view.pxPerM

/** Whether any of it may be on screen. */
export const isOnScreen = (box: BoxPx, { boundsPx }: Picture, slackPx: number): boolean =>
  box.x1 > boundsPx.x0 - slackPx && box.y1 > boundsPx.y0 - slackPx && box.x0 < boundsPx.x1 + slackPx && box.y0 < boundsPx.y1 + slackPx

/** Shown items and features, features first: areas by size, then lines; items in document order. Off-screen ones left out. */
export const drawnItems = (picture: Picture, skip: ReadonlySet<string>): { features: DrawnItem[]; items: DrawnItem[] } => {
  const features: DrawnItem[] = []
  const items: DrawnItem[] = []
  const { hiddenKinds } = picture.view
  const slackPx = reachPx(picture)
  for (const placed of picture.site.placed.values()) {
    const item = placed.id === picture.ahead?.id ? picture.ahead : placed
    if (hiddenKinds.includes(item.kind) || skip.has(item.id) || isZone(item) || !isInPart(item, picture)) continue
    const isFeature = !('place' in item.record)
    if (!isFeature) {
      const [xPx, yPx] = [picture.matrix.a * item.xM + picture.matrix.c * item.yM + picture.matrix.e, picture.matrix.b * item.xM + picture.matrix.d * item.yM + picture.matrix.f]
      // Quick way out before anything is built: far more than the longest vehicle off the screen.
      if (!isOnScreen({ x0: xPx, y0: yPx, x1: xPx, y1: yPx }, picture, slackPx + 25 * picture.view.pxPerM)) continue
    }
    const drawn = drawnItem(item, picture)
    if (isOnScreen(drawn.boxPx, picture, slackPx)) (isFeature ? features : items).push(drawn)
  }
  const area = ({ item, boxPx }: DrawnItem): number => (kindOf(item.kind)?.placing === 'polygon' ? (boxPx.x1 - boxPx.x0) * (boxPx.y1 - boxPx.y0) : -1)
  return { features: features.sort((a, b) => area(b) - area(a)), items }
}

/** Hand-drawn zones are drawn with the derived ones, by phase. */
const isZone = (item: PlacedItem): boolean => 'zoneClass' in item.record

/** Whether two placed items look the same on the plan; labels are words of the tape. */
export const looksSame = (a: PlacedItem, b: PlacedItem): boolean => a === b || (a.record === b.record && a.xM === b.xM && a.yM === b.yM && a.headingRad === b.headingRad)

/** Ids that look other than in the base picture, or are not in it. */
export const changedIds = (base: ReadonlyMap<string, PlacedItem>, now: ReadonlyMap<string, PlacedItem>): Set<string> => {
  const changed = new Set<string>()
  if (base === now) return changed
  for (const [id, item] of now) {
    const before = base.get(id)
    if (before === undefined || !looksSame(before, item)) changed.add(id)
  }
  for (const id of base.keys()) if (!now.has(id)) changed.add(id)
  return changed
}

export interface Ghost {
  item: PlacedItem
  /** Where it stands now, for what is moved; null for what is added. */
  from: { xM: number; yM: number } | null
}

let ghostCache: { proposal: ViewState['proposal']; site: SiteModel; ghosts: readonly Ghost[] } | null = null

/** What a proposal would add or move; nothing once the document has gone on from the revision it was made for. */
export const ghostsOf = (picture: Picture): readonly Ghost[] => {
  const { app, view, site } = picture
  const { proposal } = view
  const { document, revision } = app.documents.getState()
  if (proposal === null || proposal.revision !== revision) return []
  if (ghostCache?.proposal === proposal && ghostCache.site === site) return ghostCache.ghosts
  let edit: Edit | null = null
  try {
    edit = app.edit(proposal.command, proposal.args)
  } catch {
    // A proposal whose command refuses has nothing to show; accepting it says why.
  }
  const after = edit === null ? null : deriveSite(applyEdit(document, edit), view.shownCase)
  const changed = after === null ? new Set<string>() : changedIds(site.placed, after.placed)
  const ghosts = [...changed].flatMap((id): Ghost[] => {
    const item = after?.placed.get(id)
    const before = site.placed.get(id)
    return item === undefined ? [] : [{ item, from: before === undefined ? null : { xM: before.xM, yM: before.yM } }]
  })
  ghostCache = { proposal, site, ghosts }
  return ghosts
}
