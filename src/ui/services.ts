import type { ReactNode } from 'react'
import type { StoreApi } from 'zustand/vanilla'
import type { Language, Localized } from '../messages/localized.ts'
import type { SourceClass } from '../checks/finding.ts'
import type { UnitSystem } from '../units/format.ts'
import type { QuantityKind } from '../units/quantity.ts'
import type { YardDocument } from '../scene/document.ts'
import type { LayoutRecord, JobRecord } from '../scene/records/frame.ts'
import type { GearItem } from '../scene/gear.ts'
import type { ReleasedAs } from '../scene/revision.ts'
import type { ProposalDesk } from '../state/proposalDesk.ts'
import type { RunThroughDesk } from '../state/runThroughDesk.ts'

/**
 * What the screen asks of the program around it: files, storage, worked-out facts of the pipe, help pages.
 * Implemented in src/app; tests use tests/ui/fakeServices.ts. Nothing here throws: what can go wrong comes back as an outcome.
 */
export interface Services {
  /** Starts a fresh yard from the short form and shows it. Skipped fields stay unknown. */
  newYard: (form: NewYardForm) => Promise<Outcome>
  examples: readonly ExampleEntry[]
  /** Opens a copy of an example. */
  openExample: (name: string) => Promise<Outcome>
  /** Puts the open copy of an example back as it was; a point in time is kept first. */
  resetExample: () => Promise<Outcome>
  /** Reads a file. What was open stays open unless the answer is ok. */
  openFile: (file: File, how?: OpenHow) => Promise<OpenOutcome>
  saveFile: () => Promise<Outcome>
  saveEverything: () => Promise<Outcome>
  /** Takes away every layout, gear list and setting of this device. The caller has asked. */
  clearDevice: () => Promise<Outcome>
  /** Share sheet where the device has one, else a download. */
  shareFile: () => Promise<Outcome>
  saveImage: (scale: 1 | 2 | 4) => Promise<Outcome>
  /** The crew sheet, its table or the plan for other programs, as a download; noted in the log. Cancelled it answers ok. */
  saveSheet: (wish: SheetWish, hooks: SheetHooks) => Promise<Outcome>
  /** Notes in the log that the plan was printed or shared, under its letter; the next edit begins the next one. */
  release: (what: ReleasedAs) => void

  /** A link that carries the open layout; noted in the log as shared. */
  makeLink: () => Promise<LinkOutcome>
  /** Share sheet where the device has one, else a copy in the clipboard. */
  shareLink: (address: string) => Promise<Outcome>
  copyLink: (address: string) => Promise<Outcome>
  /** A link met in the address line; shown in the panel 'incoming' before anything is opened. */
  incoming: StoreApi<IncomingState>
  openIncoming: () => Promise<Outcome>
  compareIncoming: () => void
  forgetIncoming: () => void
  /** Holds another plan against the open one; the list and the drawing show the difference. */
  compareWith: (what: CompareWith) => Promise<Outcome>

  /** Layouts kept on this device, newest first. */
  layouts: () => Promise<readonly LayoutEntry[]>
  openLayout: (layoutId: string) => Promise<Outcome>
  renameLayout: (layoutId: string, title: string) => Promise<Outcome>
  removeLayout: (layoutId: string) => Promise<Outcome>
  /** Points in time kept for the open layout, newest first. */
  points: () => Promise<readonly PointEntry[]>
  keepPoint: (name: string) => Promise<Outcome>
  openPoint: (pointId: string) => Promise<Outcome>
  /** The layout as it was then, to compare with; what is open stays open. Null where it is not here or cannot be read. */
  pointDocument: (pointId: string) => Promise<YardDocument | null>

  /** Keeps the screen awake until the function it returns is called. */
  keepAwake: () => () => void
  voice: Voice

  /** What the crew owns; apart from layouts, kept on this device. */
  gear: StoreApi<GearState>
  putGear: (item: GearItem) => void
  removeGear: (id: string) => void
  exportGear: () => Promise<Outcome>
  importGear: (file: File) => Promise<Outcome>
  newId: (prefix: string) => string

  /** Searches for a better layout of the supports. */
  proposals: ProposalDesk
  /** The job stage by stage; loaded and started with the first call. */
  runThrough: () => Promise<RunThroughDesk>

  /** Offline page of a check as markdown. */
  whyPage: (checkId: string) => Promise<string>
  storage: StoreApi<StorageState>
  /** Whether a new version of the program waits. */
  update: StoreApi<UpdateState>
  /** Loads this window anew with the version that waits, once all is saved. */
  reload: () => Promise<Outcome>
  /** Makes this window the one that writes. */
  takeOver: () => Promise<Outcome>
  about: AboutInfo
  facts: PipeFacts
  /** Rows of the keyboard map, made from the table that binds the keys. */
  keyMap: () => readonly KeyRow[]
  /** Moves of the view that the canvas knows how to make: everything in sight, the fold, the sheet turned, north up. */
  act: (name: 'fit' | 'fold' | 'turnRound' | 'northUp' | 'showRanked') => void
}

/** Reads aloud with the voices that lie on the device. */
export interface Voice {
  store: StoreApi<VoiceState>
  /** Says the lines in order; what was being said stops. A line without a voice is passed over. */
  say: (lines: readonly { text: string; language: Language }[]) => void
  hush: () => void
}
/** Languages the device has a voice for, and whether it is reading. */
export interface VoiceState {
  en: boolean
  es: boolean
  isReading: boolean
}

/** What is made of the plan, and on which paper. */
export interface SheetWish {
  as: 'pdf' | 'png' | 'svg' | 'csv' | 'dxf' | 'geojson'
  paper: 'letter' | 'tabloid' | 'a4' | 'a3'
  orientation: 'landscape' | 'portrait'
  language: 'en' | 'es' | 'both'
  system: UnitSystem
}
export interface SheetProgress {
  step: 'checks' | 'stages' | 'pages'
  done: number
  of: number
}
export interface SheetHooks {
  onProgress: (progress: SheetProgress) => void
  signal: AbortSignal
}

export type Outcome = { ok: true; said?: Localized } | { ok: false; reason: Localized }

/** `ask`: the caller puts the question and calls openFile again with the answer. */
export type OpenOutcome =
  | Outcome
  | { ok: 'ask'; ask: 'copyOrReplace'; title: string }
  | { ok: 'ask'; ask: 'withoutItems'; items: readonly Localized[]; reason: Localized }
export type OpenHow = 'copy' | 'replace' | 'withoutItems'

export interface LayoutLink {
  address: string
  chars: number
  /** What stays at home: talks and sign-offs with their names, photos. */
  left: { talks: number; photos: number }
  /** Path of the dark squares in a square of `side`; null: no code holds the link. */
  qr: { path: string; side: number; isEasy: boolean } | null
  easyQrChars: number
  mostQrChars: number
}
export type LinkOutcome = { ok: true; link: LayoutLink } | { ok: false; reason: Localized }

export interface IncomingState {
  link:
    | null
    | { ok: false; reason: Localized; chars: number }
    | {
        ok: true
        document: YardDocument
        notes: readonly Localized[]
        title: string
        revision: string
        replaces: string | null
        job: JobRecord
        items: number
        chars: number
        /** A layout with its id is on this device; it is left alone. */
        isHere: boolean
      }
}

export type CompareWith = { pointId: string; name: string } | { layoutId: string; name: string } | { file: File }

/** Every field may be skipped (null). Lengths in m; fall = drop per length down-string, positive falls to the exit. */
export interface NewYardForm {
  title: string
  displayUnits: UnitSystem
  profile: LayoutRecord['profile']
  pipe: JobRecord['pipe']
  neededLengthM: number | null
  stickLengthM: number | null
  stripLengthM: number | null
  stripWidthM: number | null
  fallRatio: number | null
}

export interface ExampleEntry {
  name: string
  title: Localized
  about: Localized
}

export interface LayoutEntry {
  layoutId: string
  title: string
  /** ISO time of the last change. */
  changedAt: string
  isExample: boolean
  isOpen: boolean
}

export interface PointEntry {
  pointId: string
  name: string
  at: string
}

export interface GearState {
  items: readonly GearItem[]
}

export interface UpdateState {
  isReady: boolean
}

export interface StorageState {
  /** `unsaved`: the last write failed; the reason is shown at once with 'save a copy'. */
  saved: 'saved' | 'saving' | 'unsaved' | 'blocked' | 'readOnly'
  savedAt: string | null
  reason: Localized | null
  /** True when the browser promised not to clear it on its own. null: not known. */
  persisted: boolean | null
  usedBytes: number | null
  allowedBytes: number | null
  /** Edits of the open layout since a file of it was saved or shared. */
  editsSinceFile: number
  /** Below a fifth and not charging. */
  isBatteryLow: boolean
  /** Another window writes this layout. */
  heldElsewhere: boolean
  isExample: boolean
  /** Parts that could not be read back on opening, told once. */
  recovered: Localized | null
}

export interface AboutInfo {
  appVersion: string
  fileVersion: number
  licence: Localized
  notices: readonly { name: string; licence: string; text: string }[]
}

/** Facts of the pipe worked out by the engine (src/ui may not import it). null where an input is unknown. */
export interface PipeFacts {
  sizes: (system: 'IPS' | 'DIPS' | 'metric') => readonly { size: string; odM: number }[]
  drs: (system: 'IPS' | 'DIPS' | 'metric', size: string) => readonly number[]
  pipe: (pipe: JobRecord['pipe']) => { odM: number; minimumWallM: number; lineLoadNPerM: number } | null
  /** Stick count and what comes of it; the joint loss is the house table's where the question has none. */
  sticks: (job: StickQuestion) => StickAnswer | null
  /** Starting limits (src/engine/limits.ts); what the layout changed lies in its limitChange records. */
  limits: readonly LimitRow[]
}
export interface LimitRow {
  id: string
  title: Localized
  quantity: QuantityKind
  when: 'above' | 'atLeast' | 'below'
  /** SI; null where that level does not follow from this number. */
  check: number | null
  fix: number | null
  sourceClass: SourceClass
  cite: string
  note?: Localized
}
export interface StickQuestion {
  pipe: JobRecord['pipe']
  neededLengthM: number | null
  stickLengthM: number | null
  tailsM: number
  jointLossM: number | null
}
/** As src/engine/pipe/stickPlan.ts works it out. */
export interface StickAnswer {
  sticks: number
  joints: number
  madeLengthM: number
  /** made − wanted: over positive, short negative. */
  overM: number
  /** `shortM` is negative where one stick fewer would still do. */
  oneFewer: { sticks: number; joints: number; madeLengthM: number; shortM: number } | null
}

export interface KeyRow {
  group: Localized
  keys: string
  does: Localized
}

/** Bands drawn by src/canvas, given to the shell by src/app. */
export interface BandSize {
  widthPx: number
  heightPx: number
}
export type BandRender = (size: BandSize) => ReactNode
