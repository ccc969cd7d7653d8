import { readdirSync, readFileSync } from 'node:fs'
import { documentIssues } from '../../src/scene/references.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import { seededRandom } from './seededRandom.ts'

export interface FileSoakReport {
  files: number
  opened: number
  refused: number
  /** Of the refused, those that could be opened without some items. */
  salvaged: number
  /** Longest time one file took to read, ms, and the seed of it. */
  longestMs: number
  longestSeed: number
  /** Files that broke a rule: the seed to run it again with, and what was broken. */
  failures: { seed: number; why: string }[]
}

const folder = 'shared/formats/v0001'
const originals: readonly string[] = readdirSync(folder).filter((name) => name.endsWith('.yard.json')).sort().map((name) => readFileSync(`${folder}/${name}`, 'utf8'))

type Random = () => number
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T

/** Values a hand, a cut line or another program might leave where something else belongs. */
const junk: readonly unknown[] = [null, true, 0, -1, 1e308, -0, 3.5, '', 'x', '0', 'run:1', 'stand:1', '__proto__', '\u0000', '🦺'.repeat(50), [], {}, [[[]]], { at: 'free' }, { rule: 'onAxis' }, 'y'.repeat(3000), [1, 2, 3]]

interface Slot {
  holder: Record<string, unknown> | unknown[]
  key: string | number
}

function slots(value: unknown, found: Slot[] = []): Slot[] {
  if (typeof value !== 'object' || value === null) return found
  for (const key of Object.keys(value)) {
    const slot: Slot = Array.isArray(value) ? { holder: value, key: Number(key) } : { holder: value as Record<string, unknown>, key }
    found.push(slot)
    slots((value as Record<string, unknown>)[key], found)
  }
  return found
}

const put = ({ holder, key }: Slot, value: unknown): void => {
  ;(holder as Record<string | number, unknown>)[key] = value
}

/** One change to the structure of a file. */
function mutateForm(random: Random, form: unknown): void {
  const all = slots(form)
  if (all.length === 0) return
  const slot = pick(random, all)
  const value = (slot.holder as Record<string | number, unknown>)[slot.key]
  const how = random()
  if (how < 0.35) put(slot, structuredClone(pick(random, junk)))
  else if (how < 0.55) {
    if (Array.isArray(slot.holder)) slot.holder.splice(Number(slot.key), 1)
    else delete slot.holder[slot.key]
  } else if (how < 0.7) {
    if (Array.isArray(slot.holder)) slot.holder.push(structuredClone(value))
    else slot.holder[`${slot.key}2`] = structuredClone(value)
  } else if (how < 0.85) {
    const other = pick(random, all)
    put(slot, structuredClone((other.holder as Record<string | number, unknown>)[other.key]))
  } else {
    let deep = value
    for (let i = 0; i < random() * 60; i++) deep = random() < 0.5 ? [deep] : { in: deep }
    put(slot, deep)
  }
}

/** One change to the text of a file: a stretch lost, doubled, cut off or overwritten. */
function mutateText(random: Random, text: string): string {
  const at = Math.floor(random() * text.length)
  const span = 1 + Math.floor(random() ** 3 * 200)
  const how = random()
  if (how < 0.3) return text.slice(0, at) + text.slice(at + span)
  if (how < 0.5) return text.slice(0, at)
  if (how < 0.7) return text.slice(0, at) + text.slice(at, at + span) + text.slice(at)
  return text.slice(0, at) + pick(random, ['"', '{', '}', '[', ',', '9', '-', 'e', '\\', '\u0000', '\ud800', 'null']) + text.slice(at + 1)
}

/** A file of ours, changed in one to four places. */
export function mutatedFile(seed: number): string {
  const random = seededRandom(seed)
  let text = pick(random, originals)
  const changes = 1 + Math.floor(random() * 4)
  if (random() < 0.7) {
    const form: unknown = JSON.parse(text)
    for (let i = 0; i < changes; i++) mutateForm(random, form)
    text = JSON.stringify(form) ?? ''
  }
  if (random() < 0.4) for (let i = 0; i < changes; i++) text = mutateText(random, text)
  return text
}

/** What is wrong with the answer to a file, or null: it opens whole and holds together, or is refused with reasons. */
function faultOf(result: ReturnType<typeof readFile>): { fault: string | null; outcome: 'opened' | 'refused' | 'salvaged' } {
  if (result.ok) {
    const issues = documentIssues(result.document)
    if (issues.length > 0) return { fault: `opened, but ${issues[0]?.path} ${issues[0]?.message.en}`, outcome: 'opened' }
    const written = writeFile(result.document)
    const again = readFile(written)
    return { fault: again.ok && writeFile(again.document) === written ? null : 'opened, but is not read again as written', outcome: 'opened' }
  }
  const isReasoned = result.issues.length > 0 && result.issues.every(({ message }) => message.en !== '' && message.es !== '')
  if (!isReasoned) return { fault: 'refused without a reason', outcome: 'refused' }
  if (result.salvage === undefined) return { fault: null, outcome: 'refused' }
  const copy = result.salvage.openAs('layout:copy')
  const issues = documentIssues(copy)
  if (result.salvage.dropped.length === 0) return { fault: 'offers to leave out nothing', outcome: 'salvaged' }
  return { fault: issues.length === 0 ? null : `the copy is not sound: ${issues[0]?.path} ${issues[0]?.message.en}`, outcome: 'salvaged' }
}

/** Reads `count` mutated files, from `seed` on: each is opened or refused with reasons, never with an exception. */
export function runFileSoak({ seed, count }: { seed: number; count: number }): FileSoakReport {
  const report: FileSoakReport = { files: 0, opened: 0, refused: 0, salvaged: 0, longestMs: 0, longestSeed: seed, failures: [] }
  for (let i = 0; i < count; i++) {
    report.files++
    try {
      const text = mutatedFile(seed + i)
      const from = performance.now()
      const result = readFile(text)
      const tookMs = performance.now() - from
      if (tookMs > report.longestMs) [report.longestMs, report.longestSeed] = [tookMs, seed + i]
      const { fault, outcome } = faultOf(result)
      if (outcome === 'opened') report.opened++
      else report.refused++
      if (outcome === 'salvaged') report.salvaged++
      if (fault !== null) report.failures.push({ seed: seed + i, why: fault })
    } catch (error) {
      report.failures.push({ seed: seed + i, why: `threw ${error instanceof Error ? error.message : String(error)}` })
    }
  }
  return report
}
