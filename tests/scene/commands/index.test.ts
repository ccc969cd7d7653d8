import { describe, expect, it } from 'vitest'
import { CommandError, commandOf, commands } from '../../../src/scene/commands/index.ts'
import { assertPlaceholders } from '../../../src/messages/render.ts'
import { deepFrozen } from '../../helpers/commands.ts'
import { item, onRun, stringAt, testEnv, yard } from '../../helpers/documents.ts'
import { argsFor } from '../../helpers/commandArgs.ts'

const document = deepFrozen(yard(item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(-6)), item('stand', 'stand:1', onRun(6)), item('fence', 'fence:1', [{ xM: 0, yM: 5 }, { xM: 9, yM: 5 }, { xM: 12, yM: 6 }]), stringAt(1, { stickCount: 7 }), stringAt(2, { stickCount: 6, joinedToId: 'string:1' })))

describe('the registry', () => {
  it('has every command once', () => {
    const names = commands.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    expect(names.every((name) => commandOf(name)?.name === name)).toBe(true)
    expect(commandOf('toString')).toBe(undefined)
  })
  it.each(commands.map(({ name }) => name))('%s runs on a frozen document, twice alike, and names its step in both languages', (name) => {
    const command = commandOf(name)!
    const args = deepFrozen(argsFor(name, document))
    const edit = command.run(document, args, testEnv())
    expect(command.run(document, args, testEnv())).toEqual(edit)
    const { text, values } = command.label(document, args)
    assertPlaceholders(text, Object.keys(values ?? {}))
    expect(text.es).not.toBe('')
  })
  it.each(commands.map(({ name }) => name))('%s refuses arguments it does not know, by field, in both languages', (name) => {
    const refusal = (args: unknown): CommandError | null => {
      try {
        commandOf(name)!.run(document, args, testEnv())
        return null
      } catch (error) {
        return error as CommandError
      }
    }
    for (const args of [null, undefined, 7, { ...(argsFor(name, document) as object), surprise: 1 }]) {
      const error = refusal(args)
      expect(error).toBeInstanceOf(CommandError)
      expect([error?.command, error?.field === '', error?.reason.es === '']).toEqual([name, false, false])
    }
  })
})
