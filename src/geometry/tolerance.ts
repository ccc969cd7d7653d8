/**
 * Every tolerance of src/geometry, in one place. No function has a hidden one.
 *
 * Distances and containment use none of these: they decide by exact predicates.
 */

/** Absolute, m. Ground levels nearer than this are one level: no tape or rover tells them apart. */
export const SAME_LEVEL_PLACE_M = 1e-3

/**
 * Relative. Ground levels whose spread across is less than this share of their spread along count as in
 * line: a cross-fall drawn from a strip that narrow would be noise.
 */
export const IN_LINE_RATIO = 0.01

/** Absolute, rad. A path that turns less than this at a vertex runs straight through it. */
export const STRAIGHT_TURN_RAD = 1e-9

/** Absolute, rad. A turn within this of π doubles back on itself; no tangent arc exists. */
export const DOUBLE_BACK_RAD = 1e-6

/** Relative to the leg: tangent lengths may exceed a leg by this share before they count as overlapping. */
export const TANGENT_FIT_RATIO = 1e-9

/** Relative to the extent of the drawing: grid step of the area and outline operations (buffer.ts). */
export const CLIPPER_GRID_RATIO = 2 ** -25

/** Relative to the radius: how far a flattened arc may lie inside the true one in buffer.ts. */
export const ARC_SAG_RATIO = 1e-5
