import { z } from 'zod'
import type { Localized } from '../../messages/localized.ts'
import { jobOf, layoutOf, recordsOf, runsOf, schemaOf, setUpsOf, type YardDocument, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { kindOf } from '../kinds/index.ts'
import { basisSchema } from '../parts.ts'
import { isFeature, isItem, onAxis } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { idsArg, oneId, pathArg } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { hasField, pathParts, typedFigure, withField } from './fields.ts'
import { frameEdit } from './placing.ts'
import { kindName, stepOf, whatText } from './wording.ts'

/** Fields not written by path: they name the record, or tie it to others and have commands of their own. */
const fixed = new Set(['id', 'kind', 'layoutId', 'place', 'setUpId'])

/**
 * The record with a value at a path. At a figure's value the basis follows: typed by hand it is no longer 'typical' but
 * `basis`; null makes it unknown again. Fails: CommandError naming the path.
 */
function setAt(command: string, record: YardRecord, path: string, value: unknown, basis: string): YardRecord {
  const parts = pathParts(path)
  if (parts.length === 0 || fixed.has(String(parts[0]))) return refuse(command, path, 'is not for a command to set', 'no se puede fijar')
  const parent = parts.slice(0, -1)
  if (parent.length > 0 && !hasField(record, parent)) return refuse(command, path, `is not a field of a ${kindName(record.kind).en}`, `no es un campo de ${kindName(record.kind).es}`)
  const figure = parts.at(-1) === 'value' ? typedFigure(parent.reduce<unknown>((at, part) => (at as Record<string | number, unknown>)[part], record), value, basis) : null
  const next = figure === null ? withField(record, parts, value) : withField(record, parent, figure)
  return checked(command, schemaOf(record.kind), next) as YardRecord
}

const valueArg = z.unknown()

/** What a figure typed in the tag of an item says of itself: gear has a plate, the site is measured. */
const typedBasis = (kind: string): string => (kindOf(kind)?.gear === 'site' ? 'measured' : 'plate')

const fieldName = (document: YardDocument, ids: readonly string[], path: string): Localized => {
  for (const id of ids) {
    const field = kindOf(document.records[id]?.kind ?? '')?.fields.find((one) => one.path === path)
    if (field !== undefined) return field.label
  }
  return { en: 'field', es: 'campo' }
}

/**
 * Sets one field of several items or features at once, by its dotted path. Records without that field are passed over;
 * at least one must have it. `basis` says where a typed figure comes from: by default the plate for gear, measured for the site.
 */
export const setField = defineCommand({
  name: 'setField',
  args: z.strictObject({ ids: idsArg, path: pathArg, value: valueArg, basis: basisSchema.optional() }),
  run: (document, { ids, path, value, basis }): Edit => {
    const parts = pathParts(path)
    const there = [...new Set(ids)].flatMap((id) => {
      const record = document.records[id]
      return isItem(record) || isFeature(record) ? [record] : []
    })
    const having = there.filter((record) => hasField(record, parts.slice(0, -1)) && (there.length === 1 || hasField(record, parts)))
    if (there.length > 0 && having.length === 0) return refuse('setField', path, 'is a field of none of them', 'no es campo de ninguno de ellos')
    return { put: having.map((record) => setAt('setField', record, path, value, basis ?? typedBasis(record.kind))), remove: [] }
  },
  label: (document, { ids, path }) => {
    const [name, what] = [fieldName(document, ids, path), whatText(document, ids)]
    return { text: { en: `${name.en} of ${what.en}`, es: `${name.es} de ${what.es}` } }
  },
})

/** Sets a field of the job. A figure typed here counts as measured unless `basis` says otherwise. */
export const setJob = defineCommand({
  name: 'setJob',
  args: z.strictObject({ path: pathArg, value: valueArg, basis: basisSchema.optional() }),
  run: (document, { path, value, basis }): Edit => ({ put: [setAt('setJob', jobOf(document), path, value, basis ?? 'measured')], remove: [] }),
  label: () => stepOf({ en: 'edit the', es: 'editar la' }, kindName('job')),
})

/** Sets a field of the layout: title, units, north, profile, revision, note. */
export const setLayout = defineCommand({
  name: 'setLayout',
  args: z.strictObject({ path: pathArg, value: valueArg }),
  run: (document, { path, value }): Edit => ({ put: [setAt('setLayout', layoutOf(document), path, value, 'measured')], remove: [] }),
  label: () => stepOf({ en: 'edit the', es: 'editar el' }, kindName('layout')),
})

/** Sets a field of a set-up. Datum and heading move the axis and all that is attached to it. */
export const setSetUp = defineCommand({
  name: 'setSetUp',
  args: z.strictObject({ setUpId: oneId, path: pathArg, value: valueArg }),
  run: (document, { setUpId, path, value }): Edit => {
    const before = document.records[setUpId]
    if (before?.kind !== 'setUp') return refuse('setSetUp', 'setUpId', `names ${setUpId}, which is not a set-up here`, `nombra ${setUpId}, que no es un montaje aquí`)
    const next = setAt('setSetUp', before, path, value, 'measured')
    if (next.kind !== 'setUp' || !['datum', 'headingRad'].includes(String(pathParts(path)[0]))) return { put: [next], remove: [] }
    return frameEdit(document, before, { datum: next.datum, headingRad: next.headingRad })
  },
  label: () => stepOf({ en: 'edit the', es: 'editar el' }, kindName('setUp')),
})

/** Sets a field of a pull path: vertices, surfaces by leg, target, name. */
export const setRun = defineCommand({
  name: 'setRun',
  args: z.strictObject({ runId: oneId, path: pathArg, value: valueArg }),
  run: (document, { runId, path, value }): Edit => {
    const before = document.records[runId]
    if (before?.kind !== 'run') return refuse('setRun', 'runId', `names ${runId}, which is not a pull path here`, `nombra ${runId}, que no es un recorrido aquí`)
    const next = setAt('setRun', before, path, value, 'measured')
    if (next.kind !== 'run') return { put: [], remove: [] }
    if (next.targetId !== null && document.records[next.targetId] === undefined) return refuse('setRun', 'targetId', `names ${next.targetId}, which is not here`, `nombra ${next.targetId}, que no está aquí`)
    const setUp = document.records[next.setUpId]
    const [first, ...others] = next.vertices
    if (setUp?.kind !== 'setUp' || first === undefined) return { put: [next], remove: [] }
    const corner = onAxis(setUp, first)
    return { put: [{ ...next, vertices: [{ ...first, xM: rounded(corner.xM), yM: rounded(corner.yM) }, ...others] }], remove: [] }
  },
  label: () => stepOf({ en: 'edit the', es: 'editar el' }, kindName('run')),
})

const countArg = z.number().int().min(1).max(2000).nullable()

/**
 * Fixes how many sticks the string of a set-up (the first where none is named) has; null: work it out from the length
 * needed. Without a string record one is made for the first pull path; where nothing is to be fixed nothing changes.
 */
export const setStickCount = defineCommand({
  name: 'setStickCount',
  args: z.strictObject({ stickCount: countArg, setUpId: oneId.optional() }),
  run: (document, args, env): Edit => {
    const setUp = setUpsOf(document).find(({ id }) => args.setUpId === undefined || id === args.setUpId)
    if (setUp === undefined) return refuse('setStickCount', 'setUpId', args.setUpId === undefined ? 'is needed: there is no set-up yet' : `names ${args.setUpId}, which is not a set-up here`, args.setUpId === undefined ? 'hace falta: aún no hay montaje' : `nombra ${args.setUpId}, que no es un montaje aquí`)
    const { stickCount } = args
    const before = recordsOf(document, 'string').find(({ setUpId }) => setUpId === setUp.id)
    if (before !== undefined) return { put: before.stickCount === stickCount ? [] : [{ ...before, stickCount }], remove: [] }
    const run = runsOf(document).find(({ setUpId }) => setUpId === setUp.id)
    if (stickCount === null || run === undefined) return { put: [], remove: [] }
    return { put: [{ id: env.newId('string'), kind: 'string', setUpId: setUp.id, runId: run.id, name: '', stickCount, parkingRow: null, parkingSide: 'right', order: 0, joinedToId: null, note: null }], remove: [] }
  },
  label: (_document, { stickCount }) => (stickCount === null ? { text: { en: 'work out the sticks', es: 'calcular los tubos' } } : { text: { en: '{count} sticks', es: '{count} tubos' }, values: { count: stickCount } }),
})
