import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, idSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { machineFootprint, machinePlan, machineSection } from '../symbols/machine.ts'

/**
 * The fusion machine at a set-up. The datum lies under the joint plane; clamps are measured from it.
 * Carriage side is a property of the machine, never inferred from infeed and exit.
 */
export const machineSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('machine'),
  setUpId: idSchema,
  carriageSide: z.enum(['infeed', 'exit']),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    /** Centreline of the jaws above the ground at the datum. */
    jawHeightM: figureSchema,
    innerClampM: figureSchema,
    outerClampM: figureSchema,
    carriageTravelM: figureSchema,
    /** Travel of the pipe lifts and where they stand, each side, from the joint plane. */
    liftTravelM: figureSchema,
    liftAtM: figureSchema,
    smallestOdM: figureSchema,
    largestOdM: figureSchema,
    /** Outside diameter the jaws are fitted for now. */
    jawsFittedOdM: figureSchema,
    massKg: figureSchema,
    /** Piston area of the carriage: turns drag into gauge pressure. */
    pistonAreaM2: figureSchema,
    /** Largest force the carriage can push the faces together with. */
    fusionForceLimitN: figureSchema,
    /** What brakes, track lock and chocks hold the machine with, along the line. */
    holdLoadN: figureSchema,
  }),
})
export type MachineRecord = z.infer<typeof machineSchema>

export const machine = defineKind<MachineRecord>({
  kind: 'machine',
  idPrefix: 'machine',
  schema: machineSchema,
  name: { en: 'fusion machine', es: 'máquina de fusión' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'M',
  ridesOnRun: true,
  create: (id, at) => ({
    id, kind: 'machine', place: at.place, locked: false, note: null, gearId: null, setUpId: at.setUpId, carriageSide: 'infeed',
    figures: {
      lengthM: typical(3.35), widthM: typical(1.9), jawHeightM: typical(0.9), innerClampM: typical(0.1016), outerClampM: typical(0.7112),
      carriageTravelM: typical(0.3), liftTravelM: typical(0.0508), liftAtM: typical(1.2), smallestOdM: unknownFigure(), largestOdM: unknownFigure(),
      jawsFittedOdM: unknownFigure(), massKg: unknownFigure(), pistonAreaM2: unknownFigure(), fusionForceLimitN: unknownFigure(), holdLoadN: unknownFigure(),
    },
  }),
  fields: [
    { path: 'figures.jawHeightM.value', label: { en: 'jaw centreline above ground', es: 'eje de mordazas sobre el suelo' }, input: { as: 'quantity', kind: 'height', min: 0.1, max: 4, nullable: true }, first: true },
    { path: 'carriageSide', label: { en: 'carriage on', es: 'carro del lado' }, input: { as: 'choice', choices: [{ value: 'infeed', label: { en: 'infeed side', es: 'entrada' } }, { value: 'exit', label: { en: 'exit side', es: 'salida' } }] } },
    { path: 'figures.jawsFittedOdM.value', label: { en: 'jaws fitted for OD', es: 'mordazas para diámetro' }, input: { as: 'quantity', kind: 'shortLength', min: 0.01, max: 3, nullable: true } },
    { path: 'figures.smallestOdM.value', label: { en: 'smallest OD it takes', es: 'diámetro mínimo' }, input: { as: 'quantity', kind: 'shortLength', min: 0.01, max: 3, nullable: true } },
    { path: 'figures.largestOdM.value', label: { en: 'largest OD it takes', es: 'diámetro máximo' }, input: { as: 'quantity', kind: 'shortLength', min: 0.01, max: 3, nullable: true } },
    { path: 'figures.innerClampM.value', label: { en: 'inner clamp from joint', es: 'mordaza interior desde la junta' }, input: { as: 'quantity', kind: 'shortLength', min: 0.01, max: 2, nullable: true } },
    { path: 'figures.outerClampM.value', label: { en: 'outer clamp from joint', es: 'mordaza exterior desde la junta' }, input: { as: 'quantity', kind: 'shortLength', min: 0.1, max: 4, nullable: true } },
    { path: 'figures.liftTravelM.value', label: { en: 'pipe lift travel', es: 'carrera del levantatubo' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 1, nullable: true } },
    { path: 'figures.liftAtM.value', label: { en: 'pipe lifts from joint', es: 'levantatubos desde la junta' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 5, nullable: true } },
    { path: 'figures.carriageTravelM.value', label: { en: 'carriage travel', es: 'carrera del carro' }, input: { as: 'quantity', kind: 'shortLength', min: 0, max: 2, nullable: true } },
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 15, nullable: true } },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 8, nullable: true } },
    { path: 'figures.massKg.value', label: { en: 'mass', es: 'masa' }, input: { as: 'quantity', kind: 'mass', min: 50, max: 60000, nullable: true } },
    { path: 'figures.pistonAreaM2.value', label: { en: 'piston area (plate)', es: 'área de pistones (placa)' }, input: { as: 'quantity', kind: 'pistonArea', min: 1e-5, max: 0.1, nullable: true } },
    { path: 'figures.fusionForceLimitN.value', label: { en: 'largest carriage force', es: 'fuerza máxima del carro' }, input: { as: 'quantity', kind: 'force', min: 100, max: 1e7, nullable: true } },
    { path: 'figures.holdLoadN.value', label: { en: 'held along the line by brakes and chocks', es: 'retenida por frenos y calzas' }, input: { as: 'quantity', kind: 'force', min: 0, max: 1e7, nullable: true } },
  ],
  footprint: machineFootprint,
  planSymbol: machinePlan,
  sectionSymbol: machineSection,
})
