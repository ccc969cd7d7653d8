import { surfaceRows } from '../../engine/pipe/tables.ts'
import type { GroundStretch } from '../../derive/groundStretches.ts'
import { stringPullOf } from '../../derive/stringPull.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Finding } from '../finding.ts'
import { atRun, defineCheck, finding, houseRule, q, say } from '../make.ts'

const ID = 'surface-scuff'

export const surfaceScuff = defineCheck({
  id: ID,
  title: { en: 'String dragged on the ground', es: 'Sarta arrastrada en el suelo' },
  cost: 'slow',
  run: (site) => {
    const { ground, missing } = stringPullOf(site)
    if (missing.length > 0 || site.run === null || site.job.method === 'walking') return []
    if (ground.length === 0) return [finding(ID, { level: 'met', source: houseRule, phases: ['pull'], what: say('The string lies on supports all along.', 'La sarta va sobre apoyos en todo el recorrido.') })]
    const unsaid = ground.filter(({ surface }) => surface === null)
    const scuffing = ground.filter(({ surface }) => surfaceRows.find(({ id }) => id === surface)?.scuffs === true)
    const found: Finding[] = []
    if (unsaid.length > 0) {
      found.push(finding(ID, {
        level: 'CHECK', about: 'unknown', missing: [{ recordId: site.run.id, path: 'surfaces', label: { en: 'surface under the pull path', es: 'superficie bajo el recorrido' } }], source: houseRule, phases: ['pull'], where: atRun(unsaid[0]!.fromM),
        what: say('From {from} to {to} the string lies on ground nobody has named.', 'De {from} a {to} la sarta va sobre un suelo que nadie ha nombrado.', ends(unsaid)),
        move: say('Say what it is.', 'Diga qué es.'),
      }))
    }
    if (scuffing.length > 0) found.push(dragged(site, scuffing))
    return found.length > 0 ? found : [finding(ID, { level: 'met', source: houseRule, phases: ['pull'], where: atRun(ground[0]!.fromM), what: say('Where the string lies on the ground, the surface does not score it.', 'Donde la sarta va en el suelo, la superficie no la raya.') })]
  },
})

const ends = (stretches: readonly GroundStretch[]) => ({ from: { runningM: stretches[0]!.fromM }, to: { runningM: stretches.at(-1)!.toM } })

function dragged(site: SiteModel, scuffing: readonly GroundStretch[]): Finding {
  const lengthM = scuffing.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0)
  const surface = surfaceRows.find(({ id }) => id === scuffing[0]!.surface)!.title
  const wallM = site.pipe.properties?.tenthOfWallM ?? null
  return finding(ID, {
    level: 'CHECK', about: 'dragged', measured: q('length', lengthM), limit: q('length', 0), source: { class: 'houseRule', cite: 'common practice, no published source; reject at a tenth of the wall: PPI Handbook of Polyethylene Pipe, from memory, confirm', fromMemory: true },
    phases: ['pull'], where: atRun(scuffing[0]!.fromM), items: site.run === null ? [] : [site.run.id],
    what: say('From {from} to {to} the string drags on {surface}, which scores it.', 'De {from} a {to} la sarta se arrastra sobre {surface}, que la raya.', { ...ends(scuffing), surface }),
    move: say('Put rollers or mats under it, the nose on a sled; a score deeper than {depth} is cut out.', 'Ponga rodillos o tapetes, y la punta en trineo; un rayón de más de {depth} se corta.', { depth: q('shortLength', wallM) }),
  })
}
