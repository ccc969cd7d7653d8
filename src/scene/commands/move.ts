import { z } from 'zod'
import { pointBesidePath } from '../../geometry/arc.ts'
import { add, rotate, subtract, type Vec } from '../../geometry/vector.ts'
import type { YardDocument, YardRecord } from '../document.ts'
import { mergeEdits, type Edit } from '../edit.ts'
import { isItem, middleOf, onAxis, pathOf, resolvePlace, runIdOf } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { angleRad, idsArg, oneId, stepM } from './args.ts'
import { defineCommand, refuse } from './command.ts'
import { displacement, frameEdit, moversOf, placeAtRunning, setUpCarriedBy, shiftedPlace, turnedPlace, withPlace, withPoints, type Movers } from './placing.ts'
import { stepOf, whatText } from './wording.ts'

/** Edit that moves every part of a selection by what `by` answers for its point. */
function movedBy(document: YardDocument, movers: Movers, by: (at: Vec & { runId: string | null }) => Vec): Edit {
  const frames = movers.setUps.map((setUp) => frameEdit(document, setUp, { datum: add(setUp.datum, by({ ...setUp.datum, runId: null })) }))
  const put: YardRecord[] = []
  for (const item of movers.items) {
    const d = by({ ...resolvePlace(document, item), runId: runIdOf(document, item.place) })
    put.push(withPlace(item, shiftedPlace(document, item.place, d)))
  }
  for (const feature of movers.features) {
    const d = by({ ...middleOf(feature.points), runId: null })
    put.push(withPoints(feature, (p) => add(p, d)))
  }
  for (const run of movers.runs) {
    const setUp = document.records[run.setUpId]
    const d = by({ ...middleOf(run.vertices), runId: run.id })
    const moved = run.vertices.map((v) => ({ ...v, xM: rounded(v.xM + d.xM), yM: rounded(v.yM + d.yM) }))
    const [first, ...others] = moved
    if (first === undefined || setUp?.kind !== 'setUp') continue
    const corner = onAxis(setUp, first)
    put.push({ ...run, vertices: [{ ...first, xM: rounded(corner.xM), yM: rounded(corner.yM) }, ...others] })
  }
  return mergeEdits(...frames, { put, remove: [] })
}

/**
 * Moves by a displacement in the site. What is attached stays attached (its new running distance and offset are those of
 * the point it was dragged to); moving a machine attached at its set-up moves datum, axis and all that is attached.
 */
export const moveBy = defineCommand({
  name: 'moveBy',
  args: z.strictObject({ ids: idsArg, dxM: stepM, dyM: stepM }),
  run: (document, { ids, dxM, dyM }) => movedBy(document, moversOf(document, ids), () => ({ xM: dxM, yM: dyM })),
  label: (document, { ids }) => stepOf({ en: 'move', es: 'mover' }, whatText(document, ids)),
})

/** Slides along the run (exit positive) and across it (right positive). What lies on no run is moved along the first one's direction there. */
export const slideBy = defineCommand({
  name: 'slideBy',
  args: z.strictObject({ ids: idsArg, dRunningM: stepM, dOffsetM: stepM }),
  run: (document, { ids, dRunningM, dOffsetM }) => {
    const movers = moversOf(document, ids)
    const frames = movers.setUps.map((setUp) => frameEdit(document, setUp, { datum: add(setUp.datum, displacement(setUp.headingRad, dRunningM, dOffsetM)) }))
    const items = movers.items.map((item) => {
      const at = resolvePlace(document, item)
      if (at.runningM === null || at.offsetM === null) return withPlace(item, shiftedPlace(document, item.place, { xM: dRunningM, yM: -dOffsetM }))
      return withPlace(item, placeAtRunning(document, item, { runningM: at.runningM + dRunningM, offsetM: at.offsetM + dOffsetM }))
    })
    const others = movedBy(document, { setUps: [], items: [], features: movers.features, runs: movers.runs }, (at) => {
      const middle = { at: 'free', xM: at.xM, yM: at.yM, headingRad: 0 } as const
      const runId = at.runId ?? runIdOf(document, middle)
      if (runId === null) return { xM: dRunningM, yM: -dOffsetM }
      const { runningM, offsetM } = resolvePlace(document, middle, runId)
      const to = pointBesidePath(pathOf(document, runId), { runningM: (runningM ?? 0) + dRunningM, offsetM: (offsetM ?? 0) + dOffsetM })
      return subtract(to, at)
    })
    return mergeEdits(...frames, { put: items, remove: [] }, others)
  },
  label: (document, { ids }) => stepOf({ en: 'slide', es: 'correr' }, whatText(document, ids)),
})

/** Sets running distance, offset or turn against the run of one item. A free item stays free and goes to that point. */
export const setOnRun = defineCommand({
  name: 'setOnRun',
  args: z.strictObject({ id: oneId, runningM: stepM.optional(), offsetM: stepM.optional(), turnRad: angleRad.optional() }),
  run: (document, { id, ...to }) => {
    const item = document.records[id]
    if (item === undefined || ('locked' in item && item.locked)) return { put: [], remove: [] }
    if (!isItem(item)) return refuse('setOnRun', 'id', `${id} has no place of its own`, `${id} no tiene lugar propio`)
    const setUp = setUpCarriedBy(document, item)
    if (setUp === null) return { put: [withPlace(item, placeAtRunning(document, item, to))], remove: [] }
    // The datum goes where the machine is put; the machine stays at the datum.
    const at = resolvePlace(document, item)
    const d = displacement(setUp.headingRad, (to.runningM ?? at.runningM ?? 0) - (at.runningM ?? 0), (to.offsetM ?? at.offsetM ?? 0) - (at.offsetM ?? 0))
    const frame = frameEdit(document, setUp, { datum: add(setUp.datum, d) })
    return to.turnRad === undefined ? frame : mergeEdits(frame, { put: [withPlace(item, { ...item.place, turnRad: to.turnRad } as typeof item.place)], remove: [] })
  },
  label: (document, { id, runningM }) => {
    const what = whatText(document, [id])
    return runningM === undefined ? stepOf({ en: 'place', es: 'ubicar' }, what) : stepOf({ en: 'place', es: 'ubicar' }, { en: `${what.en} at {distance}`, es: `${what.es} a {distance}` }, { distance: { kind: 'length', value: Math.abs(runningM) } })
  },
})

/** Turns counter-clockwise: each item and feature about its own middle, a machine with its axis about the datum. */
export const rotateBy = defineCommand({
  name: 'rotateBy',
  args: z.strictObject({ ids: idsArg, turnRad: angleRad }),
  run: (document, { ids, turnRad }) => {
    const movers = moversOf(document, ids)
    const frames = movers.setUps.map((setUp) => frameEdit(document, setUp, { headingRad: setUp.headingRad + turnRad }))
    const items = movers.items.map((item) => withPlace(item, turnedPlace(item.place, turnRad)))
    const features = movers.features.map((feature) => {
      const middle = middleOf(feature.points)
      return withPoints(feature, (p) => add(middle, rotate(subtract(p, middle), turnRad)))
    })
    return mergeEdits(...frames, { put: [...items, ...features], remove: [] })
  },
  label: (document, { ids }) => stepOf({ en: 'turn', es: 'girar' }, whatText(document, ids)),
})
