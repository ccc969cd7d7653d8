import { limitsOf } from '../../src/checks/limits.ts'
import type { CheckDefinition, CheckTools, Finding } from '../../src/checks/finding.ts'
import { renderText } from '../../src/messages/render.ts'
import { createMechanics, type Mechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import { pipeProperties } from '../../src/engine/pipe/pipeProperties.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import type { HeightRule } from '../../src/scene/parts.ts'
import type { JobRecord } from '../../src/scene/records/frame.ts'
import { footM, inchM } from '../../src/units/factors.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from './documents.ts'

export const ft = (feet: number): number => feet * footM
export const inch = (inches: number): number => inches * inchM

export interface YardSpec {
  size?: string
  dr?: number
  stickFt?: number
  neededFt?: number | null
  /** BOP above the ground in the jaws, in. */
  bopIn?: number
  /** Exit stands: distance in ft, and how many inches below the jaw line (0: on it). */
  exits?: readonly (readonly [atFt: number, lowIn: number])[]
  infeed?: 'rack' | 'none' | readonly number[]
  rackFt?: number
  /** Ground rollers, ft. */
  rollers?: readonly number[]
  fallRatio?: number | null
  job?: Partial<JobRecord>
  more?: readonly YardRecord[]
}

const lower = (lowIn: number): HeightRule => (lowIn === 0 ? { rule: 'onAxis' } : { rule: 'belowAxis', dropM: inch(lowIn) })

/**
 * A level fusion line: machine at the datum with its jaws at `bopIn`, a rack (or stands) on the infeed, exit stands and
 * rollers. 12 in IPS DR 17 in 40 ft sticks, wall at 73 °F, unless told.
 */
export function fusionYard(spec: YardSpec = {}): YardDocument {
  const { size = '12', dr = 17, stickFt = 40, neededFt = 75, bopIn = 30, exits = [[25, 0], [35, 0]], infeed = 'rack', rackFt = -20, rollers = [], fallRatio = 0, more = [] } = spec
  const pipe = { system: 'IPS', size, dr, material: 'PE4710' } as const
  const properties = pipeProperties(pipe)
  const odM = properties.status === 'ok' ? properties.value.odM : 0
  const machine = item('machine', 'machine:1', onRun(0)) as Extract<YardRecord, { kind: 'machine' }>
  const stands = (places: readonly (readonly [number, number])[], name: string): YardRecord[] => places.map(([atFt, lowIn], i) => item('stand', `stand:${name}${i + 1}`, onRun(ft(atFt)), { height: lower(lowIn) }))
  return documentOf(
    layout(),
    job({ pipe, stickLengthM: ft(stickFt), neededLengthM: neededFt === null ? null : ft(neededFt), wallTemperatureC: { value: 23, basis: 'measured' }, noseHold: 'slung', ...spec.job }),
    setUp({ fallRatio, crossFallRatio: 0 }),
    run({ surfaces: ['grass'] }),
    { ...machine, figures: { ...machine.figures, jawHeightM: { value: inch(bopIn) + odM / 2, basis: 'plate' } } },
    ...(infeed === 'rack' ? [item('rack', 'rack:1', onRun(ft(rackFt)))] : infeed === 'none' ? [] : stands(infeed.map((atFt) => [atFt, 0] as const), 'i')),
    ...stands(exits, 'e'),
    ...rollers.map((atFt, i) => item('roller', `roller:${i + 1}`, onRun(ft(atFt)))),
    ...more,
  )
}

export const siteOf = (document: YardDocument): SiteModel => deriveSite(document)
export const mechanicsOf = (document: YardDocument): Mechanics => createMechanics(deriveSite(document), limitsOf(document))

export function runOne(check: CheckDefinition, document: YardDocument): readonly Finding[] {
  const site = deriveSite(document)
  const limits = limitsOf(document)
  const tools: CheckTools = { limits, mechanics: createMechanics(site, limits), owned: null }
  return check.run(site, tools)
}

/** Levels of a check's findings by what they are about. */
export const levelsOf = (check: CheckDefinition, document: YardDocument): Record<string, string> =>
  Object.fromEntries(runOne(check, document).map(({ key, level, isUnknown }) => [key.includes('@') ? key.slice(key.indexOf('@') + 1) : 'all', isUnknown ? `${level}?` : level]))

/** Thin and narrow spaces as plain ones, so that expected texts can be typed. */
const plain = (text: string): string => text.replace(/[\u2009\u202f]/g, ' ')
export const textOf = (finding: Finding, language: 'en' | 'es' = 'en'): string => plain(renderText(finding.what.text, finding.what.values ?? {}, { system: 'feetInches', language }))
export const moveOf = (finding: Finding): string => (finding.move === null ? '' : plain(renderText(finding.move.text, finding.move.values ?? {}, { system: 'feetInches', language: 'en' })))

/** A record with one of its figures replaced. */
export function withFigure<R extends YardRecord>(record: R, name: string, value: number | null): R {
  const figures = (record as unknown as { figures: Record<string, unknown> }).figures
  return { ...record, figures: { ...figures, [name]: { value, basis: 'plate' } } }
}

/** The document with one record changed. */
export const changed = (document: YardDocument, id: string, change: (record: YardRecord) => YardRecord): YardDocument => ({ records: { ...document.records, [id]: change(document.records[id]!) } })
