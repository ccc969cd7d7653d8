import { phases } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundLine, figuresOr } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

/** 2 ft, 29 CFR 1926.651(j)(2). */
const LEGAL_M = 0.6096
/** The deepest trench without an engineer (20 ft, 29 CFR 1926.652): where the depth is not known. */
const LARGEST_DEPTH_M = 6.096
const LARGEST_WIDTH_M = 3

/** Z-15. The edge of a trench: 2 ft for pipe and people, as far as it is deep for machines and loads. */
export const trenchEdgeZone: ZoneDefinition = {
  id: 'Z-15',
  name: { en: 'trench edge', es: 'borde de la zanja' },
  sentence: { en: 'The edge looks strong until it isn’t. Pipe and people two feet back, machines as far back as the trench is deep.', es: 'El borde parece firme hasta que falla. Tubo y gente a dos pies; máquinas tan lejos como la zanja es de honda.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'AMBER' as const])),
  mayEnter: [],
  askedBy: 'trench-edge',
  source: { class: 'published', cite: '29 CFR 1926.651(j)(2): 2 ft; the depth of the trench for machines is a house rule' },
  size: { en: '2 ft for people and pipe, one depth for machines', es: '2 pies para gente y tubo, una profundidad para máquinas' },
  shapes: (site) => itemsOf(site, 'trench').flatMap((item): ZoneShape[] => {
    const { points } = item.record
    const { widthM, missing } = figuresOr(item, { widthM: LARGEST_WIDTH_M })
    const deep = figuresOr(item, { depthM: LARGEST_DEPTH_M })
    return [
      { ownerId: item.id, rings: aroundLine(points, widthM / 2 + LEGAL_M), itemIds: [item.id], missing },
      { ownerId: `${item.id}/machines`, rings: aroundLine(points, widthM / 2 + deep.depthM), itemIds: [item.id], zoneClass: 'RED', keepsOut: 'gear', missing: [...missing, ...deep.missing] },
    ]
  }),
}
