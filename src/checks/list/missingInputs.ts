import { itemsOf } from '../../derive/itemsOf.ts'
import type { MissingInput, SiteModel } from '../../derive/types.ts'
import { kinds, type PlacedKind } from '../../scene/kinds/index.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding } from '../finding.ts'
import { atJaws, defineCheck, finding, houseRule, listOf, say } from '../make.ts'
import { fieldName, isMissing, neededFields } from '../neededFields.ts'

export const missingInputs = defineCheck({
  id: 'missing-inputs',
  title: { en: 'Inputs nobody has given', es: 'Datos que nadie ha dado' },
  cost: 'quick',
  run: (site) => [...ofJob(site), ...ofGround(site), ...kinds.flatMap(({ kind }) => ofKind(site, kind as PlacedKind))],
})

function ofJob(site: SiteModel): Finding[] {
  const missing = [...site.pipe.missing, ...site.sticks.missing]
  if (missing.length === 0) return []
  return [finding('missing-inputs', {
    about: 'job',
    level: 'CHECK',
    missing,
    source: houseRule,
    what: say('Not given for the job: {fields}.', 'Falta del trabajo: {fields}.', { fields: listOf(missing.map(({ label }) => label), 6) }),
    move: say('Fill them in; a wall temperature nobody gave counts as 73 °F (23 °C).', 'Complételos; una temperatura de pared sin dar cuenta como 73 °F (23 °C).'),
  })]
}

function ofGround(site: SiteModel): Finding[] {
  const { setUp } = site
  if (setUp === null) return []
  const hasRack = site.supports.some(({ kind }) => kind === 'rack')
  const missing: MissingInput[] = [
    ...(site.ground.from === 'unknown' ? [{ recordId: setUp.id, path: 'fallRatio', label: { en: 'fall of the ground along the line', es: 'caída del terreno a lo largo de la línea' } }] : []),
    ...(hasRack && site.ground.crossFallRatio === null ? [{ recordId: setUp.id, path: 'crossFallRatio', label: { en: 'cross-fall of the ground at the rack', es: 'caída lateral del terreno en la cama' } }] : []),
  ]
  if (missing.length === 0) return []
  return [finding('missing-inputs', {
    about: 'ground',
    level: 'CHECK',
    missing,
    source: houseRule,
    where: atJaws(site),
    what: say('Not known of the ground: {fields}.', 'No se sabe del terreno: {fields}.', { fields: listOf(missing.map(({ label }) => label)) }),
    move: say('Take three ground levels or more, not all in line, or type the fall.', 'Tome tres niveles o más, no todos en línea, o escriba la caída.'),
  })]
}

/** One finding a kind, whatever number of items lacks whatever number of fields. */
function ofKind(site: SiteModel, kind: PlacedKind): Finding[] {
  const fields = (neededFields[kind] ?? []).filter(({ when }) => when === undefined || when(site))
  const items = itemsOf(site, kind)
  const missing = items.flatMap(({ id, label, record }) => fields.filter(({ path }) => isMissing(record, path)).map(({ path }): MissingInput => ({ recordId: id, path, label: ofItem(fieldName(kind, path), label) })))
  if (missing.length === 0) return []
  const lacking = fields.filter(({ path }) => missing.some((one) => one.path === path)).map(({ path }) => fieldName(kind, path))
  const ids = [...new Set(missing.map(({ recordId }) => recordId))]
  const name = kinds.find((one) => one.kind === kind)?.name ?? { en: kind, es: kind }
  return [finding('missing-inputs', {
    about: kind,
    level: 'CHECK',
    missing,
    source: houseRule,
    items: ids,
    what: say('Not given for the {kind}: {fields}.', 'Falta de {kind}: {fields}.', { kind: name, fields: listOf(lacking, 6) }),
    move: say('Read it off the plate, measure it, or ask.', 'Léalo en la placa, mídalo o pregunte.'),
  })]
}

const ofItem = (field: Localized, label: string): Localized => (label === '' ? field : { en: `${label}: ${field.en}`, es: `${label}: ${field.es}` })
