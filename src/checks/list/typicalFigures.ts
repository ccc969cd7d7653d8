import { itemsOf } from '../../derive/itemsOf.ts'
import type { MissingInput } from '../../derive/types.ts'
import { kinds, type PlacedKind } from '../../scene/kinds/index.ts'
import { defineCheck, finding, houseRule, listOf, say } from '../make.ts'
import { fieldName, figureAt } from '../neededFields.ts'

/** Typical figures that decide a finding, by kind; sizes for drawing are not asked after. */
const deciding: Partial<Record<PlacedKind, readonly string[]>> = {
  machine: ['figures.jawHeightM.value', 'figures.innerClampM.value', 'figures.outerClampM.value', 'figures.liftTravelM.value', 'figures.liftAtM.value'],
  rack: ['figures.beamSpacingM.value', 'figures.capacityCount.value', 'figures.tiltRatio.value', 'figures.lowestSaddleM.value', 'figures.highestSaddleM.value'],
  stand: ['figures.lowestSaddleM.value', 'figures.highestSaddleM.value'],
  puller: ['figures.ropeLengthM.value'],
  loader: ['figures.reachM.value'],
}

export const typicalFigures = defineCheck({
  id: 'typical-figures',
  title: { en: 'Typical figures to replace with the plate', es: 'Datos típicos por cambiar según la placa' },
  cost: 'quick',
  run: (site) => kinds.flatMap(({ kind, name }) => {
    const paths = deciding[kind as PlacedKind] ?? []
    const items = itemsOf(site, kind)
    const missing = items.flatMap(({ id, label, record }) => paths.filter((path) => {
      const figure = figureAt(record, path)
      return figure !== null && figure.basis === 'typical' && figure.value !== null
    }).map((path): MissingInput => {
      const field = fieldName(kind as PlacedKind, path)
      return { recordId: id, path, label: label === '' ? field : { en: `${label}: ${field.en}`, es: `${label}: ${field.es}` } }
    }))
    if (missing.length === 0) return []
    const fields = paths.filter((path) => missing.some((one) => one.path === path)).map((path) => fieldName(kind as PlacedKind, path))
    return [finding('typical-figures', {
      about: kind,
      level: 'CHECK',
      missing,
      source: houseRule,
      items: [...new Set(missing.map(({ recordId }) => recordId))],
      what: say('Typical figures, not yours, for the {kind}: {fields}.', 'Datos típicos, no los suyos, de {kind}: {fields}.', { kind: name, fields: listOf(fields, 6) }),
      move: say('Replace them with what the plate or the tape says.', 'Cámbielos por lo que diga la placa o la cinta.'),
    })]
  }),
})
