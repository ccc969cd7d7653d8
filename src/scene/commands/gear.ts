import { z } from 'zod'
import { schemaOf, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { gearItemSchema, withGear } from '../gear.ts'
import { isItem } from '../resolve.ts'
import { idsArg } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { stepOf, whatText } from './wording.ts'

/** Makes items be pieces of the crew's own gear: its figures and choices with their basis are copied, its id kept as a hint. */
export const useGear = defineCommand({
  name: 'useGear',
  args: z.strictObject({ ids: idsArg, gear: gearItemSchema }),
  run: (document, { ids, gear }): Edit => {
    const there = [...new Set(ids)].flatMap((id) => {
      const record = document.records[id]
      return isItem(record) ? [record] : []
    })
    const same = there.filter(({ kind }) => kind === gear.kind)
    if (there.length > 0 && same.length === 0) return refuse('useGear', 'gear.kind', `is ${gear.kind}, which none of them is`, `es ${gear.kind}, y ninguno de ellos lo es`)
    return { put: same.map((record) => checked('useGear', schemaOf(record.kind), withGear(record, gear)) as YardRecord), remove: [] }
  },
  label: (document, { ids }) => stepOf({ en: 'own gear for', es: 'equipo propio para' }, whatText(document, ids)),
})
