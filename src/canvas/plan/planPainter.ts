import type { PlacedItem } from '../../derive/types.ts'
import type { App } from '../../state/app.ts'
import { emptyOverlay, type ToolOverlay } from '../tools/types.ts'
import { markedFindings } from './findings.ts'
import { rankMarksOf } from '../rankMarks.ts'
import { earlierItems, paintEarlier } from './earlier.ts'
import { paintLoupe } from './loupe.ts'
import { paintOverlay } from './paintActive.ts'
import { paintGround, paintHatched, paintZone } from './paintGround.ts'
import { inPart, paintItems, paintPipe, paintShapes } from './paintItems.ts'
import { paintFurniture, paintNotes, type Spot } from './paintNotes.ts'
import { offScreenArrows } from './offScreen.ts'
import { snapLineShapes } from './guides.ts'
import { sameParked } from './parkedShapes.ts'
import { changedIds, drawnItem, drawnItems, isInPart, partsOf, pictureOf, type DrawnItem, type Picture } from './picture.ts'
import { zoneLooksSame, type ShownZone } from './shownZones.ts'
import { STAMP_FROM } from './sprites.ts'
import type { BoxPx } from './labels.ts'
import { comparisonOf } from '../../state/comparison.ts'
import { planWordsOf } from '../../state/planWords.ts'
import { forgetWidths } from './textWidth.ts'

export type LayerName = 'ground' | 'items' | 'notes' | 'active'
export const layerNames: readonly LayerName[] = ['ground', 'items', 'notes', 'active']

const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
const none: ReadonlySet<string> = new Set()
const WORDS_AFTER_MS = 100

interface Still {
  features: DrawnItem[]
  items: DrawnItem[]
}

/** What the still layers were last drawn from. */
interface Base {
  placed: ReadonlyMap<string, PlacedItem>
  zones: readonly ShownZone[]
}

/**
 * What each layer of the plan shows. Still layers are drawn from the layout as it stood when a gesture began, without
 * what the gesture changes; that alone, with frames and dimensions, goes on the active layer, redrawn each frame.
 */
export class PlanPainter {
  readonly app: App
  prefersDark = false
  isTouch = false
  /** Numbers of findings on the plan; false where the margin draws them with its leaders. */
  showsMarks = false
  /** Places of the supports in the ranking, while it is wanted; false on a page that goes out. */
  showsRanks = true
  /** The band has the keys: a frame round it says so. */
  hasFocusRing = false
  overlay: ToolOverlay = emptyOverlay
  spots: readonly Spot[] = []
  /** The ranking was drawn last time: once it is put away, the notes are drawn without it. */
  private hadRanks = false
  private base: Base | null = null
  /** What is drawn under the plan was last drawn for this one. */
  private compared: object | null = null
  private changed: ReadonlySet<string> = none
  private changedZones: ReadonlySet<string> = none
  private picture: Picture | null = null
  /** The picture of each part of a folded sheet, with what stands still in it; without a fold there is one. */
  private parts: { picture: Picture; still: Still }[] = []
  /** The view is moving: many symbols may be stamped until it rests. */
  isMoving = false
  private telling: ReturnType<typeof setTimeout> | undefined
  private arrows: ReturnType<typeof offScreenArrows> = { shapes: [], spots: [] }

  constructor(app: App) {
    this.app = app
  }

  /**
   * Takes the stores' state for the next draw and says which still layers have to be drawn again for it beside the
   * active one. Called once a frame, before painting.
   */
  prepare(force: boolean): LayerName[] {
    const picture = pictureOf(this.app, this.prefersDark, this.isTouch)
    const isGesture = this.app.documents.getState().preview !== null
    const before = this.picture
    const { compared } = comparisonOf(this.app).getState()
    if (compared !== this.compared) force = true
    this.compared = compared
    if (this.base === null || (!isGesture && (this.base.placed !== picture.site.placed || this.base.zones !== picture.zones))) {
      const isSame = this.base !== null && changedIds(this.base.placed, picture.site.placed).size === 0
      const sameZones = this.base !== null && this.sameZones(this.base.zones, picture.zones)
      const wasGesture = this.changed.size > 0 || this.changedZones.size > 0
      this.base = { placed: picture.site.placed, zones: picture.zones }
      this.changed = none
      this.changedZones = none
      if (!isSame || !sameZones || wasGesture) force = true
    }
    const changed = isGesture ? changedIds(this.base.placed, picture.site.placed) : none
    const changedZones = isGesture ? this.zonesChanged(this.base.zones, picture.zones) : none
    const isNewSet = !sameSet(changed, this.changed) || !sameSet(changedZones, this.changedZones)
    this.changed = changed
    this.changedZones = changedZones
    this.picture = picture
    const isView = before === null || viewMoved(before, picture)
    const dirty = new Set<LayerName>(['active'])
    const placed = isGesture ? this.base.placed : picture.site.placed
    const isAhead = before !== null && before.ahead?.runningM !== picture.ahead?.runningM
    const isRedrawn = force || isView || isNewSet || isAhead
    this.parts = partsOf(picture).map((part, i) => ({
      picture: part,
      // Items off the still set may be the first to leave or enter the screen.
      still: isRedrawn ? drawnItems(placed === picture.site.placed ? part : { ...part, site: { ...part.site, placed } }, changed) : (this.parts[i]?.still ?? { features: [], items: [] }),
    }))
    if (isRedrawn) {
      for (const name of layerNames) dirty.add(name)
    } else if (before.site.setUp !== picture.site.setUp || !samePipe(before, picture)) dirty.add('items').add('notes')
    const { isOn } = this.app.critical.store.getState()
    if (this.showsMarks || isOn || this.hadRanks) dirty.add('notes')
    this.hadRanks = isOn
    const isEmpty = this.parts.every(({ still }) => still.items.length === 0 && still.features.length === 0)
    this.arrows = offScreenArrows(picture, isEmpty)
    return layerNames.filter((name) => dirty.has(name))
  }

  private sameZones(a: readonly ShownZone[], b: readonly ShownZone[]): boolean {
    return a === b || (a.length === b.length && a.every((zone, i) => zoneLooksSame(zone, b[i]!)))
  }

  private zonesChanged(before: readonly ShownZone[], now: readonly ShownZone[]): Set<string> {
    const known = new Map(before.map((zone) => [zone.key, zone]))
    const changed = new Set<string>()
    for (const zone of now) {
      const old = known.get(zone.key)
      if (old === undefined || !zoneLooksSame(old, zone)) changed.add(zone.key)
      known.delete(zone.key)
    }
    for (const key of known.keys()) changed.add(key)
    return changed
  }

  private shownZones(zones: readonly ShownZone[], wanted: (key: string) => boolean): ShownZone[] {
    const { hiddenKinds } = this.app.view.getState()
    return hiddenKinds.includes('zone') ? [] : zones.filter(({ key }) => wanted(key))
  }

  paint(name: LayerName, context: CanvasRenderingContext2D, ratio: number, beneath: readonly HTMLCanvasElement[]): void {
    const { picture, base } = this
    if (picture === null || base === null) return
    const stillZones = this.shownZones(base.zones, (key) => !this.changedZones.has(key))
    switch (name) {
      case 'ground':
        return this.inParts(context, (part, still) => {
          paintGround(context, still.features, part, ratio)
          for (const zone of stillZones) paintZone(context, zone, part, ratio)
          paintEarlier(context, earlierItems(this.app, base.placed), part)
        })
      case 'items':
        return this.inParts(context, (part, still) => paintItems(context, still.items, part, this.wantsRest() ? { ratio } : null))
      case 'notes': {
        const stale = this.app.results.getState().stamp !== this.app.site.getState().stamp
        const marks = this.showsMarks && !stale ? markedFindings(this.app.results.getState().run, picture.site) : []
        const ranks = this.showsRanks ? rankMarksOf(this.app) : []
        // A feature that runs through the fold is named once.
        const placed = new Set<string>()
        const boxes: BoxPx[] = []
        this.spots = this.parts.flatMap(({ picture: part, still }) => {
          let spots: Spot[] = []
          inPart(context, part, () => {
            spots = paintNotes(context, { ...still, zones: stillZones, marks, ranks }, part, placed, boxes)
          })
          return spots
        })
        paintFurniture(context, picture)
        this.tellWords(boxes)
        return
      }
      case 'active':
        return this.paintMoving(context, picture, ratio, beneath)
    }
  }

  /** Tells where words stand once the plan has been still for a moment: whoever keeps clear of them need not follow every frame. */
  private tellWords(boxes: readonly BoxPx[]): void {
    clearTimeout(this.telling)
    this.telling = setTimeout(() => planWordsOf(this.app).setState({ boxes }), WORDS_AFTER_MS)
  }

  private inParts(context: CanvasRenderingContext2D, draw: (part: Picture, still: Still) => void): void {
    for (const { picture, still } of this.parts) inPart(context, picture, () => draw(picture, still))
  }

  private paintMoving(context: CanvasRenderingContext2D, picture: Picture, ratio: number, beneath: readonly HTMLCanvasElement[]): void {
    const isGesture = this.changed.size > 0
    const zones = this.shownZones(picture.zones, (key) => this.changedZones.has(key))
    this.inParts(context, (part) => {
      for (const zone of zones) paintZone(context, zone, part, ratio)
      if (!isGesture) return
      const moving = this.movingIn(part)
      for (const drawn of moving) if (drawn.isFeature) paintHatched(context, drawn.shapes, drawn.matrix, part, ratio)
    })
    paintShapes(context, snapLineShapes(this.overlay, picture), picture, identity)
    if (isGesture) {
      const { records } = this.app.documents.getState().document
      this.inParts(context, (part) => {
        const moving = this.movingIn(part)
        for (const drawn of moving) if (!drawn.isFeature) paintShapes(context, drawn.shapes, part, drawn.matrix, records[drawn.item.id] === undefined ? 'proposal' : 'drawn')
        for (const drawn of moving) paintShapes(context, drawn.texts, part, drawn.matrix)
        paintPipe(context, part)
      })
    }
    paintOverlay(context, this.overlay, picture, this.app.documents.getState().pending !== null)
    paintShapes(context, this.arrows.shapes, picture, identity)
    if (this.hasFocusRing) paintShapes(context, [{ t: 'rect', xM: 1.5, yM: 1.5, widthM: picture.band.widthPx - 3, heightM: picture.band.heightPx - 3, stroke: 'chosen', weight: 'building' }], picture, identity)
    if (this.overlay.draggedIds.length > 0 || this.overlay.ghosts.length > 0) paintLoupe(context, this.overlay, picture, beneath, ratio)
  }

  /** What a gesture changes, as it is drawn in one part of the sheet. */
  private movingIn(part: Picture): DrawnItem[] {
    return [...this.changed].flatMap((id) => part.site.placed.get(id) ?? []).filter((item) => !part.view.hiddenKinds.includes(item.kind) && isInPart(item, part)).map((item) => drawnItem(item, part))
  }

  /** Whether the layers as drawn are to be drawn again once the view rests. */
  wantsRest(): boolean {
    return this.isMoving && this.parts.reduce((sum, { still }) => sum + still.items.length, 0) >= STAMP_FROM
  }

  /** Marks that can be tapped now. */
  tapSpots(): readonly Spot[] {
    return [...this.arrows.spots, ...this.spots]
  }

  /** Widths measured with another face are of no use. */
  fontsChanged(): void {
    forgetWidths()
  }
}

const sameSet = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean => a.size === b.size && [...a].every((id) => b.has(id))

/** Whether anything that all layers depend on is other than in the picture before. */
const viewMoved = (a: Picture, b: Picture): boolean =>
  a.view.fold !== b.view.fold || a.matrix.a !== b.matrix.a || a.matrix.b !== b.matrix.b || a.matrix.e !== b.matrix.e || a.matrix.f !== b.matrix.f || a.band.widthPx !== b.band.widthPx || a.band.heightPx !== b.band.heightPx
  || a.theme !== b.theme || a.isTouch !== b.isTouch || a.view.hiddenKinds !== b.view.hiddenKinds || a.view.language !== b.view.language || a.view.selection !== b.view.selection
  || a.view.phase !== b.view.phase || a.view.joint !== b.view.joint || a.view.runThrough !== b.view.runThrough || a.site.job !== b.site.job || a.site.layout !== b.site.layout || a.frame !== b.frame || a.site.run !== b.site.run || a.view.orientation !== b.view.orientation

/** Whether the pipe lies between the same ends as before: its bending does not show from above. */
const samePipe = (a: Picture, b: Picture): boolean =>
  a.profile.bodies.length === b.profile.bodies.length && a.profile.bodies.every(({ startM, endM }, i) => startM === b.profile.bodies[i]!.startM && endM === b.profile.bodies[i]!.endM) && sameParked(a.site, b.site)
