/**
 * Words on the plan kept apart (docs/look.md): in order of importance each label tries its places, and one that finds
 * none is left out. Frame: px of the band, y DOWN.
 */
export interface BoxPx {
  x0: number
  y0: number
  x1: number
  y1: number
}

/** The lower number goes first; later ones give way. */
export const labelRanks = { chosen: 0, redZone: 1, mark: 2, zone: 2.5, crew: 3, gear: 4, site: 5, level: 6 } as const

export interface LabelRequest {
  id: string
  /** What the label names; the label stands beside it. */
  box: BoxPx
  widthPx: number
  heightPx: number
  rank: number
  /** Left top corner wished for, tried before all others. */
  wished?: { xPx: number; yPx: number }
  /** May stand in the middle of its own box where that is large enough. */
  mayStandInside?: boolean
  /** Places tried before right, left, below, above. */
  sides?: readonly LabelSide[]
}

export type LabelSide = 'right' | 'left' | 'below' | 'above'

export interface LabelPlace {
  id: string
  /** Left top corner. */
  xPx: number
  yPx: number
  /** From the edge of the thing to the label, where it had to stand off. */
  stem: { x0: number; y0: number; x1: number; y1: number } | null
}

const gapPx = 4
const standOffPx = 24
const cellPx = 64

/** Boxes by coarse cells, so that a thousand of them are asked quickly. */
class BoxGrid {
  private readonly cells = new Map<number, BoxPx[]>()

  add(box: BoxPx): void {
    this.each(box, (key) => {
      const cell = this.cells.get(key)
      if (cell === undefined) this.cells.set(key, [box])
      else cell.push(box)
    })
  }

  /** Whether the box overlaps any other than `own`. */
  isHit(box: BoxPx, own: BoxPx): boolean {
    let hit = false
    this.each(box, (key) => {
      for (const other of this.cells.get(key) ?? []) if (other !== own && other.x0 < box.x1 && other.x1 > box.x0 && other.y0 < box.y1 && other.y1 > box.y0) hit = true
    })
    return hit
  }

  private each(box: BoxPx, visit: (key: number) => void): void {
    const [x0, x1, y0, y1] = [Math.floor(box.x0 / cellPx), Math.floor(box.x1 / cellPx), Math.floor(box.y0 / cellPx), Math.floor(box.y1 / cellPx)]
    for (let x = x0; x <= x1; x++) for (let y = y0; y <= y1; y++) visit(x * 4096 + y)
  }
}

const allSides: readonly LabelSide[] = ['right', 'left', 'below', 'above']

const beside = ({ box, widthPx, heightPx }: LabelRequest, side: LabelSide, awayPx: number): { xPx: number; yPx: number } => {
  const [midX, midY] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2]
  switch (side) {
    case 'right': return { xPx: box.x1 + awayPx, yPx: midY - heightPx / 2 }
    case 'left': return { xPx: box.x0 - awayPx - widthPx, yPx: midY - heightPx / 2 }
    case 'below': return { xPx: midX - widthPx / 2, yPx: box.y1 + awayPx }
    case 'above': return { xPx: midX - widthPx / 2, yPx: box.y0 - awayPx - heightPx }
  }
}

const stemOf = ({ box }: LabelRequest, side: LabelSide): { x0: number; y0: number; x1: number; y1: number } => {
  const [midX, midY] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2]
  const far = standOffPx - 2
  switch (side) {
    case 'right': return { x0: box.x1 + 2, y0: midY, x1: box.x1 + far, y1: midY }
    case 'left': return { x0: box.x0 - 2, y0: midY, x1: box.x0 - far, y1: midY }
    case 'below': return { x0: midX, y0: box.y1 + 2, x1: midX, y1: box.y1 + far }
    case 'above': return { x0: midX, y0: box.y0 - 2, x1: midX, y1: box.y0 - far }
  }
}

/**
 * Places labels so that none covers another, an obstacle or the edge of the band.
 *
 * Tried in turn: the wished place, inside the own box, the four sides close by, the four sides 24 px out on a stem.
 * Order: rank, then as given. Obstacles are symbols and marks; a label may cover its own thing's box, which has to be
 * the very same object as the obstacle. `within`: the part of the band labels may stand in, where it is not all of it.
 */
export const placeLabels = (requests: readonly LabelRequest[], obstacles: readonly BoxPx[], band: { widthPx: number; heightPx: number }, within: BoxPx = { x0: 0, y0: 0, x1: band.widthPx, y1: band.heightPx }): LabelPlace[] => {
  const taken = new BoxGrid()
  for (const box of obstacles) if (box.x1 > 0 && box.y1 > 0 && box.x0 < band.widthPx && box.y0 < band.heightPx) taken.add(clamped(box, band))
  const places: LabelPlace[] = []
  const inOrder = requests.map((request, order) => ({ request, order })).sort((a, b) => a.request.rank - b.request.rank || a.order - b.order)
  for (const { request } of inOrder) {
    const { widthPx, heightPx, box } = request
    if (box.x1 < within.x0 || box.y1 < within.y0 || box.x0 > within.x1 || box.y0 > within.y1) continue
    const sides = [...(request.sides ?? []), ...allSides.filter((side) => request.sides?.includes(side) !== true)]
    const tries: { xPx: number; yPx: number; stem: LabelPlace['stem'] }[] = [
      ...(request.wished === undefined ? [] : [{ ...request.wished, stem: null }]),
      ...(request.mayStandInside === true && box.x1 - box.x0 > widthPx + 8 && box.y1 - box.y0 > heightPx + 4 ? [{ xPx: (box.x0 + box.x1 - widthPx) / 2, yPx: (box.y0 + box.y1 - heightPx) / 2, stem: null }] : []),
      ...sides.map((side) => ({ ...beside(request, side, gapPx), stem: null })),
      ...sides.map((side) => ({ ...beside(request, side, standOffPx), stem: stemOf(request, side) })),
    ]
    for (const { xPx, yPx, stem } of tries) {
      const at = { x0: xPx, y0: yPx, x1: xPx + widthPx, y1: yPx + heightPx }
      if (at.x0 < within.x0 + 2 || at.y0 < within.y0 + 2 || at.x1 > within.x1 - 2 || at.y1 > within.y1 - 2 || taken.isHit(at, box)) continue
      taken.add(at)
      places.push({ id: request.id, xPx, yPx, stem })
      break
    }
  }
  return places
}

const clamped = (box: BoxPx, band: { widthPx: number; heightPx: number }): BoxPx =>
  box.x0 >= -200 && box.y0 >= -200 && box.x1 <= band.widthPx + 200 && box.y1 <= band.heightPx + 200 ? box : { x0: Math.max(-200, box.x0), y0: Math.max(-200, box.y0), x1: Math.min(band.widthPx + 200, box.x1), y1: Math.min(band.heightPx + 200, box.y1) }

/** What is drawn at a scale, by px to the foot (docs/look.md). */
export type DetailLevel = 'ticks' | 'small' | 'scale' | 'full'
export const detailAt = (pxPerM: number): DetailLevel => {
  const pxPerFt = pxPerM * 0.3048
  return pxPerFt < 2 ? 'ticks' : pxPerFt < 4 ? 'small' : pxPerFt <= 8 ? 'scale' : 'full'
}
