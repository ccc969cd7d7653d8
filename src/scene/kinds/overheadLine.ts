import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, unknownFigure } from '../parts.ts'
import { overheadLinePlan } from '../symbols/overheadLine.ts'

/** An overhead line: voltage and lowest wire as measured or told by its owner; unknown stays unknown. */
export const overheadLineSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('overheadLine'),
  points: pointsSchema,
  figures: z.strictObject({
    voltageV: figureSchema,
    lowestHeightM: figureSchema,
  }),
})
export type OverheadLineRecord = z.infer<typeof overheadLineSchema>

export const overheadLine = defineKind<OverheadLineRecord>({
  kind: 'overheadLine',
  idPrefix: 'overheadLine',
  schema: overheadLineSchema,
  name: { en: 'overhead line', es: 'línea aérea' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'overheadLine', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), figures: { voltageV: unknownFigure(), lowestHeightM: unknownFigure() },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.voltageV.value', label: { en: 'voltage', es: 'voltaje' }, input: { as: 'quantity', kind: 'voltage', min: 1, max: 2e6, nullable: true }, first: true },
    { path: 'figures.lowestHeightM.value', label: { en: 'lowest wire above ground', es: 'cable más bajo sobre el suelo' }, input: { as: 'quantity', kind: 'length', min: 1, max: 80, nullable: true }, first: true },
  ],
  footprint: () => [],
  planSymbol: overheadLinePlan,
})
