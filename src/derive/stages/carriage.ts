/** What the carriage feels while it moves: drag of the body in the moving jaws only (docs/formulas/stages.md). */
import { fusionForceN, gaugePressurePa, usualInterfacialPa } from '../../engine/pipe/fusion.ts'
import { forceAtHead } from '../../engine/pull/forces.ts'
import type { Track } from '../../engine/pull/track.ts'
import type { MachineRecord } from '../../scene/kinds/machine.ts'
import { stringOn, type PullWays } from '../stringPull.ts'
import type { SiteModel } from '../types.ts'
import type { CarriageDrag } from './types.ts'

/**
 * Drag at joint k while the faces are brought together.
 *
 * Model:  carriage on the infeed: the loose stick goes to the exit. Carriage on the exit: the whole string of k sticks comes back
 *         to the infeed. High friction for what the gauge shows, low for a slope that helps.
 * Output: null without a machine. Pressures null while its piston area is unknown.
 */
export function carriageDrag(site: SiteModel, ways: PullWays, joint: number): CarriageDrag | null {
  const machine = site.placed.get(site.jaws.machineId ?? '')?.record as MachineRecord | undefined
  const { properties } = site.pipe
  if (machine === undefined || properties === null) return null
  const side = site.jaws.carriageSide
  const [tailM, noseM] = side === 'infeed' ? [0 - site.sticks.stringLengthM(1), 0] : [0, site.sticks.stringLengthM(joint)]
  const [moving, starting, low] = side === 'infeed' ? [ways.pull, ways.start, ways.toExit] : [ways.back, ways.backStart, ways.toInfeed]
  const on = (track: Track) => {
    const { body, headM } = stringOn(ways, track, tailM, noseM)
    return forceAtHead(body, headM)
  }
  const movingN = on(moving).forceN
  const typedM2 = machine.figures.pistonAreaM2.value
  // An area of nothing is a field not filled in yet.
  const pistonAreaM2 = typedM2 !== null && typedM2 > 0 ? typedM2 : null
  const forceN = fusionForceN({ faceAreaM2: properties.faceAreaM2, interfacialPa: site.job.procedure?.interfacialPressurePa.value ?? usualInterfacialPa })
  const pressurePa = pistonAreaM2 === null ? null : movingN / pistonAreaM2
  return {
    side, movingN, startN: on(starting).forceN, lowN: on(low).sumN, pressurePa,
    fusionForceN: forceN,
    fusionPressurePa: pistonAreaM2 === null ? null : gaugePressurePa({ forceN, pistonAreaM2, dragPa: pressurePa ?? 0 }),
  }
}
