import type { CheckRun, Finding } from '../checks/finding.ts'
import type { FindingRange } from '../checks/ranges/range.ts'
import type { BowAnswer } from '../derive/bowAnswer.ts'
import type { CriticalRanking } from '../derive/critical.ts'

/**
 * What can be asked of the worker beside the checks of what is shown: by name, with plain arguments and a plain answer.
 * A new question is one entry here and one in app/answers.ts; it may take long, the next check waits for it.
 */
export interface Questions {
  /** What a finding measures as a band; null where it has none. */
  range: { args: { finding: Finding }; answer: FindingRange | null }
  /** All findings of the case named with the question. */
  findings: { args: null; answer: CheckRun }
  /** Bowed sticks of the job turned like this, and every other turn. */
  bow: { args: { turnRad: number }; answer: BowAnswer }
  /** Each support near the jaws missing, and lower by this much (m, > 0), in turn. */
  critical: { args: { sinkM: number }; answer: CriticalRanking }
}
export type QuestionName = keyof Questions
export interface Question<Name extends QuestionName> {
  name: Name
  args: Questions[Name]['args']
}
export type AnyQuestion = { [Name in QuestionName]: Question<Name> }[QuestionName]
