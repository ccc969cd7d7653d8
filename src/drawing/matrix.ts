/** Affine map to screen px (y DOWN): xPx = a·x + c·y + e, yPx = b·x + d·y + f. The same shape as the frames of the screen use. */
export interface Matrix {
  a: number
  b: number
  c: number
  d: number
  e: number
  f: number
}

/** Map of a fixed-size pixel frame (y UP) whose origin lies at a screen point. */
export const markMatrix = (xPx: number, yPx: number): Matrix => ({ a: 1, b: 0, c: 0, d: -1, e: xPx, f: yPx })

/** Map from an item's local frame to the screen: place and heading first, then the map of the sheet. */
export const itemMatrix = (sheet: Matrix, xM: number, yM: number, headingRad: number): Matrix => {
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  return {
    a: sheet.a * cos + sheet.c * sin,
    b: sheet.b * cos + sheet.d * sin,
    c: sheet.c * cos - sheet.a * sin,
    d: sheet.d * cos - sheet.b * sin,
    e: sheet.a * xM + sheet.c * yM + sheet.e,
    f: sheet.b * xM + sheet.d * yM + sheet.f,
  }
}

/** Screen lengths of a unit along x and along y. Equal in plan; in the side view heights may be drawn larger. */
export const scaleOf = (m: Matrix): { xPx: number; yPx: number } => ({ xPx: Math.hypot(m.a, m.b), yPx: Math.hypot(m.c, m.d) })
