import type { YardDocument } from '../../src/scene/document.ts'
import { fusionYard } from './fusionYard.ts'

/** A long main: 36 in DR 17 in 50 ft sticks, 5,000 ft needed: 101 sticks, 100 joints, two level stands and 250 rollers 20 ft apart. */
export const longYard = (over: Parameters<typeof fusionYard>[0] = {}): YardDocument =>
  fusionYard({ size: '36', stickFt: 50, neededFt: 5000, exits: [[20, 0], [40, 0]], rackFt: -25, rollers: Array.from({ length: 250 }, (_, i) => 70 + 20 * i), ...over })
