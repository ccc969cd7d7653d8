import { stickPlan } from '../../engine/pipe/stickPlan.ts'
import { recordsOf } from '../../scene/document.ts'
import type { Sentence } from '../finding.ts'
import { atRun, defineCheck, finding, mechanics, q, say } from '../make.ts'
import type { SiteModel } from '../../derive/types.ts'

/** One stick fewer is only worth a word where it falls short by this little: the surprise on site. */
const NEARLY_ENOUGH_M = 0.9144

export const sticksLength = defineCheck({
  id: 'sticks-length',
  title: { en: 'Sticks and length', es: 'Tubos y largo' },
  cost: 'quick',
  run: (site) => {
    const { plan, stickLengthM, jointLossM } = site.sticks
    if (plan === null || stickLengthM === null || jointLossM === null) return []
    const common = { source: mechanics('sticks'), measured: q('length', plan.madeLengthM), limit: q('length', plan.wantedLengthM), bound: 'least' as const, where: atRun(plan.madeLengthM) }
    const values = { sticks: plan.sticks, stick: q('length', stickLengthM), made: q('length', plan.madeLengthM), wanted: q('length', plan.wantedLengthM) }
    if (plan.isShort) {
      const enough = stickPlan({ neededLengthM: plan.wantedLengthM, tailsM: 0, stickLengthM, jointLossM })
      const sticks = enough.status === 'ok' ? enough.value.sticks : plan.sticks + 1
      const made = enough.status === 'ok' ? enough.value.madeLengthM : 0
      return [finding('sticks-length', {
        ...common,
        level: 'FIX',
        what: say('{sticks} sticks of {stick} come up {short} short of {wanted}.', '{sticks} tubos de {stick} quedan {short} cortos para {wanted}.', { ...values, short: q('length', -plan.overM) }),
        move: say('Take {enough} sticks: they make {madeEnough}.', 'Lleve {enough} tubos: dan {madeEnough}.', { enough: sticks, madeEnough: q('length', made) }),
        // A count that is short was fixed by hand; worked out it never is.
        remedy: site.setUp === null ? null : { command: 'setStickCount', args: { stickCount: null, setUpId: site.setUp.id }, label: say('Work out the number of sticks', 'Calcular el número de tubos') },
      })]
    }
    return [finding('sticks-length', {
      ...common,
      level: 'NOTE',
      what: say('{sticks} sticks make {made}, {over} over {wanted}: cut to suit.', '{sticks} tubos dan {made}, {over} más que {wanted}: corte a la medida.', { ...values, over: q('length', plan.overM) }),
      ...moveFor(site),
    })]
  },
})

/** What one stick fewer would give, and what other sticks would. */
function moveFor(site: SiteModel): { move?: Sentence } {
  const { plan } = site.sticks
  const other = plan?.alternatives[0]
  if (other !== undefined) {
    return { move: say('With sticks of {other}: {count} make {made}, {over} over.', 'Con tubos de {other}: {count} dan {made}, {over} de más.', { other: q('length', other.stickLengthM), count: other.sticks, made: q('length', other.madeLengthM), over: q('length', other.overM) }) }
  }
  const decided = recordsOf(site.document, 'string')[0]?.stickCount ?? null
  if (plan === null || plan.oneFewer === null || decided !== null) return {}
  const { sticks, shortM } = plan.oneFewer
  if (shortM > NEARLY_ENOUGH_M) return {}
  return { move: say('{sticks} would come up {short} short.', '{sticks} quedarían {short} cortos.', { sticks, short: q('length', shortM) }) }
}
