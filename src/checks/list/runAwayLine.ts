import { stringPullOf } from '../../derive/stringPull.ts'
import type { Zone } from '../../derive/zones.ts'
import { judging, zoneStagesOf } from '../../derive/zoneStages.ts'
import { recordsOf } from '../../scene/document.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding } from '../finding.ts'
import { gapBetween, isUnder, obstaclesOf } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, listOf, q, say } from '../make.ts'

const ID = 'run-away-line'
/** A force below this is rounding. */
const NO_FORCE_N = 1
/** What a string must not run into. People are judged by their own check; what stops it, a building or barrier, ends the line. */
const IN_THE_WAY = ['road', 'walkway', 'water', 'trench'] as const

interface Reached {
  id: string
  name: Localized
  clearM: number
  at: { xM: number; yM: number }
}

export const runAwayLine = defineCheck({
  id: ID,
  title: { en: 'What the run-away line reaches', es: 'Lo que alcanza la línea de fuga' },
  cost: 'slow',
  run: (site) => {
    const obstacles = obstaclesOf(site, IN_THE_WAY)
    if (obstacles.length === 0) return []
    const zones = new Map<string, { zone: Zone; phases: Set<Phase>; reached: Map<string, Reached> }>()
    const seen = new Set<Zone['rings']>()
    for (const { stage, zones: live } of zoneStagesOf(site)) {
      for (const zone of live) {
        if (zone.id !== 'Z-13' || !judging(zone)) continue
        const one = zones.get(zone.key) ?? { zone, phases: new Set<Phase>(), reached: new Map<string, Reached>() }
        zones.set(zone.key, one)
        one.phases.add(stage.phase)
        if (seen.has(zone.rings)) continue
        seen.add(zone.rings)
        for (const ring of zone.rings) {
          for (const obstacle of obstacles) {
            const { clearM, to } = gapBetween(ring, obstacle)
            if (clearM > 0) continue
            const before = one.reached.get(obstacle.id)
            if (before === undefined || clearM < before.clearM) one.reached.set(obstacle.id, { id: obstacle.id, name: obstacle.name, clearM, at: to })
          }
        }
      }
    }
    const { joints } = stringPullOf(site)
    const isHeld = recordsOf(site.document, 'anchor').length > 0
    return [...zones.values()].flatMap(({ zone, phases, reached }): Finding[] => {
      const all = [...reached.values()].toSorted((a, b) => a.clearM - b.clearM)
      const [worst] = all
      if (worst === undefined) return []
      const end = zone.key.endsWith('/infeed') ? 'infeed' : 'exit'
      const leaves = joints.some(({ runAwayN }) => isUnder(NO_FORCE_N, runAwayN[end]))
      const values = { things: listOf(all.map(({ name }) => name)) }
      const common = { about: zone.key, items: all.map(({ id }) => id), where: atPoint(worst.at.xM, worst.at.yM), phases: [...phases], measured: q('length', worst.clearM), limit: q('length', 0), bound: 'least' as const, source: { class: zone.source.class, cite: zone.source.cite } }
      if (isHeld) return [finding(ID, { ...common, level: 'NOTE', what: say('If the hold-back lets go, the string runs toward {things}.', 'Si la retención se suelta, la sarta corre hacia {things}.', values), move: say('Check the hold-back before each opening of the jaws; a positive stop before them keeps it off.', 'Revise la retención antes de abrir las mordazas; un tope firme antes de ahí la detiene.') })]
      const move = say('Tether the string before the jaws open, and put a positive stop before them.', 'Sujete la sarta antes de abrir las mordazas, y ponga un tope firme antes de ahí.')
      return leaves
        ? [finding(ID, { ...common, level: 'FIX', what: say('Nothing holds the string, and by itself it runs toward {things}.', 'Nada retiene la sarta, y sola corre hacia {things}.', values), move })]
        : [finding(ID, { ...common, level: 'CHECK', what: say('Nothing holds the string on the fall; once it moves it goes toward {things}.', 'Nada retiene la sarta en la bajada; si se mueve va hacia {things}.', values), move })]
    })
  },
})
