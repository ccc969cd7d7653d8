import { atRun, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'

/** Tape rounding at the last vertex. */
const SLACK_M = 0.01

export const beyondRun = defineCheck({
  id: 'beyond-run',
  title: { en: 'Gear beyond the end of the pull path', es: 'Equipo más allá del recorrido' },
  cost: 'quick',
  run: (site) => {
    const end = site.run?.vertices.at(-1)
    // A path without vertices is the axis itself and has no end.
    if (site.run === null || end === undefined) return []
    const endM = site.toRunning(end.xM, end.yM).runningM
    const runId = site.run.id
    const beyond = [...site.placed.values()].filter(({ record, runningM }) => 'place' in record && record.place.at === 'onRun' && record.place.runId === runId && runningM !== null && runningM > endM + SLACK_M)
    const [first] = beyond
    if (first === undefined) return []
    const farthestM = Math.max(...beyond.map(({ runningM }) => runningM!))
    return [finding('beyond-run', {
      level: 'CHECK',
      measured: q('length', farthestM),
      limit: q('length', endM),
      source: houseRule,
      phases: ['setUp'],
      where: atRun(first.runningM!, null, first.offsetM ?? 0),
      items: beyond.map(({ id }) => id),
      what: say('{labels}: beyond the end of the pull path, which is carried on straight there.', '{labels}: más allá del fin del recorrido, que ahí sigue recto.', { labels: listOf(beyond.map(({ label, kind }) => (label === '' ? kind : label))) }),
      move: say('Draw the path on, or bring them back.', 'Prolongue el recorrido o acérquelos.'),
    })]
  },
})
