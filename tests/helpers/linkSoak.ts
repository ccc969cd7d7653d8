import { deflateSync } from 'fflate'
import { isLayoutFragment, linkContent, readFragment, writeFragment } from '../../src/scene/link/layoutLink.ts'
import { packed } from '../../src/scene/link/packing.ts'
import { toBase64url } from '../../src/scene/link/base64url.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import { mutatedFile } from './fileSoak.ts'
import { seededRandom } from './seededRandom.ts'

export interface LinkSoakReport {
  links: number
  opened: number
  refused: number
  /** Longest time one link took to read, ms, and the seed of it. */
  longestMs: number
  longestSeed: number
  failures: { seed: number; why: string }[]
}

type Random = () => number
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** A bomb: megabytes of one character that pack into a short link. */
const bomb = (random: Random): string => toBase64url(new Uint8Array([1, 2, 3, 4, ...deflateSync(new Uint8Array(1_000_000 * (1 + Math.floor(random() * 8))).fill(pick(random, [0, 0x20, 0x5b, 0x22])), { level: 1 })]))

/** Characters lost, doubled, changed or added in a link, as chat programs and hands do. */
function mutateLink(random: Random, link: string): string {
  const at = Math.floor(random() * link.length)
  const span = 1 + Math.floor(random() ** 3 * 200)
  const how = random()
  if (how < 0.2) return link.slice(0, at)
  if (how < 0.4) return link.slice(0, at) + link.slice(at + span)
  if (how < 0.55) return link.slice(0, at) + link.slice(at, at + span) + link.slice(at)
  if (how < 0.8) return link.slice(0, at) + pick(random, [...letters]) + link.slice(at + 1)
  return link.slice(0, at) + pick(random, ['%', '<script>', '../../', 'javascript:', '\u0000', '=', ' ', '\n', '#', '🦺', '"']) + link.slice(at)
}

/** A link of ours, changed on its way or made on purpose: one in three carries a broken file under a right sum. */
export function mutatedLink(seed: number): string {
  const random = seededRandom(seed)
  const how = random()
  if (how < 0.34) return `#yard1.${packed(mutatedFile(seed))}`
  if (how < 0.37) return `#yard1.${bomb(random)}`
  const read = readFile(mutatedFile(seed))
  const good = read.ok ? writeFragment(linkContent(read.document)) : `yard1.${packed(pick(random, ['', '{}', '[]', 'null', '"<img src=x onerror=alert(1)>"', '{"format":"stringyard"}', '['.repeat(5000)]))}`
  let link = `#${good}`
  for (let changes = 1 + Math.floor(random() * 3); changes > 0; changes--) link = mutateLink(random, link)
  if (random() < 0.05) link += 'A'.repeat(70_000)
  return link
}

/** What is wrong with the answer to a link, or null: it opens whole and holds together, or is refused with a reason in both languages. */
function faultOf(link: string): { fault: string | null; isOpened: boolean } {
  const result = readFragment(link)
  if (!result.ok) return { fault: result.reason.en !== '' && result.reason.es !== '' ? null : 'refused without a reason', isOpened: false }
  if (!isLayoutFragment(link)) return { fault: 'opened, but is no link of ours', isOpened: true }
  const issues = documentIssues(result.document)
  if (issues.length > 0) return { fault: `opened, but ${issues[0]?.path} ${issues[0]?.message.en}`, isOpened: true }
  const content = linkContent(result.document)
  const again = readFragment(writeFragment(content))
  return { fault: again.ok && writeFile(again.document) === writeFile(content.document) ? null : 'opened, but is not read again as written', isOpened: true }
}

/** Reads `count` mutated links, from `seed` on: each is opened or refused with a reason, never with an exception. */
export function runLinkSoak({ seed, count }: { seed: number; count: number }): LinkSoakReport {
  const report: LinkSoakReport = { links: 0, opened: 0, refused: 0, longestMs: 0, longestSeed: seed, failures: [] }
  for (let i = 0; i < count; i++) {
    report.links++
    const link = mutatedLink(seed + i)
    const from = performance.now()
    try {
      readFragment(link)
    } catch {
      // Told below.
    }
    const tookMs = performance.now() - from
    if (tookMs > report.longestMs) [report.longestMs, report.longestSeed] = [tookMs, seed + i]
    try {
      const { fault, isOpened } = faultOf(link)
      if (isOpened) report.opened++
      else report.refused++
      if (fault !== null) report.failures.push({ seed: seed + i, why: fault })
    } catch (error) {
      report.failures.push({ seed: seed + i, why: `threw ${error instanceof Error ? error.message : String(error)}` })
    }
  }
  return report
}
