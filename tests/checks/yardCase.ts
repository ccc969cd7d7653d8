import { limitsOf } from '../../src/checks/limits.ts'
import type { CheckDefinition, CheckTools, Finding } from '../../src/checks/finding.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import type { PlacedKind, PlacedRecord } from '../../src/scene/kinds/index.ts'
import type { Place } from '../../src/scene/parts.ts'
import type { JobRecord, RunRecord, SetUpRecord } from '../../src/scene/records/frame.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'

export const ftM = 0.3048
export const inM = 0.0254
export const lbN = 4.4482216152605

/** 10 in IPS DR 17 in 40 ft sticks, 280 ft needed; 7/8 in lost at each joint: eight sticks, 319 ft 5 7/8 in. */
export const tenInch = { pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, stickLengthM: 40 * ftM, neededLengthM: 280 * ftM, jointLossM: { value: 0.875 * inM, basis: 'measured' }, test: 'none' } as const

interface Parts {
  job?: Partial<JobRecord>
  setUp?: Partial<SetUpRecord>
  run?: Partial<RunRecord>
}

/** A level yard with the axis along x through 0, 0, the 10 in job and what is given. */
export const siteOf = (parts: Parts, ...records: readonly YardRecord[]): SiteModel =>
  deriveSite(documentOf(layout(), job({ ...tenInch, ...parts.job }), setUp({ fallRatio: 0, crossFallRatio: 0, ...parts.setUp }), run({ surfaces: ['grass'], ...parts.run }), ...records))

export const toolsFor = (site: SiteModel): CheckTools => {
  const limits = limitsOf(site.document)
  return { limits, mechanics: createMechanics(site, limits), owned: null }
}

export const findingsOf = (check: CheckDefinition, site: SiteModel): readonly Finding[] => check.run(site, toolsFor(site))

/** Levels of a check's findings, in its own order. */
export const levelsOf = (check: CheckDefinition, site: SiteModel): string[] => findingsOf(check, site).map(({ level, isUnknown }) => (isUnknown ? `${level}?` : level))

/** An item with some of its figures replaced; null is unknown. */
export const withFigures = (kind: PlacedKind, id: string, at: Place | readonly { xM: number; yM: number }[], figures: Record<string, number | null>, over: Record<string, unknown> = {}): PlacedRecord => {
  const made = item(kind, id, at) as PlacedRecord & { figures: Record<string, unknown> }
  const typed = Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, { value, basis: 'plate' as const }]))
  return { ...made, ...over, figures: { ...made.figures, ...typed } } as PlacedRecord
}

/** Ground rollers every `everyM` from the first to the last running distance. */
export const rollersAt = (fromM: number, toM: number, everyM: number): PlacedRecord[] =>
  Array.from({ length: Math.floor((toM - fromM) / everyM + 1e-9) + 1 }, (_, i) => item('roller', `roller:${i + 1}`, onRun(fromM + i * everyM)))

export const machineAt0 = (over: Record<string, unknown> = {}): PlacedRecord => item('machine', 'machine:1', onRun(0), over)
export const rackAtInfeed = (over: Record<string, unknown> = {}): PlacedRecord => item('rack', 'rack:1', onRun(-20 * ftM), over)
/** Corners of an upright rectangle. */
export const boxM = (fromXM: number, toXM: number, fromYM: number, toYM: number): { xM: number; yM: number }[] => [{ xM: fromXM, yM: fromYM }, { xM: toXM, yM: fromYM }, { xM: toXM, yM: toYM }, { xM: fromXM, yM: toYM }]
