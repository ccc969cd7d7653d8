/**
 * Leaders from the margin notes to their places on the plan. A leader is a level run of 19 px from the note, then one straight leg.
 * Leaders never cross each other or the tape; one that would is left out and its number stands at the place on a stem.
 * Frame: px of the drawing (plan band's corner = 0, 0), x right, y down.
 */
export interface LeaderNote {
  key: string
  number: number
  /** Height of the note's mark in the frame of the plan; null while it is scrolled out of the margin. */
  noteYPx: number | null
  place: { xPx: number; yPx: number } | null
}

export interface LeaderRequest {
  notes: readonly LeaderNote[]
  band: { widthPx: number; heightPx: number }
  /** x of the margin's edge: the band's width, or 0 with the margin at the left. */
  marginXPx: number
  /** Boxes a leg may not run through: the tag. */
  blocked: readonly { xPx: number; yPx: number; widthPx: number; heightPx: number }[]
  /** Boxes of words on the plan: numbers keep clear of them where there is room. */
  words?: readonly { x0: number; y0: number; x1: number; y1: number }[]
}

export interface Leader {
  key: string
  number: number
  /** Note end, knee, place. */
  points: readonly { xPx: number; yPx: number }[]
}
export interface StemNumber {
  key: string
  number: number
  place: { xPx: number; yPx: number }
  /** Middle of the number's mark. */
  mark: { xPx: number; yPx: number }
}

export const LEVEL_RUN_PX = 19
const MARK_PX = 19
const STEM_PX = 21

type Point = { xPx: number; yPx: number }

const side = (a: Point, b: Point, c: Point): number => Math.sign((b.xPx - a.xPx) * (c.yPx - a.yPx) - (b.yPx - a.yPx) * (c.xPx - a.xPx))

/** Touching counts as crossing: two lines ending in one dot can't be told apart. */
export const legsCross = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const [abc, abd, cda, cdb] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)]
  if (abc !== abd && cda !== cdb) return true
  const within = (p: Point, q: Point, r: Point): boolean => side(p, q, r) === 0 && Math.min(p.xPx, q.xPx) <= r.xPx && r.xPx <= Math.max(p.xPx, q.xPx) && Math.min(p.yPx, q.yPx) <= r.yPx && r.yPx <= Math.max(p.yPx, q.yPx)
  return within(a, b, c) || within(a, b, d) || within(c, d, a) || within(c, d, b)
}

const crossesPath = (one: readonly Point[], other: readonly Point[]): boolean =>
  one.slice(1).some((b, i) => other.slice(1).some((d, j) => legsCross(one[i]!, b, other[j]!, d)))

const crossesBox = (path: readonly Point[], box: LeaderRequest['blocked'][number]): boolean => {
  const [l, t, r, b] = [box.xPx, box.yPx, box.xPx + box.widthPx, box.yPx + box.heightPx]
  const ring: Point[] = [{ xPx: l, yPx: t }, { xPx: r, yPx: t }, { xPx: r, yPx: b }, { xPx: l, yPx: b }, { xPx: l, yPx: t }]
  const end = path.at(-1)!
  return crossesPath(path, ring) || (end.xPx > l && end.xPx < r && end.yPx > t && end.yPx < b)
}

const isOn = (band: LeaderRequest['band'], place: Point): boolean => place.xPx >= 0 && place.xPx <= band.widthPx && place.yPx >= 0 && place.yPx <= band.heightPx

/** Notes come in their order (STOP first); an earlier one keeps its leader. */
export const routeLeaders = (request: LeaderRequest): { leaders: Leader[]; numbers: StemNumber[] } => {
  const { band, marginXPx, blocked } = request
  const inwards = marginXPx > 0 ? -1 : 1
  const leaders: Leader[] = []
  const left: LeaderNote[] = []
  for (const note of request.notes) {
    const { place, noteYPx } = note
    if (place === null || !isOn(band, place)) continue
    // A note beside tape or side view would have to cross the tape.
    if (noteYPx === null || noteYPx < 0 || noteYPx > band.heightPx) {
      left.push(note)
      continue
    }
    const points: Point[] = [{ xPx: marginXPx, yPx: noteYPx }, { xPx: marginXPx + inwards * LEVEL_RUN_PX, yPx: noteYPx }, place]
    if (leaders.some((other) => crossesPath(points, other.points)) || blocked.some((box) => crossesBox(points, box))) left.push(note)
    else leaders.push({ key: note.key, number: note.number, points })
  }
  return { leaders, numbers: placeNumbers(left, band, leaders, request.words ?? []) }
}

const directions: readonly Point[] = [0, -45, 45, 180, -135, 135, -90, 90].map((deg) => ({ xPx: Math.sin((deg * Math.PI) / 180), yPx: -Math.cos((deg * Math.PI) / 180) }))

/** Each number on a stem of 15 to 25 px, in the first of eight directions where it covers no other number, place or leader's end, and no word if that can be had. */
const placeNumbers = (notes: readonly LeaderNote[], band: LeaderRequest['band'], leaders: readonly Leader[], words: NonNullable<LeaderRequest['words']>): StemNumber[] => {
  const taken: Point[] = leaders.map(({ points }) => points.at(-1)!)
  const found: StemNumber[] = []
  for (const { key, number, place } of notes) {
    if (place === null) continue
    const spots = [STEM_PX, STEM_PX + 18, STEM_PX + 36].flatMap((stemPx) => directions.map(({ xPx, yPx }) => ({ xPx: place.xPx + xPx * stemPx, yPx: place.yPx + yPx * stemPx })))
    const isClear = (spot: Point): boolean => spot.xPx > MARK_PX / 2 && spot.yPx > MARK_PX / 2 && spot.xPx < band.widthPx - MARK_PX / 2 && spot.yPx < band.heightPx - MARK_PX / 2
      && taken.every((other) => Math.hypot(other.xPx - spot.xPx, other.yPx - spot.yPx) >= MARK_PX + 2)
    const half = MARK_PX / 2 + 1
    const isOffWords = (spot: Point): boolean => words.every(({ x0, y0, x1, y1 }) => spot.xPx + half <= x0 || spot.xPx - half >= x1 || spot.yPx + half <= y0 || spot.yPx - half >= y1)
    const mark = spots.find((spot) => isClear(spot) && isOffWords(spot)) ?? spots.find(isClear) ?? spots[0]!
    taken.push(mark)
    found.push({ key, number, place, mark })
  }
  return found
}
