import { memo, useMemo, useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { alongToPx, pxToAlong, type FrameView } from '../../state/frames.ts'
import { arrivalNoseM } from '../../state/runThroughView.ts'
import type { JobStage } from '../../derive/stages/types.ts'
import { useUi, useView, useWords } from '../context.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { levelName, shortStageName, stageName } from './stageNames.ts'
import { stripPieces, worstStage, type StripPiece } from './stripJoints.ts'
import type { Run } from './useRun.ts'

/** What one stage needs on the strip, px: a mouse hits less than a finger. */
const TICK_PX = { mouse: 26, touch: 48 }

const useFrame = (): FrameView => {
  const view = useView((state) => state)
  return view
}

/** Second row of the tape's lower edge: the stages of each joint under the way of its pull, by shape and word of their worst finding. */
export const TapeStrip = ({ run, touch }: { run: Run; touch: boolean }): ReactNode => {
  const words = useWords()
  const frame = useFrame()
  const leastPx = touch ? TICK_PX.touch : TICK_PX.mouse
  const { stages, byStage, stage, isOld, go } = run
  // By the scale in steps: a pinch does not cut the strip anew with every frame.
  const leastM = leastPx / frame.pxPerM
  const pieces = useMemo(() => stripPieces(stages, leastM), [stages, leastM])
  const { widthPx } = frame.bandSizePx.plan
  return (
    <div className="tape-strip" role="group" aria-label={words.local(text.strip)} data-stale={isOld}>
      {pieces.map((piece) => {
        const [one, other] = [alongToPx(frame, piece.fromM), alongToPx(frame, piece.toM)]
        const [leftPx, rightPx] = [Math.min(one, other), Math.max(one, other)]
        if (rightPx < -leastPx || leftPx > widthPx + leastPx) return null
        return <Piece key={piece.key} piece={piece} leftPx={Math.round(leftPx)} widthPx={Math.round(rightPx - leftPx)} leastPx={leastPx} byStage={byStage} shownId={piece.stages.some(({ id }) => id === stage.id) ? stage.id : null} isTurned={frame.turned} go={go} />
      })}
    </div>
  )
}

interface PieceProps {
  piece: StripPiece
  leftPx: number
  widthPx: number
  leastPx: number
  byStage: Run['byStage']
  shownId: string | null
  isTurned: boolean
  go: Run['go']
}

const Piece = memo(({ piece, leftPx, widthPx, leastPx, byStage, shownId, isTurned, go }: PieceProps): ReactNode => {
  const isWide = widthPx >= leastPx * piece.stages.length
  const groups: readonly (readonly JobStage[])[] = isWide ? piece.stages.map((stage) => [stage]) : [piece.stages]
  return (
    <div className="strip-piece" style={{ left: leftPx, width: widthPx, flexDirection: isTurned ? 'row-reverse' : 'row' }}>
      {groups.map((stages) => <Tick key={stages[0]!.id} stages={stages} byStage={byStage} isShown={stages.some(({ id }) => id === shownId)} go={go} />)}
    </div>
  )
})
Piece.displayName = 'Piece'

const Tick = ({ stages, byStage, isShown, go }: Pick<PieceProps, 'byStage' | 'go'> & { stages: readonly JobStage[]; isShown: boolean }): ReactNode => {
  const words = useWords()
  const { stage, level } = worstStage(stages, byStage)
  const [first, last] = [stages[0]!, stages.at(-1)!]
  const from = shortStageName(first, words)
  const name = words.local(text.cell, { stage: first === last ? from : `${from} – ${shortStageName(last, words)}`, level: levelName(level, words) })
  return (
    <button type="button" tabIndex={-1} className="strip-tick" aria-label={name} title={name} aria-current={isShown ? 'step' : undefined} onClick={() => go(stage.index)}>
      {level === null ? <span className="stage-dot" /> : <LevelMark level={level} sizePx={15} />}
    </button>
  )
}

/** A nose nearer to an arrival than this, px, stops on it. */
const SNAP_PX = 5

/** The string's nose as a mark on the tape: dragged along it, or moved by the arrow keys while it has the focus. */
export const NoseMark = ({ run, onTouch }: { run: Run; onTouch: () => void }): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const frame = useFrame()
  const { noseM, stage, stages, results, goNose } = run
  const grip = useRef<{ pointerId: number; awayPx: number } | null>(null)
  const track = useRef<HTMLDivElement>(null)
  if (noseM === null) return null
  const pulls = stages.filter((one) => one.phase === 'pull' && one.noseM !== null)
  const [leastM, mostM] = [pulls[0]?.noseM?.from ?? noseM, pulls.at(-1)?.noseM?.to ?? noseM]
  const joints = stages.reduce((most, { joint }) => Math.max(most, joint ?? 0), 0)
  const isUpright = frame.tapeVertical
  const atPx = Math.round(alongToPx(frame, noseM))
  const place = (event: PointerEvent): number => {
    const box = track.current!.getBoundingClientRect()
    return isUpright ? event.clientY - box.top : event.clientX - box.left
  }
  const drag = (px: number): void => {
    const wishedM = pxToAlong(app.view.getState(), px)
    const reachM = SNAP_PX / app.view.getState().pxPerM
    const arrival = results.stages.flatMap((one) => one?.arrivals ?? []).map(arrivalNoseM).find((at) => Math.abs(at - wishedM) < reachM)
    goNose(arrival ?? wishedM, true)
  }
  const handlers = pulls.length === 0 ? {} : {
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      if (!event.isPrimary || event.button !== 0) return
      event.stopPropagation()
      onTouch()
      event.currentTarget.setPointerCapture(event.pointerId)
      grip.current = { pointerId: event.pointerId, awayPx: place(event) - atPx }
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      if (grip.current?.pointerId === event.pointerId) drag(place(event) - grip.current.awayPx)
    },
    onPointerUp: () => { grip.current = null },
    onPointerCancel: () => { grip.current = null },
    onLostPointerCapture: () => { grip.current = null },
    onKeyDown: (event: KeyboardEvent<HTMLDivElement>) => {
      const stepM = words.systemOf('length') === 'metric' ? (event.shiftKey ? 1 : 0.1) : 0.3048 * (event.shiftKey ? 10 : 1)
      const ahead = isUpright ? (frame.turned ? 'ArrowDown' : 'ArrowUp') : frame.turned ? 'ArrowLeft' : 'ArrowRight'
      const back = isUpright ? (frame.turned ? 'ArrowUp' : 'ArrowDown') : frame.turned ? 'ArrowRight' : 'ArrowLeft'
      const to = { [ahead]: noseM + stepM, [back]: noseM - stepM, Home: leastM, End: mostM }[event.key]
      if (to === undefined) return
      event.preventDefault()
      event.stopPropagation()
      onTouch()
      goNose(to, true)
    },
  }
  const isTurnedRound = frame.turned
  return (
    <div className={isUpright ? 'nose-track nose-track-upright' : 'nose-track'} ref={track}>
      <div
        className="nose-mark" data-turned={isTurnedRound} role="slider" tabIndex={0} aria-label={words.local(text.nose)} aria-orientation={isUpright ? 'vertical' : 'horizontal'} aria-disabled={pulls.length === 0}
        aria-valuemin={Math.round(leastM * 100) / 100} aria-valuemax={Math.round(mostM * 100) / 100} aria-valuenow={Math.round(noseM * 100) / 100}
        aria-valuetext={words.local(text.noseAt, { nose: { runningM: noseM }, stage: stageName(stage, joints, words) })}
        style={isUpright ? { top: atPx } : { left: atPx }} {...handlers}
      >
        <svg width="44" height="36" viewBox="0 0 44 36" aria-hidden="true" style={{ transform: isUpright ? `rotate(${isTurnedRound ? 90 : -90}deg)` : isTurnedRound ? 'scaleX(-1)' : undefined }}>
          <path d="M2 1H24L35 18L24 35H2Z" className="nose-body" />
          <path d="M9 11V25M14.5 11V25M20 11V25" className="nose-grip" />
        </svg>
      </div>
    </div>
  )
}
