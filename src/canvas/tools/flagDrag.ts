import type { Localized } from '../../messages/localized.ts'
import type { StepLabel } from '../../scene/edit.ts'
import type { UnitSystem } from '../../units/format.ts'
import { roundTo, snapOnRun, snapReachPx, type RunNeighbour } from './snapping.ts'
import { tapSlackPx, type PointerKind } from './types.ts'

/**
 * Gestures on the tape and in the side view, without canvas, React or clock: `(state, event, context) → { state, effects }`.
 *
 * Frame: alongPx grows with the screen along the tape, acrossPx grows to where a pull makes a saddle sink (down the
 * screen). Mouse and pen drag at once; a finger drags only what is chosen already, and its first clear direction decides
 * between along the run and in height. A drag of anything else scrolls. Esc, blur and a second finger cancel.
 */
export interface FlagTarget {
  key: string
  /** Record behind the flag; null where there is none to edit (the nose). */
  itemId: string | null
  label: string
  runningM: number
  /** Slides along the run when dragged. */
  canSlide: boolean
  /** Height above ground, null where it has none that could be set. */
  saddleM: number | null
  /** Saddle on the jaw line there, snapped to. */
  jawLineSaddleM: number | null
  isLocked: boolean
}

export interface FlagContext {
  flags: readonly FlagTarget[]
  selection: readonly string[]
  /** Hold still, or a window that only reads. */
  frozen: boolean
  snapping: boolean
  system: UnitSystem
  pxPerM: number
  /** Screen scale of heights. */
  pxPerLevelM: number
  /** +1 where running distances grow with alongPx, −1 where they grow against it. */
  alongSign: 1 | -1
  /** Stretch of the run that is folded away: a flag slides up to it, not into it. */
  folded?: { fromM: number; toM: number } | null
  /** Running distance at a place along the tape. */
  toRunning: (alongPx: number) => number
  /** The side view drags heights only. */
  allows: 'both' | 'height'
  /** A tap on an empty place asks what goes there (the tape); else it only clears the selection. */
  placesOnTap: boolean
}

interface Press {
  pointerId: number
  pointer: PointerKind
  alongPx: number
  acrossPx: number
}

export type FlagState =
  | { name: 'idle' }
  /** Pressed, not yet clear whether a tap, a drag or a scroll. */
  | ({ name: 'pressed'; key: string | null; mayDrag: boolean } & Press)
  | ({ name: 'scrolling'; lastPx: number } & Press)
  | ({ name: 'sliding'; key: string; ids: readonly string[]; startM: number; runningM: number; snap: 'round' | 'equal' | 'none' } & Press)
  | ({ name: 'dropping'; key: string; ids: readonly string[]; startM: number; saddleM: number; onJawLine: boolean } & Press)

export type FlagEvent =
  | ({ type: 'down'; key: string | null; alt: boolean } & Press)
  | ({ type: 'move'; alt: boolean } & Press)
  | ({ type: 'up' } & Press)
  | { type: 'cancel' }

export type FlagEffect =
  | { do: 'select'; ids: readonly string[] }
  | { do: 'begin'; label: StepLabel }
  | { do: 'preview'; command: 'slideBy' | 'dropBy'; args: unknown }
  | { do: 'commit' }
  | { do: 'cancelPreview' }
  | { do: 'scroll'; alongPx: number }
  | { do: 'placeAt'; runningM: number }
  | { do: 'notice'; text: Localized; undo: boolean }

export interface FlagStep {
  state: FlagState
  effects: readonly FlagEffect[]
}

export const flagIdle: FlagState = { name: 'idle' }

const nothing = (state: FlagState): FlagStep => ({ state, effects: [] })

const slideLabel = (label: string, count: number): StepLabel =>
  count === 1 ? { text: { en: `slide ${label}`, es: `correr ${label}` } } : { text: { en: 'slide {count} items', es: 'correr {count} elementos' }, values: { count } }
const heightLabel = (label: string, count: number): StepLabel =>
  count === 1 ? { text: { en: `saddle of ${label}`, es: `apoyo de ${label}` } } : { text: { en: 'saddles of {count} items', es: 'apoyos de {count} elementos' }, values: { count } }

const frozenText: Localized = { en: 'Held still: nothing can be moved. Release it to edit.', es: 'Vista fija: nada se mueve. Suéltela para editar.' }
const lockedText = (label: string): Localized => ({ en: `${label} is locked.`, es: `${label} está bloqueado.` })

/** What the running drag works on, for painting: null while nothing is dragged. */
export const draggedKey = (state: FlagState): string | null => (state.name === 'sliding' || state.name === 'dropping' ? state.key : null)

/** One step of the gesture. Never throws; what it does not know leaves it as it was. */
export const stepFlag = (state: FlagState, event: FlagEvent, context: FlagContext): FlagStep => {
  if (event.type === 'cancel') return { state: flagIdle, effects: state.name === 'sliding' || state.name === 'dropping' ? [{ do: 'cancelPreview' }] : [] }
  if (event.type === 'down') return down(state, event, context)
  if (state.name === 'idle' || event.pointerId !== state.pointerId) return nothing(state)
  return event.type === 'move' ? move(state, event, context) : up(state, context)
}

const down = (state: FlagState, event: Extract<FlagEvent, { type: 'down' }>, context: FlagContext): FlagStep => {
  // A second finger ends what the first began: it is a pinch from here on.
  if (state.name !== 'idle') return { state: flagIdle, effects: state.name === 'sliding' || state.name === 'dropping' ? [{ do: 'cancelPreview' }] : [] }
  const { key, pointerId, pointer, alongPx, acrossPx } = event
  const flag = key === null ? undefined : context.flags.find((f) => f.key === key)
  const isSelected = flag?.itemId !== undefined && flag.itemId !== null && context.selection.includes(flag.itemId)
  const press = { name: 'pressed', key: flag?.key ?? null, pointerId, pointer, alongPx, acrossPx } as const
  if (flag === undefined || flag.itemId === null) return nothing({ ...press, mayDrag: false })
  // Mouse and pen choose at the press and may drag at once; a finger only drags what it chose before.
  if (pointer === 'touch') return nothing({ ...press, mayDrag: isSelected })
  return { state: { ...press, mayDrag: true }, effects: isSelected ? [] : [{ do: 'select', ids: [flag.itemId] }] }
}

const move = (state: Exclude<FlagState, { name: 'idle' }>, event: Extract<FlagEvent, { type: 'move' }>, context: FlagContext): FlagStep => {
  switch (state.name) {
    case 'pressed':
      return pressedMove(state, event, context)
    case 'scrolling':
      return { state: { ...state, lastPx: event.alongPx }, effects: [{ do: 'scroll', alongPx: event.alongPx - state.lastPx }] }
    case 'sliding':
      return slide(state, event, context)
    case 'dropping':
      return drop(state, event, context)
  }
}

const pressedMove = (state: Extract<FlagState, { name: 'pressed' }>, event: Extract<FlagEvent, { type: 'move' }>, context: FlagContext): FlagStep => {
  const [along, across] = [event.alongPx - state.alongPx, event.acrossPx - state.acrossPx]
  if (Math.hypot(along, across) <= tapSlackPx(state.pointer)) return nothing(state)
  const press = { pointerId: state.pointerId, pointer: state.pointer, alongPx: state.alongPx, acrossPx: state.acrossPx }
  const scroll = (): FlagStep => ({ state: { name: 'scrolling', lastPx: event.alongPx, ...press }, effects: [{ do: 'scroll', alongPx: along }] })
  const flag = context.flags.find(({ key }) => key === state.key)
  if (!state.mayDrag || flag === undefined || flag.itemId === null) return scroll()
  const isAlong = Math.abs(along) >= Math.abs(across)
  const wantsHeight = flag.saddleM !== null && !isAlong
  const wantsSlide = flag.canSlide && context.allows === 'both' && isAlong
  if (!wantsHeight && !wantsSlide) return scroll()
  if (context.frozen) return { state: flagIdle, effects: [{ do: 'notice', text: frozenText, undo: false }] }
  if (flag.isLocked) return { state: flagIdle, effects: [{ do: 'notice', text: lockedText(flag.label), undo: false }] }
  const ids = context.selection.includes(flag.itemId) ? context.selection : [flag.itemId]
  if (wantsSlide) {
    const first = slide({ name: 'sliding', key: flag.key, ids, startM: flag.runningM, runningM: flag.runningM, snap: 'none', ...press }, event, context)
    return { state: first.state, effects: [{ do: 'begin', label: slideLabel(flag.label, ids.length) }, ...first.effects] }
  }
  const startM = flag.saddleM as number
  const first = drop({ name: 'dropping', key: flag.key, ids, startM, saddleM: startM, onJawLine: false, ...press }, event, context)
  return { state: first.state, effects: [{ do: 'begin', label: heightLabel(flag.label, ids.length) }, ...first.effects] }
}

const slide = (state: Extract<FlagState, { name: 'sliding' }>, event: Extract<FlagEvent, { type: 'move' }>, context: FlagContext): FlagStep => {
  const wishedM = inOwnPart(state.startM + (context.alongSign * (event.alongPx - state.alongPx)) / context.pxPerM, state.startM, context.folded ?? null)
  const near = context.snapping && !event.alt ? snapped(wishedM, state, context) : { runningM: wishedM, snap: 'none' as const }
  const runningM = inOwnPart(near.runningM, state.startM, context.folded ?? null)
  const snap = runningM === near.runningM ? near.snap : 'none'
  if (runningM === state.runningM && state.snap !== 'none') return nothing({ ...state, snap })
  return { state: { ...state, runningM, snap }, effects: [{ do: 'preview', command: 'slideBy', args: { ids: state.ids, dRunningM: runningM - state.startM, dOffsetM: 0 } }] }
}

/** Brought back to the side of the fold the slide began on. */
const inOwnPart = (runningM: number, startM: number, folded: { fromM: number; toM: number } | null): number =>
  folded === null ? runningM : startM <= folded.fromM ? Math.min(runningM, folded.fromM) : startM >= folded.toM ? Math.max(runningM, folded.toM) : runningM

/** Round tape distance at this scale, or a spacing that repeats those of the neighbours on the line. */
const snapped = (wishedM: number, state: Extract<FlagState, { name: 'sliding' }>, context: FlagContext): { runningM: number; snap: 'round' | 'equal' } => {
  const neighbours: RunNeighbour[] = context.flags
    .filter(({ itemId, saddleM }) => saddleM !== null && itemId !== null && !state.ids.includes(itemId))
    .map(({ key, runningM }) => ({ id: key, runningM, offsetM: 0, xM: runningM, yM: 0 }))
  const { runningM, marks } = snapOnRun({ runningM: wishedM, offsetM: 0, neighbours, pxPerM: context.pxPerM, reachPx: snapReachPx[state.pointer] * 0.6, system: context.system })
  return { runningM, snap: marks.some(({ kind }) => kind === 'equal') ? 'equal' : 'round' }
}

const heightSteps: Readonly<Record<UnitSystem, readonly number[]>> = {
  feetInches: [0.25, 0.5, 1, 3].map((inches) => inches * 0.0254),
  metric: [0.005, 0.01, 0.02, 0.05],
}
/** The finest step of a saddle height that a hand can aim at on this scale (about 1 px and more). */
export const heightStepM = (system: UnitSystem, pxPerLevelM: number): number => heightSteps[system].find((step) => step * pxPerLevelM >= 0.9) ?? (heightSteps[system].at(-1) as number)

/** Reach of the jaw line for a saddle that is dragged, px. */
const JAW_LINE_REACH_PX = 5

const drop = (state: Extract<FlagState, { name: 'dropping' }>, event: Extract<FlagEvent, { type: 'move' }>, context: FlagContext): FlagStep => {
  const jawLineM = context.flags.find(({ key }) => key === state.key)?.jawLineSaddleM ?? null
  const wishedM = Math.max(0, state.startM - (event.acrossPx - state.acrossPx) / context.pxPerLevelM)
  const isFree = !context.snapping || event.alt
  const onJawLine = !isFree && jawLineM !== null && Math.abs(wishedM - jawLineM) * context.pxPerLevelM <= JAW_LINE_REACH_PX
  const saddleM = onJawLine ? jawLineM : isFree ? wishedM : roundTo(wishedM, heightStepM(context.system, context.pxPerLevelM))
  if (saddleM === state.saddleM) return nothing({ ...state, onJawLine })
  return { state: { ...state, saddleM, onJawLine }, effects: [{ do: 'preview', command: 'dropBy', args: { ids: state.ids, dLevelM: saddleM - state.startM } }] }
}

const up = (state: Exclude<FlagState, { name: 'idle' }>, context: FlagContext): FlagStep => {
  switch (state.name) {
    case 'pressed':
      return tap(state, context)
    case 'scrolling':
      return nothing(flagIdle)
    case 'sliding':
    case 'dropping': {
      const hasMoved = state.name === 'sliding' ? state.runningM !== state.startM : state.saddleM !== state.startM
      if (!hasMoved) return { state: flagIdle, effects: [{ do: 'cancelPreview' }] }
      const label = context.flags.find(({ key }) => key === state.key)?.label ?? ''
      const text = state.name === 'sliding' ? { en: `${label} slid along.`, es: `${label} corrido.` } : { en: `Saddle of ${label} changed.`, es: `Apoyo de ${label} cambiado.` }
      return { state: flagIdle, effects: [{ do: 'commit' }, ...(state.pointer === 'touch' ? [{ do: 'notice' as const, text, undo: true }] : [])] }
    }
  }
}

const tap = (state: Extract<FlagState, { name: 'pressed' }>, context: FlagContext): FlagStep => {
  const flag = context.flags.find(({ key }) => key === state.key)
  if (flag !== undefined) {
    const ids = flag.itemId === null ? [] : [flag.itemId]
    return { state: flagIdle, effects: ids.length === 0 ? [] : [{ do: 'select', ids }] }
  }
  if (!context.placesOnTap) return { state: flagIdle, effects: context.selection.length > 0 ? [{ do: 'select', ids: [] }] : [] }
  if (context.frozen) return { state: flagIdle, effects: [{ do: 'notice', text: frozenText, undo: false }] }
  const runningM = context.toRunning(state.alongPx)
  const stepM = context.system === 'metric' ? 0.5 : 0.3048
  return { state: flagIdle, effects: [{ do: 'placeAt', runningM: context.snapping ? roundTo(runningM, stepM) : runningM }] }
}
