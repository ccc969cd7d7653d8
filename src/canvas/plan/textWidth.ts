import { FRACTION_SIZE_RATIO, FRACTION_SLASH, textRuns } from '../../drawing/fractionText.ts'
import { touchSizePx } from '../../drawing/paint.ts'
import { fontStack } from '../../drawing/theme.ts'

const widths = new Map<string, number>()

/** Width of lettering as the painter sets it, fractions included; kept, since the plan asks the same again and again. */
export const textWidthPx = (context: CanvasRenderingContext2D, text: string, sizePx: number, bold: boolean, isTouch: boolean): number => {
  const size = isTouch ? touchSizePx(sizePx) : sizePx
  const key = `${size}|${bold}|${text}`
  const known = widths.get(key)
  if (known !== undefined) return known
  const measure = (piece: string, weight: number, px: number): number => {
    context.font = `${weight} ${px}px ${fontStack}`
    return context.measureText(piece).width
  }
  const weight = bold ? 600 : 400
  const smallWeight = bold ? 600 : 500
  const width = textRuns(text).reduce((sum, run) => sum + (run.as === 'plain' ? measure(run.text, weight, size) : measure(run.above, smallWeight, size * FRACTION_SIZE_RATIO) + measure(FRACTION_SLASH, weight, size) + measure(run.below, smallWeight, size * FRACTION_SIZE_RATIO)), 0)
  if (widths.size > 4000) widths.clear()
  widths.set(key, width)
  return width
}

/** Widths measured before the face came are wrong. */
export const forgetWidths = (): void => widths.clear()
