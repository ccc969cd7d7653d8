import { useEffect, useLayoutEffect, useRef, type ReactNode } from 'react'
import { onNextFrame } from '../frameLoop.ts'
import { probeBand } from '../plan/frameProbe.ts'
import { StripPainter, type BandPicture, type StripCanvas } from './stripPainter.ts'

/** More than two device pixels a pixel cost time and cannot be seen. */
const MOST_RATIO = 2

export interface BandCanvasProps {
  name: 'tape' | 'section'
  widthPx: number
  heightPx: number
  /** What is shown. Called once a frame, at most. */
  picture: () => BandPicture
  /** A hand is dragging: only what has changed is painted. At rest all of it is, to the last hair. */
  isDragging: boolean
  /** Goes up when lettering has to be set again. */
  faceLoads: number
}

/** The one canvas of a band along the tape, painted by drawing lists in the frame all bands share. Takes no events. */
export const BandCanvas = ({ name, widthPx, heightPx, picture, isDragging, faceLoads }: BandCanvasProps): ReactNode => {
  const element = useRef<HTMLCanvasElement>(null)
  const painter = useRef<StripPainter | null>(null)
  const latest = useRef({ picture, isDragging, ratio: 1 })
  const paintNow = useRef<(() => void) | null>(null)
  const ratio = Math.min(MOST_RATIO, typeof devicePixelRatio === 'number' ? devicePixelRatio || 1 : 1)

  // Another size or another face: the canvas is empty, or what is on it will not do.
  useLayoutEffect(() => {
    painter.current = new StripPainter()
  }, [widthPx, heightPx, ratio, faceLoads])

  useLayoutEffect(() => {
    latest.current = { picture, isDragging, ratio }
    paintNow.current ??= (): void => {
      const context = element.current?.getContext('2d') ?? null
      if (context === null || painter.current === null) return
      const startMs = performance.now()
      const shown = latest.current
      context.setTransform(shown.ratio, 0, 0, shown.ratio, 0, 0)
      const { how, primitives } = painter.current.paint(context as StripCanvas, shown.picture(), !shown.isDragging)
      probeBand(name, performance.now() - startMs, how, primitives)
    }
    onNextFrame(paintNow.current)
  }, [name, picture, isDragging, widthPx, heightPx, ratio, faceLoads])

  useEffect(() => () => {
    if (paintNow.current !== null) onNextFrame(paintNow.current, false)
  }, [])

  return <canvas ref={element} width={Math.round(widthPx * ratio)} height={Math.round(heightPx * ratio)} style={{ display: 'block', width: widthPx, height: heightPx, pointerEvents: 'none' }} aria-hidden />
}
