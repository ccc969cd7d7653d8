/** Lines and outlines of the plan as the geometry wants them. */
import type { Shape } from '../geometry/distance.ts'
import type { Vec } from '../geometry/vector.ts'
import type { PlacedItem, SiteModel } from './types.ts'

/** Arcs are followed in steps of this length. */
const ARC_STEP_M = 0.5

/** The run between two running distances as points of the site; straight stretches have only their ends. */
export function runLine(site: SiteModel, fromM: number, toM: number): Vec[] {
  const cuts = new Set([fromM, toM])
  for (const { fromM: start, toM: end } of site.bends) {
    const steps = Math.max(1, Math.ceil((end - start) / ARC_STEP_M))
    for (let i = 0; i <= steps; i += 1) {
      const runningM = start + ((end - start) * i) / steps
      if (runningM > fromM && runningM < toM) cuts.add(runningM)
    }
  }
  return [...cuts].sort((a, b) => a - b).map((runningM) => {
    const { xM, yM } = site.atRunning(runningM)
    return { xM, yM }
  })
}

/** Flat points as a list. */
export const pointsOf = (flatM: readonly number[]): Vec[] => Array.from({ length: Math.floor(flatM.length / 2) }, (_, i) => ({ xM: flatM[2 * i]!, yM: flatM[2 * i + 1]! }))

/** Outline of an item or feature as a figure: lines stay lines, everything with an area is filled. */
export function shapeOf(item: PlacedItem): Shape {
  const points = pointsOf(item.outlineM)
  const { kind } = item
  if (kind === 'tree' || points.length === 0) return { kind: 'point', point: { xM: item.xM, yM: item.yM } }
  const isLine = kind === 'fence' || kind === 'road' || kind === 'walkway' || kind === 'trench' || kind === 'overheadLine' || kind === 'lane'
  return isLine ? { kind: 'polyline', points } : { kind: 'polygon', points }
}

/** Half the width a line or a round thing takes beyond its own geometry; 0 for outlines. */
export function halfWidthM({ record }: PlacedItem): number {
  if (record.kind === 'tree') return record.figures.radiusM.value ?? 0
  if (record.kind === 'road' || record.kind === 'walkway' || record.kind === 'trench' || record.kind === 'lane') return (record.figures.widthM.value ?? 0) / 2
  return 0
}

/** Where the string is when its last stick has been pulled: from the datum to this running distance. */
export const finishedLengthM = (site: SiteModel): number => site.sticks.stringLengthM(site.sticks.stickCount)

/** Rope and vehicle in front of the nose; null without a puller. A rope length nobody gave counts as none. */
export function leadOf(site: SiteModel): { ropeM: number; vehicleM: number; widthM: number; item: PlacedItem } | null {
  for (const item of site.placed.values()) {
    if (item.record.kind !== 'puller') continue
    const { ropeLengthM, lengthM, widthM } = item.record.figures
    return { ropeM: ropeLengthM.value ?? 0, vehicleM: lengthM.value ?? 0, widthM: widthM.value ?? 2, item }
  }
  return null
}
