/** What an independent reader (pdf.js) finds in a PDF: texts with their places, and paths in points of the page, y DOWN. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadText {
  text: string
  x: number
  y: number
  sizePt: number
}
export interface ReadPage {
  widthPt: number
  heightPt: number
  texts: readonly ReadText[]
  /** Subpaths; curves by their end points. */
  paths: readonly (readonly (readonly [number, number])[])[]
}

type Six = [number, number, number, number, number, number]
const times = (m: Six, n: Six): Six => [m[0] * n[0] + m[2] * n[1], m[1] * n[0] + m[3] * n[1], m[0] * n[2] + m[2] * n[3], m[1] * n[2] + m[3] * n[3], m[0] * n[4] + m[2] * n[5] + m[4], m[1] * n[4] + m[3] * n[5] + m[5]]

const pathsOf = (list: { fnArray: readonly number[]; argsArray: readonly unknown[] }, heightPt: number): ReadPage['paths'] => {
  const paths: [number, number][][] = []
  const states: Six[] = []
  let m: Six = [1, 0, 0, 1, 0, 0]
  list.fnArray.forEach((fn, i) => {
    if (fn === OPS.save) states.push(m)
    else if (fn === OPS.restore) m = states.pop() ?? m
    else if (fn === OPS.transform) m = times(m, list.argsArray[i] as Six)
    else if (fn === OPS.constructPath) {
      const [ops, values] = list.argsArray[i] as [readonly number[], readonly number[]]
      let at = 0
      const point = (x: number, y: number): [number, number] => [m[0] * x + m[2] * y + m[4], heightPt - (m[1] * x + m[3] * y + m[5])]
      for (const op of ops) {
        if (op === OPS.moveTo) paths.push([point(values[at++]!, values[at++]!)])
        else if (op === OPS.lineTo) paths.at(-1)!.push(point(values[at++]!, values[at++]!))
        else if (op === OPS.curveTo) {
          paths.at(-1)!.push(point(values[at + 4]!, values[at + 5]!))
          at += 6
        } else if (op === OPS.rectangle) {
          const [x, y, w, h] = [values[at++]!, values[at++]!, values[at++]!, values[at++]!]
          paths.push([point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)])
        }
      }
    }
  })
  return paths
}

export const readPdf = async (bytes: Uint8Array): Promise<readonly ReadPage[]> => {
  const pdf = await getDocument({ data: bytes.slice(), useSystemFonts: false, isEvalSupported: false, verbosity: 0 }).promise
  const pages: ReadPage[] = []
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n)
    const [x0, y0, x1, y1] = page.view as [number, number, number, number]
    const content = await page.getTextContent()
    const texts = content.items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [{ text: item.str, x: item.transform[4] as number, y: y1 - (item.transform[5] as number), sizePt: Math.hypot(item.transform[2] as number, item.transform[3] as number) }] : []))
    pages.push({ widthPt: x1 - x0, heightPt: y1 - y0, texts, paths: pathsOf(await page.getOperatorList(), y1) })
  }
  await pdf.destroy()
  return pages
}
