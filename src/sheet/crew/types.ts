/** What a crew sheet is made from, and what it comes to: pages of drawing lists that every back end draws alike. */
import type { CheckRun } from '../../checks/finding.ts'
import type { RunThrough } from '../../derive/stages/types.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Matrix } from '../../drawing/matrix.ts'
import type { BoxPx } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import type { UnitSystem } from '../../units/format.ts'
import type { Orientation, PaperName } from './paper.ts'

export type SheetLanguage = 'en' | 'es' | 'both'

export interface CrewSheetContent {
  /** The plan: neither heights as set nor a what-if. */
  site: SiteModel
  /** Its findings; null: the checks did not come in time. */
  run: CheckRun | null
  /** False: `run` does not belong to this drawing, and every page says so. */
  isSettled: boolean
  /** Its run-through; null: not worked out, and the stage strip says so. */
  rehearsal: RunThrough | null
  language: SheetLanguage
  /** Feet and inches carry metric in brackets. */
  system: UnitSystem
  paper: PaperName
  orientation: Orientation
  /** Date and time of printing, ISO 8601. */
  whenIso: string
  /** The same as the reader writes it. */
  when: string
  /** Modules of a QR code that opens the layout, row by row; left out: none fits. */
  code?: readonly (readonly boolean[])[]
}

/** Drawn in order, each clipped to its box. */
export interface SheetGroup {
  name: string
  /** From the units of the list to pt of the page, x right, y DOWN. */
  matrix: Matrix
  clipPt: BoxPx | null
  list: readonly Primitive[]
}

export interface SheetPage {
  widthPt: number
  heightPt: number
  groups: readonly SheetGroup[]
}

/** Identity: the list is in pt of the page already. */
export const inPoints: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
