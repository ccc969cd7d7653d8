import { z } from 'zod'
import { schemaOf, type YardDocument, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { isFeature, onAxis } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { indexArg, oneId, stepM } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { stepOf, whatText } from './wording.ts'

type Points = readonly { xM: number; yM: number; radiusM?: number | null }[]

/** Edit of the points of a feature or the vertices of a pull path; the first vertex of a path keeps to the axis. */
function withPointList(command: string, document: YardDocument, id: string, change: (points: Points) => Points): Edit {
  const record = document.records[id]
  if (record?.kind === 'run') {
    const setUp = document.records[record.setUpId]
    const vertices = change(record.vertices).map((v, i) => {
      const at = i === 0 && setUp?.kind === 'setUp' ? onAxis(setUp, v) : v
      return { xM: rounded(at.xM), yM: rounded(at.yM), radiusM: v.radiusM ?? null }
    })
    return { put: [checked(command, schemaOf('run'), { ...record, vertices }) as YardRecord], remove: [] }
  }
  if (!isFeature(record)) return refuse(command, 'id', `${id} has no points`, `${id} no tiene puntos`)
  if (record.locked) return { put: [], remove: [] }
  const points = change(record.points).map(({ xM, yM }) => ({ xM: rounded(xM), yM: rounded(yM) }))
  return { put: [checked(command, schemaOf(record.kind), { ...record, points }) as YardRecord], remove: [] }
}

const noSuchPoint = (command: string, index: number, count: number): never => refuse(command, 'index', `${index} is none of the ${count} points`, `${index} no es ninguno de los ${count} puntos`)

/** Moves one point of a feature or pull path to a point of the site. */
export const moveVertex = defineCommand({
  name: 'moveVertex',
  args: z.strictObject({ id: oneId, index: indexArg, xM: stepM, yM: stepM }),
  run: (document, { id, index, xM, yM }) =>
    withPointList('moveVertex', document, id, (points) => (index < points.length ? points.map((p, i) => (i === index ? { ...p, xM, yM } : p)) : noSuchPoint('moveVertex', index, points.length))),
  label: (document, { id }) => stepOf({ en: 'move a point of', es: 'mover un punto de' }, whatText(document, [id])),
})

/** Adds a point before position `index` (at the end where index is the count). A bend of a path may carry its radius. */
export const addVertex = defineCommand({
  name: 'addVertex',
  args: z.strictObject({ id: oneId, index: indexArg, xM: stepM, yM: stepM, radiusM: z.number().positive().nullable().optional() }),
  run: (document, { id, index, xM, yM, radiusM }) =>
    withPointList('addVertex', document, id, (points) => (index <= points.length ? [...points.slice(0, index), { xM, yM, radiusM: radiusM ?? null }, ...points.slice(index)] : noSuchPoint('addVertex', index, points.length))),
  label: (document, { id }) => stepOf({ en: 'add a point to', es: 'añadir un punto a' }, whatText(document, [id])),
})

/** Takes a point away. Fails where too few would be left for a line (2) or an area (3). */
export const removeVertex = defineCommand({
  name: 'removeVertex',
  args: z.strictObject({ id: oneId, index: indexArg }),
  run: (document, { id, index }) => withPointList('removeVertex', document, id, (points) => (index < points.length ? points.filter((_, i) => i !== index) : noSuchPoint('removeVertex', index, points.length))),
  label: (document, { id }) => stepOf({ en: 'take a point off', es: 'quitar un punto de' }, whatText(document, [id])),
})
