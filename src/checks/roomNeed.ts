/** Room a string takes end to end: what reaches behind the datum, and the lead of the pull ahead of the nose. */
import type { MissingInput, PlacedItem, SiteModel } from '../derive/types.ts'
import { limitParam } from '../engine/limits.ts'
import type { PullerRecord } from '../scene/kinds/puller.ts'
import type { Limits } from './limits.ts'
import { roomOf } from './room.ts'

/** Stick in the infeed, far end of the rack, back of the machine: whichever reaches farthest behind the datum. */
export function backOf(site: SiteModel, tailM: number): number {
  const behind = [...site.placed.values()].filter(({ kind }) => kind === 'rack' || kind === 'machine').flatMap((item) => runningsOf(site, item))
  return Math.max(0 - tailM, ...behind.map((runningM) => 0 - runningM))
}

const runningsOf = (site: SiteModel, { outlineM }: PlacedItem): number[] =>
  Array.from({ length: outlineM.length / 2 }, (_, i) => site.toRunning(outlineM[2 * i]!, outlineM[2 * i + 1]!).runningM)

/** Where the pull ends: a driven puller keeps its rope ahead of the nose and needs its length and the over-run; a winch stands where it is drawn. */
export function leadOf(site: SiteModel, noseM: number, overRunM: number): { endM: number; items: string[]; missing: MissingInput[] } {
  const puller = [...site.placed.values()].find(({ kind }) => kind === 'puller')
  if (puller === undefined) return { endM: noseM, items: [], missing: [{ recordId: site.layout.id, path: 'puller', label: { en: 'a puller on the plan', es: 'un equipo de tiro en el plano' } }] }
  const { pullerKind, figures } = puller.record as PullerRecord
  const missing: MissingInput[] = [
    ...(pullerKind !== 'winch' && figures.ropeLengthM.value === null ? [{ recordId: puller.id, path: 'figures.ropeLengthM.value', label: { en: 'rope length', es: 'largo de cuerda' } }] : []),
    ...(figures.lengthM.value === null ? [{ recordId: puller.id, path: 'figures.lengthM.value', label: { en: 'length of the puller', es: 'largo del equipo de tiro' } }] : []),
  ]
  const lengthM = figures.lengthM.value ?? 0
  if (pullerKind === 'winch') return { endM: Math.max(noseM + overRunM, puller.runningM ?? 0) + lengthM, items: [puller.id], missing }
  return { endM: noseM + (figures.ropeLengthM.value ?? 0) + lengthM + overRunM, items: [puller.id], missing }
}


export interface StringRoom {
  boundaryId: string
  /** From end to end of the yard along the run. */
  roomM: number
  backM: number
  /** What lies ahead of the nose of a string that long. */
  leadM: (noseM: number) => number
  /** Longest string that fits, with the set-up slid where it helps; a winch may be moved up to the nose and its over-run. */
  longestM: number
  items: readonly string[]
  missing: readonly MissingInput[]
}

/** Room for a string of any length; null without a boundary round the datum, a stick length or a run. */
export function stringRoomOf(site: SiteModel, limits: Limits): StringRoom | null {
  const room = roomOf(site)
  if (room === null || site.sticks.stickLengthM === null) return null
  const overRunM = limitParam(limits.limit('end-room'), 'overRunM')
  const backM = backOf(site, 0 - site.sticks.stickLengthM)
  const roomM = room.backM + room.aheadM
  const lead = leadOf(site, 0, overRunM)
  // A winch drawn far out does not make the yard shorter: it can stand nearer.
  const puller = [...site.placed.values()].find(({ kind }) => kind === 'puller')
  const leastLeadM = puller === undefined ? 0 : isWinch(puller) ? overRunM + lengthOf(puller) : lead.endM
  return { boundaryId: room.boundaryId, roomM, backM, leadM: (noseM) => (puller !== undefined && isWinch(puller) ? leastLeadM : leadOf(site, noseM, overRunM).endM - noseM), longestM: roomM - backM - leastLeadM, items: lead.items, missing: lead.missing }
}

const isWinch = ({ record }: PlacedItem): boolean => (record as PullerRecord).pullerKind === 'winch'
const lengthOf = ({ record }: PlacedItem): number => (record as PullerRecord).figures.lengthM.value ?? 0
