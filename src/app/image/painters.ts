import { arrivalsOf } from '../../canvas/section/arrivals.ts'
import { markParts, sectionMarks } from '../../canvas/section/marks.ts'
import { PlanPainter } from '../../canvas/plan/planPainter.ts'
import { flagLook, flagParts, flagSizePx } from '../../canvas/tape/flagDrawing.ts'
import { layoutFlags } from '../../canvas/tape/flagLayout.ts'
import { tapeFlags } from '../../canvas/tape/flags.ts'
import { tapeFrame } from '../../canvas/tape/tapeFrame.ts'
import { tapeWords } from '../../canvas/tape/words.ts'
import { sectionDrawing, sectionRange } from '../../derive/sectionDrawing.ts'
import { sectionRail } from '../../derive/sectionRail.ts'
import { paint, type BoxPx, type Paint2D } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import { tapeBody } from '../../drawing/tape.ts'
import { themes } from '../../drawing/theme.ts'
import { textIn } from '../../messages/localized.ts'
import { heightOf, imageBoxes, SCREEN_ENLARGEMENT, widthOf } from '../../sheet/page.ts'
import type { ImageContent } from '../../sheet/imagePage.ts'
import { fitPlan } from '../../sheet/planFit.ts'
import type { App } from '../../state/app.ts'
import { alongToPx, levelToPx, sectionFrame } from '../../state/frames.ts'
import { createViewStore } from '../../state/viewStore.ts'

const theme = themes.day
const sizeOf = (box: BoxPx): { widthPx: number; heightPx: number } => ({ widthPx: widthOf(box) / SCREEN_ENLARGEMENT, heightPx: heightOf(box) / SCREEN_ENLARGEMENT })
const pixels = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

/** The same layout seen through a view of the page's own: whole yard, along the tape, nothing chosen. */
const pageApp = (app: App): App => {
  const { site } = app.site.getState()
  const fit = fitPlan(site, imageBoxes.plan)
  const { phase, joint, turned, language, hiddenKinds } = app.view.getState()
  const view = createViewStore({
    phase, joint, turned, language, hiddenKinds, theme: 'day', orientation: 'alongTape', tapeVertical: false, form: 'desktop',
    pxPerM: fit.pxPerM / SCREEN_ENLARGEMENT, leftRunningM: fit.leftRunningM, midOffsetM: fit.midOffsetM,
    bandSizePx: { plan: sizeOf(imageBoxes.plan), section: sizeOf(imageBoxes.section) },
  })
  return { ...app, view }
}

/** Draws in px of the screen inside a box of the page. */
const inBox = (context: Paint2D, box: BoxPx, draw: (context: CanvasRenderingContext2D) => void): void => {
  const canvas = context as unknown as CanvasRenderingContext2D
  canvas.save()
  canvas.translate(box.x0, box.y0)
  canvas.scale(SCREEN_ENLARGEMENT, SCREEN_ENLARGEMENT)
  draw(canvas)
  canvas.restore()
}

/** Plan, tape and side view for the page, by the painters of the screen. `scale`: 1, 2 or 4. */
export const pagePainters = (screen: App, scale: number): Pick<ImageContent, 'paintPlan' | 'paintTape' | 'paintSection' | 'sideWords' | 'isTurned'> => {
  const app = pageApp(screen)
  const view = app.view.getState()
  const { site, profile } = app.site.getState()
  const { run } = app.results.getState()
  const reader = { system: site.layout.displayUnits, language: view.language }
  const tapeSize = sizeOf(imageBoxes.tape)
  const tape = tapeFrame(view, tapeSize.widthPx, tapeSize.heightPx, false)
  const { widthPx, heightPx } = sizeOf(imageBoxes.section)
  const range = sectionRange(site, profile, tape.fromM, tape.toM)
  const section = sectionFrame(view, range.lowestM, range.highestM, 16, 44)
  const alongPx = (runningM: number): number => alongToPx(view, runningM)
  const levelPx = (levelM: number): number => levelToPx(section, levelM)
  const times = section.exaggeration
  return {
    isTurned: view.turned,
    sideWords: view.language === 'es' ? `alturas dibujadas ${times} veces su tamaño` : `heights drawn ${times} times their size`,
    paintPlan: (context, box) => inBox(context, box, (canvas) => {
      canvas.fillStyle = theme.inks.paper
      canvas.fillRect(0, 0, view.bandSizePx.plan.widthPx, view.bandSizePx.plan.heightPx)
      const painter = new PlanPainter(app)
      painter.showsMarks = true
      painter.showsRanks = false
      painter.prepare(true)
      for (const layer of ['ground', 'items', 'notes'] as const) painter.paint(layer, canvas, scale * SCREEN_ENLARGEMENT, [])
    }),
    paintTape: (context, box) => inBox(context, box, (canvas) => {
      const look = flagLook(false, false)
      canvas.fillStyle = theme.inks.way
      canvas.fillRect(0, 0, tapeSize.widthPx, tapeSize.heightPx)
      const flags = tapeFlags(site, profile, run, reader, view.hiddenKinds)
      const places = layoutFlags(flags.map((flag) => ({ key: flag.key, alongPx: alongPx(flag.runningM), sizePx: flagSizePx(flag, look), rank: flag.kind === 'jaws' ? 2 : 3 })), { rows: 2, gapPx: 2, primary: 1, fanKey: null })
      const body = tapeBody({
        fromM: tape.fromM, toM: tape.toM, pxPerM: view.pxPerM, system: reader.system, thicknessPx: tape.thicknessPx, isUpright: false, isMirrored: tape.alongSign === -1, figurePx: 14,
        infeed: textIn(tapeWords.infeed, view.language), exit: textIn(tapeWords.exit, view.language),
      })
      const hung = flags.map((flag, i): Primitive => ({ t: 'mark', xM: flag.runningM, yM: tape.thicknessPx, parts: flagParts({ flag, place: places[i]!, alongPx: alongPx(flag.runningM), sizePx: flagSizePx(flag, look), isChosen: false, isStale: false, isMirrored: tape.isMirrored }, look) }))
      paint(canvas, [...body, ...hung], { matrix: tape.matrix, theme })
    }),
    paintSection: (context, box) => inBox(context, box, (canvas) => {
      canvas.fillStyle = theme.inks.paper
      canvas.fillRect(0, 0, widthPx, heightPx)
      const arrivals = arrivalsOf(run, site)
      const sign = view.turned ? -1 : 1
      const matrix = { a: sign * view.pxPerM, b: 0, c: 0, d: -section.pxPerLevelM, e: alongPx(0), f: levelPx(0) }
      paint(canvas, sectionDrawing(site, profile, { pxPerM: view.pxPerM, pxPerLevelM: section.pxPerLevelM, fromM: tape.fromM, toM: tape.toM, reader, chosenIds: [], hiddenKinds: view.hiddenKinds, markedM: [] }), { matrix, theme })
      paint(canvas, markParts(sectionMarks(run, site, profile, { alongPx, levelPx, widthPx, topPx: 8 }), false), { matrix: { ...pixels, d: -1 }, theme })
      const rail = sectionRail(site, profile, { reader, fromM: tape.fromM, toM: tape.toM, pxPerM: view.pxPerM, chosenIds: [], leftM: tape.fromM, arrivals, figurePx: 12, isNarrow: false })
      paint(canvas, rail, { matrix: { a: matrix.a, b: 0, c: 0, d: -1, e: matrix.e, f: heightPx }, theme })
    }),
  }
}
