import type { PullerRecord } from '../../scene/kinds/puller.ts'
import type { CrewRole, ZoneDefinition } from './zone.ts'
import type { MissingInput, PlacedItem, SiteModel, Stage } from '../types.ts'
import { noseAt, stripAlong } from './shapes.ts'

const LEAST_HALF_WIDTH_M = 3.048
const FAN_CAP_M = 15.24
const FAN_TANGENT = Math.tan(Math.PI / 12)

/** Puller of the shown run: the first one drawn. */
export const pullerOf = (site: SiteModel): PlacedItem | null => [...site.placed.values()].find(({ kind, runningM }) => kind === 'puller' && runningM !== null) ?? null

/**
 * Where the rope lies at a stage: from the nose to the puller. A winch stands where it is drawn; a vehicle keeps its
 * rope length ahead of the nose, up to where it is drawn.
 */
export function ropeAt(site: SiteModel, stage: Stage): { puller: PlacedItem; noseM: number; pullerM: number } | null {
  const puller = pullerOf(site)
  const { toM: noseM } = noseAt(site, stage)
  if (puller === null || noseM <= 0) return null
  const record = puller.record as PullerRecord
  const ropeM = record.figures.ropeLengthM.value ?? 9.144
  const drawnM = puller.runningM ?? 0
  const pullerM = record.pullerKind === 'winch' ? drawnM : Math.min(drawnM, noseM + ropeM)
  return { puller, noseM, pullerM: Math.max(pullerM, noseM + 0.5) }
}

/** The puller operator may sit in the line only behind a guard; unknown counts as missing. */
export function pullerOperatorMayEnter(record: PullerRecord): { mayEnter: readonly CrewRole[]; missing: readonly MissingInput[] } {
  if (record.guardedCab === false) return { mayEnter: [], missing: [] }
  return { mayEnter: ['pullerOperator'], missing: record.guardedCab === null ? [{ recordId: record.id, path: 'guardedCab', label: { en: 'guarded cab', es: 'cabina con protección' } }] : [] }
}

/** Z-09. The loaded rope and a fan behind each end. */
export const rope: ZoneDefinition = {
  id: 'Z-09',
  name: { en: 'rope tight', es: 'cuerda tensa' },
  sentence: { en: 'A tight rope is a loaded gun. When it comes tight, be out of line with it: both ends, and inside the bend.', es: 'Una cuerda tensa es como un arma cargada. Cuando se tense, salga de su línea: de las dos puntas y de adentro de la curva.' },
  classes: { fuse: 'AMBER', pull: 'RED', move: 'RED' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'marine snap-back teaching; no figure is published for construction' },
  size: { en: '10 ft or a quarter of the lead each side, a fan one lead long behind each end', es: '10 pies o un cuarto de la cuerda a cada lado, un abanico de una cuerda detrás de cada punta' },
  shapes: (site, stage) => {
    const found = ropeAt(site, stage)
    if (found === null) return []
    const { puller, noseM, pullerM } = found
    const leadM = pullerM - noseM
    const halfWidthM = Math.max(LEAST_HALF_WIDTH_M, leadM / 4)
    const fanM = Math.min(leadM, FAN_CAP_M)
    const wideM = halfWidthM + fanM * FAN_TANGENT
    const ring = stripAlong(site, [
      { runningM: noseM - fanM, halfWidthM: wideM },
      { runningM: noseM, halfWidthM },
      { runningM: pullerM, halfWidthM },
      { runningM: pullerM + fanM, halfWidthM: wideM },
    ])
    // The guard is asked for once, by the zone ahead of the nose; a missing answer must not take the rope's own rule away.
    return [{ ownerId: puller.id, rings: [ring], itemIds: [puller.id], mayEnter: pullerOperatorMayEnter(puller.record as PullerRecord).mayEnter }]
  },
}
