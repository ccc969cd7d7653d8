/** Pull inputs for tests: every field has a value, cases override what they are about. */
import type { PullInput, PullVertex } from '../../../src/engine/pull/types.ts'

export const at = (xM: number, yM: number, over: Partial<PullVertex> = {}): PullVertex => ({
  xM,
  yM,
  levelM: 0,
  radiusM: 0,
  surfaceFrictionRatio: 0,
  guideFrictionRatio: 0,
  ...over,
})

/** 100 N/m, a string of 50 m, a level straight of 200 m at 0.5. */
export const pull = (over: Partial<PullInput> = {}): PullInput => {
  const vertices = over.vertices ?? [at(0, 0), at(200, 0)]
  return {
    lineLoadNPerM: 100,
    stringLengthM: 50,
    legs: vertices.slice(1).map(() => ({ frictionRatio: 0.5 })),
    minimumRadiusM: null,
    allowableLoadN: null,
    ...over,
    vertices,
  }
}

/** 48 m straight, 90° left on 12 m, 28 m straight. */
export const elbow = (bend: Partial<PullVertex> = {}): PullVertex[] => [at(0, 0), at(60, 0, { radiusM: 12, ...bend }), at(60, 40)]

/**
 * A straight and then sharp corners of at most a quarter turn, in all `quarterTurns`, on legs so short and slippery
 * that only the corners count; the head stands just past the last.
 */
export function cornered(straightM: number, quarterTurns: number, guideFrictionRatio: number): Pick<PullInput, 'vertices' | 'legs' | 'headStationsM'> {
  const legM = 1e-7
  const count = Math.ceil(quarterTurns)
  const turnRad = (quarterTurns / count) * (Math.PI / 2)
  const vertices = [at(0, 0), at(straightM, 0, { guideFrictionRatio })]
  let last = { xM: straightM, yM: 0 }
  for (let corner = 1; corner <= count; corner++) {
    last = { xM: last.xM + legM * Math.cos(corner * turnRad), yM: last.yM + legM * Math.sin(corner * turnRad) }
    vertices.push(at(last.xM, last.yM, { guideFrictionRatio }))
  }
  return { vertices, legs: vertices.slice(1).map((_, leg) => ({ frictionRatio: leg === 0 ? 1 : 0 })), headStationsM: [straightM + legM * count] }
}
