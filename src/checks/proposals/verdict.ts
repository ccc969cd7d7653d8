/** What a proposal would clear and raise: its findings against those of the layout as it is. */
import { levelOrder, type CheckRun, type Finding, type Level } from '../finding.ts'
import type { FindingLine } from './types.ts'

const judged: readonly Level[] = ['STOP', 'FIX', 'CHECK']
/**
 * What no arrangement of supports can answer: plates and levels nobody has read. They are told apart from what a layout raises, as the
 * notes do.
 */
const ofInput: ReadonlySet<string> = new Set(['ground-guessed', 'missing-inputs', 'typical-figures'])

/** Unknowns that supports do answer: ground nobody has named does not matter once nothing lies on it. */
const answeredBySupports: ReadonlySet<string> = new Set(['surface-scuff'])

const lineOf = ({ key, checkId, level, what }: Finding): FindingLine => ({ key, checkId, level, what })
const isJudged = ({ level }: Finding): boolean => judged.includes(level)
const isInput = ({ isUnknown, checkId }: Finding): boolean => isUnknown || ofInput.has(checkId)

export interface Verdict {
  clears: FindingLine[]
  raises: Finding[]
  toConfirm: FindingLine[]
}

/** Findings are the same while key and check are; one that got worse counts as raised, one that got better as cleared. */
export function verdictOf(before: CheckRun, after: CheckRun): Verdict {
  const rank = (level: Level): number => levelOrder.indexOf(level)
  const was = new Map(before.findings.map((one) => [one.key, one]))
  const is = new Map(after.findings.map((one) => [one.key, one]))
  const worse = after.findings.filter((one) => isJudged(one) && rank(one.level) < rank(was.get(one.key)?.level ?? 'met'))
  const better = before.findings.filter((one) => isJudged(one) && (!isInput(one) || answeredBySupports.has(one.checkId)) && rank(is.get(one.key)?.level ?? 'met') > rank(one.level))
  return { clears: better.map(lineOf), raises: worse.filter((one) => !isInput(one)), toConfirm: worse.filter(isInput).map(lineOf) }
}
