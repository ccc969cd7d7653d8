import type { CheckRun, Finding } from '../../checks/finding.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import type { LevelName } from '../../drawing/levelShapes.ts'
import type { Localized } from '../../messages/localized.ts'
import { formatRunning, formatQuantity, type FormatOptions } from '../../units/format.ts'
import { openFindings } from '../plan/findings.ts'
import type { FlagTarget } from '../tools/flagDrag.ts'

/** One flag: what hangs on the tape at a running distance. */
export interface TapeFlag extends FlagTarget {
  kind: 'support' | 'jaws' | 'nose' | 'puller'
  /** Distance in the style of a tape, without sign. */
  distance: string
  level: LevelName | null
  /** Part of a proposal that is shown beside the present: drawn broken in teal, not to be taken hold of. */
  isProposal?: boolean
  /** The worst finding's sentence, for those who hear the flag instead of seeing it. */
  finding: Finding | null
}

const MOST_TEXTS = 4000
const texts = new Map<string, string>()
/** Words worked out once: in a drag all flags but one say what they said the frame before. */
const remembered = (key: string, make: () => string): string => {
  const known = texts.get(key)
  if (known !== undefined) return known
  if (texts.size >= MOST_TEXTS) texts.clear()
  const text = make()
  texts.set(key, text)
  return text
}

/** Tape style without what a tape does not say: `25'`, `12' 6"`, `319' 6"`; metric `7.62`. */
export const flagDistance = (runningM: number, reader: Pick<FormatOptions, 'system' | 'language'>): string =>
  remembered(`${reader.system}|${reader.language}|${runningM}`, () => tapeDistance(runningM, reader))

const tapeDistance = (runningM: number, { system, language }: Pick<FormatOptions, 'system' | 'language'>): string => {
  const text = formatQuantity({ kind: 'length', value: Math.abs(runningM) }, { system, language, style: 'tape' })
  return system === 'metric' ? text.replace(/\s?m$/u, '') : text.replace(/' 0"$/u, "'").replace(/^0"$/u, '0')
}

const words = {
  jaws: { en: 'jaws', es: 'mordazas' },
  nose: { en: 'nose', es: 'punta' },
} as const satisfies Record<string, Localized>

/** Worst open finding of each record, and of places on the run without a record. */
const worstByItem = (run: CheckRun | null): ReadonlyMap<string, Finding> => {
  const worst = new Map<string, Finding>()
  // In reading order, so the first of a record is its worst.
  for (const finding of openFindings(run)) for (const id of finding.itemIds) if (!worst.has(id)) worst.set(id, finding)
  return worst
}

/** The nose lies where the sticks bring it: to the inch or centimetre is near enough for a flag. */
const roughly = (valueM: number, { system }: Pick<FormatOptions, 'system'>): number => (system === 'metric' ? valueM : Math.round(valueM / 0.0254) * 0.0254)

const NEAR_BEAM_M = 0.6

/** Flags of everything that stands on the run, in order along it: supports, jaws, nose as the string lies, pullers. */
export const tapeFlags = (site: SiteModel, profile: SectionProfile, run: CheckRun | null, reader: Pick<FormatOptions, 'system' | 'language'>, hiddenKinds: readonly string[] = []): TapeFlag[] => {
  if (site.setUp === null) return []
  const worst = worstByItem(run)
  const open = openFindings(run)
  const flags: TapeFlag[] = site.supports
    .filter(({ kind }) => !hiddenKinds.includes(kind))
    .map((support) => {
      // A rack has a flag a beam: a finding about a place belongs to the nearer beam.
      const own = support.kind === 'rack'
        ? (open.find(({ itemIds, where }) => itemIds.includes(support.itemId) && (where?.at !== 'run' || Math.abs(where.runningM - support.runningM) < NEAR_BEAM_M || !site.supports.some((s) => s.itemId === support.itemId && s !== support && Math.abs(where.runningM - s.runningM) < Math.abs(where.runningM - support.runningM)))) ?? null)
        : (worst.get(support.itemId) ?? null)
      return flag(support.key, support.itemId, support.label, support.runningM, own, reader, { kind: 'support', canSlide: true, saddleM: support.saddleM, jawLineSaddleM: support.jawLineSaddleM, isLocked: support.locked })
    })
  const { machineId } = site.jaws
  if (!hiddenKinds.includes('machine') && machineId !== null) {
    // Sliding the machine would carry the datum and all that hangs on it: that is done on the plan, not by its flag.
    flags.push(flag('jaws', machineId, words.jaws[reader.language], 0, worst.get(machineId) ?? null, reader, { kind: 'jaws', canSlide: false }))
  }
  if (profile.tipM !== null && profile.bodies.length > 0) flags.push(flag('nose', null, words.nose[reader.language], profile.tipM, null, reader, { kind: 'nose', canSlide: false, distance: flagDistance(roughly(profile.tipM, reader), reader) }))
  if (!hiddenKinds.includes('puller')) {
    for (const item of site.placed.values()) {
      if (item.kind !== 'puller' || item.runningM === null) continue
      flags.push(flag(item.id, item.id, item.label, item.runningM, worst.get(item.id) ?? null, reader, { kind: 'puller', canSlide: true, isLocked: 'locked' in item.record && item.record.locked }))
    }
  }
  return flags.sort((a, b) => a.runningM - b.runningM)
}

const flag = (key: string, itemId: string | null, label: string, runningM: number, finding: Finding | null, reader: Pick<FormatOptions, 'system' | 'language'>, over: Pick<TapeFlag, 'kind' | 'canSlide'> & Partial<TapeFlag>): TapeFlag => ({
  key, itemId, label, runningM, distance: flagDistance(runningM, reader),
  level: finding === null || finding.level === 'met' ? null : finding.level, finding,
  saddleM: null, jawLineSaddleM: null, isLocked: false, ...over,
})

/** Flags a proposal would add or move, beside those that stand now. */
export const proposedFlags = (now: readonly TapeFlag[], proposed: readonly TapeFlag[]): TapeFlag[] =>
  proposed.flatMap((flag) => {
    const before = now.find(({ key }) => key === flag.key)
    const isSame = before !== undefined && Math.abs(before.runningM - flag.runningM) < 0.001
    return isSame || flag.kind === 'nose' || flag.kind === 'jaws' ? [] : [{ ...flag, key: `proposal ${flag.key}`, itemId: null, canSlide: false, level: null, finding: null, isProposal: true }]
  })

/** What a screen reader says of a flag: number, distance, saddle, level. */
export const flagName = (flag: TapeFlag, options: FormatOptions): string =>
  remembered(`${options.system}|${options.language}|${flag.label}|${flag.runningM}|${flag.saddleM}|${flag.level}`, () => spokenFlag(flag, options))

const spokenFlag = (flag: TapeFlag, options: FormatOptions): string => {
  const saddle = flag.saddleM === null ? '' : `, ${options.language === 'es' ? 'apoyo' : 'saddle'} ${formatQuantity({ kind: 'height', value: flag.saddleM }, options)}`
  return `${flag.label}, ${formatRunning(flag.runningM, options)}${saddle}${flag.level === null ? '' : `, ${flag.level}`}`
}

let shared: { site: SiteModel; profile: SectionProfile; run: CheckRun | null; system: string; language: string; hiddenKinds: readonly string[]; flags: TapeFlag[] } | null = null

/** `tapeFlags` of what is shown, worked out once for tape and side view. */
export const shownFlags = (site: SiteModel, profile: SectionProfile, run: CheckRun | null, reader: Pick<FormatOptions, 'system' | 'language'>, hiddenKinds: readonly string[]): readonly TapeFlag[] => {
  if (shared?.site !== site || shared.profile !== profile || shared.run !== run || shared.system !== reader.system || shared.language !== reader.language || shared.hiddenKinds !== hiddenKinds) {
    shared = { site, profile, run, system: reader.system, language: reader.language, hiddenKinds, flags: tapeFlags(site, profile, run, reader, hiddenKinds) }
  }
  return shared.flags
}
