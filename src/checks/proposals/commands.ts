/** The plan as existing commands: what is there is moved, what is over goes, what lacks is placed. */
import type { SiteModel, SupportView } from '../../derive/types.ts'
import { rounded } from '../../scene/rounding.ts'
import type { PlannedSupport, ProposalCommand, ProposalKind } from './types.ts'
import { saddleOf } from './trialSite.ts'

type One = { command: string; args: unknown }

export const labels = {
  stands: { en: 'place the stands', es: 'colocar los soportes' },
  rollers: { en: 'place the rollers', es: 'colocar los rodillos' },
} as const satisfies Record<ProposalKind, { en: string; es: string }>

interface Pair {
  planned: PlannedSupport
  view: SupportView
}

/** Whether a support that stands there can be set to what is planned: its own range where no list gives it another. */
function fits(site: SiteModel, { planned, view }: Pair): boolean {
  if (view.kind !== planned.kind) return false
  if (planned.sort.gear !== null || view.kind === 'roller') return true
  const saddleM = saddleOf(site, planned) ?? 0
  return saddleM >= (view.lowestSaddleM ?? planned.sort.lowestSaddleM) - 1e-6 && saddleM <= (view.highestSaddleM ?? planned.sort.highestSaddleM) + 1e-6
}

/**
 * One `sequence`. Supports keep their order along the run, so that labels and hand notes stay with the nearest; `present` are the
 * unlocked ones the plan may move.
 */
export function commandOf(site: SiteModel, kind: ProposalKind, present: readonly SupportView[], planned: readonly PlannedSupport[], slings: boolean): ProposalCommand {
  const pairs: Pair[] = []
  const free = [...planned].sort((a, b) => a.runningM - b.runningM)
  const left = new Set(free)
  const gone: SupportView[] = []
  for (const view of present) {
    // The next one on that this item can be; what is passed over is placed new.
    const at = free.findIndex((one) => left.has(one) && !pairs.some((pair) => pair.planned.kind === one.kind && pair.planned.runningM > one.runningM) && fits(site, { planned: one, view }))
    const one = free[at]
    if (one === undefined) gone.push(view)
    else {
      left.delete(one)
      pairs.push({ planned: one, view })
    }
  }
  const commands: One[] = [
    ...(slings && site.job.noseHold !== 'slung' ? [{ command: 'setJob', args: { path: 'noseHold', value: 'slung' } }] : []),
    ...(gone.length > 0 ? [{ command: 'remove', args: { ids: gone.map(({ itemId }) => itemId) } }] : []),
    ...moves(pairs), ...aligned(pairs), ...heights(site, pairs), ...gear(pairs), ...placed(site, [...left].sort((a, b) => a.runningM - b.runningM)),
  ]
  return { command: 'sequence', args: { commands, label: { text: labels[kind] } }, label: labels[kind] }
}

/** Neighbours with one spacing go by one command: a sequence may not be longer than 200. */
function inRows<T>(all: readonly T[], runningOf: (one: T) => number, isSame: (a: T, b: T) => boolean): { items: T[]; spacingM: number }[] {
  const rows: { items: T[]; spacingM: number }[] = []
  for (const one of all) {
    const row = rows.at(-1)
    const last = row?.items.at(-1)
    const stepM = last === undefined ? 0 : runningOf(one) - runningOf(last)
    if (row !== undefined && last !== undefined && isSame(last, one) && stepM > 0 && (row.items.length === 1 || Math.abs(stepM - row.spacingM) < 1e-6)) {
      row.items.push(one)
      if (row.items.length === 2) row.spacingM = stepM
    } else rows.push({ items: [one], spacingM: 0 })
  }
  return rows
}

function moves(pairs: readonly Pair[]): One[] {
  const sorted = pairs.toSorted((a, b) => a.planned.runningM - b.planned.runningM)
  return (['stand', 'roller'] as const).flatMap((kind) => inRows(sorted.filter(({ view }) => view.kind === kind), ({ planned }) => planned.runningM, () => true)).flatMap(({ items, spacingM }): One[] => {
    const [first] = items
    if (first === undefined) return []
    // On the infeed a row is counted outward from the datum; few stand there, so each goes by itself.
    if (items.length > 2 && first.planned.runningM > 0) return [{ command: 'spaceAt', args: { ids: items.map(({ view }) => view.itemId), spacingM: rounded(spacingM), fromRunningM: rounded(first.planned.runningM) } }]
    return items.filter(({ view, planned }) => Math.abs(view.runningM - planned.runningM) > 1e-6).map(({ view, planned }) => ({ command: 'setOnRun', args: { id: view.itemId, runningM: rounded(planned.runningM) } }))
  })
}

const aligned = (pairs: readonly Pair[]): One[] =>
  pairs.filter(({ view }) => Math.abs(view.offsetM) > 1e-6 || Math.abs(view.turnRad) > 1e-6).map(({ view }) => ({ command: 'setOnRun', args: { id: view.itemId, offsetM: 0, turnRad: 0 } }))

function heights(site: SiteModel, pairs: readonly Pair[]): One[] {
  const byHeight = new Map<string, { height: PlannedSupport['height']; ids: string[] }>()
  for (const { planned, view } of pairs) {
    const record = site.document.records[view.itemId]
    const key = JSON.stringify(planned.height)
    if (record !== undefined && 'height' in record && JSON.stringify(record.height) === key) continue
    const same = byHeight.get(key)
    if (same === undefined) byHeight.set(key, { height: planned.height, ids: [view.itemId] })
    else same.ids.push(view.itemId)
  }
  return [...byHeight.values()].map((args) => ({ command: 'setHeight', args: { ids: args.ids, height: args.height } }))
}

function gear(pairs: readonly Pair[]): One[] {
  const byGear = new Map<string, { gear: NonNullable<PlannedSupport['sort']['gear']>; ids: string[] }>()
  for (const { planned: { sort }, view } of pairs) {
    if (sort.gear === null) continue
    const same = byGear.get(sort.gear.id)
    if (same === undefined) byGear.set(sort.gear.id, { gear: sort.gear, ids: [view.itemId] })
    else same.ids.push(view.itemId)
  }
  return [...byGear.values()].map(({ gear: entry, ids }) => ({ command: 'useGear', args: { ids, gear: entry } }))
}

function placed(site: SiteModel, added: readonly PlannedSupport[]): One[] {
  const runId = site.run?.id
  if (runId === undefined) return []
  const isSame = (a: PlannedSupport, b: PlannedSupport): boolean => a.kind === b.kind && a.sort === b.sort && JSON.stringify(a.height) === JSON.stringify(b.height)
  return inRows(added, ({ runningM }) => runningM, isSame).map(({ items, spacingM }): One => {
    const { kind, runningM, height, sort } = items[0]!
    return { command: 'placeRow', args: { kind, fromRunningM: rounded(runningM), spacingM: rounded(spacingM), count: items.length, runId, patch: { ...sort.patch, height } } }
  })
}
