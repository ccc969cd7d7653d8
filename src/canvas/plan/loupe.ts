import type { ToolOverlay } from '../tools/types.ts'
import { fontStack } from '../../drawing/theme.ts'
import type { Picture } from './picture.ts'

const RADIUS_PX = 56
const ZOOM = 1.6
const AWAY_PX = 104

/**
 * What a finger hides, drawn enlarged above it with the running distance in large figures. `layers` are the canvases
 * drawn so far, lowest first; `ratio` their device px per px.
 */
export const paintLoupe = (context: CanvasRenderingContext2D, overlay: ToolOverlay, picture: Picture, layers: readonly HTMLCanvasElement[], ratio: number): void => {
  const { pointer, figures } = overlay
  if (pointer === null || !pointer.isTouch) return
  const { inks } = picture.theme
  const isHigh = pointer.yPx > AWAY_PX + RADIUS_PX + 8
  const x = Math.min(Math.max(RADIUS_PX + 6, pointer.xPx), picture.band.widthPx - RADIUS_PX - 6)
  // Where there is no room above, beside the finger, on the side with more of it.
  const y = isHigh ? pointer.yPx - AWAY_PX : Math.max(RADIUS_PX + 6, pointer.yPx)
  const middleX = isHigh ? x : pointer.xPx > picture.band.widthPx / 2 ? pointer.xPx - AWAY_PX : pointer.xPx + AWAY_PX
  context.save()
  context.beginPath()
  context.arc(middleX, y, RADIUS_PX, 0, 2 * Math.PI)
  context.fillStyle = inks.paper
  context.fill()
  context.clip()
  const halfPx = RADIUS_PX / ZOOM
  for (const canvas of layers) context.drawImage(canvas, (pointer.xPx - halfPx) * ratio, (pointer.yPx - halfPx) * ratio, 2 * halfPx * ratio, 2 * halfPx * ratio, middleX - RADIUS_PX, y - RADIUS_PX, 2 * RADIUS_PX, 2 * RADIUS_PX)
  context.restore()
  context.beginPath()
  context.arc(middleX, y, RADIUS_PX, 0, 2 * Math.PI)
  context.strokeStyle = inks.chosen
  context.lineWidth = 2.4
  context.stroke()
  if (figures === null) return
  context.font = `600 24px ${fontStack}`
  context.textAlign = 'center'
  context.textBaseline = 'alphabetic'
  const textY = y > RADIUS_PX + 40 ? y - RADIUS_PX - 10 : y + RADIUS_PX + 28
  const textX = Math.min(Math.max(context.measureText(figures).width / 2 + 6, middleX), picture.band.widthPx - context.measureText(figures).width / 2 - 6)
  context.lineJoin = 'round'
  context.strokeStyle = inks.lot
  context.lineWidth = 5
  context.strokeText(figures, textX, textY)
  context.fillStyle = inks.ink
  context.fillText(figures, textX, textY)
}
