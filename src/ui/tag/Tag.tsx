import { useEffect, useLayoutEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import type { SiteModel } from '../../derive/types.ts'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { shownDocument } from '../../state/documentStore.ts'
import { foldPx, planProjection } from '../../state/frames.ts'
import { Icon } from '../common/Icon.tsx'
import { useDocuments, useSite, useUi, useView, useWords } from '../context.tsx'
import { itemLabel } from './names.ts'
import { NudgePad } from './NudgePad.tsx'
import { ITEM_LIST_PX, listPanels } from '../items/width.ts'
import { placeTag, stringPath, type Box, type TagPlace } from './placement.ts'
import { OneItem, SeveralItems, TagHead } from './TagBody.tsx'

/** The chosen records as shown, in document order. */
export const useChosen = (): readonly PlacedRecord[] => {
  const selection = useView((view) => view.selection)
  const document = useDocuments(shownDocument)
  return useMemo(() => selection.flatMap((id) => {
    const record = document.records[id]
    return record !== undefined && kindOf(record.kind) !== undefined ? [record as PlacedRecord] : []
  }), [selection, document])
}

const TagContent = ({ records }: { records: readonly PlacedRecord[] }): ReactNode => (
  <>
    <TagHead records={records} />
    <div className="tag-body">{records.length === 1 ? <OneItem key={records[0]!.id} record={records[0]!} /> : <SeveralItems records={records} />}</div>
  </>
)

type ToPx = ReturnType<typeof planProjection>

const boxOf = (points: readonly number[], toPx: ToPx, growPx: number): Box => {
  const xs: number[] = []
  const ys: number[] = []
  for (let i = 0; i + 1 < points.length; i += 2) {
    const { xPx, yPx } = toPx(points[i]!, points[i + 1]!)
    xs.push(xPx)
    ys.push(yPx)
  }
  const [left, top] = [Math.min(...xs) - growPx, Math.min(...ys) - growPx]
  return { xPx: left, yPx: top, widthPx: Math.max(...xs) + growPx - left, heightPx: Math.max(...ys) + growPx - top }
}

/** Height of one row of flags over the plan. */
const FLAGS_PX = 16

/** Where the tag hangs, worked out anew when the choice, the view or the settled layout changes, never while a gesture runs. */
const useTagPlace = (records: readonly PlacedRecord[], size: { widthPx: number; heightPx: number }, marginWidthPx: number): { place: TagPlace; item: Box } | null => {
  const { app } = useUi()
  const pxPerM = useView((view) => view.pxPerM)
  const leftRunningM = useView((view) => view.leftRunningM)
  const midOffsetM = useView((view) => view.midOffsetM)
  const orientation = useView((view) => view.orientation)
  const turned = useView((view) => view.turned)
  const tapeVertical = useView((view) => view.tapeVertical)
  const bandSizePx = useView((view) => view.bandSizePx)
  const fold = useView((view) => view.fold)
  const panel = useView((view) => view.panel)
  const leftHanded = useView((view) => view.leftHanded)
  const site = useSite((state) => state.site)
  // The string follows the item while it is dragged; the tag itself stays put until the gesture is over.
  const [settled, setSettled] = useState(site)
  useEffect(() => {
    const read = (): void => { if (app.documents.getState().preview === null) setSettled(app.site.getState().site) }
    const unsubscribe = [app.site.subscribe(read), app.documents.subscribe(read)]
    return () => { for (const stop of unsubscribe) stop() }
  }, [app])
  const ids = records.map(({ id }) => id).join()
  const frame = useMemo(() => ({ pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx, fold }), [pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx, fold])
  const item = useMemo(() => itemBox(site, ids, planProjection(frame, site.setUp)), [site, ids, frame])
  const place = useMemo(() => {
    const toPx = planProjection(frame, settled.setUp)
    const settledItem = itemBox(settled, ids, toPx)
    if (settledItem === null) return null
    const chosen = new Set(ids.split(','))
    const { widthPx, heightPx } = bandSizePx.plan
    const others = [...settled.placed.values()].filter(({ id, kind, outlineM }) => !chosen.has(id) && kind !== 'boundary' && outlineM.length >= 2)
    const visible = (box: Box): boolean => box.xPx < widthPx && box.xPx + box.widthPx > 0 && box.yPx < heightPx && box.yPx + box.heightPx > 0
    const boxes = others.map((other) => ({ other, box: boxOf(other.outlineM, toPx, 4) })).filter(({ box }) => visible(box))
    const isRed = (record: PlacedRecord): boolean => 'zoneClass' in record && record.zoneClass === 'RED'
    const axis = settled.setUp === null ? null : toPx(settled.setUp.datum.xM, settled.setUp.datum.yM)
    // The list of items lies over the plan beside it.
    const list: Box[] = panel === null || !listPanels.has(panel) ? [] : [{ xPx: leftHanded ? widthPx - ITEM_LIST_PX : 0, yPx: 0, widthPx: ITEM_LIST_PX, heightPx }]
    const folded = foldPx(frame)
    const foldBox: Box[] = folded === null ? [] : [{ xPx: folded.x0, yPx: 0, widthPx: folded.x1 - folded.x0, heightPx }]
    // Flags of the tape stand over the foot of the plan.
    const flagRow: Box[] = tapeVertical ? [] : [{ xPx: 0, yPx: heightPx - FLAGS_PX, widthPx, heightPx: FLAGS_PX }]
    return placeTag({
      band: bandSizePx.plan, tag: size, item: settledItem,
      // The string itself is covered only where nothing else is left, so the axis counts as a thing of its own.
      axisYPx: tapeVertical || axis === null || orientation === 'northUp' ? null : axis.yPx,
      forbidden: [...boxes.filter(({ other }) => isRed(other.record)).map(({ box }) => box), ...flagRow, ...list],
      gear: [...boxes.filter(({ other }) => !isRed(other.record) && kindOf(other.kind)?.placing !== 'polyline').map(({ box }) => box), ...foldBox],
      marginWidthPx,
    })
  }, [ids, settled, frame, bandSizePx, orientation, tapeVertical, size, marginWidthPx, panel, leftHanded])
  return item === null || place === null ? null : { place, item }
}

const itemBox = (site: SiteModel, ids: string, toPx: ToPx): Box | null => {
  const points = ids.split(',').flatMap((id) => [...(site.placed.get(id)?.outlineM ?? [])])
  return points.length < 2 ? null : boxOf(points, toPx, 6)
}

/** Desktop: the tag hangs by a string from its item on free paper. */
export const HangingTag = ({ onPlaced }: { onPlaced?: (box: Box | null) => void }): ReactNode => {
  const records = useChosen()
  const { app } = useUi()
  const { say } = useWords()
  const element = useRef<HTMLElement>(null)
  const [size, setSize] = useState({ widthPx: 278, heightPx: 190 })
  const placed = useTagPlace(records, size, 0)
  const isShown = records.length > 0
  useLayoutEffect(() => {
    const tag = element.current
    if (tag === null) return
    const read = (): void => setSize((before) => (Math.abs(before.widthPx - tag.offsetWidth) < 1 && Math.abs(before.heightPx - tag.offsetHeight) < 1 ? before : { widthPx: tag.offsetWidth, heightPx: tag.offsetHeight }))
    read()
    const observer = new ResizeObserver(read)
    observer.observe(tag)
    return () => observer.disconnect()
  }, [isShown])
  const [xPx, yPx] = [placed?.place.xPx ?? null, placed?.place.yPx ?? null]
  const box = useMemo<Box | null>(() => (!isShown || xPx === null || yPx === null ? null : { xPx, yPx, ...size }), [isShown, xPx, yPx, size])
  useEffect(() => { onPlaced?.(box) }, [box, onPlaced])
  if (placed === null || box === null) return null
  const hole = { xPx: box.xPx + 14, yPx: placed.place.where === 'above' ? box.yPx + size.heightPx - 14 : box.yPx + 16 }
  return (
    <>
      <svg className="tag-string" aria-hidden="true"><path d={stringPath(placed.item, hole)} /></svg>
      <section ref={element} className="tag tag-hanging" data-where={placed.place.where} aria-label={say('tagTitle')} style={{ left: box.xPx, top: box.yPx }} onKeyDown={(event) => { if (event.key === 'Escape') { event.stopPropagation(); app.view.setState({ selection: [] }) } }}>
        <span className="tag-hole" data-where={placed.place.where} aria-hidden="true" />
        <TagContent records={records} />
      </section>
    </>
  )
}

/** Tablet: the tag lies at the thumb side together with the nudge pad. */
export const DockedTag = (): ReactNode => {
  const records = useChosen()
  const { app } = useUi()
  const words = useWords()
  const site = useSite((state) => state.site)
  if (records.length === 0) return null
  const label = records.length === 1 ? itemLabel(site, records[0]!, words) : words.say('chosenCount', { count: records.length })
  return (
    <section className="dock" aria-label={words.say('tagTitle')}>
      <div className="tag tag-docked">
        <TagContent records={records} />
        <button type="button" className="quiet square tag-close" aria-label={words.say('letGo')} onClick={() => app.view.setState({ selection: [], tagMore: false })}><Icon name="close" /></button>
      </div>
      <NudgePad records={records} label={label} />
    </section>
  )
}

/** Phone: distance, height and the pad; 'more' unfolds the whole tag over the plan. */
export const PhoneTag = (): ReactNode => {
  const records = useChosen()
  const { app } = useUi()
  const words = useWords()
  const site = useSite((state) => state.site)
  const isMore = useView((view) => view.tagMore)
  if (records.length === 0) return null
  const label = records.length === 1 ? itemLabel(site, records[0]!, words) : words.say('chosenCount', { count: records.length })
  return (
    <section className="tag tag-phone" data-more={isMore} aria-label={words.say('tagTitle')}>
      <TagContent records={records} />
      <NudgePad records={records} label={label} />
      <button type="button" className="quiet square tag-close" aria-label={words.say('letGo')} onClick={() => app.view.setState({ selection: [], tagMore: false })}><Icon name="close" /></button>
    </section>
  )
}
