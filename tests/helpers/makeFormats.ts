/**
 * Writes the frozen files of today's version from those of version 1: `npx tsx tests/helpers/makeFormats.ts`.
 * Only until a version is released; from then on its folder is never written again.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { FILE_VERSION } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { writeFile } from '../../src/scene/writeFile.ts'

const folder = (version: number): string => `shared/formats/v${String(version).padStart(4, '0')}`
mkdirSync(folder(FILE_VERSION), { recursive: true })
for (const name of readdirSync(folder(1)).filter((one) => one.endsWith('.yard.json'))) {
  const read = readFile(readFileSync(`${folder(1)}/${name}`, 'utf8'))
  if (!read.ok) throw new Error(`${name}: ${read.issues[0]?.path ?? ''}`)
  writeFileSync(`${folder(FILE_VERSION)}/${name}`, writeFile(read.document))
}
