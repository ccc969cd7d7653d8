/** Makes what was asked for of the plan and hands it to the person: crew sheet, table or plan for other programs. */
import { limitsOf } from '../../checks/limits.ts'
import { runThroughSteps } from '../../derive/stages/runThrough.ts'
import { stagesOf } from '../../derive/stages/stagesOf.ts'
import type { RunThrough } from '../../derive/stages/types.ts'
import type { SiteModel } from '../../derive/types.ts'
import { layoutOf, type YardDocument } from '../../scene/document.ts'
import { linkContent, MOST_LINK_CHARS, writeFragment } from '../../scene/link/layoutLink.ts'
import { crewSheet } from '../../sheet/crew/crewSheet.ts'
import { svgOfPage } from '../../sheet/crew/svgPages.ts'
import type { CrewSheetContent, SheetPage } from '../../sheet/crew/types.ts'
import { qrModules } from '../../sheet/qr.ts'
import type { App } from '../../state/app.ts'
import type { SheetHooks, SheetWish } from '../../ui/services.ts'
import { planOf } from '../image/plan.ts'

/** The page stays alive meanwhile: work in slices of so many ms. */
const SLICE_MS = 12
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

const rehearsed = async (site: SiteModel, { onProgress, signal }: SheetHooks): Promise<RunThrough> => {
  const steps = runThroughSteps(site, { limits: limitsOf(site.document) })
  const of = stagesOf(site).length
  let since = performance.now()
  for (let done = 0; ; done++) {
    const step = steps.next()
    if (step.done === true) return step.value
    if (performance.now() - since < SLICE_MS) continue
    onProgress({ step: 'stages', done, of })
    await breath()
    signal.throwIfAborted()
    since = performance.now()
  }
}

/** Modules of the code that opens the layout; undefined where no code holds it. */
const codeOf = (document: YardDocument): CrewSheetContent['code'] => {
  const fragment = writeFragment(linkContent(document))
  const code = fragment.length > MOST_LINK_CHARS ? null : qrModules(`${location.origin}${location.pathname}#${fragment}`)
  if (code === null) return undefined
  const at = Array.from({ length: code.size }, (_, i) => i)
  return at.map((row) => at.map((column) => code.isDark(row, column)))
}

const zipped = async (files: readonly { name: string; bytes: Uint8Array }[]): Promise<Uint8Array<ArrayBuffer>> => {
  const { zipSync } = await import('fflate')
  // Pictures are packed already; SVG gains from it.
  return new Uint8Array(zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, [bytes, { level: name.endsWith('.svg') ? 6 : 0 }] as const]))))
}

const inPages = async (pages: readonly SheetPage[], ending: string, type: string, make: (page: SheetPage) => Promise<Uint8Array<ArrayBuffer>>, { onProgress, signal }: SheetHooks): Promise<{ blob: Blob; ending: string }> => {
  const files: { name: string; bytes: Uint8Array<ArrayBuffer> }[] = []
  for (const [i, page] of pages.entries()) {
    files.push({ name: `page-${String(i + 1).padStart(2, '0')}${ending}`, bytes: await make(page) })
    onProgress({ step: 'pages', done: i + 1, of: pages.length })
    await breath()
    signal.throwIfAborted()
  }
  return files.length === 1 ? { blob: new Blob([files[0]!.bytes], { type }), ending } : { blob: new Blob([await zipped(files)], { type: 'application/zip' }), ending: `${ending}.zip` }
}

/**
 * The file for a wish, made of the plan as checked, whatever case is on the screen.
 *
 * Output: bytes and the end of the file's name. Null: the device cannot draw a picture of that size.
 * Fails: AbortError where the person cancels; Error where the face cannot be read.
 */
export async function sheetFile(app: App, wish: SheetWish, hooks: SheetHooks): Promise<{ blob: Blob; ending: string } | null> {
  hooks.onProgress({ step: 'checks', done: 0, of: 1 })
  const { site, run, isSettled } = await planOf(app)
  hooks.signal.throwIfAborted()
  const { as, paper, orientation, language, system } = wish
  if (as === 'csv') return { blob: new Blob([(await import('../../write/csv.ts')).csvOf({ site, run, language, system })], { type: 'text/csv;charset=utf-8' }), ending: '.csv' }
  if (as === 'dxf') return { blob: new Blob([(await import('../../write/dxf.ts')).dxfOf(site)], { type: 'image/vnd.dxf' }), ending: '.dxf' }
  if (as === 'geojson') return { blob: new Blob([(await import('../../write/geoJson.ts')).geoJsonOf(site)], { type: 'application/geo+json' }), ending: '.geojson' }
  const now = new Date()
  const code = codeOf(app.documents.getState().document)
  const { pages } = crewSheet({
    site, run, isSettled, rehearsal: await rehearsed(site, hooks), language, system, paper, orientation,
    whenIso: now.toISOString(), when: new Intl.DateTimeFormat(language === 'es' ? 'es' : 'en-US', { dateStyle: 'medium', timeStyle: 'short' }).format(now),
    ...(code === undefined ? {} : { code }),
  })
  const title = `${layoutOf(site.document).title} ${layoutOf(site.document).revision}`.trim()
  if (as === 'svg') return inPages(pages, '.svg', 'image/svg+xml', (page) => Promise.resolve(new Uint8Array(new TextEncoder().encode(svgOfPage(page, title)))), hooks)
  if (as === 'png') {
    const { pagePicture } = await import('./pagePictures.ts')
    let isTooLarge = false
    const file = await inPages(pages, '.png', 'image/png', async (page) => {
      const blob = isTooLarge ? null : await pagePicture(page)
      isTooLarge ||= blob === null
      return new Uint8Array(blob === null ? new ArrayBuffer(0) : await blob.arrayBuffer())
    }, hooks)
    return isTooLarge ? null : file
  }
  const [{ pdfOf }, { loadFace }] = await Promise.all([import('../../write/pdf.ts'), import('./faceUrls.ts')])
  const bytes = await pdfOf(pages, {
    title, language: language === 'es' ? 'es' : 'en-US', whenIso: now.toISOString(), loadFace, signal: hooks.signal,
    onPage: async (done, of) => {
      hooks.onProgress({ step: 'pages', done, of })
      await breath()
    },
  })
  return { blob: new Blob([bytes], { type: 'application/pdf' }), ending: '.pdf' }
}
