/** What is missing is asked for once: one finding a kind of gear, not one a check that needs it. */
import type { Finding } from './finding.ts'

const KIND_CHECK = 'missing-inputs'
const nameOf = ({ recordId, path }: Finding['missing'][number]): string => `${recordId} ${path}`

/**
 * Findings without those that only repeat a question: every input they miss is already asked for by the check that
 * gathers missing inputs by kind, and they offer no remedy of their own. STOP findings are not questions and stay.
 */
export function askedOnce(findings: readonly Finding[]): Finding[] {
  const asked = new Set(findings.filter(({ checkId }) => checkId === KIND_CHECK).flatMap(({ missing }) => missing.map(nameOf)))
  return findings.filter(({ checkId, isUnknown, missing, remedy }) => !isUnknown || checkId === KIND_CHECK || remedy !== null || !missing.every((one) => asked.has(nameOf(one))))
}
