import { noseAt, pipeMissing, stripAlong, widened } from './shapes.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { ZoneDefinition } from './zone.ts'

const MARGIN_M = 3.048
const STEP_M = 1

/** Z-11. Between a bent string and the straight line it wants to be, and 10 ft: where the guides let go, the pipe goes there. */
export const bentString: ZoneDefinition = {
  id: 'Z-11',
  name: { en: 'bent string', es: 'tubo doblado' },
  sentence: { en: 'A bent pipe wants to be straight. Take the stakes out from the outside, last one by machine, and nobody in the swing.', es: 'Un tubo doblado quiere enderezarse. Quite las estacas desde afuera, la última con máquina, y nadie en la zona de barrido.' },
  follows: 'nose',
  classes: { fuse: 'AMBER', pull: 'RED', move: 'RED', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'sweep from mechanics; 10 ft common practice, no published source' },
  size: { en: 'between the bend and its straight line, and 10 ft', es: 'entre la curva y su línea recta, y 10 pies' },
  shapes: (site, stage) => {
    const { toM } = noseAt(site, stage)
    return site.bends.filter(({ fromM }) => fromM < toM).map((bend) => {
      const endM = Math.min(bend.toM, toM)
      const steps = Math.max(1, Math.ceil((endM - bend.fromM) / STEP_M))
      const arc: Vec[] = Array.from({ length: steps + 1 }, (_, i) => site.atRunning(bend.fromM + ((endM - bend.fromM) * i) / steps))
      // A bend just begun has no area: the strip along it remains.
      const ring = arc.length < 3 ? stripAlong(site, [{ runningM: bend.fromM, halfWidthM: 0.1 }, { runningM: endM, halfWidthM: 0.1 }]) : arc.map(({ xM, yM }) => ({ xM, yM }))
      return { ownerId: `${site.run?.id ?? 'run:none'}/bend${bend.vertex}`, rings: widened(ring, MARGIN_M), itemIds: [], missing: pipeMissing(site) }
    })
  },
}
