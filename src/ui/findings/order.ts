import { levelOrder, type CheckRun, type Finding, type Level } from '../../checks/finding.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { Phase } from '../../scene/parts.ts'

export interface NumberedFinding {
  number: number
  finding: Finding
}

/** Open findings in the order they are read: STOP, FIX, CHECK, NOTE, each in the order of the checks. Missing input and what is met are listed apart. */
export const numberedFindings = (run: CheckRun | null): readonly NumberedFinding[] => {
  const open = (run?.findings ?? []).filter((finding) => finding.level !== 'met' && !finding.isUnknown)
  return levelOrder.flatMap((level) => open.filter((finding) => finding.level === level)).map((finding, at) => ({ number: at + 1, finding }))
}

export const metFindings = (run: CheckRun | null): readonly Finding[] => (run?.findings ?? []).filter(({ level }) => level === 'met')
export const unknownFindings = (run: CheckRun | null): readonly Finding[] => (run?.findings ?? []).filter(({ isUnknown }) => isUnknown)

/** Each missing field once, in the order first named. */
export const missingFields = (findings: readonly Finding[]): readonly MissingInput[] => {
  const seen = new Map<string, MissingInput>()
  for (const { missing } of findings) for (const input of missing) if (!seen.has(`${input.recordId}|${input.path}`)) seen.set(`${input.recordId}|${input.path}`, input)
  return [...seen.values()]
}

const worse = (a: Level | null, b: Level): Level => (a === null || levelOrder.indexOf(b) < levelOrder.indexOf(a) ? b : a)

/** Worst open level, null when nothing is open. Missing input counts as the CHECK it is. */
export const worstLevel = (findings: readonly Finding[]): Level | null => {
  const worst = findings.reduce<Level | null>((found, { level }) => worse(found, level), null)
  return worst === 'met' ? null : worst
}

/** Worst open level of a phase; a finding that names no phase belongs to all. */
export const worstOfPhase = (run: CheckRun | null, phase: Phase): Level | null =>
  worstLevel((run?.findings ?? []).filter((finding) => !finding.isUnknown && (finding.phases.length === 0 || finding.phases.includes(phase))))

/** Worst open level by item. */
export const levelByItem = (run: CheckRun | null): ReadonlyMap<string, Level> => {
  const found = new Map<string, Level>()
  for (const { level, itemIds, isUnknown } of run?.findings ?? []) {
    if (level === 'met' || isUnknown) continue
    for (const id of itemIds) found.set(id, worse(found.get(id) ?? null, level))
  }
  return found
}
