/** How many sticks go on a truck, and how many trucks a job takes. */
import haulJson from '../../../shared/tables/haul.json' with { type: 'json' }
import { requireNumber } from '../outcome.ts'

export interface Truckload {
  sticksPerLoad: number
  loads: number
  /** What ends the load. */
  endedBy: 'room' | 'mass'
  rows: number
  perRow: number
}

/** Room and mass of a load, SI; common practice, confirm with the carrier. */
export const usualLoad: { loadWidthM: number; loadHeightM: number; loadMassKg: number } = haulJson
export const spares: Readonly<Record<string, { count: number; ratio: number }>> = haulJson.spares

/**
 * Sticks on one truck.
 *
 * Model:  rows of n and n − 1 pipes in turn, each lying in the hollows of the row below, so that k rows are
 *         OD·(1 + (k − 1)·√3/2) high; cut off by the mass a truck may carry. At least one stick a load: one that is too
 *         wide or too heavy by itself is a special transport, which `endedBy` does not tell.
 * Source: house rule (shared/tables/haul.json).
 */
export function truckload(input: { odM: number; stickMassKg: number; sticks: number; load?: typeof usualLoad }): Truckload {
  const { odM, stickMassKg, sticks, load = usualLoad } = input
  requireNumber('odM', odM, { above: 0 })
  requireNumber('stickMassKg', stickMassKg, { above: 0 })
  requireNumber('sticks', sticks, { atLeast: 0 })
  const perRow = Math.max(1, Math.floor(load.loadWidthM / odM + 1e-9))
  const rows = Math.max(1, Math.floor((load.loadHeightM / odM - 1) / (Math.sqrt(3) / 2) + 1 + 1e-9))
  const byRoom = perRow === 1 ? rows : Math.ceil(rows / 2) * perRow + Math.floor(rows / 2) * (perRow - 1)
  const byMass = Math.max(1, Math.floor(load.loadMassKg / stickMassKg + 1e-9))
  const sticksPerLoad = Math.min(byRoom, byMass)
  return { sticksPerLoad, loads: Math.ceil(sticks / sticksPerLoad), endedBy: byMass < byRoom ? 'mass' : 'room', rows, perRow }
}

/** Pieces to bring where `placed` stand on the plan, spares included. */
export const withSpares = (kind: string, placed: number): number => {
  const spare = spares[kind]
  return placed === 0 || spare === undefined ? placed : placed + spare.count + Math.ceil(placed * spare.ratio - 1e-9)
}
