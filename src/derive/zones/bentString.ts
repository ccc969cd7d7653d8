import { noseAt, pipeMissing, stripAlong, widened } from './shapes.ts'
import { springBacksOf } from '../springBack.ts'
import type { MissingInput } from '../types.ts'
import type { ZoneDefinition } from './zone.ts'

const MARGIN_M = 3.048
/** Chords of the swing lie within this of it; the margin takes it up. */
const SAG_M = 0.1

/** Z-11. Between a bent string and the straight line it wants to be, the tail it drags along, and 10 ft: where the guides let go, the pipe goes there. */
export const bentString: ZoneDefinition = {
  id: 'Z-11',
  name: { en: 'bent string', es: 'tubo doblado' },
  sentence: { en: 'A bent pipe wants to be straight. Take the stakes out from the outside, last one by machine, and nobody in the swing.', es: 'Un tubo doblado quiere enderezarse. Quite las estacas desde afuera, la última con máquina, y nadie en la zona de barrido.' },
  follows: 'nose',
  classes: { fuse: 'AMBER', pull: 'RED', move: 'RED', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'sweep from mechanics; 10 ft common practice, no published source' },
  size: { en: 'swing of the bend and of the tail it drags, and 10 ft', es: 'barrido de la curva y de la cola que arrastra, y 10 pies' },
  shapes: (site, stage) => {
    const { toM } = noseAt(site, stage)
    const backs = new Map(springBacksOf(site, { tailM: 0, noseM: toM, sagM: SAG_M }).map((back) => [back.vertex, back.rings]))
    return site.bends.filter(({ fromM }) => fromM < toM).map((bend) => {
      // A corner nobody has rounded has no swing yet: the place itself remains, and its radius is asked for.
      const rings = backs.get(bend.vertex) ?? [stripAlong(site, [{ runningM: bend.fromM, halfWidthM: 0.1 }, { runningM: Math.min(bend.toM, toM), halfWidthM: 0.1 }])]
      const radius: MissingInput[] = bend.radiusM === null && site.run !== null ? [{ recordId: site.run.id, path: `vertices.${bend.vertex}.radiusM`, label: { en: `radius of bend ${bend.vertex + 1}`, es: `radio de la curva ${bend.vertex + 1}` } }] : []
      return { ownerId: `${site.run?.id ?? 'run:none'}/bend${bend.vertex}`, rings: rings.flatMap((ring) => widened(ring, MARGIN_M + SAG_M)), itemIds: [], missing: [...pipeMissing(site), ...radius] }
    })
  },
}
