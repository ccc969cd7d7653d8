import { enter } from './mayEnter.ts'
import { surfaceRows } from '../../engine/pipe/tables.ts'
import type { RackRecord } from '../../scene/kinds/rack.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { MissingInput, PlacedItem, SiteModel } from '../types.ts'
import { itemsOf } from '../itemsOf.ts'
import { boxAt } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

const END_M = 1.8288
const LEAST_WIDTH_M = 3.048
/** A pipe that nothing stops is drawn this far; the finding says that nothing stops it. */
const UNSTOPPED_M = 30
/** Half the roller lane, and figures of a usual rack. */
const LANE_M = 0.3
const TYPICAL_SPACING_M = 7.112
const TYPICAL_BEAM_M = 3.048
const TYPICAL_HEIGHT_M = 0.9

/**
 * How far a pipe rolls off a rack of height h: d = h/(c − s), s = fall of the ground to that side, c = rolling resistance
 * (low value for safety). Where s ≥ c/2 nothing is certain to stop it. Source: mechanics; c is a house rule.
 */
export function rollOffM(input: { heightM: number; fallRatio: number; resistanceRatio: number }): { reachM: number; isStopped: boolean } {
  const { heightM: h, fallRatio: s, resistanceRatio: c } = input
  if (s >= c / 2) return { reachM: UNSTOPPED_M, isStopped: false }
  const reachM = h / (c - s)
  return reachM > UNSTOPPED_M ? { reachM: UNSTOPPED_M, isStopped: false } : { reachM, isStopped: true }
}

/** Z-02. Where a pipe rolls if it leaves the rack. Stops up hold it; then the least width remains. */
export const rackRollOff: ZoneDefinition = {
  id: 'Z-02',
  name: { en: 'roll-off beside the rack', es: 'rodada junto a la cama' },
  sentence: { en: 'Think of every pipe on the rack as a wheel. Stay at the ends, never on the low side.', es: 'Piense que cada tubo en la cama es una rueda. Quédese en los extremos, nunca en el lado bajo.' },
  classes: { setUp: 'AMBER', offload: 'AMBER', load: 'RED', fuse: 'AMBER', pull: 'AMBER', move: 'AMBER', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [enter('infeedHand', { en: 'at the ends of the rack only', es: 'solo en los extremos de la cama' })],
  source: { class: 'houseRule', cite: 'width from mechanics where no stop is up; 10 ft and 6 ft common practice, no published source' },
  size: { en: '6 ft past each end, 10 ft wide with stops up', es: '6 pies más allá de cada extremo, 10 pies de ancho con topes puestos' },
  shapes: (site) => itemsOf(site, 'rack').flatMap((item) => ofRack(site, item)),
}

/**
 * Two shapes at most. What is certain: 10 ft beside the open side and beside every side without a stop, or as far as a
 * pipe rolls there where ground and height are known. What is not: sides whose stop nobody has named, and the roll-off
 * beyond 10 ft while an input of it is missing, drawn at its largest.
 */
function ofRack(site: SiteModel, item: PlacedItem): ZoneShape[] {
  const rack = item.record as RackRecord
  const rolls = rollInputs(site, item)
  const [known, unknown]: [Vec[][], Vec[][]] = [[], []]
  const missing: MissingInput[] = []
  let isUnstopped = false
  for (const side of ['L', 'R'] as const) {
    const isUp = side === 'L' ? rack.stopsLeft : rack.stopsRight
    const isOpen = rack.openSide === side
    if (isUp === true && !isOpen) continue
    if (isUp === null) {
      missing.push({ recordId: rack.id, path: side === 'L' ? 'stopsLeft' : 'stopsRight', label: side === 'L' ? { en: 'stops up, left', es: 'topes puestos, izquierda' } : { en: 'stops up, right', es: 'topes puestos, derecha' } })
      unknown.push(besideRack(item, side, LEAST_WIDTH_M))
      continue
    }
    if (isUp) {
      known.push(besideRack(item, side, LEAST_WIDTH_M))
      continue
    }
    isUnstopped = true
    const fallRatio = side === 'R' ? rolls.crossRatio : 0 - rolls.crossRatio
    const reachM = rollOffM({ heightM: rolls.heightM, fallRatio, resistanceRatio: rolls.resistanceRatio }).reachM
    known.push(besideRack(item, side, rolls.missing.length > 0 ? LEAST_WIDTH_M : Math.max(LEAST_WIDTH_M, reachM)))
    if (rolls.missing.length > 0) {
      missing.push(...rolls.missing.filter(({ path }) => !missing.some((one) => one.path === path)))
      unknown.push(besideRack(item, side, UNSTOPPED_M))
    }
  }
  const certain: ZoneShape[] = known.length === 0 ? [] : [{ ownerId: rack.id, rings: known, itemIds: [rack.id], ...(isUnstopped ? { zoneClass: 'RED' as const } : {}) }]
  if (unknown.length === 0) return certain
  return [...certain, { ownerId: certain.length === 0 ? rack.id : `${rack.id}/unknown`, rings: unknown, itemIds: [rack.id], missing, ...(isUnstopped ? { zoneClass: 'RED' as const } : {}) }]
}

interface RollInputs {
  heightM: number
  /** Fall to the right. */
  crossRatio: number
  resistanceRatio: number
  missing: MissingInput[]
}

/** What the roll-off of a rack follows from, with stand-ins and names for what is missing. */
export function rollInputs(site: SiteModel, item: PlacedItem): RollInputs {
  const saddleM = site.supports.find(({ itemId }) => itemId === item.id)?.saddleM ?? null
  const surface = site.surfaceAt(item.runningM ?? 0)
  const cross = site.ground.crossFallRatio
  return {
    heightM: saddleM ?? TYPICAL_HEIGHT_M,
    crossRatio: cross ?? 0,
    // Nobody has said what lies there: the hardest of the table.
    resistanceRatio: surfaceRows.find(({ id }) => id === surface)?.rollingRatio ?? Math.min(...surfaceRows.map(({ rollingRatio }) => rollingRatio)),
    missing: [
      ...(saddleM === null ? [{ recordId: item.id, path: 'height', label: { en: 'height of the rack', es: 'altura de la cama' } }] : []),
      ...(surface === null ? [{ recordId: site.run?.id ?? site.layout.id, path: 'surfaces', label: { en: 'surface at the rack', es: 'superficie en la cama' } }] : []),
      ...(cross === null ? [{ recordId: site.setUp?.id ?? site.layout.id, path: 'crossFallRatio', label: { en: 'cross-fall of the ground at the rack', es: 'caída lateral del terreno en la cama' } }] : []),
    ],
  }
}

/** From the roller lane's edge, or the end of the beams on the open side, outward. */
function besideRack(item: PlacedItem, side: 'L' | 'R', widthM: number): Vec[] {
  const rack = item.record as RackRecord
  const half = (rack.figures.beamSpacingM.value ?? TYPICAL_SPACING_M) / 2 + END_M
  const edgeM = rack.openSide === side ? (rack.figures.beamLengthM.value ?? TYPICAL_BEAM_M) - LANE_M : LANE_M
  const [nearM, farM] = [LANE_M, edgeM + widthM]
  return boxAt(item, side === 'R' ? { fromM: -half, toM: half, rightM: farM, leftM: -nearM } : { fromM: -half, toM: half, rightM: -nearM, leftM: farM })
}
