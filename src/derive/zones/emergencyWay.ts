import { phases } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundLine } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

/** 20 ft, International Fire Code 503.2.1. */
const WIDTH_M = 6.096

/** Z-19. The way of the ambulance: nothing stands in it. Where its width is unknown it is as wide as the code asks. */
export const emergencyWay: ZoneDefinition = {
  id: 'Z-19',
  name: { en: 'emergency lane', es: 'carril de emergencia' },
  sentence: { en: 'This strip is for the ambulance. It might be coming for you. Nothing parks here.', es: 'Esta franja es para la ambulancia. Puede venir por usted. Aquí no se estaciona nada.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'BLUE' as const])),
  mayEnter: [],
  keepsOut: 'gear',
  source: { class: 'published', cite: 'International Fire Code 503.2.1: 20 ft wide, 13 ft 6 in high' },
  size: { en: '20 ft wide, 13 ft 6 in high', es: '20 pies de ancho, 13 pies 6 pulg de alto' },
  shapes: (site) => itemsOf(site, 'emergencyLane').map((item) => {
    const { points, figures } = item.record
    const missing = figures.widthM.value === null ? [{ recordId: item.id, path: 'figures.widthM.value', label: { en: 'width of the emergency lane', es: 'ancho del carril de emergencia' } }] : []
    return { ownerId: item.id, rings: aroundLine(points, (figures.widthM.value ?? WIDTH_M) / 2), itemIds: [item.id], missing }
  }),
}
