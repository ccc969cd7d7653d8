import { memo, useCallback, useId, useLayoutEffect, useMemo, useRef, useState, type FocusEvent, type KeyboardEvent, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { guessedWidthPx } from '../../drawing/fractionText.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { tapeBody, tapeKnuckle } from '../../drawing/tape.ts'
import { textIn } from '../../messages/localized.ts'
import { alongToPx, drawnAlongM, foldOf, foldPx, partOfAlong, pxToAlong, sectionFrame } from '../../state/frames.ts'
import type { App } from '../../state/app.ts'
import { shownResultsOf } from '../../state/shownResults.ts'
import { sectionRange } from '../../derive/sectionDrawing.ts'
import { formatQuantity, type FormatOptions } from '../../units/format.ts'
import { FoldStrip } from '../FoldStrip.tsx'
import { clearOfEdges } from '../foldDrawing.ts'
import { nudge } from '../nudge.ts'
import { BandCanvas } from '../strips/BandCanvas.tsx'
import type { BandPicture, Pass } from '../strips/stripPainter.ts'
import { useFaceLoads, useIsTouch, useTheme } from '../theme.ts'
import { draggedKey } from '../tools/flagDrag.ts'
import { flagLook, flagParts, flagSizePx, type DrawnFlag } from './flagDrawing.ts'
import { FAN_REACH_PX, layoutFlags } from './flagLayout.ts'
import { flagName, proposedFlags, shownFlags, tapeFlags, type TapeFlag } from './flags.ts'
import { FlagTarget, type FlagTouch } from './FlagTarget.tsx'
import { proposedSite } from './proposedSite.ts'
import { liveFigures } from './liveFigures.ts'
import { tapeFrame } from './tapeFrame.ts'
import { useFlagGestures } from './useFlagGestures.ts'
import { tapeWords } from './words.ts'

export interface TapeBandProps {
  app: App
  widthPx: number
  heightPx: number
}

/** Room beyond the band for flags in their second row and live figures; over the plan, letting everything but flags through. */
const OVERHANG_PX = { level: 104, upright: 272 }
const HIT_PX = 48
const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
/** px of the canvas with y UP. */
const upwards = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 }

/**
 * The tape between plan and side view, or upright beside the plan on a phone. Every support has a flag on it: drag slides
 * it along the run, a pull changes its saddle; a tap on an empty place asks what goes there.
 */
export const TapeBand = memo(({ app, widthPx, heightPx }: TapeBandProps): ReactNode => {
  const view = useStore(app.view)
  const { site, profile } = useStore(app.site)
  const { run, isStale } = useStore(shownResultsOf(app))
  const theme = useTheme(app)
  const touch = useIsTouch(app)
  const faceLoads = useFaceLoads()
  const listId = useId()
  const [band, setBand] = useState<HTMLDivElement | null>(null)
  const [fanKey, setFanKey] = useState<string | null>(null)
  // A rack has two flags for one item: which of them the keyboard stands on.
  const [stopKey, setStopKey] = useState<string | null>(null)

  const options: FormatOptions = useMemo(() => ({ system: site.layout.displayUnits, language: view.language }), [site.layout.displayUnits, view.language])
  const tape = useMemo(() => tapeFrame(view, widthPx, heightPx, touch), [view, widthPx, heightPx, touch])
  const { frame, isUpright, isMirrored, alongSign, lengthPx, thicknessPx, matrix, fromM, toM, drawnM, parts } = tape
  const flags = useMemo(() => shownFlags(site, profile, run, options, view.hiddenKinds), [site, profile, run, options, view.hiddenKinds])
  const document = useStore(app.documents, (state) => state.document)
  const ghosts = useMemo(() => {
    const proposed = proposedSite(app, view.proposal, document)
    return proposed === null ? [] : proposedFlags(flags, tapeFlags(proposed, profile, null, options, view.hiddenKinds))
  }, [app, view.proposal, document, flags, profile, options, view.hiddenKinds])
  const isGesture = useStore(app.documents, (state) => state.preview !== null)
  const alongPx = useCallback((runningM: number): number => alongToPx(frame, runningM), [frame])

  const range = useMemo(() => sectionRange(site, profile, fromM, toM), [site, profile, fromM, toM])
  const gestures = useFlagGestures(band, {
    app, frame, isUpright,
    context: {
      flags, system: options.system, pxPerM: frame.pxPerM, pxPerLevelM: sectionFrame(frame, range.lowestM, range.highestM).pxPerLevelM, alongSign,
      toRunning: (px) => pxToAlong(frame, px), allows: 'both', placesOnTap: true, folded: foldOf(frame),
    },
  })
  const dragged = draggedKey(gestures.state)

  const look = flagLook(isUpright, touch)
  const drawnFlags = useMemo(() => {
    const inView = [...flags, ...ghosts].filter(({ runningM }) => alongPx(runningM) > -90 && alongPx(runningM) < lengthPx + 90 && partOfAlong(frame, runningM) !== 'folded')
    const isChosen = (flag: TapeFlag): boolean => flag.key === dragged || (flag.itemId !== null && view.selection.includes(flag.itemId))
    const rank = (flag: TapeFlag): number => (isChosen(flag) ? 0 : flag.level === 'STOP' || flag.level === 'FIX' ? 1 : flag.kind === 'jaws' ? 2 : flag.isProposal === true ? 4 : 3)
    const requests = inView.map((flag) => ({ key: flag.key, alongPx: alongPx(flag.runningM), sizePx: flagSizePx(flag, look), rank: rank(flag) }))
    const fold = foldPx(frame)
    const places = layoutFlags(requests, { rows: 2, gapPx: 2, primary: isUpright ? -1 : 1, fanKey, blocked: fold === null ? null : { fromPx: fold.x0, toPx: fold.x1 } })
    return inView.map((flag, i): DrawnFlag => ({ flag, place: places[i]!, alongPx: requests[i]!.alongPx, sizePx: requests[i]!.sizePx, isChosen: isChosen(flag), isStale, isMirrored }))
  }, [flags, ghosts, alongPx, lengthPx, dragged, view.selection, look, isUpright, fanKey, isStale, isMirrored, frame])

  const overhang = isUpright ? { x: isMirrored ? 0 : OVERHANG_PX.upright, y: 0, width: OVERHANG_PX.upright, height: 0 } : { x: 0, y: OVERHANG_PX.level, width: 0, height: OVERHANG_PX.level }
  const onCanvas = useMemo(() => ({ ...matrix, e: matrix.e + overhang.x, f: matrix.f + overhang.y }), [matrix, overhang.x, overhang.y])

  const tapePasses = useMemo((): Pass[] => {
    const isFolded = parts.length > 1 || foldOf(frame) !== null
    // On a level tape the way shows beside it; an upright one lies on the sheet.
    const way: Pass[] = isUpright ? [] : [{ list: [{ t: 'rect', xM: overhang.x, yM: overhang.y, widthM: widthPx, heightM: heightPx, fill: 'way' }], options: { matrix: identity, theme } }]
    return [...way, ...parts.map((part): Pass => {
      const list: Primitive[] = tapeBody({
        fromM: part.fromM, toM: part.toM, pxPerM: frame.pxPerM, system: options.system, thicknessPx, isUpright, isMirrored: alongSign === (isUpright ? 1 : -1), figurePx: touch ? 17 : 14,
        infeed: textIn(tapeWords.infeed, view.language), exit: textIn(tapeWords.exit, view.language),
      })
      const knuckles = site.bends.filter((bend) => bend.toM > part.fromM && bend.fromM < part.toM).map((bend) =>
        tapeKnuckle((bend.fromM + bend.toM) / 2, thicknessPx, formatQuantity({ kind: 'angle', value: Math.abs(bend.turnRad) }, options)))
      const placed = { ...part.matrix, e: part.matrix.e + overhang.x, f: part.matrix.f + overhang.y }
      return { list: clearOfEdges([...list, ...knuckles], placed, part, lengthPx), options: { matrix: placed, theme }, ...(isFolded ? { clipPx: { x0: part.x0, y0: 0, x1: part.x1, y1: overhang.y + heightPx } } : {}) }
    })]
  }, [theme, overhang.x, overhang.y, widthPx, heightPx, lengthPx, isUpright, parts, frame, options, thicknessPx, alongSign, touch, view.language, site.bends])

  const picture = useCallback((): BandPicture => {
    // Back rows first: their poles run behind the flags in front.
    const backFirst = [...drawnFlags].sort((a, b) => Number(a.isChosen) - Number(b.isChosen) || b.place.row - a.place.row)
    const list = backFirst.map((drawn): Primitive => ({ t: 'mark', xM: drawnM(drawn.flag.runningM), yM: thicknessPx, parts: flagParts(drawn, look) }))
    const live = liveFigures(gestures.state, flags, options)
    const at = drawnFlags.find(({ flag }) => flag.key === dragged)
    const point = at === undefined ? null : isUpright ? { xPx: onCanvas.e + onCanvas.c * (thicknessPx + 10), yPx: at.alongPx + overhang.y - 78 } : { xPx: at.alongPx, yPx: overhang.y + heightPx - thicknessPx - look.standPx - look.heightPx - at.place.row * look.rowPx - 8 }
    const words = live === null || point === null ? [] : bubble(live, point, onCanvas, touch, { widthPx: widthPx + overhang.width, isUpright })
    return {
      passes: [...tapePasses, { list, options: { matrix: onCanvas, theme } }, { list: words, options: { matrix: upwards, theme } }],
      widthPx: widthPx + overhang.width, heightPx: heightPx + overhang.height, ground: null, axis: isUpright ? 'y' : 'x',
    }
  }, [tapePasses, drawnFlags, drawnM, thicknessPx, look, onCanvas, theme, gestures.state, flags, options, dragged, isUpright, overhang.y, overhang.width, overhang.height, heightPx, touch, widthPx])

  const chosenFlags = flags.filter(({ itemId }) => itemId !== null && view.selection.includes(itemId))
  const current = chosenFlags.find(({ key }) => key === stopKey) ?? chosenFlags[0] ?? null
  const select = (flag: TapeFlag): void => {
    setStopKey(flag.key)
    if (flag.itemId !== null) app.view.setState({ selection: [flag.itemId] })
    const px = alongPx(flag.runningM)
    if (px < HIT_PX || px > lengthPx - HIT_PX) app.view.setState({ leftRunningM: drawnAlongM(frame, flag.runningM) - lengthPx / 2 / frame.pxPerM })
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    if (gestures.onGestureKey(event)) return
    const ahead = isUpright ? (alongSign === 1 ? 'ArrowDown' : 'ArrowUp') : alongSign === 1 ? 'ArrowRight' : 'ArrowLeft'
    const back = isUpright ? (alongSign === 1 ? 'ArrowUp' : 'ArrowDown') : alongSign === 1 ? 'ArrowLeft' : 'ArrowRight'
    const sideKeys = { ArrowRight: 'right', ArrowLeft: 'left', ArrowUp: 'up', ArrowDown: 'down' } as const
    const stops = flags.filter(({ itemId }) => itemId !== null)
    const now = current === null ? -1 : stops.findIndex(({ key }) => key === current.key)
    const goTo = (i: number): void => {
      const flag = stops[Math.min(stops.length - 1, Math.max(0, i))]
      if (flag !== undefined) select(flag)
    }
    const isPlain = !event.ctrlKey && !event.metaKey && !event.altKey
    const side = event.key in sideKeys ? sideKeys[event.key as keyof typeof sideKeys] : null
    if (isPlain && event.shiftKey && side !== null && view.selection.length > 0) nudge(app, view.selection, side, false)
    else if (isPlain && !event.shiftKey && event.key === ahead) goTo(now < 0 ? stops.findIndex(({ runningM }) => runningM >= 0) : now + 1)
    else if (isPlain && !event.shiftKey && event.key === back) goTo(now < 0 ? stops.length - 1 : now - 1)
    else if (isPlain && event.key === 'Home') goTo(0)
    else if (isPlain && event.key === 'End') goTo(stops.length - 1)
    else if (isPlain && event.key === 'Enter' && current !== null) app.view.setState({ tagMore: true })
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  // A bunch with folded flags fans out when one of it is pressed, or its folded pole pointed at; it folds again when the pointer leaves it.
  const isNear = (one: string, other: string, reachPx: number): boolean => {
    const [a, b] = [flags.find(({ key }) => key === one), flags.find(({ key }) => key === other)]
    return a !== undefined && b !== undefined && Math.abs(alongPx(a.runningM) - alongPx(b.runningM)) <= reachPx
  }
  const onPress = (key: string): void => {
    if (drawnFlags.some(({ flag, place }) => place.isFolded && isNear(flag.key, key, FAN_REACH_PX))) setFanKey(key)
  }
  const onPoint = (key: string): void => {
    if (drawnFlags.some(({ flag, place }) => flag.key === key && place.isFolded)) setFanKey(key)
    else if (fanKey !== null && !isNear(key, fanKey, 2 * FAN_REACH_PX)) setFanKey(null)
  }

  const touchOf = useRef<FlagTouch>({ onPoint, onPress })
  useLayoutEffect(() => {
    touchOf.current = { onPoint, onPress }
  })
  const placeInSet = new Map(flags.map(({ key }, i) => [key, i]))

  if (site.setUp === null) return <div data-band="tape" role="note" style={{ width: widthPx, height: heightPx, position: 'relative' }}>{textIn(tapeWords.empty, view.language)}</div>
  const optionId = (key: string): string => `${listId}-${key.replace(/[^A-Za-z0-9]/g, '-')}`
  return (
    <div
      data-band="tape" ref={setBand} {...gestures.handlers}
      role="listbox" tabIndex={0} aria-label={textIn(tapeWords.band, view.language)} aria-orientation={isUpright ? 'vertical' : 'horizontal'} aria-multiselectable
      aria-activedescendant={current === null ? undefined : optionId(current.key)}
      onKeyDown={onKeyDown} onPointerLeave={() => setFanKey(null)}
      onBlur={(event: FocusEvent<HTMLDivElement>) => { if (!event.currentTarget.contains(event.relatedTarget)) setFanKey(null) }}
      style={{ position: 'relative', width: widthPx, height: heightPx, touchAction: 'none', userSelect: 'none', zIndex: 2, cursor: gestures.state.name === 'scrolling' ? 'grabbing' : 'default' }}
    >
      <div style={{ position: 'absolute', left: -overhang.x, top: -overhang.y, width: widthPx + overhang.width, height: heightPx + overhang.height, pointerEvents: 'none' }} aria-hidden>
        <BandCanvas name="tape" widthPx={widthPx + overhang.width} heightPx={heightPx + overhang.height} picture={picture} isDragging={isGesture} faceLoads={faceLoads} />
      </div>
      <FoldStrip app={app} frame={frame} heightPx={heightPx} band="tape" />
      {drawnFlags.filter(({ flag }) => flag.isProposal !== true).map((drawn) => (
        <FlagTarget
          key={drawn.flag.key} id={optionId(drawn.flag.key)} flagKey={drawn.flag.key} name={flagName(drawn.flag, options)} isChosen={drawn.isChosen} isItem={drawn.flag.itemId !== null}
          count={flags.length} at={(placeInSet.get(drawn.flag.key) ?? 0) + 1} {...hitBox(drawn, look, { isUpright, isMirrored, thicknessPx, widthPx, heightPx })} touch={touchOf}
        />
      ))}
    </div>
  )
})
TapeBand.displayName = 'TapeBand'

/** What a finger has to hit: the whole flag, never under 48 px; of a folded flag its pole. */
const hitBox = ({ place, sizePx, alongPx }: DrawnFlag, look: ReturnType<typeof flagLook>, band: { isUpright: boolean; isMirrored: boolean; thicknessPx: number; widthPx: number; heightPx: number }): { left: number; top: number; width: number; height: number; zIndex: number } => {
  const zIndex = 2 - place.row
  const along = place.isFolded ? { fromPx: alongPx - 7, sizePx: 14 } : { fromPx: place.startPx - Math.max(0, HIT_PX - sizePx) / 2, sizePx: Math.max(HIT_PX, sizePx) }
  // Between the feet of the flags and the tape, over both.
  const footPx = { fromPx: 8, sizePx: look.standPx + 12 }
  if (place.isFolded && !band.isUpright) return { left: along.fromPx, top: band.heightPx - band.thicknessPx - look.standPx - 4, width: along.sizePx, height: footPx.sizePx, zIndex: 3 }
  if (place.isFolded) return { left: band.isMirrored ? band.thicknessPx - footPx.fromPx : band.widthPx - band.thicknessPx - look.standPx - 4, top: along.fromPx, width: footPx.sizePx, height: along.sizePx, zIndex: 3 }
  if (!band.isUpright) {
    const bottom = band.heightPx - band.thicknessPx - look.standPx + 3 - place.row * look.rowPx
    const height = place.row === 0 ? Math.max(HIT_PX, look.heightPx) : look.heightPx
    return { left: along.fromPx, top: bottom - height, width: along.sizePx, height, zIndex }
  }
  const nearPx = look.standPx + place.row * look.rowPx
  const left = band.isMirrored ? band.thicknessPx + nearPx : band.widthPx - band.thicknessPx - nearPx - look.widthPx
  return { left, top: along.fromPx, width: look.widthPx, height: along.sizePx, zIndex }
}

/** Large figures over the finger while a flag is dragged. */
const bubble = (live: { main: string; more: string }, at: { xPx: number; yPx: number }, matrix: { e: number }, touch: boolean, room: { widthPx: number; isUpright: boolean }): Primitive[] => {
  const [mainPx, morePx] = touch ? [22, 15] : [17, 12.5]
  const width = Math.max(guessedWidthPx(live.main, mainPx) * 1.1, guessedWidthPx(live.more, morePx) * 1.04) + 20
  const height = live.more === '' ? mainPx + 14 : mainPx + morePx + 18
  const wished = room.isUpright ? matrix.e - 40 - width : at.xPx - width / 2
  const left = Math.min(Math.max(4, wished), Math.max(4, room.widthPx - width - 4))
  const bottom = -Math.max(at.yPx, height + 2)
  return [
    { t: 'rect', xM: left, yM: bottom, widthM: width, heightM: height, radiusM: 4, fill: 'sheet', stroke: 'chosen', weight: 'gear' },
    { t: 'text', xM: left + width / 2, yM: bottom + height - mainPx - 1, text: live.main, sizePx: mainPx, align: 'center', bold: true, ink: 'chosen' },
    ...(live.more === '' ? [] : [{ t: 'text', xM: left + width / 2, yM: bottom + 7, text: live.more, sizePx: morePx, align: 'center' } as const]),
  ]
}
