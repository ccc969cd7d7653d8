import type { z } from 'zod'
import type { Localized } from '../../messages/localized.ts'
import type { YardDocument } from '../document.ts'
import type { Edit, Env, StepLabel } from '../edit.ts'
import { issuesOf, pathText } from '../issues.ts'

/** A command as the app runs it: named, with plain JSON arguments. `run` is pure. */
export interface Command {
  name: string
  /** Fails: CommandError naming the argument that is wrong. What is locked or gone is passed over: then nothing changes. */
  run: (document: YardDocument, args: unknown, env: Env) => Edit
  /** Name of the step for undo and redo; the document is the one before the command. */
  label: (document: YardDocument, args: unknown) => StepLabel
}

/** The arguments of a command are wrong; `field` is the path of the one that is. */
export class CommandError extends Error {
  readonly command: string
  readonly field: string
  readonly reason: Localized
  constructor(command: string, field: string, reason: Localized) {
    super(`${command}: ${field} ${reason.en}`)
    this.name = 'CommandError'
    this.command = command
    this.field = field
    this.reason = reason
  }
}

export interface CommandDefinition<S extends z.ZodType> {
  name: string
  args: S
  run: (document: YardDocument, args: z.output<S>, env: Env) => Edit
  label: (document: YardDocument, args: z.output<S>) => StepLabel
}

/** Puts the check of the arguments before a command. */
export function defineCommand<S extends z.ZodType>(definition: CommandDefinition<S>): Command {
  const { name } = definition
  const read = (args: unknown): z.output<S> => {
    const parsed = definition.args.safeParse(args)
    if (parsed.success) return parsed.data
    const [first] = issuesOf(parsed.error, args)
    throw new CommandError(name, first?.path === '' || first === undefined ? 'args' : first.path, first?.message ?? { en: 'is wrong', es: 'es incorrecto' })
  }
  return { name, run: (document, args, env) => definition.run(document, read(args), env), label: (document, args) => definition.label(document, read(args)) }
}

export const refuse = (command: string, field: string, en: string, es: string): never => {
  throw new CommandError(command, field, { en, es })
}

/** The record as its schema reads it, or a CommandError naming the field that does not fit. */
export function checked<T>(command: string, schema: z.ZodType<T> | undefined, record: unknown, base: readonly PropertyKey[] = []): T {
  if (schema === undefined) return refuse(command, pathText(base) || 'kind', 'is not a kind of record', 'no es un tipo de registro')
  const parsed = schema.safeParse(record)
  if (parsed.success) return parsed.data
  const [first] = issuesOf(parsed.error, record, base)
  throw new CommandError(command, first?.path ?? pathText(base), first?.message ?? { en: 'is wrong', es: 'es incorrecto' })
}
