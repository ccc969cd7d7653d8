import { z } from 'zod'
import { applyEdit, diffDocuments, type Edit, type StepLabel } from '../edit.ts'
import { defineCommand, refuse, type Command } from './command.ts'

const localizedArg = z.strictObject({ en: z.string().max(400), es: z.string().max(400) })
const valueArg = z.union([z.string(), z.number(), localizedArg, z.strictObject({ kind: z.string(), value: z.number().nullable() })])
const labelArg = z.union([localizedArg, z.strictObject({ text: localizedArg, values: z.record(z.string(), valueArg).optional() })])

/** Several commands as one step, each run on what the one before left. Takes the registry, so that it can be one of it. */
export const sequenceOf = (commandOf: (name: string) => Command | undefined): Command =>
  defineCommand({
    name: 'sequence',
    args: z.strictObject({ commands: z.array(z.strictObject({ command: z.string().max(40), args: z.unknown() })).max(200), label: labelArg }),
    run: (document, { commands }, env): Edit => {
      const end = commands.reduce((now, { command, args }, i) => {
        const one = commandOf(command) ?? refuse('sequence', `commands[${i}].command`, `${command} is not a command`, `${command} no es una orden`)
        return applyEdit(now, one.run(now, args, env))
      }, document)
      const diff = diffDocuments(document, end)
      const put = Object.values(end.records).filter(({ id }) => Object.hasOwn(diff.added, id) || Object.hasOwn(diff.updated, id))
      return { put, remove: Object.keys(diff.removed) }
    },
    label: (_document, { label }): StepLabel => ('text' in label ? (label as StepLabel) : { text: label }),
  })
