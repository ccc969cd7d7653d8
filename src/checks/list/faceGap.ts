import { limitParam } from '../../engine/limits.ts'
import { sourceOf } from '../limits.ts'
import { atJaws, boundFor, defineCheck, finding, levelFor, machineIds, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

export const faceGap = defineCheck({
  id: 'face-gap',
  title: { en: 'Gap between the faces before facing', es: 'Abertura entre caras antes de refrentar' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('face-gap')
    const wallM = site.pipe.properties?.minimumWallM
    const worst = mechanics.solvedJoints().toSorted((a, b) => b.faceGapM - a.faceGapM)[0]
    if (worst === undefined || wallM === undefined) return []
    const yardstickM = limitParam(limit, 'yardstickOfWall') * wallM
    const share = worst.faceGapM / yardstickM
    const level = levelFor(limit, share)
    const bound = boundFor(limit, level)
    const side = worst.exit.gapM >= worst.infeed.gapM ? 'exit' : 'infeed'
    const values = { gap: q('shortLength', worst.faceGapM), joint: worst.joint, share: q('percent', share), yardstick: q('shortLength', yardstickM), side: sideWord(side) }
    return [finding('face-gap', {
      level,
      measured: q('shortLength', worst.faceGapM),
      limit: q('shortLength', bound === null ? null : bound * yardstickM),
      source: sourceOf(limit),
      phases: ['fuse'],
      where: atJaws(site),
      items: machineIds(site),
      what: level === 'met'
        ? say('The faces stand nearly square before facing.', 'Las caras quedan casi a escuadra antes de refrentar.')
        : say('Before facing the faces gape {gap} at joint {joint}, most of it from the {side} side.', 'Antes de refrentar las caras abren {gap} en la junta {joint}, sobre todo del lado de {side}.', values),
      ...(level === 'met' ? {} : { move: say('Bring the {side} stands closer to the jaws, level with them.', 'Acerque los soportes de {side} a las mordazas, a su nivel.', values) }),
    })]
  },
})
