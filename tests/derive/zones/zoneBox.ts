import type { Zone } from '../../../src/derive/zones.ts'
import { boundingBox, type Box } from '../../../src/geometry/polygon.ts'

/** Upright box round all rings of a zone. */
export function boxOf({ rings }: Pick<Zone, 'rings'>): Box {
  const box = boundingBox(rings.flat())
  if (box === null) throw new Error('a zone without rings')
  return box
}
