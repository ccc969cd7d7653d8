/** A page of the crew sheet as an SVG picture, in points. */
import { svgParts } from '../../drawing/svg.ts'
import { themes } from '../../drawing/theme.ts'
import type { SheetPage } from './types.ts'

const n = (value: number): string => String(Math.round(value * 1000) / 1000)
const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** Only attributes and text, no styles and no scripts; what a person wrote is escaped text and nothing else. */
export const svgOfPage = (page: SheetPage, title: string): string => {
  const defs: string[] = []
  const body = page.groups.map((group, i) => {
    const parts = svgParts(group.list, { matrix: group.matrix, theme: themes.sun, idPrefix: `g${i}` })
    if (parts.defs !== '') defs.push(parts.defs)
    if (group.clipPt === null) return parts.body
    const { x0, y0, x1, y1 } = group.clipPt
    defs.push(`<clipPath id="clip${i}"><rect x="${n(x0)}" y="${n(y0)}" width="${n(x1 - x0)}" height="${n(y1 - y0)}"/></clipPath>`)
    return `<g clip-path="url(#clip${i})">${parts.body}</g>`
  })
  const [w, h] = [n(page.widthPt), n(page.heightPt)]
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" width="${w}pt" height="${h}pt" role="img"><title>${escaped(title)}</title><defs>${defs.join('')}</defs><rect width="${w}" height="${h}" fill="#FFFFFF"/>${body.join('')}</svg>`
}
