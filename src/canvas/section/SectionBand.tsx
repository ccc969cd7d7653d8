import { memo, useCallback, useEffect, useMemo, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { plannedProfile } from '../../derive/plannedProfile.ts'
import { pullerAhead } from '../../derive/stages/pullerAhead.ts'
import { sectionDrawing, sectionRange } from '../../derive/sectionDrawing.ts'
import { railHeightPx, sectionRail } from '../../derive/sectionRail.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import { guessedWidthPx } from '../../drawing/fractionText.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { textIn } from '../../messages/localized.ts'
import { renderText } from '../../messages/render.ts'
import { alongToPx, foldOf, foldPx, levelToPx, partOfAlong, pxToAlong, sectionFrame, type FrameView, type SectionFrame } from '../../state/frames.ts'
import type { App } from '../../state/app.ts'
import { shownResultsOf } from '../../state/shownResults.ts'
import { formatQuantity, formatRunning, type FormatOptions } from '../../units/format.ts'
import { FoldStrip } from '../FoldStrip.tsx'
import { clearOfEdges } from '../foldDrawing.ts'
import { BandCanvas } from '../strips/BandCanvas.tsx'
import type { BandPicture, Pass } from '../strips/stripPainter.ts'
import { foldedParts } from '../tape/tapeFrame.ts'
import { shownFlags } from '../tape/flags.ts'
import { liveFigures } from '../tape/liveFigures.ts'
import { useFlagGestures } from '../tape/useFlagGestures.ts'
import { useFaceLoads, useIsTouch, useTheme } from '../theme.ts'
import { draggedKey } from '../tools/flagDrag.ts'
import { rankMarksOf, rankParts } from '../rankMarks.ts'
import { arrivalsOf } from './arrivals.ts'
import { markParts, sectionMarks } from './marks.ts'
import { noseParts } from './noseParts.ts'
import { sectionWords } from './words.ts'

export interface SectionBandProps {
  app: App
  widthPx: number
  heightPx: number
}

const HIT_PX = 24
const HEAD_PX = 40
/** On the phone's leaf the tape lies under the side view and its flags stand over the foot of it. */
const FLAGS_BELOW_PX = 92
/** Narrower than this, heads of rows are one word and the heading takes two lines. */
const NARROW_PX = 640
/** Under this height there is no room for the rail. */
const RAIL_FROM_PX = 150

/** The side view: ground, supports and the bent pipe on the tape's scale, with its figures at the foot. Saddles are dragged up and down. */
export const SectionBand = memo(({ app, widthPx, heightPx }: SectionBandProps): ReactNode => {
  const view = useStore(app.view)
  const { site, profile } = useStore(app.site)
  const { run, isStale } = useStore(shownResultsOf(app))
  const isFailed = useStore(app.results, (state) => state.status === 'failed')
  const isGesture = useStore(app.documents, (state) => state.preview !== null)
  const theme = useTheme(app)
  const touch = useIsTouch(app)
  const faceLoads = useFaceLoads()

  // On a phone the side view has a leaf of its own and the tape lies level there.
  const frame: FrameView = useMemo(() => ({ ...view, tapeVertical: false, bandSizePx: { plan: { ...view.bandSizePx.plan, widthPx }, section: { widthPx, heightPx } } }), [view, widthPx, heightPx])
  const options: FormatOptions = useMemo(() => ({ system: site.layout.displayUnits, language: view.language }), [site.layout.displayUnits, view.language])
  // Drawn again when the ranking of the supports changes; while heights as set are shown, the plan stands beside them.
  const critical = useStore(app.critical.store)
  const planned = useMemo(() => plannedProfile(site, profile.stage), [site, profile.stage])
  const arrivals = useMemo(() => arrivalsOf(run, site), [run, site])
  const { runThrough } = view
  const ahead = useMemo(() => (runThrough ? pullerAhead(site, profile.stage, profile.tipM) : null), [runThrough, site, profile])
  const hasRail = heightPx >= RAIL_FROM_PX
  const figurePx = touch ? 15 : 13.5
  const belowPx = view.form === 'phone' && view.leaf === 'side' ? FLAGS_BELOW_PX : 0
  const isNarrow = widthPx < NARROW_PX
  const headPx = isNarrow ? HEAD_PX + 22 : HEAD_PX
  const railPx = (hasRail ? railHeightPx(arrivals !== null, figurePx) : 0) + belowPx

  const [leftM, rightM] = [pxToAlong(frame, 0), pxToAlong(frame, widthPx)]
  const [fromM, toM] = [Math.min(leftM, rightM), Math.max(leftM, rightM)]
  const [band, setBand] = useState<HTMLDivElement | null>(null)
  // While a saddle is dragged the scale of heights stays as it was when it was taken hold of.
  const [held, setHeld] = useState<SectionFrame | null>(null)
  const range = useMemo(() => sectionRange(site, profile, fromM, toM), [site, profile, fromM, toM])
  const settled = useMemo(() => sectionFrame(frame, range.lowestM, range.highestM, headPx, railPx + 26), [frame, range, headPx, railPx])
  const section = held ?? settled

  const flags = useMemo(() => shownFlags(site, profile, run, options, view.hiddenKinds).filter(({ saddleM, kind }) => saddleM !== null || kind === 'support'), [site, profile, run, options, view.hiddenKinds])
  const alongSign = view.turned ? -1 : 1
  const hit = (xPx: number): string | null => nearest(flags.filter(({ runningM }) => partOfAlong(frame, runningM) !== 'folded'), (runningM) => Math.abs(alongToPx(frame, runningM) - xPx), HIT_PX)
  const gestures = useFlagGestures(band, {
    app, frame, isUpright: false, hit, onDrag: (isDown) => setHeld(isDown ? settled : null),
    context: { flags, system: options.system, pxPerM: frame.pxPerM, pxPerLevelM: section.pxPerLevelM, alongSign, toRunning: (px) => pxToAlong(frame, px), allows: 'height', placesOnTap: false },
  })
  const isDragging = draggedKey(gestures.state) !== null

  const picture = useCallback((): BandPicture => {
    const levelPx = (levelM: number): number => levelToPx(section, levelM)
    const alongPx = (runningM: number): number => alongToPx(frame, runningM)
    const matrix = { a: alongSign * frame.pxPerM, b: 0, c: 0, d: -section.pxPerLevelM, e: alongPx(0), f: levelPx(0) }
    const px = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 }
    const marks = sectionMarks(run, site, profile, { alongPx, levelPx, widthPx, topPx: headPx + 6 }).filter(({ xPx }) => partOfAlong(frame, pxToAlong(frame, xPx)) !== 'folded')
    const isFolded = foldOf(frame) !== null
    const passes: Pass[] = []
    for (const part of foldedParts(frame, matrix, fromM, toM, widthPx)) {
      const list = sectionDrawing(site, profile, { pxPerM: frame.pxPerM, pxPerLevelM: section.pxPerLevelM, fromM: part.fromM, toM: part.toM, reader: options, chosenIds: view.selection, hiddenKinds: view.hiddenKinds, markedM: marks.map(({ xPx }) => pxToAlong(frame, xPx)), planned, ahead })
      const [x0, x1] = isFolded ? [part.x0, part.x1] : [0, widthPx]
      passes.push({ list: clearOfEdges(list, part.matrix, part, widthPx, touch), options: { matrix: part.matrix, theme, touch }, clipPx: { x0, y0: 0, x1, y1: heightPx - railPx } })
      if (!hasRail) continue
      const isLeft = part.x0 <= 0
      const rail = sectionRail(site, profile, { reader: options, fromM: part.fromM, toM: part.toM, pxPerM: frame.pxPerM, chosenIds: view.selection, leftM, arrivals, figurePx, isNarrow, hasHeads: isLeft })
      const railMatrix = { a: part.matrix.a, b: 0, c: 0, d: -1, e: part.matrix.e, f: heightPx - belowPx }
      passes.push({ list: clearOfEdges(rail, railMatrix, part, widthPx), options: { matrix: railMatrix, theme }, ...(isFolded ? { clipPx: { x0, y0: 0, x1, y1: heightPx } } : {}) })
    }
    const over: Primitive[] = []
    for (const support of site.supports) {
      if (!view.selection.includes(support.itemId) || support.runningM < fromM || support.runningM > toM || partOfAlong(frame, support.runningM) === 'folded') continue
      const [x, y] = [alongPx(support.runningM), levelPx(support.levelM ?? support.groundLevelM)]
      over.push(
        { t: 'path', points: [x, 0, x, -y + 9], stroke: 'chosen', weight: 'ticks', dash: 'tie' },
        { t: 'path', points: [x, -y - 12, x, -(heightPx - railPx - 8)], stroke: 'chosen', weight: 'ticks', dash: 'tie' },
        { t: 'circle', xM: x, yM: -y - 3, radiusM: 8, stroke: 'chosen', weight: 'building' },
      )
    }
    const ranks = rankMarksOf(app, critical).filter(({ runningM }) => runningM >= fromM && runningM <= toM && partOfAlong(frame, runningM) !== 'folded')
    over.push(...rankParts(ranks, { alongPx, levelPx, mostPx: heightPx - railPx }), ...markParts(marks, isStale), ...heading(site, profile, { section, options, isStale, isFailed, touch, widthPx, roomPx: headingRoomPx(frame, widthPx), fromM, toM }))
    if (runThrough) over.push(...noseParts(site, profile, options, { alongPx, levelPx, widthPx, touch, isHeld: !isFree(site.job.noseHold) }))
    const live = liveFigures(gestures.state, flags, options)
    const dragged = site.supports.find(({ key }) => key === draggedKey(gestures.state))
    if (live !== null && dragged !== undefined) over.push(...liveWords(live, alongPx(dragged.runningM), levelPx(dragged.levelM ?? 0), widthPx, touch))
    passes.push({ list: over, options: { matrix: px, theme } })
    return { passes, widthPx, heightPx, ground: theme.inks.paper, axis: 'x' }
  }, [section, frame, alongSign, theme, widthPx, heightPx, site, profile, fromM, toM, leftM, options, view.selection, view.hiddenKinds, railPx, belowPx, headPx, isNarrow, hasRail, arrivals, figurePx, app, critical, planned, ahead, runThrough, run, isFailed, isStale, gestures.state, flags, touch])

  if (site.setUp === null) return <div data-band="section" role="note" style={{ width: widthPx, height: heightPx }}>{textIn(sectionWords.empty, view.language)}</div>
  return (
    <div data-band="section" ref={setBand} {...gestures.handlers} style={{ position: 'relative', width: widthPx, height: heightPx, overflow: 'hidden', touchAction: 'none', userSelect: 'none', cursor: isDragging ? 'ns-resize' : 'default' }}>
      <div role="img" aria-label={textIn(sectionWords.band, view.language)}>
        <BandCanvas name="section" widthPx={widthPx} heightPx={heightPx} picture={picture} isDragging={isGesture} faceLoads={faceLoads} />
      </div>
      <FoldStrip app={app} frame={frame} heightPx={heightPx} band="section" />
      <FiguresTable app={app} options={options} />
    </div>
  )
})
SectionBand.displayName = 'SectionBand'

/** The figures of the drawing as a table for those who cannot see it. */
const FiguresTable = memo(({ app, options }: { app: App; options: FormatOptions }): ReactNode => {
  // It follows once the drawing has come to rest: nobody reads a table during a drag, and each frame would pay for it.
  const [{ site, profile }, setShown] = useState(() => app.site.getState())
  useEffect(() => {
    let timer = 0
    const stop = app.site.subscribe((state) => {
      clearTimeout(timer)
      timer = window.setTimeout(() => setShown(state), TABLE_AFTER_MS)
    })
    return () => {
      clearTimeout(timer)
      stop()
    }
  }, [app])
  const say = (key: 'support' | 'distance' | 'saddle' | 'carries' | 'table'): string => textIn(sectionWords[key], options.language)
  return (
    <table style={hidden}>
      <caption>{say('table')}</caption>
      <thead><tr><th scope="col">{say('support')}</th><th scope="col">{say('distance')}</th><th scope="col">{say('saddle')}</th><th scope="col">{say('carries')}</th></tr></thead>
      <tbody>
        {site.supports.map(({ key, label, runningM, saddleM }) => {
          const load = profile.loads.get(key)
          const carries = load === undefined ? '' : load.floats ? renderText(sectionWords.floats, { gap: { kind: 'shortLength', value: load.gapM } }, options) : formatQuantity({ kind: 'force', value: load.reactionN }, options)
          return <tr key={key}><th scope="row">{label}</th><td>{formatRunning(runningM, options)}</td><td>{formatQuantity({ kind: 'height', value: saddleM }, options)}</td><td>{carries}</td></tr>
        })}
      </tbody>
    </table>
  )
})
FiguresTable.displayName = 'FiguresTable'
const TABLE_AFTER_MS = 250
const hidden = { position: 'absolute', width: 1, height: 1, margin: -1, padding: 0, overflow: 'hidden', clipPath: 'inset(50%)', whiteSpace: 'nowrap', border: 0 } as const

/** A nose that comes as it hangs; where nobody has said, it is slung. */
const isFree = (hold: SiteModel['job']['noseHold']): boolean => hold === 'free' || hold === 'sled'

const nearest = (flags: readonly { key: string; runningM: number }[], awayPx: (runningM: number) => number, reachPx: number): string | null => {
  let best: string | null = null
  let bestPx = reachPx
  for (const { key, runningM } of flags) {
    const away = awayPx(runningM)
    if (away <= bestPx) [best, bestPx] = [key, away]
  }
  return best
}

interface HeadingFacts {
  section: SectionFrame
  options: FormatOptions
  isStale: boolean
  isFailed: boolean
  touch: boolean
  widthPx: number
  /** Width the name and what follows it may take: up to the fold. */
  roomPx: number
  fromM: number
  toM: number
}

/** A fold nearer to the left edge than this leaves no room for the heading beside it, px. */
const HEADING_LEAST_PX = 260
const headingRoomPx = (frame: FrameView, widthPx: number): number => {
  const fold = foldPx(frame)
  return fold === null || fold.x0 < HEADING_LEAST_PX ? widthPx : Math.min(widthPx, fold.x0)
}

/** Name, what the heights are drawn at, the fall of the ground, and what cannot be drawn. px frame, y UP. */
const heading = (site: SiteModel, profile: SectionProfile, { section, options, isStale, isFailed, touch, widthPx, roomPx, fromM, toM }: HeadingFacts): Primitive[] => {
  const { language } = options
  const [namePx, morePx] = touch ? [21.5, 15.5] : [19, 13]
  const name = textIn(sectionWords.name, language)
  const { exaggeration } = section
  const scale = exaggeration > 1 ? renderText(sectionWords.enlarged, { factor: exaggeration }, options) : exaggeration === 1 ? textIn(sectionWords.trueScale, language) : textIn(sectionWords.shrunk, language)
  const { fallRatio, from, guessed } = site.ground
  const ground = from === 'unknown' ? textIn(sectionWords.groundUnknown, language)
    : fallRatio !== null && Math.abs(fallRatio) >= 0.0005 ? renderText(fallRatio > 0 ? sectionWords.falls : sectionWords.rises, { slope: { kind: 'percent', value: Math.abs(fallRatio) } }, options) : ''
  const guess = from !== 'unknown' && guessed.some((g) => g.fromM < toM && g.toM > fromM) ? textIn(sectionWords.groundGuessed, language) : ''
  const state = isFailed ? textIn(sectionWords.failed, language) : isStale ? textIn(sectionWords.working, language) : profile.status === 'notConverged' ? textIn(sectionWords.notConverged, language) : ''
  const nameWidth = guessedWidthPx(name, namePx) * 1.08
  const isNarrow = widthPx < NARROW_PX
  const room = isNarrow ? roomPx - 28 : roomPx - nameWidth - 40
  // On a narrow band the less important words give way.
  const more = [[scale, ground, guess], [scale, ground], [scale], [exaggeration > 1 ? renderText(sectionWords.enlargedShort, { factor: exaggeration }, options) : scale]].map((words) => words.filter((text) => text !== '').join('; ')).find((text) => guessedWidthPx(text, morePx) < room) ?? ''
  const problem = profile.status === 'missing' ? renderText(sectionWords.missing, { what: [...new Set(profile.missing.map(({ label }) => textIn(label, language)))].join(', ') }, options)
    : profile.status === 'unstable' ? textIn(sectionWords.unstable, language) : ''
  return [
    { t: 'text', xM: 14, yM: -25, text: name, sizePx: namePx, bold: true },
    { t: 'text', xM: isNarrow ? 14 : 14 + nameWidth + 10, yM: isNarrow ? -25 - morePx * 1.45 : -25, text: more, sizePx: morePx, ink: 'ink2' },
    ...(state === '' ? [] : [{ t: 'text', xM: widthPx - 12, yM: -25, text: state, sizePx: morePx, ink: 'ink2', align: 'right', lotEdge: true } as const]),
    ...(problem === '' ? [] : [{ t: 'text', xM: 14, yM: isNarrow ? -72 : -47, text: problem, sizePx: touch ? 16 : 14.5, ink: profile.status === 'unstable' ? 'red' : 'amber', bold: true } as const]),
  ]
}

/** Figures of a saddle that is being dragged, beside it. */
const liveWords = (live: { main: string; more: string }, xPx: number, yPx: number, widthPx: number, touch: boolean): Primitive[] => {
  const [mainPx, morePx] = touch ? [22, 15] : [16, 12.5]
  const width = Math.max(guessedWidthPx(live.main, mainPx) * 1.1, guessedWidthPx(live.more, morePx)) + 18
  const height = live.more === '' ? mainPx + 12 : mainPx + morePx + 16
  const left = xPx + 22 + width > widthPx ? xPx - 22 - width : xPx + 22
  const bottom = -(yPx + (touch ? -40 : height / 2))
  return [
    { t: 'rect', xM: left, yM: bottom, widthM: width, heightM: height, radiusM: 4, fill: 'sheet', stroke: 'chosen', weight: 'gear' },
    { t: 'text', xM: left + 9, yM: bottom + height - mainPx, text: live.main, sizePx: mainPx, bold: true, ink: 'chosen' },
    ...(live.more === '' ? [] : [{ t: 'text', xM: left + 9, yM: bottom + 6, text: live.more, sizePx: morePx } as const]),
  ]
}
