import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Language } from '../messages/localized.ts'
import type { Stage } from '../derive/types.ts'
import type { Phase } from '../scene/parts.ts'
import { thePlan, type ShownCase } from '../derive/whatIf.ts'

/** A stretch of the run between two running distances, m; `fromM` < `toM`. */
export interface Fold {
  fromM: number
  toM: number
}

/**
 * The view: what is shown and chosen, never saved in the file and never undone.
 * Scale and scroll are shared by plan, tape and section: `pxPerM` and `leftRunningM` along the tape.
 */
export interface ViewState {
  screen: 'start' | 'yard'
  /** Scale of plan, tape and section. */
  pxPerM: number
  /**
   * Running distance (m from the datum) at the left edge of the drawing (right edge when the sheet is turned round).
   * With a fold: as if the part before the fold ran on, so that scrolling past the fold is one movement.
   */
  leftRunningM: number
  /** Offset from the axis (m, R positive) at the middle of the plan band. */
  midOffsetM: number
  orientation: 'alongTape' | 'northUp'
  /** Exit at the left: the lead stands on the other side. */
  turned: boolean
  /**
   * Stretch of the run folded away in plan, tape and section (docs/decisions/0007-the-fold.md); null: the whole run is drawn.
   * Counts only along the tape on a level tape; `foldOf` of frames.ts says whether it does.
   */
  fold: Fold | null
  previousViews: readonly { pxPerM: number; leftRunningM: number; midOffsetM: number; fold?: Fold | null }[]
  selection: readonly string[]
  /** Active placing tool: kind name, or a drawing tool. null = select. */
  tool: { name: 'place'; kind: string } | { name: 'row'; kind: string } | { name: 'measure' } | { name: 'strip' } | { name: 'rollOff' } | null
  phase: Phase
  /** Joint shown, 1…N−1: the string lies with that many joints made. */
  joint: number
  /** Run-through: where the nose is on its way in a pull, m; null: at the end of it. Counts in the phase `pull` only. */
  noseM: number | null
  /** The job is being stepped through: heading, margin and foot of the sheet belong to the stage shown. */
  runThrough: boolean
  /** The plan, what was set, or a what-if laid over either. Never saved, never undone, in no file and no image. */
  shownCase: ShownCase
  holdStill: boolean
  /** Large targets only, the plan frozen (`holdStill` goes with it), hold to confirm; state/wetMode.ts turns it. Kept: a tablet that starts anew in the rain comes back in it. */
  wet: boolean
  snapping: boolean
  hiddenKinds: readonly string[]
  openFindingKey: string | null
  /** Which dialog is open: name of a panel in ui. */
  panel: string | null
  leaf: 'plan' | 'side' | 'notes'
  /** Which of the arrangements of docs/look.md the window has room for. */
  form: 'desktop' | 'tabletLandscape' | 'tabletPortrait' | 'phone'
  /** Phone: the tape stands upright beside the plan, infeed below, exit above. */
  tapeVertical: boolean
  gearGroup: 'line' | 'lift' | 'site' | 'people'
  gearOpen: boolean
  tagMore: boolean
  theme: 'day' | 'night' | 'sun' | 'auto'
  language: Language
  pseudoLanguage: boolean
  leftHanded: boolean
  hoverId: string | null
  /**
   * A proposal drawn as a ghost beside the present: a command and the revision it was made from; accepted only on that revision.
   * `isSearched`: worked out by the proposal desk, which makes it again, and says what it does.
   */
  proposal: { command: string; args: unknown; label: { en: string; es: string }; revision: number; isSearched?: boolean } | null
  /** Finger measure on the plan, site frame. */
  measure: { fromXM: number; fromYM: number; toXM: number; toYM: number } | null
  /** Zone whose page is open in the panel 'zones'; null: their list. */
  zoneKey: string | null
  /** Where a pipe was dropped by the roll-off tool, site frame. */
  rollOff: { xM: number; yM: number } | null
  /** Running distance of the empty place on the tape that was tapped, while the panel 'placeAt' asks what goes there. */
  placeAtRunningM: number | null
  /** A short notice with an optional undo, e.g. after a touch move. */
  notice: { text: string; undo: boolean; atRevision: number } | null
  bandSizePx: { plan: { widthPx: number; heightPx: number }; section: { widthPx: number; heightPx: number } }
}

/** Which view keys the browser keeps between visits; a new key does not compile until decided. */
export const viewPersistence = {
  screen: false, pxPerM: false, leftRunningM: false, midOffsetM: false, orientation: true, turned: true, fold: false, previousViews: false, selection: false, tool: false,
  phase: false, joint: false, noseM: false, runThrough: false, shownCase: false, holdStill: false, wet: true, snapping: true, hiddenKinds: false, openFindingKey: false, panel: false, leaf: false, form: false, tapeVertical: false, gearGroup: true,
  gearOpen: false, tagMore: false, theme: true, language: true, pseudoLanguage: false, leftHanded: true, hoverId: false, proposal: false, measure: false, zoneKey: false, rollOff: false, placeAtRunningM: false, notice: false, bandSizePx: false,
} satisfies Record<keyof ViewState, boolean>

export const initialView: ViewState = {
  screen: 'start', pxPerM: 15.4, leftRunningM: -19, midOffsetM: 0, orientation: 'alongTape', turned: false, fold: null, previousViews: [], selection: [], tool: null,
  phase: 'fuse', joint: 1, noseM: null, runThrough: false, shownCase: thePlan, holdStill: false, wet: false, snapping: true, hiddenKinds: [], openFindingKey: null, panel: null, leaf: 'plan', form: 'desktop', tapeVertical: false, gearGroup: 'line',
  gearOpen: false, tagMore: false, theme: 'auto', language: 'en', pseudoLanguage: false, leftHanded: false, hoverId: null, proposal: null, measure: null, zoneKey: null, rollOff: null, placeAtRunningM: null, notice: null,
  bandSizePx: { plan: { widthPx: 1072, heightPx: 522 }, section: { widthPx: 1072, heightPx: 322 } },
}

/** The stage a view shows. */
export const stageOf = ({ phase, joint, noseM }: Pick<ViewState, 'phase' | 'joint' | 'noseM'>): Stage => ({ phase, joint, ...(phase === 'pull' && noseM !== null ? { tipM: noseM } : {}) })

export type ViewStore = StoreApi<ViewState>
export const createViewStore = (over: Partial<ViewState> = {}): ViewStore => createStore<ViewState>()(() => ({ ...initialView, ...over, ...(over.wet === true ? { holdStill: true } : {}) }))
