import { lazy, memo, Suspense, useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore, type PointerEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { isPlan } from '../../derive/whatIf.ts'
import { layoutOf } from '../../scene/document.ts'
import { Notice, ProposalBar, StateBars, ToolHint } from '../common/Bars.tsx'
import { Icon } from '../common/Icon.tsx'
import { Region } from '../common/Region.tsx'
import { comparisonOf } from '../../state/comparison.ts'
import { useDocuments, useUi, useView, useWords } from '../context.tsx'
import { Leaders } from '../findings/Leaders.tsx'
import { LevelAnnouncer, Margin, MarginShapes } from '../findings/Margin.tsx'
import { NoteLine } from '../findings/NoteLine.tsx'
import { GearEdge } from '../gear/GearEdge.tsx'
import { Heading } from '../heading/Heading.tsx'
import { ItemList } from '../items/ItemList.tsx'
import type { BandRender, BandSize } from '../services.ts'
import { DockedTag, HangingTag, PhoneTag } from '../tag/Tag.tsx'
import type { Box } from '../tag/placement.ts'
import { TitleBlock } from '../title/TitleBlock.tsx'
import { isTouchForm, leafAfterSwipe, regionsOf } from './arrangement.ts'
import { useSize } from './useSize.ts'

/** Pictures of the drawing, made by the canvas for the size there is. */
export interface Bands {
  plan: BandRender
  tape: BandRender
  section: BandRender
}

/** Fetched when the plan is left for the first time. */
const CaseBand = lazy(() => import('../whatIf/CaseBand.tsx'))
/** Lists beside the plan, fetched when they are first opened. */
const CriticalList = lazy(() => import('../critical/CriticalList.tsx'))
const AsSetList = lazy(() => import('../asSet/AsSetList.tsx'))
const CompareList = lazy(() => import('../compare/CompareList.tsx'))
/** Under the drawing while another plan is drawn beneath it and the list is away. */
const CompareBar = lazy(() => import('../compare/CompareBar.tsx'))
/** Under the drawing while the ranking is drawn and its list is away. */
const RollOffBar = lazy(() => import('../rollOff/RollOffBar.tsx'))
const CriticalBar = lazy(() => import('../critical/CriticalBar.tsx'))

/** The run-through's parts of the sheet, fetched when it is first opened. */
const RunThrough = lazy(() => import('../runThrough/RunThrough.tsx'))

/** Fetched with the first proposal asked for. */
const ProposalCard = lazy(() => import('../proposals/ProposalCard.tsx'))

const Proposed = (): ReactNode => {
  const { services } = useUi()
  const isAsked = useStore(services.proposals.store, (state) => state.kind !== null)
  return isAsked ? <Suspense><ProposalCard /></Suspense> : null
}

/** Fetched when the mode is first turned on. */
const WetBar = lazy(() => import('../wet/WetBar.tsx'))

/** What a list that fails is called. */
const besideName = { en: 'list beside the plan', es: 'lista junto al plano' }

const coarse = matchMedia('(pointer: coarse)')
const subscribeCoarse = (change: () => void): (() => void) => {
  coarse.addEventListener('change', change)
  return () => coarse.removeEventListener('change', change)
}

/** Drawn anew only when something of its own changes, not with what the screen round it listens to. */
const Yard = memo(({ plan, tape, section }: Bands): ReactNode => {
  const { app } = useUi()
  const { say, local } = useWords()
  const form = useView((view) => view.form)
  const leaf = useView((view) => view.leaf)
  const leftHanded = useView((view) => view.leftHanded)
  const tapeVertical = useView((view) => view.tapeVertical)
  const panel = useView((view) => view.panel)
  const isRollOff = useView((view) => view.tool?.name === 'rollOff')
  const isRanked = useStore(app.critical.store, ({ isOn }) => isOn) && panel !== 'critical'
  const isCompared = useStore(comparisonOf(app), ({ compared }) => compared !== null) && panel !== 'compare'
  const isOther = useView((view) => !isPlan(view.shownCase))
  const runThrough = useView((view) => view.runThrough)
  const wet = useView((view) => view.wet)
  const hasChosen = useView((view) => view.selection.length > 0)
  const title = useDocuments((state) => layoutOf(state.document).title)
  const isCoarse = useSyncExternalStore(subscribeCoarse, () => coarse.matches)
  const regions = regionsOf(form, leaf)
  const planBox = useRef<HTMLDivElement>(null)
  const tapeBox = useRef<HTMLDivElement>(null)
  const sectionBox = useRef<HTMLDivElement>(null)
  const margin = useRef<HTMLDivElement>(null)
  const planSize = useSize(planBox, regions.plan)
  const tapeSize = useSize(tapeBox, true)
  const sectionSize = useSize(sectionBox, regions.section)
  useBandSizes(planSize, sectionSize, tapeSize)
  const [tagBox, setTagBox] = useState<Box | null>(null)
  const onTagPlaced = useCallback((box: Box | null) => setTagBox((before) => (JSON.stringify(before) === JSON.stringify(box) ? before : box)), [])
  const blocked = useMemo(() => (tagBox === null || form !== 'desktop' ? [] : [tagBox]), [tagBox, form])
  const swipe = useTapeSwipe()
  const touch = isTouchForm(form, isCoarse)
  const notes = regions.notes && !runThrough ? <div className="area-margin" ref={margin} id="leaf-notes" role={form === 'phone' ? 'tabpanel' : undefined} aria-label={form === 'phone' ? say('notesTitle') : undefined} tabIndex={form === 'phone' ? 0 : undefined}><Region name={say('notesTitle')}><Margin /></Region></div> : null
  return (
    <div className="yard" data-form={form} data-leaf={form === 'phone' ? leaf : undefined} data-hand={leftHanded ? 'left' : 'right'} data-touch={touch} data-tape={tapeVertical ? 'upright' : 'level'} data-chosen={hasChosen} data-case={isOther ? 'other' : 'plan'} data-mode={runThrough ? 'runThrough' : undefined}>
      <div className="state-bars">{wet ? <Suspense><WetBar /></Suspense> : null}<StateBars />{isOther || panel === 'whatIf' ? <Region name={say('whatIf')}><Suspense><CaseBand /></Suspense></Region> : null}</div>
      <LevelAnnouncer />
      {wet ? null : form === 'desktop' ? <div className="area-gear"><Region name={say('gearTitle')}><GearEdge /></Region></div> : <GearDrawer />}
      <main className="drawing">
        <h1 className="visually-hidden">{`Stringyard: ${title === '' ? say('untitled') : title}`}</h1>
        {runThrough ? <Suspense><RunThrough touch={touch} /></Suspense> : <div className="area-head"><Region name={say('plan')}><Heading /></Region></div>}
        {regions.plan ? (
          <div className="area-plan band" ref={planBox} id="leaf-plan" role={form === 'phone' ? 'tabpanel' : 'group'} aria-label={say('plan')}>
            <Region name={say('plan')}>{planSize === null ? null : plan(planSize)}</Region>
            <Leaders plan={planBox} margin={form === 'desktop' && !runThrough ? margin : null} blocked={blocked} />
            {form === 'desktop' ? <Region name={say('tagTitle')}><HangingTag onPlaced={onTagPlaced} /></Region> : null}
            {form === 'phone' ? <Region name={say('tagTitle')}><PhoneTag /></Region> : null}
            <div className="plan-foot">{isRanked ? <Suspense><CriticalBar /></Suspense> : null}{isCompared ? <Suspense><CompareBar /></Suspense> : null}{isRollOff ? <Suspense><RollOffBar /></Suspense> : null}<ToolHint /><ProposalBar /><Proposed /><Notice /></div>
          </div>
        ) : null}
        {panel === 'items' ? <div className="area-items"><Region name={say('itemsTitle')}><ItemList /></Region></div> : null}
        {panel === 'critical' ? <div className="area-items"><Region name={local(besideName)}><Suspense><CriticalList /></Suspense></Region></div> : null}
        {panel === 'asSet' ? <div className="area-items"><Region name={local(besideName)}><Suspense><AsSetList /></Suspense></Region></div> : null}
        {panel === 'compare' ? <div className="area-items"><Region name={local(besideName)}><Suspense><CompareList /></Suspense></Region></div> : null}
        <div className="area-tape band" ref={tapeBox} role="group" aria-label={say('tape')} {...swipe}>
          <Region name={say('tape')}>{tapeSize === null ? null : tape(tapeSize)}</Region>
          {form === 'phone' && leaf !== 'notes' && !runThrough && !wet ? <button type="button" className="tape-plus" aria-label={say('gearAddOnTape')} onClick={() => app.view.setState({ gearOpen: true })}><Icon name="plus" /></button> : null}
        </div>
        {regions.section ? (
          <div className="area-section band" ref={sectionBox} id="leaf-side" role={form === 'phone' ? 'tabpanel' : 'group'} aria-label={say('sideView')}>
            <Region name={say('sideView')}>{sectionSize === null ? null : section(sectionSize)}</Region>
            {form === 'phone' ? <><Region name={say('tagTitle')}><PhoneTag /></Region><div className="plan-foot"><ToolHint /><Notice /></div></> : null}
          </div>
        ) : null}
        {form === 'phone' ? notes : null}
      </main>
      {form === 'tabletPortrait' || form === 'tabletLandscape' ? <div className="area-dock"><Region name={say('tagTitle')}><DockedTag /></Region></div> : null}
      {form === 'tabletPortrait' && !runThrough ? <div className="area-note"><Region name={say('notesTitle')}><NoteLine /></Region></div> : null}
      {form === 'tabletLandscape' && !runThrough ? <div className="area-margin"><Region name={say('notesTitle')}><MarginShapes /></Region></div> : null}
      {form === 'phone' ? null : notes}
      <div className="area-title"><Region name={say('titleBlock')}><TitleBlock /></Region></div>
      {form === 'phone' && leaf === 'notes' ? <div className="plan-foot plan-foot-page"><Notice /></div> : null}
    </div>
  )
})
Yard.displayName = 'Yard'
export default Yard

/** Tells the view how large the bands are; on the phone's side leaf the tape's map follows the side view. */
const useBandSizes = (plan: BandSize | null, section: BandSize | null, tape: BandSize | null): void => {
  const { app } = useUi()
  useEffect(() => {
    const before = app.view.getState().bandSizePx
    const next = { plan: plan ?? section ?? before.plan, section: section ?? before.section }
    const isSame = next.plan.widthPx === before.plan.widthPx && next.plan.heightPx === before.plan.heightPx && next.section.widthPx === before.section.widthPx && next.section.heightPx === before.section.heightPx
    if (!isSame) app.view.setState({ bandSizePx: next })
  }, [app, plan, section, tape])
}

/** A swipe across the tape turns the leaf, unless a flag is being dragged. */
const useTapeSwipe = (): { onPointerDownCapture: (event: PointerEvent) => void; onPointerUpCapture: (event: PointerEvent) => void } => {
  const { app } = useUi()
  const from = useRef<{ xPx: number; yPx: number } | null>(null)
  return {
    onPointerDownCapture: (event) => { from.current = app.view.getState().form === 'phone' && event.pointerType !== 'mouse' && event.isPrimary ? { xPx: event.clientX, yPx: event.clientY } : null },
    onPointerUpCapture: (event) => {
      const start = from.current
      from.current = null
      if (start === null || app.documents.getState().pending !== null) return
      const { leaf, tapeVertical } = app.view.getState()
      const [dx, dy] = [event.clientX - start.xPx, event.clientY - start.yPx]
      // Across a level tape is up and down: upwards turns on, as a page does.
      const next = tapeVertical ? leafAfterSwipe(leaf, dx, dy) : leafAfterSwipe(leaf, dy, dx)
      if (next !== leaf) app.view.setState({ leaf: next })
    },
  }
}

/** Gear slid out over the sheet: from the side of the free hand on a tablet, from below on a phone. */
const GearDrawer = (): ReactNode => {
  const { app } = useUi()
  const { say } = useWords()
  const isOpen = useView((view) => view.gearOpen)
  const form = useView((view) => view.form)
  const close = (): void => app.view.setState({ gearOpen: false })
  return (
    <>
      {form === 'phone' ? null : <button type="button" className="gear-handle" aria-expanded={isOpen} aria-controls="gear-drawer" onClick={() => app.view.setState({ gearOpen: !isOpen })}><span>{say('gearTitle').toLowerCase()}</span></button>}
      {isOpen ? (
        <div className="gear-drawer" id="gear-drawer" onKeyDown={(event) => { if (event.key === 'Escape') close() }}>
          <button type="button" className="quiet square gear-close" autoFocus aria-label={say('close')} onClick={close}><Icon name="close" /></button>
          <Region name={say('gearTitle')}><GearEdge /></Region>
        </div>
      ) : null}
    </>
  )
}
