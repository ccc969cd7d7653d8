import { enter, when, type MayEnter } from './mayEnter.ts'
import type { PullerRecord } from '../../scene/kinds/puller.ts'
import { itemsOf } from '../itemsOf.ts'
import type { ZoneDefinition } from './zone.ts'
import type { MissingInput, PlacedItem, SiteModel, Stage } from '../types.ts'
import { distanceM, type Vec } from '../../geometry/vector.ts'
import { aroundLine, lacking, noseAt, pipeMissing, stripAlong } from './shapes.ts'

const LEAST_HALF_WIDTH_M = 3.048
const FAN_CAP_M = 15.24
const FAN_TANGENT = Math.tan(Math.PI / 12)

/** Puller of the shown run: the first one drawn. */
export const pullerOf = (site: SiteModel): PlacedItem | null => [...site.placed.values()].find(({ kind, runningM }) => kind === 'puller' && runningM !== null) ?? null

/** Rope of a vehicle whose length nobody gave: the cap of the fan, the largest that changes the zone's shape much. */
const LARGEST_ROPE_M = 15.24

export interface RopePlace {
  puller: PlacedItem
  /** Block that turns the rope, the first one drawn; null: it runs straight. */
  block: PlacedItem | null
  /** Where the nose is when the rope comes tight, and at the end of the stage. */
  fromM: number
  noseM: number
  /** Rope end at the puller, at the end of the stage. */
  pullerM: number
  /** Longest rope between nose and puller while the stage lasts. */
  leadM: number
}

/**
 * Where the rope lies during a stage. A winch stands where it is drawn, and its rope is longest at the start; a vehicle
 * keeps its rope length ahead of the nose.
 */
export function ropeAt(site: SiteModel, stage: Stage): RopePlace | null {
  const puller = pullerOf(site)
  const { fromM, toM: noseM } = noseAt(site, stage)
  if (puller === null || noseM <= 0) return null
  const record = puller.record as PullerRecord
  const isWinch = record.pullerKind === 'winch'
  const block = itemsOf(site, 'redirectBlock')[0] ?? null
  if (block !== null) return { puller, block, fromM, noseM, pullerM: block.runningM ?? noseM, leadM: distanceM(site.atRunning(fromM), block) + distanceM(block, puller) }
  const pullerM = isWinch ? Math.max(puller.runningM ?? 0, noseM + 0.5) : noseM + (record.figures.ropeLengthM.value ?? LARGEST_ROPE_M)
  return { puller, block, fromM, noseM, pullerM, leadM: isWinch ? pullerM - fromM : pullerM - noseM }
}

/** How far the rope lashes out: to each side of it, behind its ends, and at the far end of that fan. Common practice, no published source. */
export function lashOf(leadM: number): { halfWidthM: number; fanM: number; wideM: number } {
  const [halfWidthM, fanM] = [Math.max(LEAST_HALF_WIDTH_M, leadM / 4), Math.min(leadM, FAN_CAP_M)]
  return { halfWidthM, fanM, wideM: halfWidthM + fanM * FAN_TANGENT }
}

/** A rope whose length nobody gave; a winch pays it out. */
export const ropeMissing = (puller: PlacedItem): MissingInput[] => {
  const { pullerKind, figures } = puller.record as PullerRecord
  return pullerKind !== 'winch' && figures.ropeLengthM.value === null ? [lacking(puller, 'figures.ropeLengthM.value')] : []
}

/** The puller operator may sit in the line only behind a guard; unknown counts as missing. */
export function pullerOperatorMayEnter(record: PullerRecord): { mayEnter: readonly MayEnter[]; missing: readonly MissingInput[] } {
  if (record.guardedCab === false) return { mayEnter: [], missing: [] }
  return { mayEnter: [enter('pullerOperator', when.guardedCab)], missing: record.guardedCab === null ? [{ recordId: record.id, path: 'guardedCab', label: { en: 'guarded cab', es: 'cabina con protección' } }] : [] }
}

const unit = (from: Vec, to: Vec): Vec => {
  const lengthM = distanceM(from, to)
  return lengthM === 0 ? { xM: 0, yM: 0 } : { xM: (to.xM - from.xM) / lengthM, yM: (to.yM - from.yM) / lengthM }
}
const beyond = (from: Vec, way: Vec, byM: number): Vec => ({ xM: from.xM + way.xM * byM, yM: from.yM + way.yM * byM })

/** A fan from a place on, opening 15° to each side of its way. */
function fanFrom(at: Vec, way: Vec, halfWidthM: number, lengthM: number): Vec[] {
  const wideM = halfWidthM + lengthM * FAN_TANGENT
  const corner = (alongM: number, leftM: number): Vec => ({ xM: at.xM + way.xM * alongM - way.yM * leftM, yM: at.yM + way.yM * alongM + way.xM * leftM })
  return [corner(0, -halfWidthM), corner(lengthM, -wideM), corner(lengthM, wideM), corner(0, halfWidthM)]
}

/**
 * Rope led round a block: its two parts, the whole inside of the angle, a fan behind nose and puller, and where the block
 * goes when its anchor fails: one rope length along the line that halves the angle.
 */
function roundBlock(site: SiteModel, { puller, fromM, noseM, leadM }: RopePlace, block: Vec, halfWidthM: number, fanM: number): Vec[][] {
  const [start, end] = [site.atRunning(fromM), site.atRunning(noseM)]
  const [toNose, toPuller] = [unit(block, start), unit(block, puller)]
  const snap = unit({ xM: 0, yM: 0 }, { xM: toNose.xM + toPuller.xM, yM: toNose.yM + toPuller.yM })
  const inside: Vec[] = [start, block, { xM: puller.xM, yM: puller.yM }]
  return [
    ...aroundLine([start, block, puller], halfWidthM), inside, [end, block, { xM: puller.xM, yM: puller.yM }],
    fanFrom(start, unit(block, start), halfWidthM, fanM), fanFrom(puller, toPuller, halfWidthM, fanM),
    ...(snap.xM === 0 && snap.yM === 0 ? [] : aroundLine([block, beyond(block, snap, leadM)], halfWidthM)),
  ]
}

/** Z-09. The loaded rope over the whole of a pull, and a fan behind each of its ends. */
export const rope: ZoneDefinition = {
  id: 'Z-09',
  name: { en: 'rope tight', es: 'cuerda tensa' },
  sentence: { en: 'A tight rope is a loaded gun. When it comes tight, be out of line with it: both ends, and inside the bend.', es: 'Una cuerda tensa es como un arma cargada. Cuando se tense, salga de su línea: de las dos puntas y de adentro de la curva.' },
  follows: 'nose',
  classes: { fuse: 'AMBER', pull: 'RED', move: 'RED' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'marine snap-back teaching; no figure is published for construction' },
  size: { en: '10 ft or a quarter of the lead each side, a fan one lead long behind each end; at a block the inside of the angle', es: '10 pies o un cuarto de la cuerda a cada lado, un abanico de una cuerda detrás de cada punta; en una polea el interior del ángulo' },
  shapes: (site, stage) => {
    const found = ropeAt(site, stage)
    if (found === null) return []
    const { puller, block, fromM, pullerM, leadM } = found
    const record = puller.record as PullerRecord
    const { halfWidthM, fanM, wideM } = lashOf(leadM)
    const mayEnter = pullerOperatorMayEnter(record).mayEnter
    if (block !== null) return [{ ownerId: puller.id, rings: roundBlock(site, found, block, halfWidthM, fanM), itemIds: [puller.id, block.id], mayEnter, missing: pipeMissing(site) }]
    const ring = stripAlong(site, [
      { runningM: fromM - fanM, halfWidthM: wideM },
      { runningM: fromM, halfWidthM },
      { runningM: pullerM, halfWidthM },
      { runningM: pullerM + fanM, halfWidthM: wideM },
    ])
    // The guard is asked for once, by the zone ahead of the nose; a missing answer must not take the rope's own rule away.
    return [{ ownerId: puller.id, rings: [ring], itemIds: [puller.id], mayEnter, missing: [...pipeMissing(site), ...ropeMissing(puller)] }]
  },
}
