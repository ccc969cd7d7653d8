/** Browser side of imagePreview.ts: draws sample pages with simple stand-in painters of plan, tape and side view. */
import { runChecks } from '../../src/checks/runner.ts'
import { sectionDrawing, sectionRange } from '../../src/derive/sectionDrawing.ts'
import { paint, type BoxPx, type Paint2D } from '../../src/drawing/paint.ts'
import { itemMatrix, type Matrix } from '../../src/drawing/matrix.ts'
import type { Primitive } from '../../src/drawing/primitives.ts'
import { tapeBody } from '../../src/drawing/tape.ts'
import { themes } from '../../src/drawing/theme.ts'
import { kindOf } from '../../src/scene/kinds/index.ts'
import { zonePens } from '../../src/scene/symbols/zone.ts'
import { drawImagePage, type ImageContent } from '../../src/sheet/imagePage.ts'
import { imageBoxes, SCREEN_ENLARGEMENT } from '../../src/sheet/page.ts'
import { fitPlan } from '../../src/sheet/planFit.ts'
import { contentOf, ft, lotYard } from '../sheet/samples.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from './documents.ts'

const theme = themes.day

/** Draws in px of the screen inside a box of the page, enlarged as the app does it. */
const onScreenScale = (context: Paint2D, box: BoxPx, draw: (size: { widthPx: number; heightPx: number }) => void): void => {
  const canvas = context as unknown as CanvasRenderingContext2D
  canvas.save()
  canvas.translate(box.x0, box.y0)
  canvas.scale(SCREEN_ENLARGEMENT, SCREEN_ENLARGEMENT)
  draw({ widthPx: (box.x1 - box.x0) / SCREEN_ENLARGEMENT, heightPx: (box.y1 - box.y0) / SCREEN_ENLARGEMENT })
  canvas.restore()
}

const painters = (content: ImageContent): Pick<ImageContent, 'paintPlan' | 'paintTape' | 'paintSection' | 'sideWords'> => {
  const { site, profile, zones, language, system } = content
  const fit = fitPlan(site, imageBoxes.plan)
  const pxPerM = fit.pxPerM / SCREEN_ENLARGEMENT
  const reader = { system, language }
  const symbol = { pipeOuterDiameterM: site.pipe.odM, stickLengthM: site.job.stickLengthM, pxPerM, reader }
  const widthM = (imageBoxes.plan.x1 - imageBoxes.plan.x0) / fit.pxPerM
  const [fromM, toM] = [fit.leftRunningM, fit.leftRunningM + widthM]
  const range = sectionRange(site, profile, fromM, toM)
  const factor = [5, 4, 3, 2, 1].find((one) => one * pxPerM * (range.highestM - range.lowestM) < 90) ?? 1
  return {
    sideWords: `heights drawn ${factor} times their size`,
    paintPlan: (context, box) => onScreenScale(context, box, ({ heightPx }) => {
      const { datum, headingRad } = site.setUp ?? { datum: { xM: 0, yM: 0 }, headingRad: 0 }
      const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
      const [a, b, c, d] = [pxPerM * cos, pxPerM * sin, pxPerM * sin, -pxPerM * cos]
      const matrix: Matrix = { a, b, c, d, e: -fit.leftRunningM * pxPerM - a * datum.xM - c * datum.yM, f: heightPx / 2 - fit.midOffsetM * pxPerM - b * datum.xM - d * datum.yM }
      paint(context, [{ t: 'rect', xM: box.x0 - 1e4, yM: box.y0 - 1e4, widthM: 3e4, heightM: 3e4, fill: 'paper' }], { matrix, theme })
      const items = [...site.placed.values()].filter(({ kind }) => kind !== 'zone')
      const symbolOf = (id: (typeof items)[number]): void => paint(context, kindOf(id.kind)?.planSymbol(id.record, symbol) ?? [], { matrix: 'place' in id.record ? itemMatrix(matrix, id.xM, id.yM, id.headingRad) : matrix, theme })
      items.filter(({ record }) => !('place' in record)).forEach(symbolOf)
      for (const zone of zones) for (const ring of zone.rings) paint(context, [{ t: 'path', points: ring.flatMap(({ xM, yM }) => [xM, yM]), closed: true, ...zonePens[zone.zoneClass] }], { matrix, theme })
      items.filter(({ record }) => 'place' in record).forEach(symbolOf)
      const pipes: Primitive[] = profile.bodies.map(({ startM, endM }) => ({ t: 'pipe', outerDiameterM: site.pipe.odM ?? 0.3, points: Array.from({ length: 40 }, (_, i) => site.atRunning(startM + ((endM - startM) * i) / 39)).flatMap(({ xM, yM }) => [xM, yM]) }))
      paint(context, pipes, { matrix, theme })
    }),
    paintTape: (context, box) => onScreenScale(context, box, ({ heightPx }) => {
      const matrix: Matrix = { a: pxPerM, b: 0, c: 0, d: -1, e: -fit.leftRunningM * pxPerM, f: heightPx }
      paint(context, [{ t: 'rect', xM: fromM, yM: 0, widthM: toM - fromM, heightM: heightPx, fill: 'way' }, ...tapeBody({ fromM, toM, pxPerM, system, thicknessPx: 29, isUpright: false, isMirrored: false, figurePx: 14, infeed: language === 'es' ? 'entrada' : 'infeed', exit: language === 'es' ? 'salida' : 'exit' })], { matrix, theme })
      let last = -Infinity
      let row = 0
      const flags = site.supports.map(({ runningM, label }): Primitive => {
        row = (runningM - last) * pxPerM < 40 && row === 0 ? 1 : 0
        last = runningM
        const bottom = 7 + row * 32
        return { t: 'mark', xM: runningM, yM: 29, parts: [
          { t: 'path', points: [0, 0, 0, bottom + 28], stroke: 'ink', weight: 'boundary' },
          { t: 'path', points: [0, bottom, 38, bottom, 34, bottom + 14, 38, bottom + 28, 0, bottom + 28], closed: true, fill: 'sheet', stroke: 'ink', weight: 'ticks' },
          { t: 'text', xM: 4, yM: bottom + 15, text: label, sizePx: 12.5, bold: true }, { t: 'text', xM: 4, yM: bottom + 3, text: `${Math.round(runningM / 0.3048)}'`, sizePx: 12.5 },
        ] }
      })
      paint(context, flags, { matrix, theme })
    }),
    paintSection: (context, box) => onScreenScale(context, box, ({ heightPx, widthPx }) => {
      const levelPx = factor * pxPerM
      const matrix: Matrix = { a: pxPerM, b: 0, c: 0, d: -levelPx, e: -fit.leftRunningM * pxPerM, f: heightPx - 22 + range.lowestM * levelPx }
      paint(context, [{ t: 'rect', xM: 0, yM: 0, widthM: widthPx, heightM: heightPx, fill: 'paper' }], { matrix: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }, theme })
      paint(context, sectionDrawing(site, profile, { pxPerM, pxPerLevelM: levelPx, fromM, toM, reader, chosenIds: [] }), { matrix, theme })
    }),
  }
}

const drawn = (content: ImageContent): ImageContent => ({ ...content, ...painters(content) })

const pages: Readonly<Record<string, () => ImageContent>> = {
  sample: () => drawn(contentOf(lotYard())),
  checked: () => {
    const content = contentOf(lotYard())
    return drawn({ ...content, run: runChecks(content.site) })
  },
  spanish: () => {
    const content = contentOf(lotYard({ layout: { title: 'Casa de bombas del Arroyo Largo, línea de impulsión número dos hasta el tanque elevado' } }), { language: 'es', stageWords: 'jalado, junta 7 de 7', when: '3 de junio de 2025, 14:32', isSettled: false, fileName: 'casa-de-bombas.yard.json' })
    return drawn({ ...content, run: runChecks(content.site) })
  },
  metric: () => drawn(contentOf(documentOf(layout({ title: 'Salt pan line', displayUnits: 'metric' }), job({ pipe: { system: 'metric', size: '450', dr: 26, material: 'PE100' }, stickLengthM: 12, neededLengthM: 300 }), setUp({ fallRatio: 0.005 }), run(),
    item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(-7)), ...Array.from({ length: 30 }, (_, i) => item(i < 4 ? 'stand' : 'roller', `${i < 4 ? 'stand' : 'roller'}:${i}`, onRun(7 + i * 6)))))),
  empty: () => drawn(contentOf(documentOf(layout({ title: '' }), job()), { run: null, zones: [], isSettled: false })),
  short: () => drawn(contentOf(documentOf(layout({ title: 'First try' }), job({ pipe: { system: 'IPS', size: '12', dr: 17, material: 'PE4710' }, stickLengthM: ft(40), neededLengthM: ft(40) }), setUp({ fallRatio: 0 }), run(), item('machine', 'machine:1', onRun(0)), item('stand', 'stand:1', onRun(ft(20)))))),
}

/** Draws a named page at a scale and hands out the PNG as a data address. Called by the helper. */
const previewPage = async (name: string, scale: number): Promise<string> => {
  await Promise.all([400, 500, 600].map((weight) => document.fonts.load(`${weight} 20px 'Fira Sans Condensed'`)))
  const canvas = document.createElement('canvas')
  ;[canvas.width, canvas.height] = [1584 * scale, 1224 * scale]
  const context = canvas.getContext('2d')
  const make = pages[name]
  if (context === null || make === undefined) throw new Error(`no page ${name}`)
  context.scale(scale, scale)
  drawImagePage(context as unknown as Paint2D, make())
  return canvas.toDataURL('image/png')
}
Object.assign(globalThis, { previewPage, previewNames: Object.keys(pages) })
