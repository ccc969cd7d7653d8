import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, heightSchema, itemBase, landingAidSchema, typical, unknownFigure } from '../parts.ts'
import { standFootprint, standPlan, standSection } from '../symbols/stand.ts'

/** A pipe stand: a roller or cradle on a base, set to a height. Exit stands are E1, E2 …; infeed stands I1, I2 … */
export const standSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('stand'),
  height: heightSchema,
  roller: z.enum(['flat', 'V', 'cradle']),
  /** How a nose gets on to it. */
  landingAid: landingAidSchema,
  figures: z.strictObject({
    /** Range of the saddle (bottom of pipe above ground). */
    lowestSaddleM: figureSchema,
    highestSaddleM: figureSchema,
    ratedLoadN: figureSchema,
    baseLengthM: figureSchema,
    baseWidthM: figureSchema,
    /** How far below the roller top a free nose may come and still ride on; null: the smaller of 3 in and OD/4. */
    leadInM: figureSchema,
    /** Radius of the roller: a nose above its centre rides up. */
    rollerRadiusM: figureSchema,
    massKg: figureSchema,
  }),
})
export type StandRecord = z.infer<typeof standSchema>

export const landingAidChoices = [
  { value: 'none', label: { en: 'none', es: 'ninguna' } },
  { value: 'liftByHand', label: { en: 'lift by hand', es: 'levantar a mano' } },
  { value: 'liftByLoader', label: { en: 'lift by loader', es: 'levantar con cargador' } },
  { value: 'ramp', label: { en: 'ramp', es: 'rampa' } },
] as const

export const stand = defineKind<StandRecord>({
  kind: 'stand',
  idPrefix: 'stand',
  schema: standSchema,
  name: { en: 'pipe stand', es: 'soporte de tubo' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'E',
  supportsPipe: true,
  ridesOnRun: true,
  create: (id, at) => ({
    id, kind: 'stand', place: at.place, locked: false, note: null, gearId: null, height: { rule: 'onAxis' }, roller: 'flat', landingAid: 'none',
    figures: {
      lowestSaddleM: typical(0.4572), highestSaddleM: typical(1.0668), ratedLoadN: unknownFigure(), baseLengthM: typical(0.6), baseWidthM: typical(0.9),
      leadInM: unknownFigure(), rollerRadiusM: typical(0.05), massKg: unknownFigure(),
    },
  }),
  fields: [
    { path: 'roller', label: { en: 'roller', es: 'rodillo' }, input: { as: 'choice', choices: [{ value: 'flat', label: { en: 'flat roller', es: 'rodillo plano' } }, { value: 'V', label: { en: 'V roller', es: 'rodillo en V' } }, { value: 'cradle', label: { en: 'cradle', es: 'cuna' } }] } },
    { path: 'landingAid', label: { en: 'landing aid for the nose', es: 'ayuda para la punta' }, input: { as: 'choice', choices: landingAidChoices } },
    { path: 'figures.lowestSaddleM.value', label: { en: 'lowest saddle', es: 'apoyo más bajo' }, input: { as: 'quantity', kind: 'height', min: 0, max: 4, nullable: true } },
    { path: 'figures.highestSaddleM.value', label: { en: 'highest saddle', es: 'apoyo más alto' }, input: { as: 'quantity', kind: 'height', min: 0, max: 5, nullable: true } },
    { path: 'figures.ratedLoadN.value', label: { en: 'rated load (plate)', es: 'carga nominal (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e6, nullable: true } },
    { path: 'figures.leadInM.value', label: { en: 'lead-in depth', es: 'profundidad de entrada' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 1, nullable: true } },
    { path: 'figures.rollerRadiusM.value', label: { en: 'roller radius', es: 'radio del rodillo' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 1, nullable: true } },
    { path: 'figures.massKg.value', label: { en: 'mass', es: 'masa' }, input: { as: 'quantity', kind: 'mass', min: 1, max: 5000, nullable: true } },
    { path: 'figures.baseLengthM.value', label: { en: 'base along the line', es: 'base a lo largo' }, input: { as: 'quantity', kind: 'shortLength', min: 0.05, max: 5, nullable: true } },
    { path: 'figures.baseWidthM.value', label: { en: 'base across the line', es: 'base a lo ancho' }, input: { as: 'quantity', kind: 'shortLength', min: 0.05, max: 5, nullable: true } },
  ],
  footprint: standFootprint,
  planSymbol: standPlan,
  sectionSymbol: standSection,
})
