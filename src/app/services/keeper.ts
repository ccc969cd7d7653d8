import type { StoreApi } from 'zustand/vanilla'
import type { YardDocument } from '../../scene/document.ts'
import type { GearItem } from '../../scene/gear.ts'
import type { DocumentStore, HistoryEntry } from '../../state/documentStore.ts'
import type { ViewState } from '../../state/viewStore.ts'
import type { LayoutEntry, PointEntry, StorageState } from '../../ui/services.ts'
import type { Localized } from '../../messages/localized.ts'

export interface Loaded {
  document: YardDocument
  past: readonly HistoryEntry[]
  future: readonly HistoryEntry[]
  /** What could not be read back, told once. */
  recovered: Localized | null
  /** Name of the example it is a copy of; null for a yard of their own. */
  exampleName: string | null
}

/** Where work is kept on this device, as the services use it. */
export interface Keeper {
  state: StoreApi<StorageState>
  layouts: () => Promise<readonly Omit<LayoutEntry, 'isOpen'>[]>
  /** Null where it is not here. Fails with a `reason` in both languages where it is here and cannot be opened. */
  load: (layoutId: string) => Promise<Loaded | null>
  /** Writes the head now and every edit from here on; answers when this window may write. */
  attach: (documents: DocumentStore, layoutId: string, exampleName: string | null) => Promise<void>
  /** Writes what is open to the end and lets go of it; before another document is put into the store. */
  leave: () => Promise<void>
  /** Tries once more to write what could not be written; nothing where all is saved. */
  retry: () => Promise<void>
  /** A file of the open layout has left the device: edits are counted from here. */
  fileSaved: () => Promise<void>
  takeOver: () => Promise<boolean>
  rename: (layoutId: string, title: string) => Promise<void>
  remove: (layoutId: string) => Promise<void>
  points: (layoutId: string) => Promise<readonly PointEntry[]>
  keepPoint: (layoutId: string, name: string, document: YardDocument) => Promise<void>
  loadPoint: (pointId: string) => Promise<YardDocument | null>
  /** Everything of this device as one JSON text, and what of it could not be read and is not in it. */
  everything: () => Promise<{ text: string; refused: readonly Localized[] }>
  /** Puts back what `everything` wrote, beside what is here: a layout already here comes back as a copy. Null for any other text. */
  restore: (text: string) => Promise<{ layouts: number; points: number; gear: number; settings: Partial<ViewState>; refused: readonly Localized[] } | null>
  clear: () => Promise<void>
  gear: () => Promise<readonly GearItem[]>
  putGear: (items: readonly GearItem[]) => Promise<void>
  settings: () => Promise<Partial<ViewState>>
  putSettings: (settings: Partial<ViewState>) => Promise<void>
  /** Layout that was open last; opened again after a crash. */
  lastOpen: () => Promise<string | null>
  setLastOpen: (layoutId: string | null) => Promise<void>
}
