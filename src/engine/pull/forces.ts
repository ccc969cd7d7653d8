import { type ForceMap, type MapRuns, applyMap, followedBy, mapRuns, withoutFloor } from './forceMap.ts'
import { type Track, type TrackPiece, mapOfPart, mapOfPiece } from './track.ts'
import type { HeadForce, LargestForce } from './types.ts'

/** A sum smaller than this share of the string's weight is rounding, not a run-away. */
const NO_SUM_RATIO = 1e-9

export interface StringOnTrack {
  readonly track: Track
  readonly stringLengthM: number
  readonly tailLoadN: number
  readonly weightN: number
}

/** The pull with the head at `headM`, piece by piece from the tail. Cost O(pieces under the string). */
export function forceAtHead(body: StringOnTrack, headM: number): HeadForce {
  const tailM = headM - body.stringLengthM
  let forceN = Math.max(0, body.tailLoadN)
  let sumN = body.tailLoadN
  let lowestSumN = Math.min(0, sumN)
  const { pieces } = body.track
  for (let i = pieceAt(pieces, tailM); i < pieces.length; i++) {
    const piece = pieces[i] as TrackPiece
    if (piece.startM >= headM) break
    // Corners and guides have no length: they act on what has passed them, head beyond and tail behind.
    if (piece.endM <= tailM) continue
    const map = mapOfPart(piece, Math.max(piece.startM, tailM), Math.min(piece.endM, headM))
    forceN = applyMap(map, forceN)
    sumN = applyMap(withoutFloor(map), sumN)
    lowestSumN = Math.min(lowestSumN, sumN)
  }
  const least = -NO_SUM_RATIO * body.weightN
  const isRunAway = sumN < least
  return { headM, forceN, sumN, lowestSumN, isRunAway, isPushingItself: !isRunAway && lowestSumN < least }
}

/** Index of the last piece that starts at or before a running distance; 0 before the first. */
export function pieceAt(pieces: readonly TrackPiece[], runningM: number): number {
  let [low, high] = [0, pieces.length - 1]
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((pieces[middle] as TrackPiece).startM <= runningM) low = middle
    else high = middle - 1
  }
  // Pieces without length at this very place lie before the last one that starts here.
  while (low > 0 && (pieces[low] as TrackPiece).startM === runningM) low -= 1
  return low
}

/** Half-way between two breakpoints the head and the tail are in one piece each, and stay in it between them. */
interface Stretch {
  readonly fromM: number
  readonly toM: number
  readonly headPiece: TrackPiece
  readonly tailPiece: TrackPiece
  /** Whole pieces between them; null when head and tail are in one piece. */
  readonly middle: ForceMap | null
}

/**
 * Largest pull over every head position from the path's start to its end; exact, no stepping.
 *
 * Between breakpoints (an end of the string at an end of a piece) the pull is the greater of a few smooth functions,
 * one for each place where it may have been held at 0. Each has its maximum at an end of the stretch, save the one
 * never held at 0 while the head is in an arc: it may rise and fall once, and a golden-section search finds it.
 */
export function largestForce(body: StringOnTrack): LargestForce {
  const { track, stringLengthM, tailLoadN } = body
  let best: LargestForce = { forceN: -Infinity, headM: 0 }
  const offer = (forceN: number, headM: number): void => {
    if (forceN > best.forceN) best = { forceN, headM }
  }
  const runs = mapRuns(track.pieces.map(mapOfPiece))
  const breaksM = breakpoints(track, stringLengthM)
  if (breaksM.length === 1) offer(forceAtHead(body, breaksM[0] as number).forceN, breaksM[0] as number)
  for (let i = 0; i + 1 < breaksM.length; i++) {
    const stretch = stretchBetween(body, runs, breaksM[i] as number, breaksM[i + 1] as number)
    const forceN = (headM: number): number => applyMap(mapOnStretch(stretch, stringLengthM, headM), Math.max(0, tailLoadN))
    offer(forceN(stretch.fromM), stretch.fromM)
    offer(forceN(stretch.toM), stretch.toM)
    if (stretch.headPiece.law.kind !== 'arc' || !stretch.middle) continue
    const unheldN = (headM: number): number => applyMap(withoutFloor(mapOnStretch(stretch, stringLengthM, headM)), tailLoadN)
    const peakM = goldenMaximum(unheldN, stretch.fromM, stretch.toM)
    offer(forceN(peakM), peakM)
  }
  return best
}

function breakpoints(track: Track, stringLengthM: number): number[] {
  const all = [0, track.lengthM]
  for (const { startM, endM } of track.pieces) all.push(startM, endM, startM + stringLengthM, endM + stringLengthM)
  const inside = all.filter((headM) => headM >= 0 && headM <= track.lengthM).sort((a, b) => a - b)
  // Sums of the same lengths in another order differ by rounding; a stretch that short holds nothing.
  const least = 1e-12 * (track.lengthM + stringLengthM)
  return inside.filter((headM, i) => i === 0 || headM - (inside[i - 1] as number) > least)
}

function stretchBetween(body: StringOnTrack, runs: MapRuns, fromM: number, toM: number): Stretch {
  const { pieces } = body.track
  const middleM = (fromM + toM) / 2
  const head = pieceAt(pieces, middleM)
  const tail = pieceAt(pieces, middleM - body.stringLengthM)
  const middle = head === tail ? null : runs.run(tail + 1, head)
  return { fromM, toM, headPiece: pieces[head] as TrackPiece, tailPiece: pieces[tail] as TrackPiece, middle }
}

function mapOnStretch(stretch: Stretch, stringLengthM: number, headM: number): ForceMap {
  const { headPiece, tailPiece, middle } = stretch
  const tailM = headM - stringLengthM
  if (!middle) return mapOfPart(headPiece, tailM, headM)
  const first = mapOfPart(tailPiece, Math.max(tailPiece.startM, Math.min(tailM, tailPiece.endM)), tailPiece.endM)
  const last = mapOfPart(headPiece, headPiece.startM, Math.max(headPiece.startM, Math.min(headM, headPiece.endM)))
  return followedBy(followedBy(first, middle), last)
}

/** Place of the maximum of a function that rises and then falls (either part may be missing). */
function goldenMaximum(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2
  let [a, b] = [from, to]
  let x1 = b - ratio * (b - a)
  let x2 = a + ratio * (b - a)
  let [f1, f2] = [f(x1), f(x2)]
  for (let step = 0; step < 60; step++) {
    if (f1 >= f2) {
      b = x2
      x2 = x1
      f2 = f1
      x1 = b - ratio * (b - a)
      f1 = f(x1)
    } else {
      a = x1
      x1 = x2
      f1 = f2
      x2 = a + ratio * (b - a)
      f2 = f(x2)
    }
  }
  return (a + b) / 2
}

/**
 * Pull of the string down its own slope without any drag, q times the fall from one end to the other, the largest
 * over every head position: `forwardN` where it falls to its head, `backwardN` where it falls to its tail.
 */
export function fullSlopePull(body: StringOnTrack): { forwardN: number; backwardN: number } {
  const { track, stringLengthM, weightN } = body
  let [forwardM, backwardM] = [0, 0]
  // Between breakpoints both end levels are linear, so the greatest difference is at one of them.
  for (const headM of breakpoints(track, stringLengthM)) {
    const fallM = levelOnTrack(track, headM - stringLengthM) - levelOnTrack(track, headM)
    forwardM = Math.max(forwardM, fallM)
    backwardM = Math.max(backwardM, -fallM)
  }
  const lineLoadNPerM = weightN / stringLengthM
  return { forwardN: lineLoadNPerM * forwardM, backwardN: lineLoadNPerM * backwardM }
}

function levelOnTrack({ pieces }: Track, runningM: number): number {
  const piece = pieces[pieceAt(pieces, runningM)] as TrackPiece
  const lengthM = piece.endM - piece.startM
  const ratio = lengthM > 0 ? Math.min(1, Math.max(0, (runningM - piece.startM) / lengthM)) : 0
  return piece.startLevelM + ratio * (piece.endLevelM - piece.startLevelM)
}
