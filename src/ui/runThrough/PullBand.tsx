import { memo, useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import { pullAtNoseN, pullBandOf, type PullBandStage } from '../../derive/stages/pullBand.ts'
import type { SiteModel } from '../../derive/types.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { alongToPx, pxToAlong, type FrameView } from '../../state/frames.ts'
import { Figure } from '../common/Figure.tsx'
import { useSite, useView, useWords, type Words } from '../context.tsx'
import type { BandSize } from '../services.ts'
import { useSize } from '../shell/useSize.ts'
import { pullPieces, pullScale, type LimitName, type PullPiece, type PullScale } from './pullCurve.ts'
import type { Run } from './useRun.ts'

const BOTTOM_PX = 24

/** Under the side view, on the tape's scale: what the pull takes at each place of the nose, and what may take it. */
export const PullBand = ({ run }: { run: Run }): ReactNode => {
  const words = useWords()
  const box = useRef<HTMLDivElement>(null)
  const size = useSize(box, true)
  const { results, isOld, stage, noseM, stages } = run
  const pieces = useMemo(() => pullPieces(results.stages), [results.stages])
  const band = useBand()
  const headPx = useView((view) => (view.form === 'desktop' ? 34 : 40))
  const scale = useMemo(() => pullScale(pieces, words.systemOf('force'), Math.max(20, (size?.heightPx ?? 200) - headPx - BOTTOM_PX)), [pieces, words, size, headPx])
  return (
    <div className="area-pull" ref={box} data-stale={isOld} role="group" aria-label={words.local(text.pull)}>
      <div className="pull-head">
        <h2>{words.local(text.pull)}</h2>
        <Now stage={stage} noseM={noseM} pieces={pieces} />
        <Beyond scale={scale} pieces={pieces} words={words} hasBand={band !== null} />
      </div>
      {pieces.length === 0 ? <p className="quiet-text pull-empty">{words.local(stages.length > 5 && results.status === 'working' ? text.pullWaiting : text.pullUnknown)}</p> : size === null ? null : <Curve pieces={pieces} scale={scale} size={size} band={band} headPx={headPx} noseM={stage.phase === 'pull' ? noseM : null} sticks={stage.sticks} />}
      <PullTable pieces={pieces} />
    </div>
  )
}

/** The pull with the nose where it is, and what is to spare against the smallest limit known. */
const Now = ({ stage, noseM, pieces }: { stage: Run['stage']; noseM: number | null; pieces: readonly PullPiece[] }): ReactNode => {
  const words = useWords()
  const site = useSite((state) => state.site)
  if (stage.phase !== 'pull' || noseM === null) return <p className="quiet-text">{words.local(text.pullAbout)}</p>
  const nowN = pullAtNoseN(site, stage.sticks, noseM)
  if (nowN === null) return null
  const piece = pieces.find(({ id }) => id === stage.id)
  const known = piece === undefined ? [] : Object.values(piece.limits).filter((one) => one !== null)
  const spareN = known.length === 0 ? null : Math.min(...known) - nowN
  const force = (value: number): { kind: 'force'; value: number } => ({ kind: 'force', value })
  return (
    <p className="pull-now"><Figure text={spareN === null ? words.local(text.pullNow, { now: force(nowN) }) : spareN < 0 ? words.local(text.overBy, { now: force(nowN), over: force(-spareN) }) : words.local(text.toSpare, { now: force(nowN), spare: force(spareN) })} /></p>
  )
}

/** Limits that are not on the curve: too far above it, or not known. */
const Beyond = ({ scale, pieces, words, hasBand }: { scale: PullScale; pieces: readonly PullPiece[]; words: Words; hasBand: boolean }): ReactNode => {
  if (pieces.length === 0) return null
  const unknown = (['pipe', 'puller', 'rope'] as const).filter((name) => pieces.every(({ limits }) => limits[name] === null))
  const above = scale.above.map(({ name, valueN }) => `${words.local(text[name])} ${words.figure({ kind: 'force', value: valueN })}`)
  const parts = [
    ...(above.length === 0 ? [] : [words.local(text.limitAbove, { what: above.join(', ') })]),
    ...(unknown.length === 0 ? [] : [words.local(text.limitUnknown, { what: unknown.map((name) => words.local(text[name])).join(', ') })]),
    ...(pieces.every(({ runAwayN }) => runAwayN === 0) ? [words.local(text.runAwayNone)] : []),
    ...(hasBand ? [words.local(text.band)] : []),
  ]
  return parts.length === 0 ? null : <p className="quiet-text pull-beyond"><Figure text={parts.join('; ')} /></p>
}

/** The band is worked out once the page is quiet: it takes two more solves of the string. */
const BAND_AFTER_MS = 350
const useBand = (): ReadonlyMap<string, PullBandStage> | null => {
  const site = useSite((state) => state.site)
  const [made, setMade] = useState<{ site: SiteModel; band: ReadonlyMap<string, PullBandStage> | null } | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => {
      const band = pullBandOf(site)
      setMade({ site, band: band === null ? null : new Map(band.map((one) => [one.id, one])) })
    }, BAND_AFTER_MS)
    return () => clearTimeout(timer)
  }, [site])
  return made?.site === site ? made.band : null
}

const limitText = { pipe: text.limitPipe, rope: text.limitRope } as const

interface CurveProps {
  pieces: readonly PullPiece[]
  scale: PullScale
  size: BandSize
  band: ReadonlyMap<string, PullBandStage> | null
  headPx: number
  noseM: number | null
  sticks: number
}

const Curve = (props: CurveProps): ReactNode => {
  const site = useSite((state) => state.site)
  const view = useView((state) => state)
  const { size, scale, headPx, noseM, sticks } = props
  const frame: FrameView = { ...view, tapeVertical: false, bandSizePx: { ...view.bandSizePx, plan: { ...view.bandSizePx.plan, widthPx: size.widthPx } } }
  const yPx = (valueN: number): number => size.heightPx - BOTTOM_PX - (Math.max(0, valueN) / scale.topN) * (size.heightPx - BOTTOM_PX - headPx)
  const nowN = noseM === null ? null : pullAtNoseN(site, sticks, noseM)
  const xPx = noseM === null ? null : alongToPx(frame, noseM)
  return (
    <svg className="pull-curve" width={size.widthPx} height={size.heightPx} viewBox={`0 0 ${size.widthPx} ${size.heightPx}`} aria-hidden="true">
      <Still {...props} pxPerM={view.pxPerM} leftRunningM={view.leftRunningM} turned={view.turned} />
      {xPx === null || nowN === null ? null : <g className="pull-here"><path d={`M${xPx.toFixed(1)} ${headPx - 8}V${size.heightPx - BOTTOM_PX}`} /><circle cx={xPx} cy={yPx(nowN)} r={6} /></g>}
    </svg>
  )
}

/** Everything but the nose: drawn again only when the stages or the view change. */
const Still = memo(({ pieces, scale, size, band, headPx, pxPerM, leftRunningM, turned }: Omit<CurveProps, 'noseM' | 'sticks'> & Pick<FrameView, 'pxPerM' | 'leftRunningM' | 'turned'>): ReactNode => {
  const words = useWords()
  const { widthPx, heightPx } = size
  const frame: FrameView = { pxPerM, leftRunningM, turned, midOffsetM: 0, orientation: 'alongTape', tapeVertical: false, bandSizePx: { plan: { widthPx, heightPx }, section: { widthPx, heightPx } } }
  const floorPx = heightPx - BOTTOM_PX
  const x = (runningM: number): number => Math.round(alongToPx(frame, runningM) * 10) / 10
  const y = (valueN: number): number => Math.round((floorPx - (Math.max(0, valueN) / scale.topN) * (floorPx - headPx)) * 10) / 10
  const [a, b] = [pxToAlong(frame, -20), pxToAlong(frame, widthPx + 20)]
  const shown = pieces.filter(({ fromM, toM }) => toM >= Math.min(a, b) && fromM <= Math.max(a, b))
  const ticks = Array.from({ length: Math.floor(scale.topN / scale.stepN) + 1 }, (_, i) => i * scale.stepN)
  const path = (points: readonly { atM: number; valueN: number }[]): string => points.map(({ atM, valueN }, i) => `${i === 0 ? 'M' : 'L'}${x(atM)} ${y(valueN)}`).join('')
  const step = (valueOf: (piece: PullPiece) => number | null): string => shown.map((piece) => {
    const value = valueOf(piece)
    return value === null || value > scale.topN ? '' : `M${x(piece.fromM)} ${y(value)}H${x(piece.toM)}`
  }).join('')
  const first = shown[0]
  const leastOf = ({ limits }: PullPiece): number | null => {
    const known = scale.shown.flatMap((name) => limits[name] ?? [])
    return known.length === 0 ? null : Math.min(...known)
  }
  const labelX = Math.max(64, first === undefined ? 64 : Math.min(x(first.fromM), x(first.toM)) + 6)
  const limitWords = (name: LimitName, value: number): string => (name === 'puller' ? words.local(text.limitTow, { force: { kind: 'force', value }, by: '' }).replace(/ \(\)$/, '') : words.local(limitText[name], { force: { kind: 'force', value } }))
  // Words of two limits near each other stand above and below their lines.
  const labels = first === undefined ? [] : scale.shown.flatMap((name) => {
    const value = first.limits[name]
    return value === null || value > scale.topN ? [] : [{ name, value, yPx: y(value) }]
  }).toSorted((one, other) => one.yPx - other.yPx)
  return (
    <g>
      <defs><pattern id="pull-over" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V8" className="pull-hatch" /></pattern></defs>
      {ticks.map((valueN) => (
        <g key={valueN}>
          <path d={`M58 ${y(valueN)}H${widthPx}`} className="pull-grid" />
          <text x={52} y={y(valueN) + 4} textAnchor="end" className="pull-word">{words.figure({ kind: 'force', value: valueN })}</text>
        </g>
      ))}
      {shown.map((piece) => {
        const leastN = leastOf(piece)
        const [left, width] = [Math.min(x(piece.fromM), x(piece.toM)), Math.abs(x(piece.toM) - x(piece.fromM))]
        const range = band?.get(piece.id)
        const high = piece.moving
        return (
          <g key={piece.id}>
            {/* Thin hatch over the lowest limit; over the whole piece where the pull goes past it. */}
            {leastN === null ? null : <rect x={left} width={width} y={piece.overN === null ? Math.max(headPx - 6, y(leastN) - 9) : y(Math.min(scale.topN, piece.start.needN))} height={piece.overN === null ? Math.min(9, y(leastN) - headPx + 6) : Math.max(0, y(leastN) - y(Math.min(scale.topN, piece.start.needN)))} fill="url(#pull-over)" />}
            {range === undefined ? null : <path className="pull-band" d={`${path(high)}L${x(piece.toM)} ${y(range.low.toN)}L${x(piece.fromM)} ${y(range.low.fromN)}Z`} />}
            {range === undefined ? null : <path className="pull-likely" d={path([{ atM: piece.fromM, valueN: range.likely.fromN }, { atM: piece.toM, valueN: range.likely.toN }])} />}
            <path className="pull-line" d={path(high)} />
            <path className="pull-start" d={`M${x(piece.start.atM)} ${y(piece.start.fromN)}V${y(piece.start.needN)}`} />
            {piece.runAwayN === 0 ? null : <path className="pull-away" d={`M${x(piece.fromM)} ${y(piece.runAwayN)}H${x(piece.toM)}`} />}
            <path className="pull-grid" d={`M${x(piece.fromM)} ${floorPx}v5`} />
            {width < 50 ? null : <text x={left + width / 2} y={heightPx - 7} textAnchor="middle" className="pull-word">{words.local(text.pullShort, { joint: piece.joint })}</text>}
            {width < 96 ? null : <StartWord piece={piece} x={x} y={y} headPx={headPx} turned={turned} words={words} />}
          </g>
        )
      })}
      {scale.shown.map((name) => <path key={name} className="pull-limit" d={step(({ limits }) => limits[name])} />)}
      {labels.map(({ name, value, yPx }, i) => <text key={name} x={labelX} y={i > 0 && yPx - labels[i - 1]!.yPx < 16 ? yPx + 14 : Math.max(headPx - 6, yPx - 12)} className="pull-word pull-limit-word">{limitWords(name, value)}</text>)}
      {shown.some(({ runAwayN }) => runAwayN > 0) ? <AwayWord shown={shown} x={x} y={y} words={words} /> : null}
    </g>
  )
})
Still.displayName = 'Still'

/** What it takes to start, beside its stroke: ahead of it, or under the line where the next pull's stroke stands. */
const StartWord = ({ piece, x, y, headPx, turned, words }: { piece: PullPiece; x: (m: number) => number; y: (n: number) => number; headPx: number; turned: boolean; words: Words }): ReactNode => {
  const { start, fromM, toM } = piece
  const isLate = start.atM > (fromM + toM) / 2
  const away = isLate === turned ? 6 : -6
  return <text x={x(start.atM) + away} y={isLate ? y(start.fromN) + 15 : Math.max(headPx + 4, y(start.needN) + 4)} textAnchor={away > 0 ? 'start' : 'end'} className="pull-word">{`${words.local(text.toStart)} ${words.figure({ kind: 'force', value: start.needN })}`}</text>
}

const AwayWord = ({ shown, x, y, words }: { shown: readonly PullPiece[]; x: (m: number) => number; y: (n: number) => number; words: Words }): ReactNode => {
  const worst = shown.reduce((most, one) => (one.runAwayN > most.runAwayN ? one : most))
  return <text x={(x(worst.fromM) + x(worst.toM)) / 2} y={y(worst.runAwayN) - 5} textAnchor="middle" className="pull-word pull-away-word">{`${words.local(text.runAway)} ${words.figure({ kind: 'force', value: worst.runAwayN })}`}</text>
}

/** The curve in figures, for those who cannot see it. */
const PullTable = memo(({ pieces }: { pieces: readonly PullPiece[] }): ReactNode => {
  const words = useWords()
  const force = (value: number | null): string => words.figure({ kind: 'force', value })
  if (pieces.length === 0) return null
  return (
    <table className="visually-hidden">
      <caption>{words.local(text.table)}</caption>
      <thead><tr>{[text.colStage, text.moving, text.toStart, text.runAway, text.pipe, text.puller, text.rope].map((column) => <th key={column.en} scope="col">{words.local(column)}</th>)}</tr></thead>
      <tbody>
        {pieces.map(({ id, joint, moving, start, runAwayN, limits }) => (
          <tr key={id}><th scope="row">{words.local(text.pullShort, { joint })}</th><td>{force(Math.max(...moving.map(({ valueN }) => valueN)))}</td><td>{force(start.needN)}</td><td>{force(runAwayN)}</td><td>{force(limits.pipe)}</td><td>{force(limits.puller)}</td><td>{force(limits.rope)}</td></tr>
        ))}
      </tbody>
    </table>
  )
})
PullTable.displayName = 'PullTable'
