import { runChecks } from '../checks/runner.ts'
import { deriveSite } from '../derive/site.ts'
import type { ShownCase } from '../derive/whatIf.ts'
import type { YardDocument } from '../scene/document.ts'
import type { OwnedGear } from '../state/checkClient.ts'
import type { AnyQuestion, QuestionName, Questions } from '../state/questions.ts'

/** What a question is about. */
export interface Asked {
  document: YardDocument
  shownCase: ShownCase
  owned: OwnedGear
}

type Answers = { readonly [Name in QuestionName]: (asked: Asked, args: Questions[Name]['args']) => Questions[Name]['answer'] }

const answers: Answers = {
  findings: ({ document, shownCase, owned }) => runChecks(deriveSite(document, shownCase), { owned }),
}

/** Runs in the worker. */
export const answerTo = ({ name, args }: AnyQuestion, asked: Asked): unknown => answers[name](asked, args)
