import { atRun, defineCheck, finding, mechanics as mechanicsSource, q, say } from '../make.ts'
import type { Localized } from '../../messages/localized.ts'
import { bodySolverOf } from '../../derive/bodies.ts'

/** What the solver's reason means on site. */
const reasonOf = (reason: string): Localized =>
  reason.includes('below the ground') ? { en: 'the jaws or the nose would lie below the ground', es: 'las mordazas o la punta quedarían bajo el suelo' } : { en: reason, es: reason }

export const notSettled = defineCheck({
  id: 'not-settled',
  title: { en: 'Pipe that could not be worked out', es: 'Tubo que no se pudo calcular' },
  cost: 'slow',
  run: (site, { mechanics }) => {
    // The other checks ask for their solves first; these two make sure that there are some.
    mechanics.solvedJoints()
    mechanics.arrivals()
    return bodySolverOf(site).unsettled().slice(0, 3).map(({ body, result }) => finding('not-settled', {
      about: `${body.startM.toFixed(3)}-${body.endM.toFixed(3)}-${body.infeedJaws}-${body.exitJaws}`,
      level: 'CHECK',
      source: mechanicsSource('jaws'),
      where: atRun(Math.max(body.startM, Math.min(0, body.endM)), null),
      what: result.status === 'notConverged'
        ? say('The pipe, {from} to {to}, did not settle; {residual} is left.', 'El tubo, {from} a {to}, no convergió; quedan {residual}.', { from: { runningM: body.startM }, to: { runningM: body.endM }, residual: q('shortLength', result.residual ?? 0) })
        : say('The pipe, {from} to {to}, could not be worked out: {reason}.', 'El tubo, {from} a {to}, no se pudo calcular: {reason}.', { from: { runningM: body.startM }, to: { runningM: body.endM }, reason: reasonOf(result.reason ?? result.status) }),
      move: say('Judge the supports there on site.', 'Juzgue esos apoyos en el sitio.'),
    }))
  },
})
