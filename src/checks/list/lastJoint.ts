import { clockOf } from '../../derive/clock.ts'
import { jobClock, type JobClock } from '../../engine/clock/jobClock.ts'
import { minuteS } from '../../units/factors.ts'
import { timeText } from '../../units/timeOfDay.ts'
import { defineCheck, finding, houseRule, q, say } from '../make.ts'

const ID = 'last-joint'
/** From this many days on the work is planned by days, and nobody means to end it tonight. */
const BY_DAYS = 3

export const lastJoint = defineCheck({
  id: ID,
  title: { en: 'Last joint against the end of the day', es: 'Última junta y fin de la jornada' },
  cost: 'quick',
  run: (site) => {
    const { startMin, endMin, breaks } = site.job.clock
    if (endMin === null) return []
    const { joints, steps, likely, high, missing } = clockOf(site)
    if (joints === 0 || site.job.stickLengthM === null) return []
    const common = { items: [site.job.id].filter((id) => site.placed.has(id)), source: houseRule, phases: ['fuse', 'pull'] as const }
    if (missing.length > 0 || steps === null || startMin === null) {
      return [finding(ID, { ...common, level: 'CHECK', missing, what: say('Whether the last joint is done by {end} is not known.', 'No se sabe si la última junta queda lista a las {end}.', { end: timeText(endMin) }), move: say('Give start of work and pipe.', 'Dé el inicio del trabajo y el tubo.') })]
    }
    if (likely === null || high === null || endMin <= startMin) return []
    const through = (which: 'likelyS' | 'highS'): number => doneMin(jobClock({ joints, steps, which, startMin, endMin: null, breaks }))
    const [likelyMin, highMin] = [through('likelyS'), through('highS')]
    const fits = likely.rows.filter(({ day }) => day === 0).length
    const values = { joints, end: timeText(endMin), start: timeText(startMin), done: timeText(likelyMin), late: timeText(highMin), fits, days: likely.days, last: timeText(likely.lastStartMin ?? endMin), over: q('duration', (likelyMin - endMin) * minuteS) }
    const measures = { measured: q('duration', (likelyMin - startMin) * minuteS), limit: q('duration', (endMin - startMin) * minuteS) }
    if (likely.isTooLong) return [finding(ID, { ...common, ...measures, level: 'CHECK', about: 'none', what: say('Between {start} and {end} not one joint fits.', 'Entre {start} y {end} no cabe ni una junta.', values), move: say('Ask for longer hours.', 'Pida más horas.') })]
    if (likelyMin > endMin && likely.days >= BY_DAYS) return [finding(ID, { ...common, ...measures, level: 'NOTE', about: 'days', what: say('{joints} joints take {days} days from {start} to {end}, {fits} on the first; take up no stick after {last}.', '{joints} juntas piden {days} días de {start} a {end}, {fits} el primero; no tome otro tubo después de las {last}.', values), move: say('Tether and plug the string each night.', 'Sujete y tape la sarta cada noche.') })]
    if (likelyMin > endMin) return [finding(ID, { ...common, ...measures, level: 'CHECK', about: 'late', what: say('The last of {joints} joints cools at {done}, {over} after the end of the day at {end}; {fits} are done by then.', 'La última de {joints} juntas enfría a las {done}, {over} después del fin de jornada a las {end}; para entonces van {fits}.', values), move: say('Start earlier, stop after {fits} with no stick taken up after {last}, or ask for longer hours.', 'Empiece antes, pare tras {fits} sin tomar otro tubo después de las {last}, o pida más horas.', values) })]
    if (highMin > endMin) return [finding(ID, { ...common, ...measures, level: 'NOTE', about: 'slow', what: say('The last joint cools at {done}; where all goes slowly at {late}, after the end of the day at {end}.', 'La última junta enfría a las {done}; si todo va lento a las {late}, después del fin de jornada a las {end}.', values), move: say('Take up no stick after {last}.', 'No tome otro tubo después de las {last}.', values) })]
    return [finding(ID, { ...common, ...measures, level: 'met', what: say('The last joint cools at {done}, before the end of the day at {end}.', 'La última junta enfría a las {done}, antes del fin de jornada a las {end}.', values) })]
  },
})

const doneMin = ({ rows }: JobClock): number => rows.at(-1)?.cooledMin ?? 0
