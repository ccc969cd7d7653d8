import { thermalChangeM } from '../../engine/pipe/thermal.ts'
import type { Source } from '../finding.ts'
import { atRun, defineCheck, finding, q, say } from '../make.ts'

const ID = 'growth-gap'
const source: Source = { class: 'published', cite: 'PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 3 (expansion from memory, confirm); the gap of 1.25 times is a house rule', fromMemory: true }

export const growthGap = defineCheck({
  id: ID,
  title: { en: 'Growth of the string', es: 'Dilatación de la sarta' },
  cost: 'quick',
  run: (site, { limits }) => {
    if (site.run === null) return []
    const { properties } = site.pipe
    const { stickLengthM, stickCount } = site.sticks
    const swingC = site.job.temperatureSwingC.value
    const missing = [
      ...(properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
      ...(stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : []),
      ...(swingC === null ? [{ recordId: site.job.id, path: 'temperatureSwingC.value', label: { en: 'swing of the wall temperature', es: 'variación de temperatura de la pared' } }] : []),
    ]
    if (properties === null || stickLengthM === null || swingC === null) {
      return [finding(ID, {
        level: 'CHECK', missing, source, phases: ['rest', 'tieIn'],
        what: say('How far the string grows and shrinks is not known.', 'No se sabe cuánto crece y encoge la sarta.'),
        move: say('Give the lowest to highest wall temperature; black pipe in the sun is far above the air.', 'Dé de la menor a la mayor temperatura de pared; el tubo negro al sol supera por mucho al aire.'),
      })]
    }
    const lengthM = site.sticks.stringLengthM(stickCount)
    const change = thermalChangeM({ material: properties.material, lengthM, temperatureChangeC: Math.abs(swingC) })
    const growthM = change.status === 'ok' ? change.value : 0
    const gapM = (limits.limit('growth-gap').check ?? 1.25) * growthM
    return [finding(ID, {
      level: 'NOTE', measured: q('shortLength', growthM), limit: q('shortLength', gapM), source, phases: ['rest', 'tieIn'], where: atRun(lengthM),
      what: say('{length} of string grow and shrink by {growth} over a swing of {swing}.', '{length} de sarta crecen y encogen {growth} con una variación de {swing}.', { length: q('length', lengthM), growth: q('shortLength', growthM), swing: q('temperatureChange', Math.abs(swingC)) }),
      move: say('Leave {gap} free at both ends; nothing stands there.', 'Deje {gap} libres en ambas puntas; nada se pone ahí.', { gap: q('shortLength', gapM) }),
    })]
  },
})
