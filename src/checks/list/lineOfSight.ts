import { thingWords, type SightTarget } from '../../derive/people/mustSee.ts'
import { sightLinesOf, type SightLine } from '../../derive/people/sight.ts'
import type { SiteModel } from '../../derive/types.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Localized } from '../../messages/localized.ts'
import { recordsOf } from '../../scene/document.ts'
import { crewRoles, type CrewRecord } from '../../scene/kinds/crew.ts'
import type { Finding } from '../finding.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, nameOf, q, say } from '../make.ts'
import { roleName } from './crewInZone.ts'

const ID = 'line-of-sight'

export const lineOfSight = defineCheck({
  id: ID,
  title: { en: 'Lines of sight and radio', es: 'Líneas de vista y radio' },
  cost: 'slow',
  run: (site, { limits }) => {
    const lines = sightLinesOf(site)
    if (lines.length === 0) return []
    const limit = limits.limit('sight-distance')
    const isFar = (line: SightLine): boolean => limit.check !== null && line.distanceM > limit.check
    const needing = lines.filter((line) => isFar(line) || line.blockedBy.length > 0)
    const doubtful = lines.filter((line) => !needing.includes(line) && line.mayBlock.length > 0)
    const dead = needing.filter((line) => inDeadPatch(site, line).length > 0)
    const maybeDead = doubtful.filter((line) => inDeadPatch(site, line).length > 0)
    const found: Finding[] = dead.map((line) => ofDead(site, line, 'FIX'))
    found.push(...maybeDead.map((line) => ofDead(site, line, 'CHECK')))
    const radio = needing.filter((line) => !dead.includes(line))
    const source = sourceOf(limit)
    if (radio.length > 0) {
      const farthest = radio.reduce((a, b) => (b.distanceM > a.distanceM ? b : a))
      const hidden = [...new Set(radio.flatMap(({ blockedBy }) => blockedBy))]
      const values = { pairs: listOf(unique(radio.map(pairWords)), 6), most: q('length', farthest.distanceM), limit: q('length', limit.check), behind: listOf(hidden.map((id) => nameOf(site, id))) }
      found.push(finding(ID, {
        level: 'CHECK', about: 'radio', items: ids(radio, hidden), where: atPoint(farthest.spot.xM, farthest.spot.yM), phases: phasesOf(radio), measured: q('length', farthest.distanceM), ...(limit.check === null ? {} : { limit: q('length', limit.check) }), source,
        what: hidden.length === 0
          ? say('Radio needed: {pairs}. The farthest is {most} off; past {limit} nobody is seen well enough.', 'Hace falta radio: {pairs}. Lo más lejos queda a {most}; a más de {limit} nadie se ve bastante bien.', values)
          : say('Radio needed: {pairs}. The farthest is {most} off; {behind} stands in between.', 'Hace falta radio: {pairs}. Lo más lejos queda a {most}; {behind} queda en medio.', values),
        move: say('One radio each, checked from every spot before the first stick. No answer: stop. Where a thing is to be seen, somebody with a radio stands there.', 'Un radio cada uno, probado desde cada puesto antes del primer tubo. Sin respuesta: se para. Donde hay que ver una cosa, alguien con radio se pone ahí.'),
      }))
    }
    const asked = doubtful.filter((line) => !maybeDead.includes(line))
    if (asked.length > 0) {
      const hidden = [...new Set(asked.flatMap(({ mayBlock }) => mayBlock))]
      found.push(finding(ID, {
        level: 'CHECK', about: 'maybe', items: ids(asked, hidden), where: atPoint(asked[0]!.spot.xM, asked[0]!.spot.yM), phases: phasesOf(asked), source: houseRule,
        what: say('{behind} may stand in between, its height is not known: {pairs}.', '{behind} puede quedar en medio, su altura no se sabe: {pairs}.', { behind: listOf(hidden.map((id) => nameOf(site, id))), pairs: listOf(unique(asked.map(pairWords)), 6) }),
        move: say('Look from the spot; where it is hidden, take a radio or move the spot.', 'Mire desde el puesto; si no se ve, use radio o mueva el puesto.'),
      }))
    }
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source, items: [...new Set(lines.map(({ spot }) => spot.id))], what: say('Every crew spot sees what it must.', 'Cada puesto ve lo que debe ver.') })]
  },
})

const unique = (labels: readonly Localized[]): Localized[] => [...new Map(labels.map((label) => [label.en, label])).values()]
const ids = (lines: readonly SightLine[], more: readonly string[]): string[] => [...new Set([...lines.flatMap(({ spot, other }) => [spot.id, ...(other === null ? [] : [other.id])]), ...more])]
const phasesOf = (lines: readonly SightLine[]): SightLine['phases'] => [...new Set(lines.flatMap(({ phases }) => phases))]

const isRole = (target: SightTarget): target is CrewRecord['role'] => crewRoles.some(({ value }) => value === target)
export const targetWords = (target: SightTarget): Localized => thingWords[target] ?? (isRole(target) ? roleName(target) : { en: target, es: target })

function pairWords({ spot, target }: SightLine): Localized {
  const [who, what] = [roleName(spot.record.role), targetWords(target)]
  return { en: `${who.en} – ${what.en}`, es: `${who.es} – ${what.es}` }
}

/** Radio-dead patches either end lies in. */
function inDeadPatch(site: SiteModel, { from, to }: SightLine): string[] {
  const isIn = (points: readonly { xM: number; yM: number }[]): boolean => [from, to].some((point) => distanceBetween({ kind: 'point', point }, { kind: 'polygon', points }).distanceM === 0)
  return recordsOf(site.document, 'radioDead').filter(({ points }) => isIn(points)).map(({ id }) => id)
}

function ofDead(site: SiteModel, line: SightLine, level: 'FIX' | 'CHECK'): Finding {
  const dead = inDeadPatch(site, line)
  const values = { pair: pairWords(line), patch: listOf(dead.map((id) => nameOf(site, id))) }
  return finding(ID, {
    level, about: `dead:${line.spot.id}:${line.target}`, items: [line.spot.id, ...(line.other === null ? [] : [line.other.id]), ...line.blockedBy, ...line.mayBlock, ...dead], where: atPoint(line.spot.xM, line.spot.yM), phases: line.phases, measured: q('length', line.distanceM), source: houseRule,
    what: level === 'FIX'
      ? say('{pair}: no sight, and no radio in {patch}.', '{pair}: sin vista, y sin radio en {patch}.', values)
      : say('{pair}: sight may be blocked, and no radio in {patch}.', '{pair}: la vista puede estar tapada, y no hay radio en {patch}.', values),
    move: say('Move the spot out of the patch or into sight, or put a relay between them.', 'Saque el puesto de esa parte o póngalo a la vista, o ponga a alguien que pase la voz.'),
  })
}
