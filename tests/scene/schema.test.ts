import { z } from 'zod'
import { expect, it } from 'vitest'
import { FILE_VERSION, recordKinds, schemaOf } from '../../src/scene/document.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { sections } from '../../src/scene/fileForm.ts'
import { sampleOf } from '../helpers/sampleRecords.ts'

/** The schema of every kind beside the file version: a change of either shows as a difference and asks for the other, a migration and a frozen file. */
it('the schemas are those of the file version', async () => {
  const schemas = Object.fromEntries(recordKinds.map((kind) => [kind, z.toJSONSchema(schemaOf(kind)!)]))
  await expect(`${JSON.stringify({ fileVersion: FILE_VERSION, schemas }, null, 1)}\n`).toMatchFileSnapshot('schema.snapshot.json')
})

it('every kind but layout and job has exactly one list in the file', () => {
  const listed = sections.flatMap((section) => section.kinds)
  expect(listed.toSorted()).toEqual(recordKinds.filter((kind) => kind !== 'layout' && kind !== 'job').toSorted())
  expect(new Set(sections.map(({ name }) => name)).size).toBe(sections.length)
})

it('what a kind creates fits its own schema, and every field it shows is there', () => {
  for (const definition of kinds) {
    const record = sampleOf(definition.kind) as unknown as Record<string, unknown>
    for (const { path } of definition.fields) {
      const value = path.split('.').reduce<unknown>((at, part) => (at as Record<string, unknown>)[part], record)
      expect(value, `${definition.kind} ${path}`).not.toBe(undefined)
    }
  }
})
