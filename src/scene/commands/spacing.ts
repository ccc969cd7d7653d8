import { z } from 'zod'
import type { YardDocument } from '../document.ts'
import type { Edit } from '../edit.ts'
import { isItem, resolvePlace } from '../resolve.ts'
import { idsArg, stepM } from './args.ts'
import { defineCommand } from './command.ts'
import { placeAtRunning, setUpCarriedBy, withPlace } from './placing.ts'
import { stepOf, whatText } from './wording.ts'

interface Ranked {
  id: string
  runningM: number
}

/** Items of a selection in order along their run, locked ones left out. */
const ranked = (document: YardDocument, ids: readonly string[]): Ranked[] =>
  [...new Set(ids)].flatMap((id) => {
    const item = document.records[id]
    if (!isItem(item) || item.locked || setUpCarriedBy(document, item) !== null) return []
    const { runningM } = resolvePlace(document, item)
    return runningM === null ? [] : [{ id, runningM }]
  }).sort((a, b) => a.runningM - b.runningM)

const atRunning = (document: YardDocument, places: readonly Ranked[]): Edit => ({
  put: places.flatMap(({ id, runningM }) => {
    const item = document.records[id]
    return isItem(item) ? [withPlace(item, placeAtRunning(document, item, { runningM }))] : []
  }),
  remove: [],
})

/** Spaces the items between the first and the last of them equally along the run; the two ends stay. */
export const spreadEvenly = defineCommand({
  name: 'spreadEvenly',
  args: z.strictObject({ ids: idsArg }),
  run: (document, { ids }) => {
    const order = ranked(document, ids)
    const [first, last] = [order[0], order.at(-1)]
    if (first === undefined || last === undefined || order.length < 3) return { put: [], remove: [] }
    const stepBetweenM = (last.runningM - first.runningM) / (order.length - 1)
    return atRunning(document, order.slice(1, -1).map(({ id }, i) => ({ id, runningM: first.runningM + stepBetweenM * (i + 1) })))
  },
  label: (document, { ids }) => stepOf({ en: 'spread evenly', es: 'repartir' }, whatText(document, ids)),
})

/**
 * Spaces the items by `spacingM` along the run, the one nearest the datum first; it stays, or goes to `fromRunningM`.
 * Items that all lie on the infeed side go outward, away from the datum.
 */
export const spaceAt = defineCommand({
  name: 'spaceAt',
  args: z.strictObject({ ids: idsArg, spacingM: z.number().positive().max(1e4), fromRunningM: stepM.optional() }),
  run: (document, { ids, spacingM, fromRunningM }) => {
    const order = ranked(document, ids)
    const isInfeed = order.every(({ runningM }) => runningM < 0)
    const outward = isInfeed ? order.toReversed() : order
    const fromM = fromRunningM ?? outward[0]?.runningM ?? 0
    return atRunning(document, outward.map(({ id }, i) => ({ id, runningM: fromM + (isInfeed ? -1 : 1) * spacingM * i })))
  },
  label: (document, { ids, spacingM }) => stepOf({ en: 'space', es: 'espaciar' }, { en: `${whatText(document, ids).en} at {spacing}`, es: `${whatText(document, ids).es} a {spacing}` }, { spacing: { kind: 'length', value: spacingM } }),
})
