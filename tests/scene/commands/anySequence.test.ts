import fc from 'fast-check'
import { expect, it } from 'vitest'
import { CommandError, commandOf, commands } from '../../../src/scene/commands/index.ts'
import type { YardDocument } from '../../../src/scene/document.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import { readFile } from '../../../src/scene/readFile.ts'
import { writeFile } from '../../../src/scene/writeFile.ts'
import { labelsOf, resolvePlace } from '../../../src/scene/resolve.ts'
import { placedOf } from '../../../src/scene/document.ts'
import { createDocumentStore } from '../../../src/state/documentStore.ts'
import { argsArbitrary } from '../../helpers/commandArgs.ts'
import { deepFrozen } from '../../helpers/commands.ts'
import { item, onItem, onRun, stringAt, testEnv, yard } from '../../helpers/documents.ts'

const start = (): YardDocument => yard(
  item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(-6)), item('stand', 'stand:1', onRun(6)), item('roller', 'roller:1', onRun(25)),
  item('puller', 'puller:1', onRun(60)), item('crew', 'crew:1', onItem('puller:1', 1, 1)), item('fence', 'fence:1', [{ xM: 0, yM: 8 }, { xM: 30, yM: 8 }, { xM: 40, yM: 9 }]),
  stringAt(1, { stickCount: 4 }), stringAt(2, { joinedToId: 'string:1' }),
  // What few sequences would first change and then clear again.
  { id: 'limitChange:1', kind: 'limitChange', limitId: 'jaw-effort', bound: 'check', value: 0.8, reason: '', who: '', when: '' },
  { id: 'zoneChange:1', kind: 'zoneChange', zoneKey: 'Z-02@rack:1', marginM: 1, points: null, zoneClass: null, phases: null, reason: '' },
  { id: 'asSet:1', kind: 'asSet', itemId: 'stand:1', saddleM: 0.7, farSaddleM: null, isTicked: true, isFarTicked: false, offsetM: null, runningM: null, when: '' },
)

/** Names, and for each a seed its arguments are drawn with when the document before it is known. */
const steps = fc.array(fc.record({ name: fc.constantFrom(...commands.map(({ name }) => name)), seed: fc.integer() }), { minLength: 1, maxLength: 25 })

it('after any sequence of commands the document is sound, undo all is the start, redo all the end, and the file gives it back', () => {
  const seen = new Map<string, number>()
  fc.assert(fc.property(steps, (sequence) => {
    const store = createDocumentStore(deepFrozen(start()))
    const env = testEnv()
    for (const { name, seed } of sequence) {
      const { document } = store.getState()
      const command = commandOf(name)!
      const [args] = fc.sample(argsArbitrary(name, document), { numRuns: 1, seed })
      try {
        const edit = command.run(document, args, env)
        if (store.getState().commit(command.label(document, args), deepFrozen(edit))) seen.set(name, (seen.get(name) ?? 0) + 1)
      } catch (error) {
        // A refusal names its field; anything else is a defect.
        if (!(error instanceof CommandError)) throw error
      }
      expect(documentIssues(store.getState().document), name).toEqual([])
    }
    const end = store.getState().document
    labelsOf(end)
    for (const record of placedOf(end)) expect(Number.isFinite(resolvePlace(end, record).xM)).toBe(true)
    const read = readFile(writeFile(end))
    expect(read.ok ? [] : read.issues).toEqual([])
    if (read.ok) expect(writeFile(read.document)).toBe(writeFile(end))
    let undone = 0
    while (store.getState().undo() !== null) undone++
    expect(store.getState().document).toEqual(start())
    expect(Object.keys(store.getState().document.records)).toEqual(Object.keys(start().records))
    for (let i = 0; i < undone; i++) store.getState().redo()
    expect(store.getState().document).toEqual(end)
    expect(Object.keys(store.getState().document.records)).toEqual(Object.keys(end.records))
  }), { numRuns: 400, seed: 1907 })
  // Every command must have changed something in some run, or it was not tested here.
  expect(commands.map(({ name }) => name).filter((name) => !seen.has(name))).toEqual([])
})
