import { surfaceRows } from '../../engine/pipe/tables.ts'
import type { RackRecord } from '../../scene/kinds/rack.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { MissingInput, PlacedItem, SiteModel } from '../types.ts'
import { boxAt } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

const END_M = 1.8288
const LEAST_WIDTH_M = 3.048
/** A pipe that nothing stops is drawn this far; the finding says that nothing stops it. */
const UNSTOPPED_M = 30

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
  mayEnter: ['infeedHand'],
  source: { class: 'houseRule', cite: 'width from mechanics where no stop is up; 10 ft and 6 ft common practice, no published source' },
  size: { en: '6 ft past each end, 10 ft wide with stops up', es: '6 pies más allá de cada extremo, 10 pies de ancho con topes puestos' },
  shapes: (site) => [...site.placed.values()].filter(({ kind }) => kind === 'rack').flatMap((item) => ofRack(site, item)),
}

function ofRack(site: SiteModel, item: PlacedItem): ZoneShape[] {
  const rack = item.record as RackRecord
  const saddleM = site.supports.find(({ itemId }) => itemId === item.id)?.saddleM ?? null
  const half = (rack.figures.beamSpacingM.value ?? 7.112) / 2 + END_M
  const beamM = rack.figures.beamLengthM.value ?? 3.048
  const rings: Vec[][] = []
  const missing: MissingInput[] = []
  let isUnstopped = false
  for (const side of ['L', 'R'] as const) {
    const isUp = side === 'L' ? rack.stopsLeft : rack.stopsRight
    const isOpen = rack.openSide === side
    if (isUp === null) missing.push({ recordId: rack.id, path: side === 'L' ? 'stopsLeft' : 'stopsRight', label: side === 'L' ? { en: 'stops up, left', es: 'topes puestos, izquierda' } : { en: 'stops up, right', es: 'topes puestos, derecha' } })
    if (isUp === true && !isOpen) continue
    const surface = site.surfaceAt(item.runningM ?? 0)
    // Nobody has said what lies there: the hardest of the table.
    const resistance = surface === null ? 0.01 : (surfaceRows.find(({ id }) => id === surface)?.rollingRatio ?? 0.01)
    const cross = site.ground.crossFallRatio ?? 0
    const roll = rollOffM({ heightM: saddleM ?? 0.9, fallRatio: side === 'R' ? cross : -cross, resistanceRatio: resistance })
    const widthM = isUp === false ? Math.max(LEAST_WIDTH_M, roll.reachM) : LEAST_WIDTH_M
    if (isUp === false) isUnstopped = true
    const edgeM = isOpen ? beamM - 0.3 : 0.3
    const reachM = edgeM + widthM
    rings.push(boxAt(item, side === 'R' ? { fromM: -half, toM: half, rightM: reachM, leftM: isOpen ? -0.3 : -edgeM } : { fromM: -half, toM: half, rightM: isOpen ? -0.3 : -edgeM, leftM: reachM }))
  }
  if (rings.length === 0) return []
  return [{ ownerId: rack.id, rings, itemIds: [rack.id], missing, ...(isUnstopped ? { zoneClass: 'RED' as const } : {}) }]
}
