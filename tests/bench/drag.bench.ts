/**
 * Drag, pan and zoom frames in real Chromium, on the built app: from our pointer handler's entry to the end of the last
 * draw of that frame, one pixel read back. Beside it bare Konva in the same run: as many shapes, the moving one on its
 * own layer. A second table tells the whole frame by its parts: our handler (tool, command, site, bent pipe), plan, React,
 * tape, side view, and the rest to the end of the frame (style, layout, the browser's own drawing of the canvases, findings
 * that came from the worker meanwhile), with how many primitives tape and side view painted. Run: `npm run build && npx tsx tests/bench/drag.bench.ts`.
 */
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { setTimeout as wait } from 'node:timers/promises'
import { chromium, type Browser, type Page } from 'playwright'
import { writeFile } from '../../src/scene/writeFile.ts'
import type { ProbedFrame } from '../../src/canvas/plan/frameProbe.ts'
import { chromiumArgs, findChromium } from '../tools/chromium.mjs'
import { root } from '../tools/install.mjs'
import { manyItems } from './manyItems.ts'

const PORT = 4996
const MOVES = 60
const RUNS = 5
const MANY = '1,000 items'

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)
const quantile = (values: readonly number[], share: number): number => sorted(values)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN

interface Figures {
  median: number
  p95: number
  wholeP95: number
  frames: number
}
const figures = (frames: readonly { ms: number; wholeMs: number | null }[]): Figures => ({
  median: quantile(frames.map(({ ms }) => ms), 0.5), p95: quantile(frames.map(({ ms }) => ms), 0.95), wholeP95: quantile(frames.map(({ wholeMs }) => wholeMs ?? 0), 0.95), frames: frames.length,
})

const openFile = async (page: Page, text: string): Promise<void> => {
  await page.goto(`http://localhost:${PORT}/`)
  await page.waitForFunction(() => window.stringyard !== undefined)
  await page.locator('input[type=file]').first().setInputFiles({ name: 'bench.yard.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.waitForFunction(() => window.stringyard.isSettled() && window.stringyard.labels().length > 3)
  await wait(800)
}

/** Median and 95th of each part of the frames, as `median / p95`. */
const parts = (frames: readonly ProbedFrame[]): Record<string, string> => {
  const both = (pick: (frame: ProbedFrame) => number, digits = 1): string => `${quantile(frames.map(pick), 0.5).toFixed(digits)} / ${quantile(frames.map(pick), 0.95).toFixed(digits)}`
  const known = ({ handlerMs, planMs, reactMs, tapeMs, sectionMs }: ProbedFrame): number => handlerMs + planMs + reactMs + tapeMs + sectionMs
  return {
    frames: String(frames.length), handler: both(({ handlerMs }) => handlerMs), plan: both(({ planMs }) => planMs), React: both(({ reactMs }) => reactMs), tape: both(({ tapeMs }) => tapeMs), 'side view': both(({ sectionMs }) => sectionMs),
    rest: both((frame) => Math.max(0, (frame.wholeMs ?? 0) - known(frame))), whole: both(({ wholeMs }) => wholeMs ?? 0), primitives: both(({ primitives }) => primitives, 0),
  }
}

const probed = async (page: Page, act: () => Promise<void>, kind: 'drag' | 'view'): Promise<ProbedFrame[]> => {
  await page.evaluate(() => { window.__yardProbe = { enabled: true, frames: [] } })
  await act()
  await wait(120)
  const frames = await page.evaluate(() => window.__yardProbe!.frames)
  return frames.filter((frame) => frame.kind === kind)
}

const dragItem = async (page: Page, label: string): Promise<ProbedFrame[]> => {
  const at = await page.evaluate((name) => window.stringyard.itemToPage(name), label)
  if (at === null) throw new Error(`no ${label} on the plan`)
  return probed(page, async () => {
    await page.mouse.move(at.x, at.y)
    await page.mouse.down()
    for (let i = 1; i <= MOVES; i++) {
      await page.mouse.move(at.x + 30 * Math.sin(i / 6), at.y + 6 * Math.cos(i / 5))
      await wait(17)
    }
    await page.keyboard.press('Escape')
    await page.mouse.up()
  }, 'drag')
}

/** The first flag of a support that lies free under the pointer, slid along the tape. */
const dragFlag = async (page: Page): Promise<ProbedFrame[]> => {
  const at = await page.evaluate(() => {
    for (const flag of document.querySelectorAll('[data-flag][role=option]:not([aria-disabled])')) {
      const box = flag.getBoundingClientRect()
      const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
      if (point.x > innerWidth / 3 && document.elementFromPoint(point.x, point.y) === flag) return point
    }
    return null
  })
  if (at === null) throw new Error('no flag on the tape lies free')
  const { x, y } = at
  return probed(page, async () => {
    await page.mouse.move(x, y)
    await page.mouse.down()
    for (let i = 1; i <= MOVES; i++) {
      await page.mouse.move(x + 30 * Math.sin(i / 6), y)
      await wait(17)
    }
    await page.keyboard.press('Escape')
    await page.mouse.up()
  }, 'drag')
}

const panAndZoom = async (page: Page): Promise<ProbedFrame[]> => {
  const box = await page.locator('[data-band="plan"]').first().boundingBox()
  if (box === null) throw new Error('no plan')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  return probed(page, async () => {
    await page.mouse.move(x, y)
    for (let i = 0; i < MOVES / 2; i++) {
      await page.mouse.wheel(0, i % 2 === 0 ? -60 : 60)
      await wait(17)
    }
    await page.mouse.move(x, box.y + 30)
    await page.mouse.down({ button: 'middle' })
    for (let i = 1; i <= MOVES / 2; i++) {
      await page.mouse.move(x + 40 * Math.sin(i / 6), box.y + 30)
      await wait(17)
    }
    await page.mouse.up({ button: 'middle' })
  }, 'view')
}

/** Bare Konva: `count` shapes on a still layer, one on a layer of its own, moved by hand. */
const bare = async (browser: Browser, count: number): Promise<Figures> => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  await page.setContent('<div id="c"></div>')
  await page.addScriptTag({ content: readFileSync(`${root}node_modules/konva/konva.min.js`, 'utf8') })
  await page.evaluate((shapes) => {
    const K = (window as never as { Konva: typeof import('konva').default }).Konva
    const stage = new K.Stage({ container: 'c', width: 1072, height: 522 })
    const still = new K.Layer({ listening: false })
    const moving = new K.Layer()
    for (let i = 0; i < shapes; i++) still.add(i % 2 === 0 ? new K.Rect({ x: (i * 37) % 1072, y: (i * 53) % 522, width: 14, height: 20, fill: '#fff', stroke: '#000' }) : new K.Line({ points: [0, 0, 10, 4, 20, 0, 14, 9, 3, 9].map((v, j) => v + (j % 2 === 0 ? (i * 37) % 1072 : (i * 53) % 522)), closed: true, stroke: '#000' }))
    const node = new K.Rect({ x: 500, y: 250, width: 14, height: 20, fill: '#fff', stroke: '#000' })
    moving.add(node)
    stage.add(still, moving)
    still.draw()
    const frames: number[] = []
    Object.assign(window, { frames })
    stage.container().addEventListener('pointermove', (event) => {
      const start = performance.now()
      node.position({ x: event.offsetX, y: event.offsetY })
      requestAnimationFrame(() => {
        const drawFrom = performance.now()
        moving.draw()
        moving.getNativeCanvasElement().getContext('2d')!.getImageData(0, 0, 1, 1)
        frames.push(performance.now() - drawFrom + Math.min(0, start))
      })
    })
  }, count)
  for (let run = 0; run < RUNS; run++) for (let i = 1; i <= MOVES; i++) {
    await page.mouse.move(500 + 30 * Math.sin(i / 6), 250 + 6 * Math.cos(i / 5))
    await wait(17)
  }
  const ms = await page.evaluate(() => (window as never as { frames: number[] }).frames)
  await page.close()
  return figures(ms.map((value) => ({ ms: value, wholeMs: value })))
}

const main = async (): Promise<void> => {
  const server = spawn(process.execPath, [`${root}node_modules/vite/bin/vite.js`, 'preview', '--port', String(PORT), '--strictPort'], { cwd: root, stdio: 'ignore' })
  try {
    await wait(1500)
    const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: chromiumArgs })
    const rows: Record<string, string | number>[] = []
    const byPart: Record<string, string>[] = []
    const examples = ['maple-fork-good', 'redstem-flat-good', 'campo-arenal-good'].map((name) => ({ name, text: readFileSync(`${root}shared/examples/${name}.yard.json`, 'utf8') }))
    const many = manyItems(1000)
    const cases = [...examples, { name: MANY, text: writeFile(many) }]
    for (const { name, text } of cases) {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block', locale: 'en-US' })
      const page = await context.newPage()
      await openFile(page, text)
      const count = await page.evaluate(() => Object.keys(window.stringyard.document().records).length)
      await dragItem(page, 'E2')
      const drags: ProbedFrame[] = []
      for (let run = 0; run < RUNS; run++) drags.push(...(await dragItem(page, 'E2')))
      const drag = figures(drags)
      const views: ProbedFrame[] = []
      for (let run = 0; run < RUNS; run++) views.push(...(await panAndZoom(page)))
      const view = figures(views)
      byPart.push({ yard: name, what: 'drag of E2', ...parts(drags) }, { yard: name, what: 'pan, zoom', ...parts(views) })
      if (name !== MANY) byPart.push({ yard: name, what: 'machine and all on it', ...parts(await dragItem(page, 'M')) }, { yard: name, what: 'a flag', ...parts(await dragFlag(page)) })
      const konva = await bare(browser, count)
      rows.push({
        yard: name, records: count, frames: drag.frames, 'drag median': drag.median.toFixed(2), 'drag p95': drag.p95.toFixed(2), 'bare median': konva.median.toFixed(2),
        'less bare': (drag.median - konva.median).toFixed(2), 'whole p95': drag.wholeP95.toFixed(2), 'pan/zoom p95': view.p95.toFixed(2), 'pan/zoom whole p95': view.wholeP95.toFixed(2),
      })
      await context.close()
    }
    console.table(rows)
    console.log('The whole frame by its parts, ms, median / p95:')
    console.table(byPart)
    await browser.close()
  } finally {
    server.kill()
  }
}

await main()
