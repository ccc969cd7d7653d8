/** Commands that make, split and join the strings of a set-up and give them rows to be parked in. */
import { z } from 'zod'
import { recordsOf, runsOf, type YardDocument } from '../document.ts'
import type { Edit, Env } from '../edit.ts'
import type { StringRecord } from '../records/frame.ts'
import { closedSide } from '../crewSpots.ts'
import { oneId } from './args.ts'
import { defineCommand, refuse } from './command.ts'

const countArg = z.number().int().min(1).max(2000)
const sideArg = z.enum(['left', 'right'])

const stringsIn = (document: YardDocument, setUpId: string): StringRecord[] => recordsOf(document, 'string').filter((one) => one.setUpId === setUpId).toSorted((a, b) => a.order - b.order)

function stringOf(command: string, document: YardDocument, id: string): StringRecord {
  const record = document.records[id]
  return record?.kind === 'string' ? record : refuse(command, 'id', `names ${id}, which is not a string here`, `nombra ${id}, que no es una sarta aquí`)
}

/** Side on which rows do no harm: the one the rack is not loaded from. */
const freeSide = (document: YardDocument, runId: string): StringRecord['parkingSide'] => (closedSide(document, runId) < 0 ? 'left' : 'right')

const blank = (env: Env, setUpId: string, runId: string): StringRecord => ({ id: env.newId('string'), kind: 'string', setUpId, runId, name: '', stickCount: null, parkingRow: null, parkingSide: 'right', order: 0, joinedToId: null, note: null })

/** In their order, each joined to the one before it; only what differs is put. */
function chained(before: YardDocument, records: readonly StringRecord[], gone: readonly string[] = []): Edit {
  const put = records.map((record, order) => ({ ...record, order, joinedToId: records[order - 1]?.id ?? null }))
  return { put: put.filter((record) => !isSame(before.records[record.id], record)), remove: [...gone] }
}

const isSame = (a: unknown, b: StringRecord): boolean => a !== undefined && JSON.stringify(a) === JSON.stringify(b)

/** Rows 1, 2, 3 … for all but the last, which stays on the line. */
const parked = (records: readonly StringRecord[], side: StringRecord['parkingSide']): StringRecord[] => records.map((record, i) => ({ ...record, parkingRow: i < records.length - 1 ? i + 1 : 0, parkingSide: side }))

/** Strings of these counts in place of what there is, made in this order, parked in rows beside the line till the last is made. Records that were there keep their ids and names. */
export const splitStrings = defineCommand({
  name: 'splitStrings',
  args: z.strictObject({ setUpId: oneId, counts: z.array(countArg).min(1).max(200), side: sideArg.optional() }),
  run: (document, { setUpId, counts, side }, env): Edit => {
    const run = runsOf(document).find((one) => one.setUpId === setUpId)
    if (run === undefined) return refuse('splitStrings', 'setUpId', `names ${setUpId}, which has no pull path here`, `nombra ${setUpId}, que no tiene recorrido aquí`)
    const there = stringsIn(document, setUpId)
    const records = counts.map((stickCount, i) => ({ ...(there[i] ?? blank(env, setUpId, run.id)), stickCount }))
    return chained(document, parked(records, side ?? freeSide(document, run.id)), there.slice(counts.length).map(({ id }) => id))
  },
  label: (_document, { counts }) => ({ text: { en: '{count} strings', es: '{count} sartas' }, values: { count: counts.length } }),
})

/** One more string at the end, its sticks to be worked out: a share of what the others leave. */
export const addString = defineCommand({
  name: 'addString',
  args: z.strictObject({ setUpId: oneId }),
  run: (document, { setUpId }, env): Edit => {
    const run = runsOf(document).find((one) => one.setUpId === setUpId)
    if (run === undefined) return refuse('addString', 'setUpId', `names ${setUpId}, which has no pull path here`, `nombra ${setUpId}, que no tiene recorrido aquí`)
    const there = stringsIn(document, setUpId)
    // Without a record the job is one string: that one is written down too.
    const first = there.length === 0 ? [blank(env, setUpId, run.id)] : there
    return chained(document, parked([...first, blank(env, setUpId, run.id)], there[0]?.parkingSide ?? freeSide(document, run.id)))
  },
  label: () => ({ text: { en: 'add a string', es: 'agregar sarta' } }),
})

/** A string cut in two after so many of its sticks; the second follows the first. */
export const splitString = defineCommand({
  name: 'splitString',
  args: z.strictObject({ id: oneId, sticks: countArg, first: countArg }),
  run: (document, { id, sticks, first }, env): Edit => {
    const record = stringOf('splitString', document, id)
    if (first >= sticks) return refuse('splitString', 'first', `must leave a stick for the second string: less than ${sticks}`, `debe dejar un tubo para la segunda sarta: menos de ${sticks}`)
    const there = stringsIn(document, record.setUpId)
    const at = there.findIndex((one) => one.id === id)
    const two = [{ ...record, stickCount: first }, { ...blank(env, record.setUpId, record.runId), stickCount: sticks - first }]
    return chained(document, parked([...there.slice(0, at), ...two, ...there.slice(at + 1)], record.parkingRow === null ? freeSide(document, record.runId) : record.parkingSide))
  },
  label: () => ({ text: { en: 'split a string', es: 'partir sarta' } }),
})

/** A string and the one made after it become one. Without a count in one of them the count of both is worked out. */
export const joinString = defineCommand({
  name: 'joinString',
  args: z.strictObject({ id: oneId }),
  run: (document, { id }): Edit => {
    const record = stringOf('joinString', document, id)
    const there = stringsIn(document, record.setUpId)
    const at = there.findIndex((one) => one.id === id)
    const next = there[at + 1]
    if (next === undefined) return refuse('joinString', 'id', 'is the last string: there is none after it to join it with', 'es la última sarta: no hay otra después para unirla')
    const whole = { ...record, stickCount: record.stickCount === null || next.stickCount === null ? null : record.stickCount + next.stickCount }
    return chained(document, parked([...there.slice(0, at), whole, ...there.slice(at + 2)], record.parkingSide), [next.id])
  },
  label: () => ({ text: { en: 'join two strings', es: 'unir dos sartas' } }),
})

/** Count, name, row or side of one string. */
export const setString = defineCommand({
  name: 'setString',
  args: z.strictObject({ id: oneId, stickCount: countArg.nullable().optional(), name: z.string().max(80).optional(), parkingRow: z.number().int().min(0).max(50).nullable().optional(), parkingSide: sideArg.optional() }),
  run: (document, { id, stickCount, name, parkingRow, parkingSide }): Edit => {
    const record = stringOf('setString', document, id)
    const now: StringRecord = {
      ...record, ...(stickCount === undefined ? {} : { stickCount }), ...(name === undefined ? {} : { name }), ...(parkingRow === undefined ? {} : { parkingRow }), ...(parkingSide === undefined ? {} : { parkingSide }),
    }
    return { put: isSame(record, now) ? [] : [now], remove: [] }
  },
  label: () => ({ text: { en: 'change a string', es: 'cambiar sarta' } }),
})

/** Rows for all strings but the last: beside each other on one side of the line. */
export const parkStrings = defineCommand({
  name: 'parkStrings',
  args: z.strictObject({ setUpId: oneId, side: sideArg.optional() }),
  run: (document, { setUpId, side }): Edit => {
    const there = stringsIn(document, setUpId)
    return there.length === 0 ? { put: [], remove: [] } : chained(document, parked(there, side ?? freeSide(document, there[0]!.runId)))
  },
  label: () => ({ text: { en: 'park the strings', es: 'estacionar las sartas' } }),
})
