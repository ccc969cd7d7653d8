/** Pages of the crew sheet as PNG pictures. */
import { paint, type Paint2D } from '../../drawing/paint.ts'
import { themes } from '../../drawing/theme.ts'
import type { SheetPage } from '../../sheet/crew/types.ts'

/** Dots an inch of a printed picture. */
const DOTS_PER_IN = 200
const SCALE = DOTS_PER_IN / 72

/** Null where the device cannot make a canvas of that size. */
export const pagePicture = async (page: SheetPage): Promise<Blob | null> => {
  await document.fonts.ready
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(page.widthPt * SCALE)
  canvas.height = Math.round(page.heightPt * SCALE)
  const context = canvas.getContext('2d')
  if (context === null) return null
  context.scale(SCALE, SCALE)
  context.fillStyle = '#FFFFFF'
  context.fillRect(0, 0, page.widthPt, page.heightPt)
  for (const { matrix, clipPt, list } of page.groups) {
    context.save()
    if (clipPt !== null) {
      context.beginPath()
      context.rect(clipPt.x0, clipPt.y0, clipPt.x1 - clipPt.x0, clipPt.y1 - clipPt.y0)
      context.clip()
    }
    paint(context as Paint2D, list, { matrix, theme: themes.sun, ...(clipPt === null ? {} : { visiblePx: clipPt }) })
    context.restore()
  }
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob !== null && blob.size > 2000 ? blob : null), 'image/png'))
}
