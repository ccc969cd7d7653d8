import { footM, poundForceN, mphMPerS } from '../../units/factors.ts'
import { atRun, defineCheck, finding, houseRule, q, say } from '../make.ts'

const ID = 'wind-chock'
/** Share of its weight from which wind is taken to roll a string, rollers or ground. */
const ROLLS_AT = 0.05
/** Wind pressure on a flat face, 0.00256 lb/ft² at 1 mph; drag coefficient 1. */
const PSF_PER_MPH2 = 0.00256

/** Wind speed (m/s) whose force on a pipe is a share of its weight: 0.00256 V² · OD = share · w, in ft, lb and mph. */
export function rollingWindMPerS(input: { odM: number; lineLoadNPerM: number; share?: number }): number {
  const weightLbPerFt = (input.lineLoadNPerM * footM) / poundForceN
  return Math.sqrt(((input.share ?? ROLLS_AT) * weightLbPerFt) / (PSF_PER_MPH2 * (input.odM / footM))) * mphMPerS
}

export const windChock = defineCheck({
  id: ID,
  title: { en: 'Wind on the string', es: 'Viento sobre la línea' },
  cost: 'quick',
  run: (site) => {
    const { properties } = site.pipe
    if (site.run === null) return []
    const source = { ...houseRule, cite: 'wind pressure 0.00256 V² lb/ft², drag coefficient 1; 5 % of the weight common practice, no published source' }
    if (properties === null) {
      return [finding(ID, { level: 'CHECK', about: 'unknown', missing: site.pipe.missing.filter(({ path }) => path === 'pipe'), source, phases: ['pull', 'rest'], what: say('From what wind the string rolls is not known.', 'No se sabe con qué viento rueda la línea.'), move: say('Give the pipe.', 'Dé el tubo.') })]
    }
    const speed = q('speed', rollingWindMPerS(properties))
    return [finding(ID, {
      level: 'CHECK', measured: speed, source, phases: ['pull', 'rest'], where: atRun(site.sticks.stringLengthM(site.sticks.stickCount) / 2),
      what: say('From {speed} on, wind across the string can roll it.', 'Desde {speed}, el viento de lado puede rodar la línea.', { speed }),
      move: say('Chock it on both sides before such wind, and overnight.', 'Acúñela en ambos lados antes de ese viento, y de noche.'),
    })]
  },
})
