/** Letters of revisions: when the next one begins, what it replaces, and the rows of the release log. */
import type { LayoutRecord } from './records/frame.ts'
import type { ReleaseRecord } from './records/beside.ts'
import { LAYOUT_ID, layoutOf, recordsOf, type YardDocument, type YardRecord } from './document.ts'
import type { Env } from './edit.ts'
import { sha256Hex } from './sha256.ts'
import { fileFormOf } from './writeFile.ts'

/** What leaves the device with a letter on it. */
export type ReleasedAs = 'printed' | 'shared'

/** Not the plan: the log itself, what was measured after it, and how it is read. */
const beside: ReadonlySet<string> = new Set(['release', 'asSet', 'asset'])
const ofTheReader = ['layoutId', 'revision', 'displayUnits', 'unitOverrides']

/**
 * Hash of the plan: SHA-256 (hex) of the file without release log, heights as set, letter, layoutId and units of display.
 * Two documents that a crew would build alike from have the same one. Cost: O(size), some 20 ms a megabyte.
 */
export function revisionHash(document: YardDocument): string {
  const records = Object.fromEntries(Object.entries(document.records).filter(([, { kind }]) => !beside.has(kind)))
  const form = fileFormOf({ records })
  const layout = Object.fromEntries(Object.entries(form['layout'] as object).filter(([key]) => !ofTheReader.includes(key)))
  return sha256Hex(JSON.stringify({ ...form, layout }))
}

/** Rows of the log with which the plan itself left the device, oldest first; talks and sign-offs are none. */
export const releasesOf = (document: YardDocument): readonly ReleaseRecord[] => recordsOf(document, 'release').filter(({ what }) => what === 'printed' || what === 'shared')

const isPlain = (letter: string): boolean => /^[A-Z]+$/.test(letter)
/** A < B … < Z < AA: the longer comes later. */
const isLater = (a: string, b: string): boolean => (a.length === b.length ? a > b : a.length > b.length)

/**
 * The letter after this one: A → B … Z → AA, and for letters of their own making '3' → '4', 'P9' → 'P10'; anything else
 * gets a 2 behind it. Null where no letter of at most 4 characters follows.
 */
export function nextLetter(letter: string): string | null {
  const next = isPlain(letter) ? counted(letter) : /\d$/.test(letter) ? letter.replace(/\d+$/, (digits) => String(Number(digits) + 1)) : `${letter}2`
  return next.length > 4 ? null : next
}

function counted(letter: string): string {
  const last = letter.at(-1) as string
  if (last !== 'Z') return letter.slice(0, -1) + String.fromCharCode(last.charCodeAt(0) + 1)
  return letter.length === 1 ? 'AA' : `${counted(letter.slice(0, -1))}A`
}

/** The letter a changed plan gets: after the latest one it has had, so that no letter names two papers. Null: none is left. */
function freshLetter(document: YardDocument): string | null {
  const { revision } = layoutOf(document)
  const used = new Set(releasesOf(document).map(({ letter }) => letter))
  const latest = isPlain(revision) ? [...used].filter(isPlain).reduce((most, letter) => (isLater(letter, most) ? letter : most), revision) : revision
  let next = nextLetter(latest)
  while (next !== null && used.has(next)) next = nextLetter(next)
  return next
}

/** Last row with which the plan left under its present letter, or null. */
const releaseOfLetter = (document: YardDocument): ReleaseRecord | null => {
  const { revision } = layoutOf(document)
  return releasesOf(document).findLast(({ letter }) => letter === revision) ?? null
}

/** Whether the plan is other than the one that left under its letter. False where none has. */
export function isBeyondRelease(document: YardDocument): boolean {
  const last = releaseOfLetter(document)
  return last !== null && last.contentHash !== revisionHash(document)
}

/** Whether records of the plan differ, by identity: cheap, and true too often rather than too seldom. */
const mayDiffer = (before: YardDocument, after: YardDocument): boolean => {
  const of = ({ records }: YardDocument): readonly YardRecord[] => Object.values(records).filter(({ kind }) => !beside.has(kind))
  const [a, b] = [of(before), of(after)]
  return a.length !== b.length || a.some((record, i) => record !== b[i])
}

const withLetter = (document: YardDocument, revision: string): YardDocument => ({ records: { ...document.records, [LAYOUT_ID]: { ...layoutOf(document), revision } } })

/**
 * The document as it is kept after an edit: the first edit after which the plan differs from the one that was printed or
 * shared under its letter gets the next letter in the same step. An edit that sets the letter by hand is left as it is.
 */
export function withRevision(before: YardDocument, after: YardDocument): YardDocument {
  if (releaseOfLetter(after) === null || layoutOf(before).revision !== layoutOf(after).revision) return after
  if (!mayDiffer(before, after) || !isBeyondRelease(after)) return after
  const letter = freshLetter(after)
  return letter === null ? after : withLetter(after, letter)
}

/** Letter that the present one replaces: the last other one that was printed or shared. Null: it is the first. */
export const replacedLetter = (document: YardDocument): string | null => releasesOf(document).findLast(({ letter }) => letter !== layoutOf(document).revision)?.letter ?? null

/** What a print or a share does to the document. */
export interface Release {
  /** Layout with the next letter, to be committed first: going back in time had brought the old letter onto another plan. Null: the letter stands. */
  raised: LayoutRecord | null
  /** Row to append to the log; null: this plan left in the same way before. */
  row: ReleaseRecord | null
}

/** Prepares the row of the log for a plan that leaves the device now. Pure: id and time come from `env`. */
export function releaseNow(document: YardDocument, what: ReleasedAs, env: Env, text: string | null = null): Release {
  const letter = isBeyondRelease(document) ? freshLetter(document) : null
  const current = letter === null ? document : withLetter(document, letter)
  const { revision } = layoutOf(current)
  const contentHash = revisionHash(current)
  const isThere = releasesOf(current).some((row) => row.letter === revision && row.what === what && row.contentHash === contentHash)
  const row: ReleaseRecord = { id: env.newId('release'), kind: 'release', letter: revision, what, when: env.now(), contentHash, replaces: replacedLetter(current), text, stageId: null, language: null, people: [] }
  return { raised: letter === null ? null : layoutOf(current), row: isThere ? null : row }
}
