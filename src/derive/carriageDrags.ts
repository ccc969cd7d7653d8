/** Drag and slope of what the machine holds, joint by joint (docs/formulas/gauge-drag.md). */
import type { AnchorRecord } from '../scene/kinds/anchor.ts'
import type { MachineRecord } from '../scene/kinds/machine.ts'
import { gravityMPerS2 } from '../units/factors.ts'
import { carriageDrag } from './stages/carriage.ts'
import type { CarriageDrag } from './stages/types.ts'
import { stringPullOf, waysOf } from './stringPull.ts'
import type { SiteModel } from './types.ts'

export interface JointDrag extends CarriageDrag {
  joint: number
}

/** Drag of the body in the moving jaws at every joint judged for the pull; empty while pipe, stick, run or machine are missing. */
export function carriageDragsOf(site: SiteModel): readonly JointDrag[] {
  const { missing, joints } = stringPullOf(site)
  if (missing.length > 0 || site.sticks.stickCount < 2) return []
  // In jaws on the infeed the stick is the same at every joint.
  const asked = site.jaws.carriageSide === 'infeed' ? joints.slice(0, 1) : joints
  return asked.flatMap(({ joint }) => {
    const drag = carriageDrag(site, waysOf(site), joint)
    return drag === null ? [] : [{ joint, ...drag }]
  })
}

export const machineOf = (site: SiteModel): MachineRecord | null => (site.placed.get(site.jaws.machineId ?? '')?.record as MachineRecord | undefined) ?? null

export interface ClampedPull {
  joint: number
  /** Weight of all that is clamped, and of the machine where its mass is known, down the slope; positive to the exit. */
  pullN: number
  /** Fall of the pipe clamped over its length, positive to the exit. */
  gradeRatio: number
}

/** What would draw the machine along with both jaws closed on stick and string, at every joint judged for the pull. */
export function clampedPullsOf(site: SiteModel): readonly ClampedPull[] {
  const { missing, joints } = stringPullOf(site)
  const machine = machineOf(site)
  if (missing.length > 0 || machine === null || site.pipe.properties === null || site.sticks.stickCount < 2) return []
  const { lineLoadNPerM } = site.pipe.properties
  const tailM = 0 - site.sticks.stringLengthM(1)
  const machineN = (machine.figures.massKg.value ?? 0) * gravityMPerS2 * (site.ground.fallRatio ?? 0)
  return joints.map(({ joint }) => {
    const noseM = site.sticks.stringLengthM(joint)
    const fallM = site.groundLevelAt(tailM) - site.groundLevelAt(noseM)
    return { joint, pullN: lineLoadNPerM * fallM + machineN, gradeRatio: fallM / (noseM - tailM) }
  })
}

/** Anchors uphill of where the pipe would run out of the machine: behind it toward the exit, ahead of it toward the infeed. */
export function anchorsUphill(site: SiteModel, end: 'exit' | 'infeed'): readonly AnchorRecord[] {
  return [...site.placed.values()].flatMap(({ record, runningM }) => (record.kind === 'anchor' && runningM !== null && (end === 'exit' ? runningM < 0 : runningM > 0) ? [record] : []))
}
