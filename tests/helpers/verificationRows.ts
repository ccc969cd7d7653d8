/** Every row of shared/cases with our own value beside it, for docs/verification.md (makeVerification.ts). */
import beamFile from '../../shared/cases/beam-cases.json' with { type: 'json' }
import pipeFile from '../../shared/cases/pipe-cases.json' with { type: 'json' }
import pullFile from '../../shared/cases/pull-cases.json' with { type: 'json' }
import referenceFile from '../../shared/cases/reference-table.json' with { type: 'json' }
import workedFile from '../../shared/cases/worked-layout.json' with { type: 'json' }
import { freeLayDownLengthM, noseDroopM, noseLandingSpacingM } from '../../src/engine/beam/closedForms.ts'
import { allowableTensileLoadN } from '../../src/engine/pipe/allowablePull.ts'
import { minimumBendRadiusM } from '../../src/engine/pipe/bendRadius.ts'
import { pipeProperties } from '../../src/engine/pipe/pipeProperties.ts'
import { innerSpanSagM } from '../../src/engine/pipe/spans.ts'
import type { PipeSystem } from '../../src/engine/pipe/tables.ts'
import { footM, inchM, poundForceN, poundPerFootNPerM, psiPa } from '../../src/units/factors.ts'
import { beamCheck } from '../engine/beam/beamChecks.ts'
import { caseChecks, must, type CaseRow } from '../engine/pipe/caseChecks.ts'
import { pullCheck, type PullCaseInput } from './pullChecks.ts'
import { sideRows } from './sideVerification.ts'
import { workedFigures } from './workedComparison.ts'

export interface VerificationRow {
  /** Heading it stands under. */
  part: string
  check: string
  /** What is compared, for counting: rows of one source and quantity are one check for each ten values. */
  quantity: string
  ours: readonly number[]
  theirs: readonly number[]
  /** Largest difference allowed for each value. */
  allowed: readonly number[]
  unit: string
  source: string
  basis: string
}

interface Tolerance {
  relative?: number
  absolute?: number
}
const allowedFor = ({ absolute, relative }: Tolerance, theirs: number): number => (absolute ?? (relative ?? 0) * Math.abs(theirs)) + 1e-12

/** Names under which different files compare the same thing. */
const sameQuantity: Readonly<Record<string, string>> = {
  'equalSpans reactions': 'reactions of equal spans', spanReaction: 'reactions of equal spans',
  'equalSpans supportMoments': 'support moments of equal spans', supportMoment: 'support moments of equal spans',
  'equalSpans spanMoments': 'span moments of equal spans', spanMoment: 'span moments of equal spans',
  'equalSpans largestSag': 'sags of equal spans', spanSag: 'sags of equal spans',
  'single simple sag': 'sag of a simple beam', simpleSag: 'sag of a simple beam',
  'single simple reactions': 'reaction of a simple beam', simpleReaction: 'reaction of a simple beam',
  'single simple maxMoment': 'moment of a simple beam', simpleMoment: 'moment of a simple beam',
  straightDrag: 'drag on level ground', drag: 'drag on level ground',
}
const quantityOf = (name: string): string => sameQuantity[name] ?? name

const pipeRows = (): VerificationRow[] =>
  (pipeFile.cases as readonly CaseRow[]).map(({ id, check, input, expected, tolerance, unit, source, basis }) => ({
    part: 'Pipe, joint, overhead line and trench', check: id, quantity: quantityOf(check), ours: [caseChecks[check]!(input, unit)], theirs: [expected], allowed: [allowedFor(tolerance, expected)], unit, source, basis,
  }))

const beamRows = (): VerificationRow[] =>
  beamFile.cases.map(({ id, check, input, expected, tolerance, unit, source, basis }) => ({
    part: 'Contact beam', check: id, quantity: quantityOf([check, 'case' in input ? input.case : '', 'quantity' in input ? input.quantity : ''].filter(Boolean).join(' ')),
    ours: beamCheck(check, input), theirs: expected, allowed: expected.map((value) => allowedFor(tolerance, value)), unit, source, basis,
  }))

const pullRows = (): VerificationRow[] =>
  (pullFile.cases as readonly { id: string; check: string; input: PullCaseInput; expected: number; tolerance: Tolerance; unit: string; source: string; basis: string }[]).map(({ id, check, input, expected, tolerance, unit, source, basis }) => ({
    part: 'Pull along a path', check: id, quantity: quantityOf(check), ours: [pullCheck(check, input, unit)], theirs: [expected], allowed: [allowedFor(tolerance, expected)], unit, source, basis,
  }))

/** Columns of the reference table: what they are, their unit, and half of their last digit. */
const columns = {
  wallIn: ['minimum wall', 'in', 0.0005], lbPerFt: ['weight', 'lb/ft', 0.05], sagIn: ['sag of an inner span of 20 ft', 'in', 0.005], noseIn: ['droop of a free nose past rows at 20 ft', 'in', 0.5],
  noseSpacingFt: ['spacing for a droop of 3 in', 'ft', 0.05], layDownFt: ['free lay-down length', 'ft', 0.5], bendFt: ['least cold bend radius', 'ft', 0.1], fittingFt: ['least radius with a fitting in the bend', 'ft', 0.5], allowableKlb: ['allowable tensile load, 1 h', '1,000 lb', 0.1],
} as const

/** Our figures for a row, by the table's own convention: mean wall 1.06 × OD/DR for weight and stiffness, 78,000 psi. */
export function referenceFigures(row: (typeof referenceFile.rows)[number]): Record<keyof typeof columns, number> {
  const system = row.system as PipeSystem
  const common = { system, size: row.size, dr: row.dr, material: 'PE4710' as const }
  const minimum = must(pipeProperties(common))
  // Metric walls are OD/DR there, not those of the metric table.
  const wallM = system === 'metric' ? minimum.odM / row.dr : minimum.minimumWallM
  const pipe = must(pipeProperties({ ...common, weightWall: 'given', stiffnessWall: 'given', givenWallM: 1.06 * wallM }))
  const beam = { lineLoadNPerM: pipe.lineLoadNPerM, bendingStiffnessNm2: 78_000 * psiPa * (row.wallC === null ? 1 : 0.43) * pipe.inertiaM4 }
  return {
    wallIn: wallM / inchM,
    lbPerFt: pipe.lineLoadNPerM / poundPerFootNPerM,
    sagIn: innerSpanSagM(beam, 20 * footM) / inchM,
    noseIn: noseDroopM({ ...beam, spacingM: 20 * footM, root: 'manySpans' }) / inchM,
    noseSpacingFt: noseLandingSpacingM({ ...beam, droopM: 3 * inchM, root: 'manySpans' }) / footM,
    layDownFt: freeLayDownLengthM({ ...beam, heightM: row.layDownHeightIn * inchM }) / footM,
    bendFt: must(minimumBendRadiusM({ ...pipe, fittingInBend: false })) / footM,
    fittingFt: must(minimumBendRadiusM({ ...pipe, fittingInBend: true })) / footM,
    allowableKlb: must(allowableTensileLoadN({ edition: 'F1804', material: 'PE4710', odM: pipe.odM, dr: pipe.dr, durationS: 3600, wallTemperatureC: 23 })).loadN / poundForceN / 1000,
  }
}

const referenceRows = (): VerificationRow[] => {
  const figures = referenceFile.rows.map((row) => ({ row, ours: referenceFigures(row) }))
  return (Object.keys(columns) as (keyof typeof columns)[]).flatMap((column) => {
    const [title, unit, halfDigit] = columns[column]
    // The table is good to 2 % by its own word; a rounded lay-down of its hot row uses all of it, the other columns hold 1 %.
    const share = column === 'layDownFt' ? 0.02 : 0.01
    return figures.flatMap(({ row, ours }): VerificationRow[] => {
      const theirs = row[column]
      return theirs === null ? [] : [{ part: 'Reference table of fourteen pipes', check: `${title}, ${row.label}`, quantity: column, ours: [ours[column]], theirs: [theirs], allowed: [Math.max(share * theirs, halfDigit) * 1.0001], unit, source: referenceFile.source, basis: 'calculated' }]
    })
  })
}

const workedRows = (): VerificationRow[] =>
  workedFile.cases.map(({ id, layout, quantity, expected, tolerance, unit, source, basis }) => ({
    part: 'A worked layout by its own convention', check: id, quantity: `worked layout ${quantity}`, ours: workedFigures(layout, quantity), theirs: expected, allowed: expected.map((value) => allowedFor(tolerance, value)), unit, source, basis,
  }))

/** All rows, in the order of the files. */
export const verificationRows = (): VerificationRow[] => [...pipeRows(), ...beamRows(), ...pullRows(), ...sideRows(), ...referenceRows(), ...workedRows()]
