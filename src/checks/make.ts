/** Small builders the checks share: findings, sentences, sources, lists of labels. */
import { brokenBound, type Limit } from '../engine/limits.ts'
import type { SiteModel, SupportView } from '../derive/types.ts'
import { kindOf } from '../scene/kinds/index.ts'
import type { Phase } from '../scene/parts.ts'
import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'
import type { Quantity, QuantityKind } from '../units/quantity.ts'
import type { CheckDefinition, Finding, Level, Remedy, Sentence, Source } from './finding.ts'

export const defineCheck = (definition: CheckDefinition): CheckDefinition => definition

export const q = (kind: QuantityKind, value: number | null): Quantity => ({ kind, value })

export const say = (en: string, es: string, values?: Record<string, TextValue>): Sentence => ({ text: { en, es }, ...(values === undefined ? {} : { values }) })

/** Worked out by statics or the contact beam; the page named holds the formula. */
export const mechanics = (page: string): Source => ({ class: 'mechanics', cite: `mechanics, docs/formulas/${page}.md` })
export const houseRule: Source = { class: 'houseRule', cite: 'common practice, no published source' }
export const plate = (cite: string): Source => ({ class: 'plate', cite })

export interface Draft {
  level: Level
  what: Sentence
  source: Source
  /** What the finding is about within its check; part of its key. */
  about?: string
  items?: readonly string[]
  where?: Finding['where']
  measured?: Quantity
  limit?: Quantity
  /** Whether the limit is the most or the least allowed; gives the sign of the margin. */
  bound?: 'most' | 'least'
  phases?: readonly Phase[]
  joints?: readonly number[]
  move?: Sentence
  remedy?: Remedy | null
  missing?: Finding['missing']
}

/** A finding from the parts that matter; everything else is null or empty. Missing input makes it unknown, level CHECK. */
export function finding(checkId: string, draft: Draft): Finding {
  const { measured = null, limit = null, bound = 'most' } = draft
  const canCompare = measured !== null && limit !== null && measured.value !== null && limit.value !== null
  const margin = canCompare ? q(measured.kind, bound === 'most' ? limit.value! - measured.value! : measured.value! - limit.value!) : null
  const missing = draft.missing ?? []
  return {
    checkId,
    key: draft.about === undefined ? checkId : `${checkId}@${draft.about}`,
    level: missing.length > 0 ? 'CHECK' : draft.level,
    isUnknown: missing.length > 0,
    missing,
    itemIds: draft.items ?? [],
    where: draft.where ?? null,
    what: draft.what,
    measured, limit, margin,
    source: draft.source,
    phases: draft.phases ?? [],
    ...(draft.joints === undefined ? {} : { joints: draft.joints }),
    move: draft.move ?? null,
    remedy: draft.remedy ?? null,
  }
}

/** Level of a value against a limit: FIX, CHECK or met. */
export const levelFor = (limit: Limit, value: number): Level => {
  const broken = brokenBound(limit, value)
  return broken === 'fix' ? 'FIX' : broken === 'check' ? 'CHECK' : 'met'
}

/** Load as a share of what a plate allows; a plate that allows nothing (0 or less) is broken by any load. */
export const shareOfPlate = (loadN: number, plateN: number): number => (plateN > 0 ? loadN / plateN : loadN > 0 ? Number.MAX_VALUE : 0)

/** The bound a finding of that level is held against: FIX its own, everything else the first that is given. */
export const boundFor = (limit: Limit, level: Level): number | null => (level === 'FIX' ? (limit.fix ?? limit.check) : (limit.check ?? limit.fix))

export const atRun = (runningM: number, levelM: number | null = null, offsetM = 0): Finding['where'] => ({ at: 'run', runningM, levelM, offsetM })
export const atSupport = (support: SupportView): Finding['where'] => atRun(support.runningM, support.levelM, support.offsetM)
export const atJaws = (site: SiteModel): Finding['where'] => atRun(0, site.jaws.bopLevelM)
export const atPoint = (xM: number, yM: number): Finding['where'] => ({ at: 'site', xM, yM })

/** Ids of the machine, where there is one. */
export const machineIds = (site: SiteModel): string[] => (site.jaws.machineId === null ? [] : [site.jaws.machineId])

/** Names as a list: 'E1', 'E1 and E2', 'E1, E2 and E3'; more than `most` are cut short by their count. */
export function listOf(names: readonly (string | Localized)[], most = 4): Localized {
  const inLanguage = (language: 'en' | 'es', and: string, more: (count: number) => string): string => {
    const texts = names.map((name) => (typeof name === 'string' ? name : name[language]))
    if (texts.length <= 1) return texts[0] ?? ''
    if (texts.length > most) return `${texts.slice(0, most - 1).join(', ')} ${and} ${more(texts.length - most + 1)}`
    return `${texts.slice(0, -1).join(', ')} ${and} ${texts.at(-1)}`
  }
  return { en: inLanguage('en', 'and', (count) => `${count} more`), es: inLanguage('es', 'y', (count) => `${count} más`) }
}

/** Labels of supports in one stretch: 'E4', 'E4 and E5', 'G2 to G14'. */
export function stretchOf(supports: readonly SupportView[]): Localized {
  const labels = supports.map(({ label }) => label)
  if (labels.length <= 2) return listOf(labels)
  return { en: `${labels[0]} to ${labels.at(-1)}`, es: `${labels[0]} a ${labels.at(-1)}` }
}

/** Neighbours that share a verdict, in runs, so that a row of two hundred rollers gives one finding. Order is kept. */
export function inRuns<T>(all: readonly T[], isSame: (a: T, b: T) => boolean): T[][] {
  const runs: T[][] = []
  for (const one of all) {
    const open = runs.at(-1)
    const before = open?.at(-1)
    if (open !== undefined && before !== undefined && isSame(before, one)) open.push(one)
    else runs.push([one])
  }
  return runs
}

/** What an item is called in a sentence: its label, else its own name, else the name of its kind. */
export function nameOf(site: SiteModel, id: string): Localized {
  const item = site.placed.get(id)
  const own = item !== undefined && 'name' in item.record ? item.record.name : ''
  if (own !== '') return { en: own, es: own }
  const kind = kindOf(item?.kind ?? '')?.name ?? { en: 'item', es: 'elemento' }
  return item === undefined || item.label === '' ? kind : { en: `${kind.en} ${item.label}`, es: `${kind.es} ${item.label}` }
}

/** Rounded down to what a crew sets by tape: 6 in, or 0.1 m. */
export function downToTapeM(site: SiteModel, lengthM: number): number {
  const stepM = site.layout.displayUnits === 'feetInches' ? 0.1524 : 0.1
  return Math.floor(lengthM / stepM + 1e-9) * stepM
}
