/** The pull at the head taken apart: what each piece of the way adds, and by what. */
import { applyMap } from './forceMap.ts'
import { pieceAt, type StringOnTrack } from './forces.ts'
import { mapOfPart, type TrackPiece } from './track.ts'

export interface PieceShare {
  readonly fromM: number
  readonly toM: number
  /** Drag of the weight lying on the way. */
  readonly dragN: number
  /** Weight up (+) or down (−) the slope. */
  readonly gradeN: number
  /** Belt friction: what the pull behind presses against the guides of an arc. */
  readonly beltN: number
  /** Guides that bend the pipe, where the track has its stiffness. */
  readonly guideN: number
  /** What is left out because a rope cannot push, ≥ 0. */
  readonly slackN: number
}

/**
 * Shares of the pieces under the string from tail to head.
 *
 * Model:  as `forceAtHead`; tail load and all shares add up to its `forceN`.
 * Cost:   O(pieces under the string).
 */
export function contributionsAtHead(body: StringOnTrack, headM: number): PieceShare[] {
  const tailM = headM - body.stringLengthM
  const lineLoadNPerM = body.weightN / body.stringLengthM
  const { pieces } = body.track
  const shares: PieceShare[] = []
  let forceN = Math.max(0, body.tailLoadN)
  for (let i = pieceAt(pieces, tailM); i < pieces.length; i++) {
    const piece = pieces[i] as TrackPiece
    if (piece.startM >= headM) break
    if (piece.endM <= tailM) continue
    const [fromM, toM] = [Math.max(piece.startM, tailM), Math.min(piece.endM, headM)]
    const afterN = applyMap(mapOfPart(piece, fromM, toM), forceN)
    shares.push({ fromM, toM, ...sharesOf(piece, { fromM, toM, lineLoadNPerM, beforeN: forceN, afterN }) })
    forceN = afterN
  }
  return shares
}

interface Part {
  fromM: number
  toM: number
  lineLoadNPerM: number
  beforeN: number
  afterN: number
}

function sharesOf({ law, startM, endM, startLevelM, endLevelM }: TrackPiece, { fromM, toM, lineLoadNPerM, beforeN, afterN }: Part): Omit<PieceShare, 'fromM' | 'toM'> {
  const none = { dragN: 0, gradeN: 0, beltN: 0, guideN: 0, slackN: 0 }
  const ratio = endM > startM ? (toM - fromM) / (endM - startM) : 1
  if (law.kind === 'guides') return { ...none, guideN: law.dragN }
  if (law.kind === 'arc') {
    const dragN = law.surfaceDragN * law.turnRad * ratio
    return { ...none, dragN, beltN: afterN - beforeN - dragN }
  }
  const gradeN = lineLoadNPerM * (endLevelM - startLevelM) * ratio
  const dragN = law.rateNPerM * (toM - fromM) - gradeN
  return { ...none, dragN, gradeN, slackN: afterN > 0 ? 0 : Math.max(0, 0 - (beforeN + dragN + gradeN)) }
}
