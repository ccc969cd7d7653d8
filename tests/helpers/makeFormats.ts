/**
 * Writes the frozen files of today's version from those of version 1: `npx tsx tests/helpers/makeFormats.ts`.
 * Only until a version is released; from then on its folder is never written again.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { FILE_VERSION } from '../../src/scene/document.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { writeFile } from '../../src/scene/writeFile.ts'

const folder = (version: number): string => `shared/formats/v${String(version).padStart(4, '0')}`
mkdirSync(folder(FILE_VERSION), { recursive: true })

/** Every kind of today once, beside what version 1 could say. */
const every = ((): string => {
  const read = readFile(readFileSync(`${folder(1)}/full.yard.json`, 'utf8'))
  if (!read.ok) throw new Error('full.yard.json of version 1 cannot be read')
  const there = new Set(Object.values(read.document.records).map(({ kind }) => kind as string))
  const added = kinds.filter(({ kind }) => !there.has(kind)).map((definition, i) => {
    const [xM, yM] = [10 * (i % 6), 30 + 10 * Math.floor(i / 6)]
    const points = [{ xM, yM }, { xM: xM + 6, yM }, { xM: xM + 6, yM: yM + 4 }]
    return definition.create(`${definition.idPrefix}:${i + 1}`, { place: { at: 'free', xM, yM, headingRad: 0 }, points, setUpId: 'setUp:1', runId: 'run:1' })
  })
  return writeFile({ records: { ...read.document.records, ...Object.fromEntries(added.map((record) => [record.id, record])) } })
})()
writeFileSync(`${folder(FILE_VERSION)}/every-kind.yard.json`, every)

for (const name of readdirSync(folder(1)).filter((one) => one.endsWith('.yard.json'))) {
  const read = readFile(readFileSync(`${folder(1)}/${name}`, 'utf8'))
  if (!read.ok) throw new Error(`${name}: ${read.issues[0]?.path ?? ''}`)
  writeFileSync(`${folder(FILE_VERSION)}/${name}`, writeFile(read.document))
}

// Links of today's version are packed with words of these files.
await import('./makeLinkDictionary.ts')
