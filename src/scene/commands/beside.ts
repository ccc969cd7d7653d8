import { z } from 'zod'
import { recordsOf, schemaOf, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { finite, phaseSchema, zoneClassSchema } from '../parts.ts'
import type { AsSetRecord } from '../records/beside.ts'
import { isItem } from '../resolve.ts'
import { oneId, pointArg, textArg } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { stepOf, whatText } from './wording.ts'

const limitIdArg = z.string().min(2).max(60)
const boundArg = z.enum(['check', 'fix'])

/** Replaces one bound of a limit by the owner's or the crew's figure, with the reason and who says so. */
export const setLimit = defineCommand({
  name: 'setLimit',
  args: z.strictObject({ limitId: limitIdArg, bound: boundArg, value: finite, reason: textArg, who: z.string().max(200) }),
  run: (document, args, env): Edit => {
    const before = recordsOf(document, 'limitChange').find((one) => one.limitId === args.limitId && one.bound === args.bound)
    return { put: [checked('setLimit', schemaOf('limitChange'), { id: before?.id ?? env.newId('limitChange'), kind: 'limitChange', ...args, when: env.now() }) as YardRecord], remove: [] }
  },
  label: () => ({ text: { en: 'change a limit', es: 'cambiar un límite' } }),
})

/** Puts a limit back to its starting value; one bound of it where named. */
export const clearLimit = defineCommand({
  name: 'clearLimit',
  args: z.strictObject({ limitId: limitIdArg, bound: boundArg.optional() }),
  run: (document, { limitId, bound }): Edit => ({ put: [], remove: recordsOf(document, 'limitChange').filter((one) => one.limitId === limitId && (bound === undefined || one.bound === bound)).map(({ id }) => id) }),
  label: () => ({ text: { en: 'limit back to its start', es: 'límite a su valor inicial' } }),
})

/** What was measured on an item after setting it, or ticked as set. What is not named keeps what it was before; the plan is not touched. */
export const setAsSet = defineCommand({
  name: 'setAsSet',
  args: z.strictObject({ itemId: oneId, saddleM: finite.nullable().optional(), farSaddleM: finite.nullable().optional(), isTicked: z.boolean().optional(), isFarTicked: z.boolean().optional(), offsetM: finite.nullable().optional(), runningM: finite.nullable().optional() }),
  run: (document, { itemId, ...measured }, env): Edit => {
    if (!isItem(document.records[itemId])) return refuse('setAsSet', 'itemId', `names ${itemId}, which is not an item here`, `nombra ${itemId}, que no es un elemento aquí`)
    const before = recordsOf(document, 'asSet').find((one) => one.itemId === itemId)
    const start = before ?? { id: env.newId('asSet'), kind: 'asSet', itemId, saddleM: null, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null }
    const given = Object.fromEntries(Object.entries(measured).filter(([, value]) => value !== undefined))
    const made = checked('setAsSet', schemaOf('asSet'), { ...start, ...given, when: env.now() }) as AsSetRecord
    // With the last figure and tick taken back nothing is left that was measured.
    const isEmpty = !made.isTicked && !made.isFarTicked && [made.saddleM, made.farSaddleM, made.offsetM, made.runningM].every((value) => value === null)
    if (isEmpty) return { put: [], remove: before === undefined ? [] : [before.id] }
    return { put: [made], remove: [] }
  },
  label: (document, { itemId }) => stepOf({ en: 'as set:', es: 'como quedó:' }, whatText(document, [itemId])),
})

const zoneKeyArg = z.string().min(3).max(120)

/** Changes a derived zone: its margin, outline, class or phases, with the reason. What is not named stays as it was changed before, or derived. */
export const changeZone = defineCommand({
  name: 'changeZone',
  args: z.strictObject({
    zoneKey: zoneKeyArg, marginM: finite.nullable().optional(), points: z.array(pointArg).nullable().optional(), zoneClass: zoneClassSchema.nullable().optional(),
    phases: z.array(phaseSchema).nullable().optional(), reason: textArg.optional(),
  }),
  run: (document, { zoneKey, ...changes }, env): Edit => {
    const before = recordsOf(document, 'zoneChange').find((one) => one.zoneKey === zoneKey)
    const start = before ?? { id: env.newId('zoneChange'), kind: 'zoneChange', zoneKey, marginM: null, points: null, zoneClass: null, phases: null, reason: '' }
    const given = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined))
    return { put: [checked('changeZone', schemaOf('zoneChange'), { ...start, ...given }) as YardRecord], remove: [] }
  },
  label: () => ({ text: { en: 'change a zone', es: 'cambiar una zona' } }),
})

/** The zone as it is derived again. */
export const clearZoneChange = defineCommand({
  name: 'clearZoneChange',
  args: z.strictObject({ zoneKey: zoneKeyArg }),
  run: (document, { zoneKey }): Edit => ({ put: [], remove: recordsOf(document, 'zoneChange').filter((one) => one.zoneKey === zoneKey).map(({ id }) => id) }),
  label: () => ({ text: { en: 'zone as derived', es: 'zona como se deduce' } }),
})
