import { guessedWidthPx } from '../../src/drawing/fractionText.ts'
import type { Paint2D } from '../../src/drawing/paint.ts'
import type { Primitive } from '../../src/drawing/primitives.ts'
import { createLettering } from '../../src/sheet/lettering.ts'
import { imageRegions, type ImageContent } from '../../src/sheet/imagePage.ts'
import type { Region } from '../../src/sheet/region.ts'
import { createRecorder, type Call } from '../helpers/recorder.ts'

export const sizeOf = (font: string): number => Number(/([\d.]+)px/.exec(font)?.[1])

/** A recorder that measures with the mean widths of a narrow face. */
export const createPage = (): Paint2D & { calls: Call[] } => {
  const page = createRecorder()
  page.measureText = (text) => ({ width: guessedWidthPx(text, sizeOf(page.font)) })
  return page
}

export const lettering = (): ReturnType<typeof createLettering> => createLettering(createPage())
export const regionsOf = (content: ImageContent): readonly Region[] => imageRegions(content, lettering())
export const regionOf = (content: ImageContent, name: Region['name']): Region => regionsOf(content).find((region) => region.name === name)!

export interface DrawnText {
  text: string
  x0: number
  y0: number
  x1: number
  y1: number
}

type TextPrimitive = Extract<Primitive, { t: 'text' }>

/** Words of a list outside marks, with the room they take: ascent 0.78 em, descent 0.22 em, none under figures. */
export const textsOf = (list: readonly Primitive[]): DrawnText[] =>
  list.filter((primitive): primitive is TextPrimitive => primitive.t === 'text').map(({ text, xM, yM, sizePx, align }) => {
    const widthPx = guessedWidthPx(text, sizePx)
    const x0 = xM - (align === 'center' ? widthPx / 2 : align === 'right' ? widthPx : 0)
    return { text, x0, x1: x0 + widthPx, y0: yM - 0.78 * sizePx, y1: yM + (/^[\d\u2044]+$/u.test(text) ? 0 : 0.22 * sizePx) }
  })

/** All words of a region in reading order of the list, joined. */
export const wordsOf = (region: Region): string => textsOf(region.list).map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')
