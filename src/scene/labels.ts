import { recordsOf, runsOf, type YardDocument } from './document.ts'
import { crewRoles } from './kinds/crew.ts'
import { kinds, type PlacedKind, type PlacedRecord } from './kinds/index.ts'
import { resolvePlace, runIdOf } from './places.ts'

/**
 * How a kind is numbered: `bySide` E1, E2 … on the exit and I1, I2 … on the infeed, each counted from the datum
 * outward; `numbered` always with its number; `byRole` the letter of the task. All others: the letter alone while
 * there is one, numbered along the run when there are more.
 */
const rules: Partial<Record<PlacedKind, 'bySide' | 'numbered' | 'byRole'>> = { stand: 'bySide', roller: 'numbered', zone: 'numbered', note: 'numbered', crew: 'byRole' }

const roleLetters = new Map(crewRoles.map(({ value, letter }) => [value as string, letter]))

interface Standing {
  record: PlacedRecord
  runId: string | null
  runningM: number
}

const made = new WeakMap<YardDocument, ReadonlyMap<string, string>>()

/**
 * Labels by id, derived from the order along the run: E1, I2, G4, R, M, P … Kinds without a letter have none.
 * With several runs the labels of the second start with '2-', so that no two items of a kind share one.
 * A beam of rack R is R1 (near the jaws) or R2 (far), see `beamLabels`.
 */
export function labelsOf(document: YardDocument): ReadonlyMap<string, string> {
  const known = made.get(document)
  if (known !== undefined) return known
  const labels = new Map<string, string>()
  const runs = runsOf(document).map(({ id }) => id)
  const prefixOf = (runId: string | null): string => {
    const index = runId === null ? 0 : runs.indexOf(runId)
    return index > 0 ? `${index + 1}-` : ''
  }
  for (const { kind, labelLetter } of kinds) {
    if (labelLetter === '') continue
    for (const [runId, group] of byRun(recordsOf(document, kind as PlacedKind).map((record) => standing(document, record)))) {
      const prefix = prefixOf(runId)
      for (const [id, label] of labelled(group, kind as PlacedKind, labelLetter)) labels.set(id, prefix + label)
    }
  }
  made.set(document, labels)
  return labels
}

/** Labels of the two beams of a rack: near the jaws, far from them. */
export const beamLabels = (rackLabel: string): { near: string; far: string } => ({ near: `${rackLabel}1`, far: `${rackLabel}2` })

/** Features belong to the first run, as what is free does. */
const anywhere = { at: 'free', xM: 0, yM: 0, headingRad: 0 } as const

function standing(document: YardDocument, record: PlacedRecord): Standing {
  const runId = runIdOf(document, 'place' in record ? record.place : anywhere)
  return { record, runId, runningM: resolvePlace(document, record).runningM ?? 0 }
}

function byRun(all: readonly Standing[]): Map<string | null, Standing[]> {
  const groups = new Map<string | null, Standing[]>()
  for (const one of all) {
    const group = groups.get(one.runId)
    if (group === undefined) groups.set(one.runId, [one])
    else group.push(one)
  }
  return groups
}

function labelled(group: readonly Standing[], kind: PlacedKind, letter: string): [string, string][] {
  const sorted = group.toSorted((a, b) => a.runningM - b.runningM)
  const rule = rules[kind]
  if (rule === 'bySide') {
    const exit = sorted.filter(({ runningM }) => runningM >= 0)
    const infeed = sorted.filter(({ runningM }) => runningM < 0).toReversed()
    return [...exit.map(({ record }, i): [string, string] => [record.id, `E${i + 1}`]), ...infeed.map(({ record }, i): [string, string] => [record.id, `I${i + 1}`])]
  }
  if (rule === 'byRole') return sorted.map(({ record }, i) => [record.id, roleLabel(sorted, record, i)])
  if (rule === undefined && sorted.length === 1) return sorted.map(({ record }) => [record.id, letter])
  // A second rack is not R2: that is a beam. Letters follow instead: Ra, Rb.
  if (kind === 'rack') return sorted.map(({ record }, i) => [record.id, letter + letterOf(i)])
  return sorted.map(({ record }, i) => [record.id, `${letter}${i + 1}`])
}

/** a, b … z, then numbers. */
const letterOf = (index: number): string => (index < 26 ? String.fromCharCode(97 + index) : String(index + 1))

function roleLabel(sorted: readonly Standing[], record: PlacedRecord, index: number): string {
  const role = 'role' in record ? record.role : 'other'
  const same = (one: Standing): boolean => 'role' in one.record && one.record.role === role
  const letter = roleLetters.get(role) ?? '?'
  return sorted.filter(same).length === 1 ? letter : letter + letterOf(sorted.slice(0, index).filter(same).length)
}
