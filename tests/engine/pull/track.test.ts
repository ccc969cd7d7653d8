import { describe, expect, it } from 'vitest'
import { buildTrack, guideDragN, mapOfPart, mapOfPiece } from '../../../src/engine/pull/track.ts'
import { at, elbow, pull } from './pathBuilders.ts'

describe('the way as pieces', () => {
  it('is the approach, then straights and arcs by turns, each beginning where the last ends', () => {
    const { pieces, lengthM } = buildTrack(pull({ vertices: elbow() }), -50, false)
    expect(pieces.map((piece) => piece.law.kind)).toEqual(['straight', 'straight', 'arc', 'straight'])
    expect(pieces[0]).toMatchObject({ startM: -50, endM: 0 })
    pieces.slice(1).forEach((piece, i) => expect(piece.startM).toBe(pieces[i]!.endM))
    expect(pieces.at(-1)!.endM).toBe(lengthM)
  })

  it('rises on its straights only: arcs are level', () => {
    const vertices = elbow({ levelM: 3 }).map((vertex, i) => (i === 2 ? { ...vertex, levelM: 5 } : vertex))
    const { pieces } = buildTrack(pull({ vertices }), -50, false)
    expect(pieces.map((piece) => [piece.startLevelM, piece.endLevelM])).toEqual([[0, 0], [0, 3], [3, 3], [3, 5]])
    // 48 m in plan and 3 m up: the straight is √(48² + 3²) long
    expect(pieces[1]!.endM).toBeCloseTo(Math.hypot(48, 3), 12)
  })

  it('guides stand at both ends of the arc when stiffness is asked for', () => {
    const input = pull({ vertices: elbow({ guideFrictionRatio: 0.2 }), stiffness: { flexuralRigidityNm2: 1e5, guideSpacingM: 2 } })
    const { pieces, bends } = buildTrack(input, -50, true)
    expect(pieces.map((piece) => piece.law.kind)).toEqual(['straight', 'straight', 'guides', 'arc', 'guides', 'straight'])
    // 4·0.2·(1e5/12)/2
    expect(guideDragN(input, bends[0]!, input.vertices[1]!)).toBeCloseTo(3333.333333, 5)
  })

  it('a leg wholly taken by its arcs has no straight left', () => {
    const vertices = [at(0, 0), at(12, 0, { radiusM: 12 }), at(12, 40)]
    expect(buildTrack(pull({ vertices }), -50, false).pieces.map((piece) => piece.law.kind)).toEqual(['straight', 'arc', 'straight'])
  })
})

describe('parts of a piece', () => {
  const { pieces } = buildTrack(pull({ vertices: elbow({ guideFrictionRatio: 0.3, surfaceFrictionRatio: 0.2 }) }), -50, false)

  it('two halves of an arc are the whole arc', () => {
    const arc = pieces[2]!
    const middleM = (arc.startM + arc.endM) / 2
    const [a, b, whole] = [mapOfPart(arc, arc.startM, middleM), mapOfPart(arc, middleM, arc.endM), mapOfPiece(arc)]
    expect(a.scaleFactor * b.scaleFactor).toBeCloseTo(whole.scaleFactor, 12)
    expect(b.scaleFactor * a.shiftN + b.shiftN).toBeCloseTo(whole.shiftN, 9)
  })

  it('a straight adds its rate times the length', () => {
    expect(mapOfPart(pieces[1]!, 10, 14)).toEqual({ scaleFactor: 1, shiftN: 200, floorN: 0 }) // 4·100·0.5
  })
})
