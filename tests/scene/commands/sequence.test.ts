import { expect, it } from 'vitest'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { after, recordOf } from '../../helpers/commands.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'

const document = yard(item('stand', 'stand:1', onRun(6)), item('stand', 'stand:2', onRun(10)))

it('runs each command on what the one before left, as one edit', () => {
  const now = after(document, 'sequence', {
    commands: [
      { command: 'slideBy', args: { ids: ['stand:1'], dRunningM: 1, dOffsetM: 0 } },
      { command: 'slideBy', args: { ids: ['stand:1'], dRunningM: 1, dOffsetM: 0 } },
      { command: 'place', args: { kind: 'roller', place: onRun(20) } },
      { command: 'remove', args: { ids: ['stand:2'] } },
    ],
    label: { en: 'mend', es: 'arreglar' },
  })
  expect(recordOf(now, 'stand:1')['place']).toEqual(onRun(8))
  expect(Object.keys(now.records)).toEqual(['layout:this', 'job:this', 'setUp:1', 'run:1', 'stand:1', 'roller:t1'])
})
it('that comes to nothing changes nothing', () => {
  const back = [{ command: 'place', args: { kind: 'roller', place: onRun(20) } }, { command: 'remove', args: { ids: ['roller:t1'] } }]
  expect(after(document, 'sequence', { commands: back, label: { en: 'x', es: 'x' } })).toBe(document)
})
it('carries its own label, with values where given', () => {
  const label = { text: { en: 'move to {at}', es: 'mover a {at}' }, values: { at: { kind: 'length', value: 6 } } }
  expect(commandOf('sequence')?.label(document, { commands: [], label })).toEqual(label)
})
it('names the command that is none', () => {
  expect(() => after(document, 'sequence', { commands: [{ command: 'fly', args: {} }], label: { en: 'x', es: 'x' } })).toThrow('commands[0].command fly is not a command')
})
