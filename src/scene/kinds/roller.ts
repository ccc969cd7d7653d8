import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, heightSchema, itemBase, landingAidSchema, typical, unknownFigure } from '../parts.ts'
import { rollerFootprint, rollerPlan, rollerSection } from '../symbols/roller.ts'
import { landingAidChoices } from './stand.ts'

/** A ground roller: low, on the ground, no height range. G1, G2 … */
export const rollerSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('roller'),
  height: heightSchema,
  landingAid: landingAidSchema,
  figures: z.strictObject({
    ratedLoadN: figureSchema,
    baseLengthM: figureSchema,
    baseWidthM: figureSchema,
    leadInM: figureSchema,
    rollerRadiusM: figureSchema,
  }),
})
export type RollerRecord = z.infer<typeof rollerSchema>

export const roller = defineKind<RollerRecord>({
  kind: 'roller',
  idPrefix: 'roller',
  schema: rollerSchema,
  name: { en: 'ground roller', es: 'rodillo de suelo' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'G',
  supportsPipe: true,
  ridesOnRun: true,
  create: (id, at) => ({
    id, kind: 'roller', place: at.place, locked: false, note: null, gearId: null, height: { rule: 'aboveGround', saddleM: 0.1524 }, landingAid: 'none',
    figures: { ratedLoadN: unknownFigure(), baseLengthM: typical(0.35), baseWidthM: typical(0.55), leadInM: unknownFigure(), rollerRadiusM: typical(0.05) },
  }),
  fields: [
    { path: 'landingAid', label: { en: 'landing aid for the nose', es: 'ayuda para la punta' }, input: { as: 'choice', choices: landingAidChoices } },
    { path: 'figures.ratedLoadN.value', label: { en: 'rated load (plate)', es: 'carga nominal (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e6, nullable: true } },
    { path: 'figures.leadInM.value', label: { en: 'lead-in depth', es: 'profundidad de entrada' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 1, nullable: true } },
    { path: 'figures.rollerRadiusM.value', label: { en: 'roller radius', es: 'radio del rodillo' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 1, nullable: true } },
  ],
  footprint: rollerFootprint,
  planSymbol: rollerPlan,
  sectionSymbol: rollerSection,
})
