/** A finding as a band: low, likely and high of what it measures, by what nobody knows better than within a factor. */
import { createMechanics } from '../../derive/mechanics.ts'
import { deriveSite } from '../../derive/site.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { DeriveOptions, WhatIf } from '../../derive/whatIf.ts'
import { jobOf, type YardDocument } from '../../scene/document.ts'
import type { GearItem } from '../../scene/gear.ts'
import type { QuantityKind } from '../../units/quantity.ts'
import { levelOrder, type CheckDefinition, type CheckTools, type Finding, type Level } from '../finding.ts'
import { limitsOf } from '../limits.ts'
import { checks } from '../registry.ts'

/** What a figure is uncertain by. */
export type RangeCause = 'friction' | 'modulus' | 'temperature'

export interface RangeDefinition {
  checkId: string
  by: readonly RangeCause[]
  /** What the finding measures on another case of its layout, SI; left out: what the same finding measures there. Null: cannot be told. */
  valueIn?: (finding: Finding, site: SiteModel, tools: CheckTools) => number | null
}

/** Plain JSON: survives a message from the worker. */
export interface FindingRange {
  kind: QuantityKind
  /** SI; low ≤ likely ≤ high. */
  low: number
  likely: number
  high: number
  limit: number | null
  /** Best and worst level the check gives within the band. */
  best: Level
  worst: Level
  by: readonly RangeCause[]
}

/**
 * The cases solved. Soft and dragging: friction high, modulus low, wall hot. Stiff and sliding: friction low, modulus high,
 * wall cold. A lower modulus and a hotter wall work the same way, a softer string also lies on more ground: the two are
 * the ends for pull, run-away, droop, sag and growth. Efforts and loads at supports that lift off need not be monotone
 * between them; the band is the least and most of the three solves, nothing is searched (docs/formulas/ranges.md).
 */
export const rangeCases = {
  soft: { friction: 'high', modulus: 'low', temperature: 'high' },
  likely: { friction: 'likely', modulus: 'likely', temperature: 'likely' },
  stiff: { friction: 'low', modulus: 'high', temperature: 'low' },
} as const satisfies Record<string, WhatIf>

/** A band narrower than this share of its figure says no more than the figure. */
const NARROWEST = 0.02

/**
 * Band of a finding in the case shown; null where the check has none, an input is missing, or the band is narrower than 2 %.
 *
 * Cost: three derivations and three runs of the one check.
 */
export function rangeOf(document: YardDocument, shown: DeriveOptions, finding: Finding, definitions: readonly RangeDefinition[], owned: readonly GearItem[] | null = null): FindingRange | null {
  const definition = definitions.find(({ checkId }) => checkId === finding.checkId)
  const check = checks.find(({ id }) => id === finding.checkId)
  const { measured, limit } = finding
  if (definition === undefined || check === undefined || measured === null || measured.value === null || finding.isUnknown) return null
  const solved = Object.values(rangeCases).map((part) => solveCase(document, { ...shown, whatIf: { ...shown.whatIf, ...part } }, { finding, definition, check, owned }))
  const values = solved.map(({ value }) => value)
  if (values.some((value) => value === null || !Number.isFinite(value))) return null
  const [soft, likely, stiff] = values as [number, number, number]
  const [low, high] = [Math.min(soft, likely, stiff), Math.max(soft, likely, stiff)]
  if (high - low <= NARROWEST * Math.max(Math.abs(low), Math.abs(high))) return null
  const levels = solved.map(({ level }) => levelOrder.indexOf(level))
  return {
    kind: measured.kind, low, likely, high, limit: limit?.value ?? null,
    best: levelOrder[Math.max(...levels)]!, worst: levelOrder[Math.min(...levels)]!,
    by: definition.by.filter((cause) => cause !== 'temperature' || hasTemperatureBand(document)),
  }
}

const hasTemperatureBand = (document: YardDocument): boolean => {
  const { wallTemperatureC, temperatureSwingC } = jobOf(document)
  return wallTemperatureC.band !== undefined || temperatureSwingC.band !== undefined
}

interface Wanted {
  finding: Finding
  definition: RangeDefinition
  check: CheckDefinition
  owned: readonly GearItem[] | null
}

function solveCase(document: YardDocument, options: DeriveOptions, { finding, definition, check, owned }: Wanted): { value: number | null; level: Level } {
  const site = deriveSite(document, options)
  const limits = limitsOf(site.document)
  const tools: CheckTools = { limits, mechanics: createMechanics(site, limits), owned }
  const found = check.run(site, tools)
  const same = found.find(({ key }) => key === finding.key)
  const value = definition.valueIn === undefined ? (same?.measured?.value ?? null) : definition.valueIn(finding, site, tools)
  return { value, level: same?.level ?? levelOfOthers(found, finding) }
}

/** In another case the finding may be part of a row or gone: the worst that is said of its items there, else it is met. */
function levelOfOthers(found: readonly Finding[], { itemIds }: Finding): Level {
  const about = found.filter((one) => !one.isUnknown && one.itemIds.some((id) => itemIds.includes(id)))
  return about.reduce<Level>((worst, { level }) => (levelOrder.indexOf(level) < levelOrder.indexOf(worst) ? level : worst), 'met')
}
