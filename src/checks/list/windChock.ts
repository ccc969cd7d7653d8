import type { SiteModel } from '../../derive/types.ts'
import { limitOf, limitParam, type Limit } from '../../engine/limits.ts'
import type { Quantity } from '../../units/quantity.ts'
import type { Finding, Source } from '../finding.ts'
import { sourceOf } from '../limits.ts'
import { atRun, defineCheck, finding, q, say } from '../make.ts'

const ID = 'wind-chock'
/**
 * Wind speed (m/s) whose force on a pipe is a share of its weight: ½ρ·c·V²·OD = share · w.
 * Share, drag coefficient and density of the air are those of the limit.
 */
export function rollingWindMPerS({ odM, lineLoadNPerM }: { odM: number; lineLoadNPerM: number }, limit: Limit = limitOf('wind-share')): number {
  return Math.sqrt((2 * (limit.check ?? 0) * lineLoadNPerM) / (limitParam(limit, 'airDensityKgPerM3') * limitParam(limit, 'dragCoefficientRatio') * odM))
}

export const windChock = defineCheck({
  id: ID,
  title: { en: 'Wind on the string', es: 'Viento sobre la sarta' },
  cost: 'quick',
  run: (site, { limits }) => {
    const { properties } = site.pipe
    if (site.run === null) return []
    const limit = limits.limit('wind-share')
    const source = sourceOf(limit)
    if (properties === null) {
      return [finding(ID, { level: 'CHECK', about: 'unknown', missing: site.pipe.missing.filter(({ path }) => path === 'pipe'), source, phases: ['pull', 'rest'], what: say('From what wind the string rolls is not known.', 'No se sabe con qué viento rueda la sarta.'), move: say('Give the pipe.', 'Dé el tubo.') })]
    }
    const speed = q('speed', rollingWindMPerS(properties, limit))
    const windMPerS = site.case.whatIf?.windMPerS
    if (windMPerS !== undefined) return [inWind(site, source, windMPerS, speed)]
    return [finding(ID, {
      level: 'CHECK', measured: speed, source, phases: ['pull', 'rest'], where: atRun(site.sticks.stringLengthM(site.sticks.stickCount) / 2),
      what: say('From {speed} on, wind across the string can roll it.', 'Desde {speed}, el viento de lado puede rodar la sarta.', { speed }),
      move: say('Chock it on both sides before such wind, and overnight.', 'Acúñela en ambos lados antes de ese viento, y de noche.'),
    })]
  },
})

/** A what-if names the wind: held against the speed that rolls the string. */
function inWind(site: SiteModel, source: Source, windMPerS: number, limit: Quantity): Finding {
  const wind = q('speed', windMPerS)
  const rolls = windMPerS >= (limit.value ?? Infinity)
  return finding(ID, {
    level: rolls ? 'FIX' : 'met', measured: wind, limit, source, phases: ['pull', 'rest'], where: atRun(site.sticks.stringLengthM(site.sticks.stickCount) / 2),
    what: rolls
      ? say('A wind of {wind} across the string rolls it: it does from {speed} on.', 'Un viento de lado de {wind} rueda la sarta: la rueda desde {speed}.', { wind, speed: limit })
      : say('A wind of {wind} does not roll the string: it takes {speed}.', 'Un viento de {wind} no rueda la sarta: hace falta {speed}.', { wind, speed: limit }),
    ...(rolls ? { move: say('Chock it on both sides.', 'Acúñela en ambos lados.') } : {}),
  })
}
