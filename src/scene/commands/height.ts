import { z } from 'zod'
import type { YardDocument, YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { heightSchema, type HeightRule } from '../parts.ts'
import { isItem } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { idsArg, stepM } from './args.ts'
import { defineCommand } from './command.ts'
import { stepOf, whatText } from './wording.ts'

const withHeight = (document: YardDocument, ids: readonly string[], change: (height: HeightRule) => HeightRule | null): Edit => ({
  put: [...new Set(ids)].flatMap((id): YardRecord[] => {
    const record = document.records[id]
    if (!isItem(record) || record.locked || !('height' in record)) return []
    const height = change(record.height)
    return height === null ? [] : [{ ...record, height }]
  }),
  remove: [],
})

/** Sets the height rule of supports: on the jaw line, below it, above the ground, unknown. Locked ones are passed over. */
export const setHeight = defineCommand({
  name: 'setHeight',
  args: z.strictObject({ ids: idsArg, height: heightSchema }),
  run: (document, { ids, height }) => withHeight(document, ids, () => height),
  label: (document, { ids, height }) =>
    height.rule === 'aboveGround'
      ? stepOf({ en: 'saddle of', es: 'apoyo de' }, { en: `${whatText(document, ids).en} to {height}`, es: `${whatText(document, ids).es} a {height}` }, { height: { kind: 'height', value: height.saddleM } })
      : stepOf({ en: 'height of', es: 'altura de' }, whatText(document, ids)),
})

/**
 * Raises supports by `dLevelM` (negative lowers). The rule keeps its kind: a saddle above ground grows, a drop below the
 * jaw line shrinks; a support on the jaw line becomes one a drop below it (a negative drop lies above). An unknown
 * height stays unknown.
 */
export const dropBy = defineCommand({
  name: 'dropBy',
  args: z.strictObject({ ids: idsArg, dLevelM: stepM }),
  run: (document, { ids, dLevelM }) =>
    withHeight(document, ids, (height) => {
      if (height.rule === 'aboveGround') return { rule: 'aboveGround', saddleM: rounded(height.saddleM + dLevelM) }
      if (height.rule === 'unknown' || dLevelM === 0) return null
      return { rule: 'belowAxis', dropM: rounded((height.rule === 'belowAxis' ? height.dropM : 0) - dLevelM) }
    }),
  label: (document, { ids, dLevelM }) => stepOf(dLevelM > 0 ? { en: 'raise', es: 'subir' } : { en: 'lower', es: 'bajar' }, { en: `${whatText(document, ids).en} by {step}`, es: `${whatText(document, ids).es} {step}` }, { step: { kind: 'height', value: Math.abs(dLevelM) } }),
})
