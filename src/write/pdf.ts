/** The crew sheet as a PDF: vectors, text that can be searched, the face cut down to the letters used. */
import PDFDocument from 'pdfkit'
import { paint } from '../drawing/paint.ts'
import { themes } from '../drawing/theme.ts'
import { faceRuns, type FaceWeight } from '../sheet/crew/face.ts'
import type { SheetPage } from '../sheet/crew/types.ts'
import type { Primitive } from '../drawing/primitives.ts'
import { faceName, PdfContext } from './pdfContext.ts'
import { sfntOf } from './woff.ts'

/** Bytes of a WOFF 1 file of the face; called only for the parts that the pages need. */
export type FaceLoader = (weight: FaceWeight, part: 'latin' | 'latin-ext') => Promise<Uint8Array>

export interface PdfOptions {
  title: string
  /** 'en-US', 'es'. */
  language: string
  whenIso: string
  loadFace: FaceLoader
  /** After each page; let the screen breathe in it. */
  onPage?: (page: number, pages: number) => Promise<void> | void
  signal?: AbortSignal
}

const textsOf = (list: readonly Primitive[]): string[] => list.flatMap((one) => (one.t === 'text' ? [one.text] : one.t === 'mark' ? textsOf(one.parts) : []))

/**
 * Pages as one PDF.
 *
 * Output: bytes of the file; the same pages, title and time give the same bytes.
 * Fails: what `loadFace` fails with; DOMException AbortError where the signal says so between two pages.
 */
export async function pdfOf(pages: readonly SheetPage[], { title, language, whenIso, loadFace, onPage, signal }: PdfOptions): Promise<Uint8Array<ArrayBuffer>> {
  const needsExt = pages.some(({ groups }) => groups.some(({ list }) => textsOf(list).some((text) => faceRuns(text).some(({ part }) => part === 'latin-ext'))))
  const parts = needsExt ? (['latin', 'latin-ext'] as const) : (['latin'] as const)
  const faces = await Promise.all(parts.flatMap((part) => ([400, 600] as const).map(async (weight) => ({ name: faceName(part, weight), bytes: sfntOf(await loadFace(weight, part)) }))))
  const when = new Date(whenIso)
  const pdf = new PDFDocument({
    autoFirstPage: false, margin: 0, pdfVersion: '1.7', lang: language, displayTitle: true,
    // A face from the start: in the browser the library has no other.
    font: faces[0]!.bytes as unknown as string,
    info: { Title: title, Creator: 'Stringyard', Producer: 'Stringyard', CreationDate: when, ModDate: when },
  })
  const chunks: Uint8Array[] = []
  const ended = new Promise<void>((resolve, reject) => {
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    pdf.on('end', resolve)
    pdf.on('error', reject)
  })
  for (const { name, bytes } of faces) pdf.registerFont(name, bytes as unknown as ArrayBuffer)
  for (const [i, page] of pages.entries()) {
    signal?.throwIfAborted()
    pdf.addPage({ size: [page.widthPt, page.heightPt], margin: 0 })
    const context = new PdfContext(pdf)
    for (const { matrix, clipPt, list } of page.groups) {
      if (list.length === 0) continue
      context.save()
      if (clipPt !== null) {
        context.beginPath()
        context.moveTo(clipPt.x0, clipPt.y0)
        for (const [x, y] of [[clipPt.x1, clipPt.y0], [clipPt.x1, clipPt.y1], [clipPt.x0, clipPt.y1]] as const) context.lineTo(x, y)
        context.closePath()
        context.clip()
      }
      paint(context, list, { matrix, theme: themes.sun, ...(clipPt === null ? {} : { visiblePx: clipPt }) })
      context.restore()
    }
    await onPage?.(i + 1, pages.length)
  }
  pdf.end()
  await ended
  const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const chunk of chunks) {
    bytes.set(chunk, at)
    at += chunk.length
  }
  return bytes
}
