import { limitsOf } from '../checks/limits.ts'
import { ranges } from '../checks/ranges/index.ts'
import { rangeOf } from '../checks/ranges/range.ts'
import { runChecks } from '../checks/runner.ts'
import { bowAnswer } from '../derive/bowAnswer.ts'
import { criticalSupports } from '../derive/critical.ts'
import { createMechanics } from '../derive/mechanics.ts'
import { deriveSite } from '../derive/site.ts'
import type { ShownCase } from '../derive/whatIf.ts'
import type { YardDocument } from '../scene/document.ts'
import type { OwnedGear } from '../state/checkClient.ts'
import type { Question, QuestionName, Questions } from '../state/questions.ts'

/** What a question is about. */
export interface Asked {
  document: YardDocument
  shownCase: ShownCase
  owned: OwnedGear
}

type Answers = { readonly [Name in QuestionName]: (asked: Asked, args: Questions[Name]['args']) => Questions[Name]['answer'] }

const answers: Answers = {
  range: ({ document, shownCase, owned }, { finding }) => rangeOf(document, shownCase, finding, ranges, owned),
  findings: ({ document, shownCase, owned }) => runChecks(deriveSite(document, shownCase), { owned }),
  bow: ({ document, shownCase }, { turnRad }) => bowAnswer(deriveSite(document, shownCase), limitsOf(document), turnRad),
  critical: ({ document, shownCase }, { sinkM }) => {
    const limits = limitsOf(document)
    const mechanics = createMechanics(deriveSite(document, shownCase), limits)
    return criticalSupports(mechanics.site, limits, mechanics, sinkM)
  },
}

/** Runs in the worker. */
export const answerTo = <Name extends QuestionName>({ name, args }: Question<Name>, asked: Asked): unknown => answers[name](asked, args)
