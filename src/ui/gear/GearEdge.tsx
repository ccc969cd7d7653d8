import { lazy, memo, Suspense, useRef, type PointerEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { kindOf, kinds } from '../../scene/kinds/index.ts'
import type { ViewState } from '../../state/viewStore.ts'
import { Icon, type IconName } from '../common/Icon.tsx'
import { useDocuments, useUi, useView, useWords } from '../context.tsx'
import { patchOf, shelfOf, type ShelfEntry } from './left.ts'
import { SHELF_PX_PER_M, ShelfSymbol } from './ShelfSymbol.tsx'

/** What the planner places by itself; fetched after the first screen. */
const ProposeButtons = lazy(() => import('../proposals/ProposeButtons.tsx'))
const CrewButton = lazy(() => import('../people/CrewButton.tsx'))

const groups = ['line', 'lift', 'site', 'people'] as const
/** Kinds with a tool of their own below the shelf. */
const asTools: readonly string[] = ['level', 'note']
/** A press that has gone this far is a drag on to the plan, not a tap. */
const DRAG_PX = 12

type Tool = ViewState['tool']
type Placing = Extract<Tool, { kind: string }>

/** The entry whose variety and figures the tool carries, if the tool came from the shelf. */
const entryKeyOf = (tool: Tool): string | null => {
  const key = tool !== null && 'shelfKey' in tool ? (tool as { shelfKey?: unknown }).shelfKey : undefined
  return typeof key === 'string' ? key : tool !== null && 'kind' in tool ? tool.kind : null
}
const placing = (name: 'place' | 'row', entry: Pick<ShelfEntry, 'kind' | 'key'> & Partial<ShelfEntry>): Placing => {
  const tool = { name, kind: entry.kind, shelfKey: entry.key, patch: patchOf({ choices: {}, gear: null, leftCount: null, ...entry }) }
  return tool
}

/** Gear to one scale, the crew's counts, and the drawing tools. Tap then tap, or drag on to the plan. */
export const GearEdge = memo((): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app, services } = useUi()
  const openGroup = useView((view) => view.gearGroup)
  const gear = useStore(services.gear, (state) => state.items)
  const document = useDocuments((state) => state.document)
  return (
    <nav className="gear-edge" aria-label={say('gearTitle')}>
      <h2>{say('gearTitle')}</h2>
      <div className="gear-groups">
        {groups.map((group) => (
          <section key={group}>
            <button type="button" className="gear-group" aria-expanded={openGroup === group} onClick={() => app.view.setState({ gearGroup: group })}>
              {say(`gearGroup_${group}`)}<Icon name={openGroup === group ? 'down' : 'right'} sizePx={13} />
            </button>
            {openGroup === group && group === 'line' ? <Suspense><ProposeButtons /></Suspense> : null}
            {openGroup === group && group === 'people' ? <Suspense><CrewButton /></Suspense> : null}
            {openGroup === group
              ? <ul>{kinds.filter((kind) => kind.gear === group && kind.placing !== 'none' && !asTools.includes(kind.kind)).flatMap((kind) => shelfOf(kind.kind, gear, document)).map((entry) => <ShelfItem key={entry.key} entry={entry} />)}</ul>
              : null}
          </section>
        ))}
      </div>
      <Tools />
      <Person />
    </nav>
  )
})
GearEdge.displayName = 'GearEdge'

const shortName = (entry: ShelfEntry, local: (text: { en: string; es: string }) => string): string => {
  const kind = kindOf(entry.kind)
  if (kind === undefined) return entry.kind
  if (entry.gear !== null && entry.gear.name !== local(kind.name)) return entry.gear.name
  const [field, value] = Object.entries(entry.choices)[0] ?? []
  const input = kind.fields.find(({ path }) => path === field)?.input
  const choice = input?.as === 'choice' ? input.choices.find((candidate) => candidate.value === value) : undefined
  return choice === undefined ? local(kind.name) : `${local(kind.name)}, ${local(choice.label)}`
}

const ShelfItem = ({ entry }: { entry: ShelfEntry }): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const isChosen = useView((view) => entryKeyOf(view.tool) === entry.key)
  const from = useRef<{ xPx: number; yPx: number; dragged: boolean } | null>(null)
  /** The click that ends a drag inside the shelf is no tap. */
  const wasDrag = useRef(false)
  const isUsedUp = entry.leftCount !== null && entry.leftCount <= 0
  const take = (): void => app.view.setState({ tool: placing(app.view.getState().tool?.name === 'row' ? 'row' : 'place', entry), selection: [], gearOpen: app.view.getState().form === 'desktop' })
  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    if (event.button !== 0) return
    from.current = { xPx: event.clientX, yPx: event.clientY, dragged: false }
    // Without this a finger stays bound to the shelf and the plan never hears of it.
    if (event.currentTarget.hasPointerCapture(event.pointerId)) event.currentTarget.releasePointerCapture(event.pointerId)
  }
  const onPointerMove = (event: PointerEvent<HTMLButtonElement>): void => {
    const start = from.current
    if (start === null || start.dragged || Math.hypot(event.clientX - start.xPx, event.clientY - start.yPx) < DRAG_PX) return
    start.dragged = true
    take()
  }
  return (
    <li>
      <button
        type="button" className="shelf-item" aria-pressed={isChosen} data-used-up={isUsedUp} data-kind={entry.kind}
        onPointerDown={onPointerDown} onPointerMove={onPointerMove} onPointerUp={() => { wasDrag.current = from.current?.dragged === true; from.current = null }} onPointerLeave={() => { if (from.current !== null && !from.current.dragged) { from.current.dragged = true; take() } from.current = null }}
        onClick={() => {
          const dragged = wasDrag.current
          wasDrag.current = false
          if (dragged) return
          if (isChosen) app.view.setState({ tool: null })
          else take()
        }}
      >
        <ShelfSymbol entry={entry} />
        <span className="shelf-name">{shortName(entry, words.local)}</span>
        {entry.leftCount === null ? null : <span className="shelf-left">{say(entry.leftCount < 0 ? 'gearTooMany' : 'gearLeft', { count: Math.abs(entry.leftCount) })}</span>}
      </button>
    </li>
  )
}

/** Measure, draw a strip, set levels, pin a note, and a row of the gear in hand. */
export const Tools = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const tool = useView((view) => view.tool)
  const set = (next: Tool): void => app.view.setState({ tool: next, gearOpen: app.view.getState().form === 'desktop' })
  const isPlacing = (kind: string): boolean => tool?.name === 'place' && tool.kind === kind
  const rowKind = tool !== null && 'kind' in tool && !asTools.includes(tool.kind) ? tool : placing('row', { kind: 'stand', key: 'stand.flat', choices: { roller: 'flat' } })
  const buttons: readonly { key: string; icon: IconName; label: string; isOn: boolean; press: () => void }[] = [
    { key: 'measure', icon: 'measure', label: say('toolMeasure'), isOn: tool?.name === 'measure', press: () => set(tool?.name === 'measure' ? null : { name: 'measure' }) },
    { key: 'strip', icon: 'strip', label: say('toolStrip'), isOn: tool?.name === 'strip', press: () => set(tool?.name === 'strip' ? null : { name: 'strip' }) },
    { key: 'level', icon: 'level', label: say('toolLevel'), isOn: isPlacing('level'), press: () => set(isPlacing('level') ? null : { name: 'place', kind: 'level' }) },
    { key: 'note', icon: 'note', label: say('toolNote'), isOn: isPlacing('note'), press: () => set(isPlacing('note') ? null : { name: 'place', kind: 'note' }) },
    { key: 'row', icon: 'row', label: say('toolRow'), isOn: tool?.name === 'row', press: () => set(tool?.name === 'row' ? { ...tool, name: 'place' } : { ...rowKind, name: 'row' }) },
  ]
  return (
    <div className="gear-tools" role="group" aria-label={say('tools')}>
      {buttons.map(({ key, icon, label, isOn, press }) => (
        <button type="button" key={key} aria-pressed={isOn} onClick={press}><Icon name={icon} sizePx={18} /><span>{label}</span></button>
      ))}
    </div>
  )
}

/** A person of 6 ft lying at the scale of the shelf. */
const Person = (): ReactNode => {
  const { say } = useWords()
  const lengthPx = 6 * 0.3048 * SHELF_PX_PER_M
  return (
    <div className="gear-person" aria-hidden="true">
      <svg width="60" height="20" viewBox="-30 -5 60 20">
        <g transform={`translate(${-lengthPx / 2} 0)`}>
          <circle cx={lengthPx * 0.075} cy="0" r={lengthPx * 0.075} fill="currentColor" />
          <path d={`M${lengthPx * 0.18} -2.1H${lengthPx * 0.52}L${lengthPx} -1.3V1.3L${lengthPx * 0.52} 2.1H${lengthPx * 0.18}Z`} fill="currentColor" />
          <path d={`M0 6v6M${lengthPx} 6v6M0 9H${lengthPx}`} stroke="currentColor" fill="none" strokeWidth="1.1" />
        </g>
      </svg>
      <span>{say('gearPerson')}</span><span className="quiet-text">{say('gearScale')}</span>
    </div>
  )
}
