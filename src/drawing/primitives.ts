import type { Language } from '../units/language.ts'
import type { UnitSystem } from '../units/format.ts'

/**
 * Drawing list: the one description of every symbol and sheet, drawn by several back ends (canvas, SVG, PNG).
 *
 * Frame: local to the item, metres, x along the item's heading, y to its left (counter-clockwise, y UP).
 * Back ends flip y once. Colours and weights are names, resolved by the theme of the back end.
 * Points are flat: [x0, y0, x1, y1, …].
 */
export type InkName =
  | 'ink' | 'ink2' | 'hair' | 'paper' | 'lot' | 'sheet' | 'tape' | 'tapePale' | 'tapeInk'
  | 'pipe' | 'pipeEdge' | 'stripe' | 'chosen' | 'chosenInk' | 'red' | 'amber' | 'blue' | 'safe' | 'white'
  | 'stop' | 'fix' | 'check' | 'note' | 'plant' | 'earth' | 'building' | 'none'
  /** Pipe seen from the side and enlarged, digit on a level shape, edge of a level shape, crown of a tree, hatch of a building, grains of gravel, way underfoot. */
  | 'pipeSide' | 'stopInk' | 'fixInk' | 'checkInk' | 'levelEdge' | 'crown' | 'buildingHatch' | 'grain' | 'way'

/** Stroke weights, px at 96 dpi; strokes do not scale with zoom (docs/look.md). */
export type WeightName = 'hair' | 'axis' | 'context' | 'boundary' | 'gear' | 'rope' | 'building' | 'pipe' | 'ticks'
export type DashName = 'solid' | 'axis' | 'boundary' | 'lane' | 'proposal' | 'rope' | 'amber' | 'blue' | 'missing' | 'overhead' | 'tie' | 'guess'
export type HatchName = 'red' | 'amber' | 'blue' | 'building' | 'earth' | 'water' | 'gravel'

export interface Pen {
  stroke?: InkName
  weight?: WeightName
  dash?: DashName
  fill?: InkName
  /** Opacity of the fill, 0 to 1. */
  fillOpacity?: number
  hatch?: HatchName
}

export type Primitive =
  | ({ t: 'path'; points: readonly number[]; closed?: boolean } & Pen)
  | ({ t: 'rect'; xM: number; yM: number; widthM: number; heightM: number; radiusM?: number } & Pen) // xM, yM = lower left corner
  | ({ t: 'circle'; xM: number; yM: number; radiusM: number } & Pen)
  | ({ t: 'arc'; xM: number; yM: number; radiusM: number; fromRad: number; toRad: number } & Pen)
  /** Pipe along a line: edge, body and the coloured stripe a quarter of it wide. Never thinner on screen than `leastPx` (3.2). Square ends. */
  | { t: 'pipe'; points: readonly number[]; outerDiameterM: number; leastPx?: number }
  /**
   * Lettering keeps its size on screen and stays upright. sizePx as in docs/look.md.
   * Placed by its baseline; dxPx moves it right, dyPx UP on screen. `1/16` and `⅛` come out as true fractions.
   */
  | { t: 'text'; xM: number; yM: number; text: string; sizePx: number; ink?: InkName; align?: 'left' | 'center' | 'right'; bold?: boolean; dxPx?: number; dyPx?: number; lotEdge?: boolean }
  /** A mark of fixed pixel size, upright, in its own pixel frame (y UP), e.g. a level shape or a crew letter. */
  | { t: 'mark'; xM: number; yM: number; parts: readonly Primitive[] }

/** What a symbol may look at, besides its record. */
export interface SymbolContext {
  /** Outside diameter of the job's pipe, or null while it is unknown (draw a typical 0.3 m). */
  pipeOuterDiameterM: number | null
  stickLengthM: number | null
  /** Screen scale: which details are worth drawing. Symbols must look right at 5 to 120 px/m. */
  pxPerM: number
  /** Side view only: screen scale of heights, larger than pxPerM where heights are drawn larger; missing = pxPerM. */
  pxPerLevelM?: number
  /** True when drawn on the gear edge: no pipe, no lettering. */
  onShelf?: boolean
  /** True for the item chosen: it keeps its words at scales where others drop theirs. */
  isChosen?: boolean
  /** Units and language of the words a symbol carries; missing = feet and inches, English. */
  reader?: { system: UnitSystem; language: Language }
}
