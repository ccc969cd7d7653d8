import type { Primitive } from '../../drawing/primitives.ts'

/** The datum nail, zero of the tape: a ring with a cross and a solid head. Of one size at every scale. */
export const datumPlan = (): Primitive[] => [
  {
    t: 'mark', xM: 0, yM: 0,
    parts: [
      { t: 'circle', xM: 0, yM: 0, radiusM: 7.5, fill: 'paper', stroke: 'ink', weight: 'ticks' },
      { t: 'path', points: [0, -11, 0, 11], stroke: 'ink', weight: 'context' },
      { t: 'path', points: [-11, 0, 11, 0], stroke: 'ink', weight: 'context' },
      { t: 'circle', xM: 0, yM: 0, radiusM: 2.4, fill: 'ink' },
    ],
  },
]
