import { leastRadiusM } from '../../derive/arch.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { reverseCurveM } from '../../engine/bends/arch.ts'
import { distanceM } from '../../geometry/vector.ts'
import type { TrenchRecord } from '../../scene/kinds/trench.ts'
import type { Finding, Source } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, nameOf, q, say } from '../make.ts'

const ID = 'pit-length'
const source: Source = { class: 'published', cite: 'two equal arcs, √(d(4R − d)): ASTM F585, from memory, confirm; R by PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 7', fromMemory: true }

export const pitLength = defineCheck({
  id: ID,
  title: { en: 'Length of the insertion pit', es: 'Largo del foso de inserción' },
  cost: 'quick',
  run: (site) => [...site.placed.values()].flatMap(({ record }) => (record.kind === 'trench' && record.isPit ? [ofPit(site, record)] : [])),
})

function ofPit(site: SiteModel, pit: TrenchRecord): Finding {
  const depthM = pit.figures.depthM.value
  const radiusM = leastRadiusM(site)
  const middle = pit.points[Math.floor(pit.points.length / 2)]!
  const common = { about: pit.id, items: [pit.id], source, phases: ['pull', 'tieIn'] as const, where: atPoint(middle.xM, middle.yM) }
  const missing: MissingInput[] = [
    ...(depthM === null ? [{ recordId: pit.id, path: 'figures.depthM.value', label: { en: 'depth of the pit', es: 'profundidad del foso' } }] : []),
    ...(site.pipe.properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
  ]
  const values = { pit: nameOf(site, pit.id) }
  if (missing.length > 0 || depthM === null) return finding(ID, { ...common, level: 'CHECK', missing, what: say('Whether {pit} is long enough for the pipe is not known.', 'No se sabe si {pit} es bastante largo para el tubo.', values), move: say('Give depth and pipe.', 'Dé la profundidad y el tubo.') })
  if (radiusM === null) return finding(ID, { ...common, level: 'CHECK', what: say('No published least radius for this pipe, so none for the length of {pit}.', 'No hay radio mínimo publicado para este tubo, ni largo para {pit}.', values), move: say('Ask the pipe maker.', 'Pregunte al fabricante del tubo.') })
  const drawnM = pit.points.slice(1).reduce((sum, to, i) => sum + distanceM(pit.points[i]!, to), 0)
  // Deeper than two radii the S of two arcs is upright at its middle: it then takes two radii of ground.
  const neededM = reverseCurveM(Math.min(Math.max(0, depthM), 2 * radiusM), radiusM)
  const measures = { measured: q('length', drawnM), limit: q('length', neededM), bound: 'least' as const }
  const all = { ...values, drawn: q('length', drawnM), needed: q('length', neededM), depth: q('length', depthM), radius: q('length', radiusM) }
  if (!isUnder(drawnM, neededM)) return finding(ID, { ...common, ...measures, level: 'met', what: say('{pit} is {drawn} long; {depth} deep at a radius of {radius} it takes {needed}.', '{pit} tiene {drawn} de largo; con {depth} de profundidad y radio de {radius} hacen falta {needed}.', all) })
  return finding(ID, {
    ...common, ...measures, level: 'FIX',
    what: say('{pit} is {drawn} long; to come down {depth} at a radius of {radius} the pipe takes {needed}.', '{pit} tiene {drawn} de largo; para bajar {depth} con radio de {radius} el tubo pide {needed}.', all),
    move: say('Dig it longer, or bring the pipe in lower.', 'Cávelo más largo, o baje antes el tubo.'),
  })
}
