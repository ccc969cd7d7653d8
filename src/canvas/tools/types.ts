import type { Localized } from '../../messages/localized.ts'
import type { StepLabel } from '../../scene/edit.ts'
import type { Fold, ViewState } from '../../state/viewStore.ts'
import type { UnitSystem } from '../../units/format.ts'
import type { Language } from '../../units/language.ts'

/**
 * Tools are pure: `(state, event, context) → { state, effects }`. They know neither canvas nor React nor clock.
 * Frames: px = pixels of the plan band (y DOWN); xM, yM = site; running and offset = the shown run.
 */
export type PointerKind = 'mouse' | 'pen' | 'touch'

export interface PointerFacts {
  pointerId: number
  pointer: PointerKind
  xPx: number
  yPx: number
  xM: number
  yM: number
  shift: boolean
  alt: boolean
  /** Ctrl, or Cmd on a Mac. */
  mod: boolean
  button: number
  timeMs: number
}

export type ToolEvent =
  | ({ type: 'down' } & PointerFacts)
  | ({ type: 'move' } & PointerFacts)
  | ({ type: 'up' } & PointerFacts)
  /** The pointer has stood still for the length of a long press since it went down. */
  | ({ type: 'hold' } & PointerFacts)
  | { type: 'key'; key: string; shift: boolean; alt: boolean; mod: boolean }
  /** Esc, blur, a second finger, rotation of the device, the pointer taken away. Leaves nothing half done. */
  | { type: 'cancel' }

/** Something on the plan that can be hit, snapped to and moved. */
export interface Pickable {
  id: string
  kind: string
  /** Derived label, else the name of its kind. */
  title: Localized
  /** Flat points, site frame. */
  outlineM: readonly number[]
  /** False for lines drawn on the site: only their stroke is hit. */
  isClosed: boolean
  /** Hit only at its edge: a boundary holds everything inside it. */
  isHollow: boolean
  /** Drawn on the site point by point: moved only when chosen before, reshaped by its corners. */
  isFeature: boolean
  isLocked: boolean
  /** Has a flag on the tape. */
  hasFlag: boolean
  ridesOnRun: boolean
  isAttached: boolean
  /** Id of the item it is attached to, if any. */
  carrierId: string | null
  xM: number
  yM: number
  headingRad: number
  runningM: number | null
  offsetM: number | null
}

export interface HandleView {
  kind: 'rotate' | 'vertex' | 'middle' | 'slide'
  id: string
  index: number
  xPx: number
  yPx: number
}

export interface ToolContext {
  bandPx: { widthPx: number; heightPx: number }
  pxPerM: number
  /** Site direction (radians, ccw) that points to the right on screen. */
  screenRightRad: number
  pickables: readonly Pickable[]
  handles: readonly HandleView[]
  selection: readonly string[]
  tool: ViewState['tool']
  snapping: boolean
  /** Hold still, or a window that only reads: nothing may be edited. */
  frozen: boolean
  hasSetUp: boolean
  runId: string | null
  /** Corners the run has beyond its axis; a new one goes after the last. */
  runCorners: number
  /** How the tool's kind is drawn by hand; null for tools that place nothing. */
  gesture: 'item' | 'polygon' | 'polyline' | 'bend' | null
  kindTitle: Localized | null
  kindRidesOnRun: boolean
  toRunning: (xM: number, yM: number) => { runningM: number; offsetM: number }
  atRunning: (runningM: number, offsetM: number) => { xM: number; yM: number; headingRad: number }
  toPx: (xM: number, yM: number) => { xPx: number; yPx: number }
  /** Stretch of the run that is folded away: what stands in it is not hit. */
  folded?: Fold | null
  system: UnitSystem
  language: Language
  /** Spacing a row starts with until another is typed, m. */
  rowSpacingM: number
  readDistance: (text: string) => { valueM: number; read: string } | null
  lengthText: (valueM: number) => string
  runningText: (runningM: number) => string
  /** Marks on the plan that can be tapped: findings, arrows to what is off the screen. */
  spots: readonly { xPx: number; yPx: number; radiusPx: number; effect: Effect }[]
}

export type Effect =
  | { do: 'begin'; label: StepLabel }
  /** Shows the edit a command would make. */
  | { do: 'preview'; command: string; args: unknown }
  | { do: 'commit'; label?: StepLabel }
  | { do: 'cancelPreview' }
  /** One undoable step; `select`: chooses what it added. */
  | { do: 'command'; command: string; args: unknown; label?: StepLabel; select?: true }
  | { do: 'select'; ids: readonly string[] }
  | { do: 'pan'; dxPx: number; dyPx: number }
  | { do: 'tool'; tool: ViewState['tool'] }
  | { do: 'measure'; measure: ViewState['measure'] }
  | { do: 'rollOff'; rollOff: ViewState['rollOff'] }
  | { do: 'notice'; text: Localized; undo: boolean }
  | { do: 'hover'; id: string | null }
  | { do: 'openFinding'; key: string }
  | { do: 'openZone'; key: string }
  /** Moves the view so that a site point comes to the middle. */
  | { do: 'show'; xM: number; yM: number }

export interface Step<S> {
  state: S
  effects: readonly Effect[]
}

/** A line or cross that shows what the pointer snapped to. */
export type SnapMark =
  | { kind: 'axis'; text: Localized }
  /** Same running distance as another item: a line across; same offset: a line along. */
  | { kind: 'across' | 'along'; id: string; xM: number; yM: number }
  | { kind: 'equal'; betweenM: readonly [number, number, number] }
  | { kind: 'round'; runningM: number }
  | { kind: 'corner'; xM: number; yM: number }
  | { kind: 'square'; xM: number; yM: number }

/** What a running tool wants drawn over the plan. All site frame; the painter brings it to the screen. */
export interface ToolOverlay {
  marks: readonly SnapMark[]
  /** Outline of what would be placed, with its heading. */
  ghosts: readonly { kind: string; xM: number; yM: number; headingRad: number }[]
  /** Points tapped so far and the one under the pointer. */
  sketch: { points: readonly { xM: number; yM: number }[]; isClosed: boolean; halfWidthM: number } | null
  box: { fromXM: number; fromYM: number; toXM: number; toYM: number } | null
  /** Ids being dragged: drawn on the layer of their own. */
  draggedIds: readonly string[]
  /** Item whose running distance from the datum is shown live. */
  dimensionId: string | null
  /** Running distance shown live where there is no item yet. */
  dimensionAt: { runningM: number; offsetM: number } | null
  /** Large figures under the pointer or in the loupe. */
  figures: string | null
  /** What was typed and how it is read. */
  echo: { typed: string; read: string | null } | null
  /** Where the pointer is, while a gesture runs. */
  pointer: { xPx: number; yPx: number; isTouch: boolean } | null
  turn: { id: string; turnRad: number } | null
}

export const emptyOverlay: ToolOverlay = {
  marks: [], ghosts: [], sketch: null, box: null, draggedIds: [], dimensionId: null, dimensionAt: null, figures: null, echo: null, pointer: null, turn: null,
}

/** Distance a press may wander and still be a tap, px. */
export const tapSlackPx = (pointer: PointerKind): number => (pointer === 'touch' ? 10 : pointer === 'pen' ? 6 : 3)

/** What the shelf adds to the record (a V roller, figures of the crew's own gear), handed on to the command. */
export const patchOf = (tool: ViewState['tool']): { patch?: unknown } => (tool !== null && 'patch' in tool && tool.patch !== undefined ? { patch: tool.patch } : {})

/** What can be hit: all but the gear that is folded away. */
export const inSight = ({ pickables, folded }: Pick<ToolContext, 'pickables' | 'folded'>): readonly Pickable[] =>
  folded === null || folded === undefined ? pickables : pickables.filter(({ isFeature, runningM }) => isFeature || runningM === null || runningM <= folded.fromM || runningM >= folded.toM)
