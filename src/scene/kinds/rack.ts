import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, heightSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { rackFootprint, rackPlan, rackSection } from '../symbols/rack.ts'

/**
 * The loading rack: two cross beams with a roller lane on the axis. Its place is the middle between the beams on the roller lane;
 * sticks lie on the open side. The beams are supports R1 (near the jaws) and R2 (far). Height = BOP in the roller lane.
 */
export const rackSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('rack'),
  height: heightSchema,
  /** Side on which sticks are loaded and stored, looking down-string. */
  openSide: z.enum(['L', 'R']),
  stopsLeft: z.boolean().nullable(),
  stopsRight: z.boolean().nullable(),
  stickCount: z.number().int().min(0).max(60),
  figures: z.strictObject({
    beamSpacingM: figureSchema,
    /** Length of each cross beam, across the line. */
    beamLengthM: figureSchema,
    ratedLoadN: figureSchema,
    capacityCount: figureSchema,
    /** Cross tilt of the beams: fall per length, positive = falls to the right looking down-string. */
    tiltRatio: figureSchema,
    lowestSaddleM: figureSchema,
    highestSaddleM: figureSchema,
  }),
})
export type RackRecord = z.infer<typeof rackSchema>

const yesNo = { as: 'yesNo', nullable: true } as const

export const rack = defineKind<RackRecord>({
  kind: 'rack',
  idPrefix: 'rack',
  schema: rackSchema,
  name: { en: 'loading rack', es: 'cama de carga' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'R',
  supportsPipe: true,
  ridesOnRun: true,
  create: (id, at) => ({
    id, kind: 'rack', place: at.place, locked: false, note: null, gearId: null, height: { rule: 'onAxis' }, openSide: 'R', stopsLeft: null, stopsRight: null, stickCount: 5,
    figures: {
      beamSpacingM: typical(7.112), beamLengthM: typical(3.048), ratedLoadN: unknownFigure(), capacityCount: typical(6), tiltRatio: typical(0),
      lowestSaddleM: typical(0.5), highestSaddleM: typical(1.2),
    },
  }),
  fields: [
    { path: 'figures.beamSpacingM.value', label: { en: 'beams apart', es: 'entre vigas' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 20, nullable: true }, first: true },
    { path: 'openSide', label: { en: 'open side', es: 'lado abierto' }, input: { as: 'choice', choices: [{ value: 'L', label: { en: 'left', es: 'izquierda' } }, { value: 'R', label: { en: 'right', es: 'derecha' } }] } },
    { path: 'stickCount', label: { en: 'sticks on it', es: 'tubos encima' }, input: { as: 'quantity', kind: 'count', min: 0, max: 60 } },
    { path: 'figures.capacityCount.value', label: { en: 'holds sticks', es: 'capacidad de tubos' }, input: { as: 'quantity', kind: 'count', min: 1, max: 60, nullable: true } },
    { path: 'stopsLeft', label: { en: 'stops up, left', es: 'topes puestos, izquierda' }, input: yesNo },
    { path: 'stopsRight', label: { en: 'stops up, right', es: 'topes puestos, derecha' }, input: yesNo },
    { path: 'figures.tiltRatio.value', label: { en: 'cross tilt, falls right', es: 'inclinación, cae a la derecha' }, input: { as: 'quantity', kind: 'percent', min: -0.2, max: 0.2, nullable: true } },
    { path: 'figures.ratedLoadN.value', label: { en: 'rated load (plate)', es: 'carga nominal (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true } },
    { path: 'figures.beamLengthM.value', label: { en: 'beam length', es: 'largo de viga' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 12, nullable: true } },
    { path: 'figures.lowestSaddleM.value', label: { en: 'lowest roller lane', es: 'carril más bajo' }, input: { as: 'quantity', kind: 'height', min: 0, max: 4, nullable: true } },
    { path: 'figures.highestSaddleM.value', label: { en: 'highest roller lane', es: 'carril más alto' }, input: { as: 'quantity', kind: 'height', min: 0, max: 5, nullable: true } },
  ],
  footprint: rackFootprint,
  planSymbol: rackPlan,
  sectionSymbol: rackSection,
})
