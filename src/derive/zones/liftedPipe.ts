import { enter, when } from './mayEnter.ts'
import type { Phase } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { boxAt, figuresOr, noseAt, odOf, pipeMissing, sizeMissing, stripAlong } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'
import type { PlacedItem, SiteModel, Stage } from '../types.ts'

const LEAST_M = 3.048
const BESIDE_NOSE_M = 0.9144
/** Where nobody has said: no boom over a rack lifts a stick higher, none of the usual loaders is longer or reaches farther. */
const LARGEST = { topHeightM: 4.5, reachM: 4.27, lengthM: 7 } as const
const LARGEST_STICK_M = 15.24
const slings: ReadonlySet<Phase> = new Set(['setUp', 'offload', 'load', 'move', 'tieIn'])

/** Z-08. Where a lifted pipe would land: its footprint and the height it hangs at, 10 ft at least past each end; and the raised length behind a carried nose. */
export const liftedPipe: ZoneDefinition = {
  id: 'Z-08',
  name: { en: 'under a lifted pipe', es: 'bajo un tubo levantado' },
  sentence: { en: 'Never be where the pipe would land. Use a tag line, not your hands.', es: 'Nunca se ponga donde caería el tubo. Use cuerda guía, no las manos.' },
  follows: 'noseAndPhase',
  classes: { setUp: 'RED', offload: 'RED', load: 'RED', pull: 'AMBER', move: 'RED', tieIn: 'RED' },
  mayEnter: [enter('loaderOperator', when.inCab)],
  source: { class: 'houseRule', cite: 'idea of 29 CFR 1926.251 and 1926.1425, from memory, confirm; the distance is common practice, no published source' },
  size: { en: 'the height it hangs at to each side, 10 ft past each end at least', es: 'la altura a que cuelga a cada lado, al menos 10 pies más allá de cada extremo' },
  shapes: (site, stage) => [
    ...(slings.has(stage.phase) ? itemsOf(site, 'loader').map((item) => crosswise(site, item)) : []),
    ...(stage.phase === 'pull' || stage.phase === 'move' ? carriedNose(site, stage) : []),
  ],
}

/** A stick across the forks, at the reach of the loader. */
function crosswise(site: SiteModel, item: PlacedItem): ZoneShape {
  const { reachM, topHeightM, lengthM, missing } = figuresOr(item, LARGEST)
  const aheadM = lengthM / 2 + reachM
  const [half, side] = [odOf(site) / 2 + topHeightM, (site.sticks.stickLengthM ?? LARGEST_STICK_M) / 2 + Math.max(LEAST_M, topHeightM)]
  return { ownerId: item.id, rings: [boxAt(item, { fromM: aheadM - half, toM: aheadM + half, rightM: side, leftM: side })], itemIds: [item.id], missing: [...pipeMissing(site), ...missing] }
}

/** From the last support behind a carried nose to its end, 3 ft beside the pipe. */
function carriedNose(site: SiteModel, stage: Stage): ZoneShape[] {
  if (site.job.noseHold !== 'slung' && site.job.noseHold !== 'lifted') return []
  const { fromM, toM } = noseAt(site, stage)
  if (toM <= 0 || site.run === null) return []
  const behindM = site.supports.filter(({ runningM }) => runningM < fromM - 0.1).at(-1)?.runningM ?? 0
  const halfWidthM = odOf(site) / 2 + BESIDE_NOSE_M
  return [{
    ownerId: site.run.id, rings: [stripAlong(site, [{ runningM: Math.max(0, behindM), halfWidthM }, { runningM: toM, halfWidthM }])], itemIds: [],
    mayEnter: [enter('noseSpotter', when.eyeContact)], missing: sizeMissing(site), size: { en: '3 ft each side of the raised length', es: '3 pies a cada lado del tramo levantado' },
  }]
}
