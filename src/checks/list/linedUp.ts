import { limitParam, type Limit } from '../../engine/limits.ts'
import { UNDER_PIPE_M } from '../../derive/supports.ts'
import type { PlacedItem } from '../../derive/types.ts'
import { sourceOf } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, inRuns, q, say } from '../make.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Finding } from '../finding.ts'

/** Tape and turntable errors under this are nothing. */
const SAME_RAD = 1e-6
const SAME_OFFSET_M = 0.001

export const linedUp = defineCheck({
  id: 'lined-up',
  title: { en: 'Rack, stands and rollers lined up', es: 'Cama, soportes y rodillos alineados' },
  cost: 'quick',
  run: (site, { limits }) => {
    const [offset, turn] = [limits.limit('line-up-stand'), limits.limit('line-up-turn')]
    const items = [...site.placed.values()].filter(({ kind, runningM }) => (kind === 'stand' || kind === 'roller' || kind === 'rack') && runningM !== null)
    const nearest = nearestToJaws(items)
    const inOrder = items.toSorted((a, b) => a.runningM! - b.runningM!)
    // A row off the line by one and the same offset is one finding: the line was moved, not each roller.
    const rows = inRuns(inOrder, (a, b) => a.kind === b.kind && a.kind === 'roller' && Math.abs(a.offsetM! - b.offsetM!) < SAME_OFFSET_M)
    const found = rows.flatMap((row) => [...offLine(row, offset, nearest.has(row[0]!.id)), ...row.flatMap((item) => turned(item, turn))])
    if (found.length > 0) return found
    return items.length === 0 || site.run === null ? [] : [finding('lined-up', { level: 'met', source: sourceOf(offset), phases: ['setUp'], what: say('Rack, stands and rollers stand on the line.', 'Cama, soportes y rodillos están sobre la línea.') })]
  },
})

/** First stand or rack on either side of the jaws: they guide the ends that are fused. */
function nearestToJaws(items: readonly PlacedItem[]): ReadonlySet<string> {
  const first = (side: readonly PlacedItem[]): string[] => side.toSorted((a, b) => Math.abs(a.runningM!) - Math.abs(b.runningM!)).slice(0, 1).map(({ id }) => id)
  const guides = items.filter(({ kind, offsetM }) => kind !== 'roller' && Math.abs(offsetM!) <= UNDER_PIPE_M)
  return new Set([...first(guides.filter(({ runningM }) => runningM! < 0)), ...first(guides.filter(({ runningM }) => runningM! >= 0))])
}

function slide(row: readonly PlacedItem[], label: Localized): Finding['remedy'] {
  if (row.some(({ record }) => record.locked)) return null
  const words = say('Slide {label} on to the line', 'Correr {label} a la línea', { label })
  if (row.length === 1) return { command: 'setOnRun', args: { id: row[0]!.id, offsetM: 0 }, label: words }
  const commands = row.map(({ id }) => ({ command: 'setOnRun', args: { id, offsetM: 0 } }))
  return { command: 'sequence', args: { commands, label: { text: { en: 'slide on to the line', es: 'correr a la línea' } } }, label: words }
}

function offLine(row: readonly PlacedItem[], limit: Limit, isNearest: boolean): Finding[] {
  const item = row[0]!
  const offM = Math.abs(item.offsetM!)
  const label: Localized = row.length === 1 ? { en: item.label, es: item.label } : { en: `${item.label} to ${row.at(-1)!.label}`, es: `${item.label} a ${row.at(-1)!.label}` }
  const values = { label, offset: { offsetM: item.offsetM! } }
  const common = { about: `${item.id}:offset`, items: row.map(({ id }) => id), where: atRun(item.runningM!, null, item.offsetM!), phases: ['setUp'] as const }
  if (offM > UNDER_PIPE_M) {
    if (!item.isAttached) return []
    return [finding('lined-up', { ...common, level: 'CHECK', measured: q('length', offM), source: houseRule, what: row.length === 1 ? say('{label} stands beside the line, {offset}: the pipe does not lie on it.', '{label} está junto a la línea, {offset}: el tubo no descansa en él.', values) : say('{label} stand beside the line, {offset}: the pipe does not lie on them.', '{label} están junto a la línea, {offset}: el tubo no descansa en ellos.', values), move: say('Bring it under the pipe, or take it off the line.', 'Póngalo bajo el tubo, o quítelo de la línea.'), remedy: slide(row, label) })]
  }
  const boundM = item.kind === 'roller' ? limitParam(limit, 'rollerM') : isNearest ? limitParam(limit, 'nearestM') : (limit.check ?? Infinity)
  if (offM <= boundM) return []
  return [finding('lined-up', {
    ...common,
    level: 'CHECK',
    measured: q('shortLength', offM),
    limit: q('shortLength', boundM),
    source: sourceOf(limit),
    what: isNearest ? say('{label} stands off the line, {offset}: it pushes the end sideways in the jaws.', '{label} está fuera de la línea, {offset}: empuja la punta de lado en las mordazas.', values)
      : row.length === 1 ? say('{label} stands off the line, {offset}.', '{label} está fuera de la línea, {offset}.', values) : say('{label} stand off the line, {offset}.', '{label} están fuera de la línea, {offset}.', values),
    move: say('Slide it on to the string line.', 'Córralo hasta el hilo.'),
    remedy: slide(row, label),
  })]
}

function turned(item: PlacedItem, limit: Limit): Finding[] {
  const turnRad = Math.abs(item.turnRad) > Math.PI / 2 ? Math.PI - Math.abs(item.turnRad) : Math.abs(item.turnRad)
  if (Math.abs(item.offsetM!) > UNDER_PIPE_M || turnRad <= (limit.check ?? Infinity) + SAME_RAD) return []
  return [finding('lined-up', {
    about: `${item.id}:turn`,
    level: 'CHECK',
    measured: q('angle', turnRad),
    limit: q('angle', limit.check),
    source: sourceOf(limit),
    phases: ['setUp'],
    items: [item.id],
    where: atRun(item.runningM!, null, item.offsetM!),
    what: say('{label} is turned {turn} against the line: its rollers steer the pipe aside.', '{label} está girado {turn} respecto a la línea: sus rodillos desvían el tubo.', { label: item.label, turn: q('angle', turnRad) }),
    move: say('Square it to the line.', 'Póngalo a escuadra con la línea.'),
    remedy: item.record.locked ? null : { command: 'setOnRun', args: { id: item.id, turnRad: Math.abs(item.turnRad) > Math.PI / 2 ? Math.PI : 0 }, label: say('Square {label} to the line', 'Poner {label} a escuadra', { label: item.label }) },
  })]
}

