import type { HatchName, InkName } from './primitives.ts'

/**
 * Hatches as one tile of px geometry, repeated over a shape: fixed on screen whatever the zoom, moving with the sheet.
 * They are ours (docs/look.md), chosen so that the three zone classes stay apart in grey: stripes, dots, broken level lines.
 */
export interface HatchTile {
  ink: InkName
  opacityRatio: number
  widthPx: number
  heightPx: number
  lineWidthPx: number
  /** Strokes of one tile, flat point lists, y DOWN. They may leave the tile. */
  lines: readonly (readonly number[])[]
  /** Dots of one tile: x, y, radius. */
  dots: readonly (readonly [number, number, number])[]
}

const SQUARE_RED_PX = 9 * Math.SQRT2
const SQUARE_BUILDING_PX = 7 * Math.SQRT2

export const hatchTiles: Readonly<Record<HatchName, HatchTile>> = {
  // 45° stripes 9 px apart, measured across them.
  red: { ink: 'red', opacityRatio: 0.42, widthPx: SQUARE_RED_PX, heightPx: SQUARE_RED_PX, lineWidthPx: 2.6, lines: [[0, SQUARE_RED_PX, SQUARE_RED_PX, 0]], dots: [] },
  amber: { ink: 'amber', opacityRatio: 0.75, widthPx: 10, heightPx: 10, lineWidthPx: 0, lines: [], dots: [[2.5, 2.5, 1.15], [7.5, 7.5, 1.15]] },
  blue: { ink: 'blue', opacityRatio: 0.9, widthPx: 22, heightPx: 14, lineWidthPx: 1.3, lines: [[0, 3.5, 14, 3.5], [11, 10.5, 25, 10.5]], dots: [] },
  building: { ink: 'buildingHatch', opacityRatio: 1, widthPx: SQUARE_BUILDING_PX, heightPx: SQUARE_BUILDING_PX, lineWidthPx: 1, lines: [[0, 0, SQUARE_BUILDING_PX, SQUARE_BUILDING_PX]], dots: [] },
  earth: { ink: 'earth', opacityRatio: 1, widthPx: 16, heightPx: 12, lineWidthPx: 0.9, lines: [[1, 11, 7, 3], [6, 11, 12, 3], [11, 11, 17, 3]], dots: [] },
  water: {
    ink: 'ink2', opacityRatio: 0.8, widthPx: 40, heightPx: 26, lineWidthPx: 1,
    lines: [[3, 6, 6, 4.4, 9, 4.4, 12, 6, 15, 7.6, 18, 7.6, 21, 6], [23, 19, 26, 17.4, 29, 17.4, 32, 19, 35, 20.6, 38, 20.6, 41, 19]], dots: [],
  },
  gravel: {
    ink: 'grain', opacityRatio: 1, widthPx: 46, heightPx: 38, lineWidthPx: 0, lines: [],
    dots: [[5, 7, 0.9], [19, 3, 0.7], [33, 12, 1], [11, 22, 0.7], [27, 27, 0.9], [41, 31, 0.7], [16, 34, 0.8], [42, 19, 0.6]],
  },
}
