/**
 * Flags on the tape kept apart (docs/look.md, labels, rule 4): each hangs to one side of its pole; where that is taken it
 * hangs to the other side, then stands in a second row; what finds no place is folded behind its neighbours and fans out
 * when touched. Frame: px along the tape's own axis on screen.
 */
export interface FlagRequest {
  key: string
  /** Place of the pole. */
  alongPx: number
  /** Room along the tape the flag takes. */
  sizePx: number
  /** The lower number chooses first. */
  rank: number
}

export interface FlagPlace {
  key: string
  row: number
  /** From the pole towards growing px (1) or the other way (−1). */
  hang: 1 | -1
  /** Where the flag starts along the tape. */
  startPx: number
  /** Where its pole leaves it: the flag's pole side; differs from the place on the tape only in a fan. */
  footPx: number
  /** Only the pole is drawn. */
  isFolded: boolean
}

export interface FlagLayoutOptions {
  rows: number
  gapPx: number
  /** Side flags hang to by choice: towards exit on a level tape, above the line on an upright one. */
  primary: 1 | -1
  /** Key of the folded flag that is being touched: it and those within reach spread out. */
  fanKey?: string | null
  /** Where no flag may hang: the fold. */
  blocked?: { fromPx: number; toPx: number } | null
}

/** Reach of a fan: flags whose poles stand this near count as one bunch, px. */
export const FAN_REACH_PX = 48

interface Taken {
  fromPx: number
  toPx: number
}

const isFree = (taken: readonly Taken[], fromPx: number, toPx: number, gapPx: number): boolean => taken.every((other) => toPx + gapPx <= other.fromPx || fromPx >= other.toPx + gapPx)

/** Places every flag; O(n²) in the flags given, so give only those in view. */
export const layoutFlags = (requests: readonly FlagRequest[], options: FlagLayoutOptions): FlagPlace[] => {
  const { rows, gapPx, primary, fanKey, blocked } = options
  const taken: Taken[][] = Array.from({ length: rows }, () => (blocked === null || blocked === undefined ? [] : [blocked]))
  const places = new Map<string, FlagPlace>()
  const inOrder = [...requests].sort((a, b) => a.rank - b.rank || a.alongPx - b.alongPx || a.key.localeCompare(b.key))
  const fan = fanOf(requests, fanKey ?? null)
  for (const place of spread(fan, options)) {
    places.set(place.key, place)
    const size = fan.find(({ key }) => key === place.key)?.sizePx ?? 0
    taken[place.row]?.push({ fromPx: place.startPx, toPx: place.startPx + size })
  }
  for (const { key, alongPx, sizePx } of inOrder) {
    if (places.has(key)) continue
    const tries = Array.from({ length: rows }, (_, row) => [primary, -primary as 1 | -1].map((hang) => ({ row, hang }))).flat()
    const found = tries.find(({ row, hang }) => {
      const startPx = hang === 1 ? alongPx : alongPx - sizePx
      return isFree(taken[row] ?? [], startPx, startPx + sizePx, gapPx)
    })
    const { row, hang } = found ?? { row: 0, hang: primary }
    const startPx = hang === 1 ? alongPx : alongPx - sizePx
    if (found !== undefined) taken[row]?.push({ fromPx: startPx, toPx: startPx + sizePx })
    places.set(key, { key, row, hang, startPx, footPx: alongPx, isFolded: found === undefined })
  }
  return requests.map(({ key }) => places.get(key) as FlagPlace)
}

const fanOf = (requests: readonly FlagRequest[], fanKey: string | null): FlagRequest[] => {
  const touched = requests.find(({ key }) => key === fanKey)
  return touched === undefined ? [] : requests.filter(({ alongPx }) => Math.abs(alongPx - touched.alongPx) <= FAN_REACH_PX).sort((a, b) => a.alongPx - b.alongPx)
}

/** Flags of a fan side by side about their middle, filling the rows in turn, each pole slanting to its place. */
const spread = (fan: readonly FlagRequest[], { rows, gapPx, primary }: FlagLayoutOptions): FlagPlace[] => {
  if (fan.length === 0) return []
  const middlePx = fan.reduce((sum, { alongPx }) => sum + alongPx, 0) / fan.length
  const perRow = Math.ceil(fan.length / rows)
  return Array.from({ length: rows }, (_, row) => fan.filter((_flag, i) => Math.floor(i / perRow) === row)).flatMap((group, row) => {
    const totalPx = group.reduce((sum, { sizePx }) => sum + sizePx + gapPx, -gapPx)
    let startPx = middlePx - totalPx / 2
    return group.map(({ key, sizePx }): FlagPlace => {
      const place = { key, row, hang: primary, startPx, footPx: primary === 1 ? startPx : startPx + sizePx, isFolded: false }
      startPx += sizePx + gapPx
      return place
    })
  })
}
