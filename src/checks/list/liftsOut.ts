import type { JointSolve, Side } from '../../derive/jawSolve.ts'
import { limitParam } from '../../engine/limits.ts'
import { sourceOf } from '../limits.ts'
import { atJaws, defineCheck, finding, machineIds, q, say } from '../make.ts'
import { sideWord } from '../words.ts'

interface Clear {
  solve: JointSolve
  byM: number
  holdN: number
  isJoined: boolean
}

/** The joint at which the pipe stands highest over the lower halves of a side: the body by itself, or joined with the other. */
function highest(solves: readonly JointSolve[], side: Side): Clear | null {
  const clear = solves.flatMap((solve): Clear[] => [
    ...(solve[side].isClear ? [{ solve, byM: solve[side].clearByM, holdN: solve[side].holdDownN, isJoined: false }] : []),
    ...(solve.springsByM[side] > 0 ? [{ solve, byM: solve.springsByM[side], holdN: solve.springN[side], isJoined: true }] : []),
  ])
  return clear.reduce<Clear | null>((most, one) => (most === null || one.byM > most.byM ? one : most), null)
}

export const liftsOut = defineCheck({
  id: 'lifts-out',
  title: { en: 'Pipe lies in the open jaws', es: 'El tubo descansa en las mordazas abiertas' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('jaw-effort')
    return (['infeed', 'exit'] as const).flatMap((side) => {
      const solves = mechanics.solvedJoints()
      if (solves.length === 0) return []
      const clear = highest(solves, side)
      const common = { about: side, source: sourceOf(limit), phases: ['fuse'] as const, where: atJaws(site), items: machineIds(site) }
      if (clear === null) return [finding('lifts-out', { ...common, level: 'met', what: say('With the jaws open the pipe lies in the {side} lower halves.', 'Con las mordazas abiertas el tubo descansa en las mitades inferiores de {side}.', { side: sideWord(side) }) })]
      const effort = clear.solve[side].effortRatio
      const isFix = effort > limitParam(limit, 'fixWhenClear')
      const values = { side: sideWord(side), joint: clear.solve.joint, by: q('shortLength', clear.byM), hold: q('force', clear.holdN) }
      return [finding('lifts-out', {
        ...common,
        level: isFix ? 'FIX' : 'NOTE',
        ...(isFix ? { measured: q('ratio', effort), limit: q('ratio', limitParam(limit, 'fixWhenClear')) } : { measured: q('shortLength', clear.byM) }),
        what: clear.isJoined
          ? say('When the jaws open at joint {joint} the pipe springs {by} up out of the {side} side.', 'Al abrir las mordazas en la junta {joint} el tubo salta {by} hacia arriba del lado de {side}.', values)
          : say('The pipe lifts {by} out of the open {side} jaws at joint {joint}.', 'El tubo se levanta {by} de las mordazas abiertas de {side} en la junta {joint}.', values),
        move: isFix
          ? say('Set the last level stand lower or add a second level stand.', 'Baje el último soporte a nivel o agregue un segundo soporte a nivel.')
          : clear.isJoined
            ? say('Open slowly and keep clear; it pushes up with {hold}.', 'Abra despacio y manténgase libre; empuja hacia arriba con {hold}.', values)
            : say('Hold it down while closing, {hold}.', 'Sujételo hacia abajo al cerrar, {hold}.', values),
      })]
    })
  },
})
