import type { CheckRun } from '../checks/finding.ts'

/**
 * What can be asked of the worker beside the checks of what is shown: by name, with plain arguments and a plain answer.
 * A new question is one entry here and one in app/answers.ts; it may take long, the next check waits for it.
 */
export interface Questions {
  /** All findings of the case named with the question. */
  findings: { args: null; answer: CheckRun }
}
export type QuestionName = keyof Questions
export interface Question<Name extends QuestionName> {
  name: Name
  args: Questions[Name]['args']
}
export type AnyQuestion = { [Name in QuestionName]: Question<Name> }[QuestionName]
