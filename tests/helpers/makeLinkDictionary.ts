/**
 * Writes the dictionary of links of version 1 and the frozen links made with it: `npx tsx tests/helpers/makeLinkDictionary.ts`.
 * Only until a version is released; from then on shared/formats/link1 is never written again, for a link of that version
 * opens with this dictionary alone.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { applyEdit } from '../../src/scene/edit.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { setUpsOf } from '../../src/scene/document.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { newDocument } from '../../src/scene/newYard.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { fileFormOf } from '../../src/scene/writeFile.ts'

const folder = 'shared/formats/link1'
mkdirSync(folder, { recursive: true })

let count = 0
const env = { newId: (prefix: string) => `${prefix}:d${(count += 1)}`, now: () => '2026-01-01T00:00:00.000Z' }
/** Deflate looks back 32,768 bytes; what is likeliest stands last, where distances are shortest. */
const MOST = 32_768

const every = readFile(readFileSync('shared/formats/v0002/every-kind.yard.json', 'utf8'))
if (!every.ok) throw new Error('every-kind.yard.json cannot be read')
const typical = ((): object => {
  const empty = newDocument({ title: '', profile: 'US', pipe: { system: 'IPS', size: '12', dr: 11, material: 'PE4710' }, neededLengthM: 152.4, stickLengthM: 12.192, stripLengthM: 91.44, stripWidthM: 12.192, fallRatio: 0 }, env, 'feetInches')
  const setUpId = setUpsOf(empty)[0]?.id
  const command = commandOf('usualSetUp')
  if (setUpId === undefined || command === undefined) throw new Error('no set-up to fill')
  const usual = applyEdit(empty, command.run(empty, { setUpId }, env))
  const runId = Object.values(usual.records).find(({ kind }) => kind === 'run')?.id ?? ''
  const created = kinds.map((definition, i) => definition.create(`${definition.idPrefix}:d${i}`, { place: { at: 'onRun', runId, runningM: 3, offsetM: 0, turnRad: 0 }, points: [{ xM: 1, yM: 2 }, { xM: 3, yM: 4 }, { xM: 5, yM: 6 }], setUpId, runId }))
  const likeliest = ['roller', 'rack', 'machine', 'stand']
  const ordered = created.toSorted((a, b) => likeliest.indexOf(a.kind) - likeliest.indexOf(b.kind))
  return fileFormOf({ records: { ...usual.records, ...Object.fromEntries(ordered.map((record) => [record.id, record])) } })
})()
const text = `${JSON.stringify(fileFormOf(every.document))}${JSON.stringify(typical)}`
writeFileSync(`${folder}/dictionary.json`, `${JSON.stringify({ about: 'Dictionary of links of version 1 (src/scene/link/packing.ts). Part of the format: never changed once released.', text: text.slice(-MOST) }, null, 1)}\n`)

const { linkContent, writeFragment } = await import('../../src/scene/link/layoutLink.ts')
const frozen = ['minimal', 'full'].map((name) => {
  const read = readFile(readFileSync(`shared/formats/v0002/${name}.yard.json`, 'utf8'))
  if (!read.ok) throw new Error(`${name} cannot be read`)
  return [name, writeFragment(linkContent(read.document))] as const
})
writeFileSync(`${folder}/links.json`, `${JSON.stringify(Object.fromEntries(frozen), null, 1)}\n`)
