import { useEffect, useLayoutEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { shownDocument } from '../../state/documentStore.ts'
import { applyMatrix, planMatrix } from '../../state/frames.ts'
import { Icon } from '../common/Icon.tsx'
import { useDocuments, useSite, useUi, useView, useWords } from '../context.tsx'
import { itemLabel } from './names.ts'
import { NudgePad } from './NudgePad.tsx'
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

const boxOf = (points: readonly number[], matrix: ReturnType<typeof planMatrix>, growPx: number): Box => {
  const xs: number[] = []
  const ys: number[] = []
  for (let i = 0; i + 1 < points.length; i += 2) {
    const { xPx, yPx } = applyMatrix(matrix, points[i]!, points[i + 1]!)
    xs.push(xPx)
    ys.push(yPx)
  }
  const [left, top] = [Math.min(...xs) - growPx, Math.min(...ys) - growPx]
  return { xPx: left, yPx: top, widthPx: Math.max(...xs) + growPx - left, heightPx: Math.max(...ys) + growPx - top }
}

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
  const isGesture = useDocuments((state) => state.preview !== null)
  const site = useSite((state) => state.site)
  const last = useRef<{ place: TagPlace; item: Box } | null>(null)
  const ids = records.map(({ id }) => id).join()
  return useMemo(() => {
    const matrix = planMatrix({ pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx }, site.setUp)
    const chosen = new Set(ids.split(','))
    const points = [...chosen].flatMap((id) => [...(site.placed.get(id)?.outlineM ?? [])])
    if (points.length < 2) return null
    const item = boxOf(points, matrix, 6)
    // The string follows the item while it is dragged; the tag itself stays put.
    if (isGesture && last.current !== null) return { place: last.current.place, item }
    const { widthPx, heightPx } = bandSizePx.plan
    const others = [...site.placed.values()].filter(({ id, kind, outlineM }) => !chosen.has(id) && kind !== 'boundary' && outlineM.length >= 2)
    const visible = (box: Box): boolean => box.xPx < widthPx && box.xPx + box.widthPx > 0 && box.yPx < heightPx && box.yPx + box.heightPx > 0
    const boxes = others.map((other) => ({ other, box: boxOf(other.outlineM, matrix, 4) })).filter(({ box }) => visible(box))
    const isRed = (record: PlacedRecord): boolean => 'zoneClass' in record && record.zoneClass === 'RED'
    const axis = site.setUp === null ? null : applyMatrix(matrix, site.setUp.datum.xM, site.setUp.datum.yM)
    const place = placeTag({
      band: bandSizePx.plan, tag: size, item,
      // The string itself is covered only where nothing else is left, so the axis counts as a thing of its own.
      axisYPx: tapeVertical || axis === null || orientation === 'northUp' ? null : axis.yPx,
      forbidden: boxes.filter(({ other }) => isRed(other.record)).map(({ box }) => box),
      gear: boxes.filter(({ other }) => !isRed(other.record)).map(({ box }) => box),
      marginWidthPx,
    })
    last.current = { place, item }
    return last.current
  }, [ids, site, pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx, isGesture, size.widthPx, size.heightPx, marginWidthPx, app])
}

/** Desktop: the tag hangs by a string from its item on free paper. */
export const HangingTag = ({ onPlaced }: { onPlaced?: (box: Box | null) => void }): ReactNode => {
  const records = useChosen()
  const { app } = useUi()
  const { say } = useWords()
  const element = useRef<HTMLElement>(null)
  const [size, setSize] = useState({ widthPx: 264, heightPx: 190 })
  const placed = useTagPlace(records, size, 0)
  useLayoutEffect(() => {
    const tag = element.current
    if (tag === null) return
    const read = (): void => setSize((before) => (Math.abs(before.widthPx - tag.offsetWidth) < 1 && Math.abs(before.heightPx - tag.offsetHeight) < 1 ? before : { widthPx: tag.offsetWidth, heightPx: tag.offsetHeight }))
    read()
    const observer = new ResizeObserver(read)
    observer.observe(tag)
    return () => observer.disconnect()
  }, [records.length === 0])
  const box = placed === null ? null : { xPx: placed.place.xPx, yPx: placed.place.yPx, ...size }
  useEffect(() => { onPlaced?.(records.length === 0 ? null : box) }, [records.length === 0, box?.xPx, box?.yPx, box?.widthPx, box?.heightPx, onPlaced])
  if (records.length === 0 || placed === null || box === null) return null
  const hole = { xPx: box.xPx + 14, yPx: placed.place.where === 'above' ? box.yPx + size.heightPx - 14 : box.yPx + 16 }
  return (
    <>
      <svg className="tag-string" aria-hidden="true"><path d={stringPath(placed.item, hole)} /></svg>
      <section ref={element} className="tag tag-hanging" aria-label={say('tagTitle')} style={{ left: box.xPx, top: box.yPx }} onKeyDown={(event) => { if (event.key === 'Escape') { event.stopPropagation(); app.view.setState({ selection: [] }) } }}>
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

/** Phone: two lines and the height pad; 'more' unfolds the whole tag over the plan. */
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
      <div className="tag-phone-main"><TagContent records={records} /></div>
      <div className="tag-phone-side">
        <button type="button" className="quiet square tag-close" aria-label={words.say('letGo')} onClick={() => app.view.setState({ selection: [], tagMore: false })}><Icon name="close" /></button>
        <NudgePad records={records} label={label} onlyHeight={!isMore} />
      </div>
    </section>
  )
}
