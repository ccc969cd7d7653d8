/** What changed between two documents, in words a person reads: two revisions, two points in time, two talks. */
import type { Localized } from '../messages/localized.ts'
import { frameFields, type ChangeField } from './changeFields.ts'
import { changeGroups, type Change, type ChangeGroup, type ChangeLine } from './changeLine.ts'
import { fieldChanges, restChanged, valueAt } from './changeOfFields.ts'
import { heightChange, placeBeside, pointsChange, poseChange } from './changeOfPlace.ts'
import { kindName } from './commands/wording.ts'
import type { YardDocument, YardRecord } from './document.ts'
import { kindOf } from './kinds/index.ts'
import { isFeature, isItem, labelsOf } from './resolve.ts'

export { changeGroups, type Change, type ChangeGroup } from './changeLine.ts'

/** What the log and pictures hold is no change of the plan. */
const notThePlan = new Set(['release', 'asset'])
const groupOfFrame: Readonly<Record<string, ChangeGroup>> = { layout: 'job', job: 'job', setUp: 'ground', run: 'ground', string: 'job' }

/**
 * Everything that differs between two documents, in words: what was added, removed, moved (along and across the line,
 * 'stand E3 moved 8 in up-string'), raised, and each field with its old and new value. Rows of the release log are left
 * out. Items are called as the newer document calls them, with the older label beside it where that differs. A move of
 * less than 1 mm is no change; any other difference gives at least one line. Pure.
 */
export function changesBetween(from: YardDocument, to: YardDocument): readonly Change[] {
  const changes: Change[] = []
  const tell = (record: YardRecord, lines: readonly ChangeLine[]): void => {
    const what = nameOf(from, to, record)
    for (const { group, text, values } of lines) changes.push({ group, recordId: record.id, text, values: { what, ...values } })
  }
  for (const record of Object.values(to.records)) {
    if (notThePlan.has(record.kind)) continue
    const before = from.records[record.id]
    if (before === undefined) tell(record, [addedLine(to, record)])
    else if (before !== record && JSON.stringify(before) !== JSON.stringify(record)) tell(record, changedLines(from, to, before, record))
  }
  for (const record of Object.values(from.records)) {
    if (!notThePlan.has(record.kind) && to.records[record.id] === undefined) tell(record, [removedLine(record)])
  }
  return changes.toSorted((a, b) => changeGroups.indexOf(a.group) - changeGroups.indexOf(b.group))
}

/** Whether a record is named by what it belongs to: 'E3' of a height as set. */
const subjectOf = (record: YardRecord): string => (record.kind === 'asSet' ? record.itemId : record.id)

/** 'pipe stand E3', 'fence (north)', 'job'; with '(was E2)' where the label has gone on. */
function nameOf(from: YardDocument, to: YardDocument, record: YardRecord): Localized {
  const id = subjectOf(record)
  const subject = to.records[id] ?? from.records[id] ?? record
  const name = kindName(subject.kind)
  const [older, newer] = [labelsOf(from).get(id), labelsOf(to).get(id)]
  const own = isFeature(subject) && subject.name !== '' ? ` (${subject.name})` : ''
  const label = newer ?? older
  const tag = label === undefined ? own : ` ${label}`
  const was = newer !== undefined && older !== undefined && newer !== older
  return { en: `${name.en}${tag}${was ? ` (was ${older})` : ''}`, es: `${name.es}${tag}${was ? ` (era ${older})` : ''}` }
}

function addedLine(to: YardDocument, record: YardRecord): ChangeLine {
  if (record.kind === 'asSet') return measuredLine(record)
  if (record.kind === 'limitChange') return limitLine(record)
  if (record.kind === 'zoneChange') return zoneLine(record)
  const place = isItem(record) ? placeBeside(to, record) : null
  if (place === null) return { group: 'added', text: { en: '{what} added', es: 'se agregó: {what}' }, values: {} }
  return { group: 'added', text: { en: '{what} added at {at}, {offset}', es: 'se agregó {what} en {at}, {offset}' }, values: { at: { runningM: place.runningM }, offset: { offsetM: place.offsetM } } }
}

function removedLine(record: YardRecord): ChangeLine {
  if (record.kind === 'asSet') return { group: 'measured', text: { en: '{what}: measured figures taken away', es: '{what}: se quitaron las medidas tomadas' }, values: {} }
  if (record.kind === 'limitChange') return { group: 'other', text: { en: 'limit {limit} back to its start', es: 'límite {limit} a su valor inicial' }, values: { limit: record.limitId } }
  if (record.kind === 'zoneChange') return { group: 'other', text: { en: 'zone {zone} back to what the gear gives', es: 'zona {zone} como la da el equipo' }, values: { zone: zoneNumber(record.zoneKey) } }
  return { group: 'removed', text: { en: '{what} taken away', es: 'se quitó: {what}' }, values: {} }
}

function changedLines(from: YardDocument, to: YardDocument, before: YardRecord, after: YardRecord): readonly ChangeLine[] {
  if (after.kind === 'asSet') return [measuredLine(after)]
  if (after.kind === 'limitChange') return [limitLine(after)]
  if (after.kind === 'zoneChange') return [zoneLine(after)]
  const fields: readonly ChangeField[] = kindOf(after.kind)?.fields ?? frameFields[after.kind] ?? []
  const group = groupOfFrame[after.kind] ?? 'field'
  const lines = [
    ...(isItem(before) && isItem(after) ? poseChange(from, to, before, after) : []),
    ...(isFeature(before) && isFeature(after) ? pointsChange(to, before, after) : []),
    ...heightChange(before, after),
    ...lockChange(before, after),
    ...fieldChanges(before, after, fields, group),
  ]
  return restChanged(before, after, fields) ? [...lines, { group: group === 'field' ? 'other' : group, text: { en: '{what}: other details changed', es: '{what}: cambiaron otros datos' }, values: {} }] : lines
}

function lockChange(before: YardRecord, after: YardRecord): readonly ChangeLine[] {
  const [was, is] = [valueAt(before, 'locked'), valueAt(after, 'locked')]
  if (was === is || typeof is !== 'boolean') return []
  return [{ group: 'other', text: is ? { en: '{what} locked', es: '{what}: fijado' } : { en: '{what} unlocked', es: '{what}: ya no está fijado' }, values: {} }]
}

function measuredLine({ saddleM, farSaddleM, offsetM, runningM }: Extract<YardRecord, { kind: 'asSet' }>): ChangeLine {
  if ([saddleM, farSaddleM, offsetM, runningM].every((figure) => figure === null)) return { group: 'measured', text: { en: '{what}: ticked as set', es: '{what}: marcado como colocado' }, values: {} }
  if (saddleM === null) return { group: 'measured', text: { en: '{what}: measured after setting', es: '{what}: medido después de colocarlo' }, values: {} }
  return { group: 'measured', text: { en: '{what}: measured at {height} after setting', es: '{what}: quedó a {height}, medido' }, values: { height: { kind: 'height', value: saddleM } } }
}

const limitLine = ({ limitId, reason }: Extract<YardRecord, { kind: 'limitChange' }>): ChangeLine => ({ group: 'other', text: { en: 'limit {limit} changed: {reason}', es: 'límite {limit} cambiado: {reason}' }, values: { limit: limitId, reason } })

const zoneNumber = (zoneKey: string): string => zoneKey.split('@')[0] ?? zoneKey
const zoneLine = ({ zoneKey, reason }: Extract<YardRecord, { kind: 'zoneChange' }>): ChangeLine => ({ group: 'other', text: { en: 'zone {zone} changed by hand: {reason}', es: 'zona {zone} cambiada a mano: {reason}' }, values: { zone: zoneNumber(zoneKey), reason } })
