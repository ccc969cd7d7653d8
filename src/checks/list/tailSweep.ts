import { guidedStretchesOf, type GuidedStretch } from '../../derive/springBack.ts'
import type { SiteModel } from '../../derive/types.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Finding } from '../finding.ts'
import { gapBetween, isUnder, obstaclesOf, solidKinds, type SiteObstacle } from '../gearBodies.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atPoint, defineCheck, finding, q, say } from '../make.ts'

const ID = 'tail-sweep'
/** What the pipe must not strike, and where people and vehicles go. */
const kinds = [...solidKinds, 'road', 'walkway'] as const

export const tailSweep = defineCheck({
  id: ID,
  title: { en: 'Room beside the bends', es: 'Espacio al lado de las curvas' },
  cost: 'quick',
  run: (site, { limits }) => {
    if (site.run === null || site.pipe.odM === null) return []
    const stretches = guidedStretchesOf(site)
    if (stretches.length === 0) return []
    const obstacles = obstaclesOf(site, kinds)
    const found = (['tailRing', 'chordRing'] as const).flatMap((side) => obstacles.flatMap((obstacle) => nearest(site, limits, { side, stretches, obstacle })))
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(limits.limit('path-clearance')), phases: ['pull', 'move'], what: say('Nothing stands where the string goes beside its bends.', 'Nada estorba donde la sarta va al lado de sus curvas.') })]
  },
})

/** The least gap of one obstacle to the sweep on one side of the bends; nothing where there is room to walk. */
function nearest(site: SiteModel, limits: Limits, { side, stretches, obstacle }: { side: 'tailRing' | 'chordRing'; stretches: readonly GuidedStretch[]; obstacle: SiteObstacle }): Finding[] {
  const limit = limits.limit('path-clearance')
  const halfM = site.pipe.odM! / 2
  const worst = stretches.map((stretch) => ({ stretch, gap: gapBetween(stretch[side], obstacle) })).reduce((least, one) => (one.gap.clearM < least.gap.clearM ? one : least))
  const clearM = worst.gap.clearM - halfM
  const roomM = limit.check ?? 0
  if (!isUnder(clearM, roomM)) return []
  // A thing this near to the line itself is the business of the check of clearances.
  const onLineM = distanceBetween({ kind: 'polyline', points: worst.stretch.chordRing }, obstacle.shape).distanceM - obstacle.halfWidthM - halfM
  if (!isUnder(clearM, Math.min(onLineM, roomM))) return []
  const values = { bend: worst.stretch.vertex + 1, other: obstacle.name, clear: q('length', Math.max(0, clearM)) }
  const isTail = side === 'tailRing'
  const isHit = clearM <= 0
  return [finding(ID, {
    level: 'CHECK', about: `${isTail ? 'tail' : 'tight'}:${obstacle.id}`, items: [site.run!.id, obstacle.id], where: atPoint(worst.gap.at.xM, worst.gap.at.yM),
    measured: q('length', clearM), limit: q('length', roomM), bound: 'least', source: sourceOf(limit), phases: isTail ? ['move'] : ['pull'],
    what: isTail
      ? isHit
        ? say('Bend {bend}: a tail drawn round it springs out over {other} when it leaves a guide.', 'Curva {bend}: al soltarse de una guía, la cola salta hacia afuera sobre {other}.', values)
        : say('Bend {bend}: a tail drawn round it springs out to {clear} from {other}.', 'Curva {bend}: al soltarse de una guía, la cola llega a {clear} de {other}.', values)
      : isHit
        ? say('Bend {bend}: drawn tight between its guides the string cuts the corner over {other}.', 'Curva {bend}: al tensarse entre sus guías la sarta corta la esquina sobre {other}.', values)
        : say('Bend {bend}: drawn tight between its guides the string passes {clear} from {other}.', 'Curva {bend}: al tensarse entre sus guías la sarta pasa a {clear} de {other}.', values),
    move: say('Set guides closer in the bend, and keep people and vehicles out while it moves.', 'Ponga guías más cerca en la curva, y que nadie esté ahí mientras se mueve.'),
  })]
}
