/**
 * Scrubbing the run-through in real Chromium, on the built app: the nose dragged along the tape, and the stages stepped by
 * the slider. For each frame the time from the entry of the input's handler to the end of all work of that frame on the main thread (React,
 * the bent pipe, zones, plan, tape, side view, pull), measured from outside the app. Beside it the same by the clock of the main thread alone
 * (everything it did for one move, timers included), which a busy machine does not stretch. With it, how long the first stage and all
 * stages took to come after the mode was opened. Run: `npm run build && npx tsx tests/bench/scrub.bench.ts`. Asserts nothing.
 */
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { setTimeout as wait } from 'node:timers/promises'
import { chromium, type Page } from 'playwright'
import { writeFile } from '../../src/scene/writeFile.ts'
import { longYard } from '../helpers/longYard.ts'
import { chromiumArgs, findChromium } from '../tools/chromium.mjs'
import { root } from '../tools/install.mjs'

const PORT = 4995
const MOVES = 60
const RUNS = 5

const quantile = (values: readonly number[], share: number): number => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN
const both = (values: readonly number[]): string => `${quantile(values, 0.5).toFixed(1)} / ${quantile(values, 0.95).toFixed(1)} / ${Math.max(...values).toFixed(1)}`

declare global {
  interface Window {
    __scrub?: number[]
  }
}

/** Frames of input: a listener ahead of all others notes the entry, a task behind the frame's last callback the end. */
const install = (page: Page): Promise<unknown> => page.evaluate(`{
  let entryMs = null
  for (const name of ['pointermove', 'keydown']) addEventListener(name, () => {
    if (window.__scrub === undefined || entryMs !== null) return
    entryMs = performance.now()
    requestAnimationFrame(() => {
      // A task queued from the frame runs when its callbacks, and what they put off to microtasks, are through.
      const { port1, port2 } = new MessageChannel()
      port1.onmessage = () => {
        window.__scrub?.push(performance.now() - entryMs)
        entryMs = null
      }
      port2.postMessage(null)
    })
  }, { capture: true })
}`)

const open = async (page: Page, text: string): Promise<void> => {
  await page.goto(`http://localhost:${PORT}/`)
  await page.waitForFunction(() => window.stringyard !== undefined)
  await page.locator('input[type=file]').first().setInputFiles({ name: 'bench.yard.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.waitForFunction(() => window.stringyard.isSettled() && window.stringyard.labels().length > 3, undefined, { timeout: 60_000 })
  await wait(800)
}

const frames = async (page: Page, act: () => Promise<void>): Promise<number[]> => {
  await page.evaluate(() => { window.__scrub = [] })
  await act()
  await wait(100)
  return page.evaluate(() => window.__scrub!)
}

/** Time of the page's main thread for each of some moves, by the thread's own clock: what other programs take of the machine does not count. */
const threadMs = async (page: Page, moves: readonly (() => Promise<void>)[]): Promise<number[]> => {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  const spent = async (): Promise<number> => 1000 * ((await session.send('Performance.getMetrics')).metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN)
  const taken: number[] = []
  let before = await spent()
  for (const move of moves) {
    await move()
    await wait(50)
    const after = await spent()
    taken.push(after - before)
    before = after
  }
  await session.detach()
  return taken
}

const noseMoves = async (page: Page): Promise<number[]> => {
  const box = await page.locator('.nose-mark').boundingBox()
  if (box === null) throw new Error('no nose mark')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  const taken = await threadMs(page, Array.from({ length: 2 * MOVES }, (_, i) => () => page.mouse.move(x - 140 + 140 * Math.cos((i + 1) / 9), y)))
  await page.mouse.up()
  return taken
}

const dragNose = async (page: Page): Promise<number[]> => {
  const box = await page.locator('.nose-mark').boundingBox()
  if (box === null) throw new Error('no nose mark')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  return frames(page, async () => {
    await page.mouse.move(x, y)
    await page.mouse.down()
    for (let i = 1; i <= MOVES; i++) {
      await page.mouse.move(x - 140 + 140 * Math.cos(i / 9), y)
      await wait(17)
    }
    await page.mouse.up()
  })
}

const stepStages = async (page: Page): Promise<number[]> => {
  await page.locator('.run-slider').focus()
  return frames(page, async () => {
    for (let i = 0; i < MOVES / 2; i++) {
      await page.keyboard.press(i % 12 < 6 ? 'ArrowLeft' : 'ArrowRight')
      await wait(40)
    }
  })
}

const main = async (): Promise<void> => {
  const server = spawn(process.execPath, [`${root}node_modules/vite/bin/vite.js`, 'preview', '--port', String(PORT), '--strictPort'], { cwd: root, stdio: 'ignore' })
  try {
    await wait(1500)
    const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: chromiumArgs })
    const rows: Record<string, string | number>[] = []
    const cases = [...['maple-fork-good', 'redstem-flat-good'].map((name) => ({ name, text: readFileSync(`${root}shared/examples/${name}.yard.json`, 'utf8') })), { name: '101 sticks, 250 rollers', text: writeFile(longYard()) }]
    for (const { name, text } of cases) {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block', locale: 'en-US' })
      const page = await context.newPage()
      await open(page, text)
      await install(page)
      const fromMs = await page.evaluate(() => performance.now())
      await page.locator('.sheet-run').click()
      await page.waitForFunction(() => document.querySelector('.stage-table') !== null && document.querySelector('.pull-curve, .run-tasks, .run-arrivals, .run-state') !== null)
      const shownMs = (await page.evaluate(() => performance.now())) - fromMs
      await page.waitForFunction(() => document.querySelector('.run-state') === null && document.querySelector('.pull-curve') !== null, undefined, { timeout: 60_000 })
      const allMs = (await page.evaluate(() => performance.now())) - fromMs
      await page.locator('.run-slider').focus()
      await page.keyboard.press('End')
      for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft')
      await wait(600)
      await dragNose(page)
      const drags: number[] = []
      for (let run = 0; run < RUNS; run++) drags.push(...(await dragNose(page)))
      const steps: number[] = []
      for (let run = 0; run < RUNS; run++) steps.push(...(await stepStages(page)))
      const thread = await noseMoves(page)
      rows.push({ yard: name, 'nose, main thread': both(thread), 'frames of the nose': drags.length, 'nose median / p95 / max': both(drags), 'stages median / p95 / max': both(steps), 'screen there ms': Math.round(shownMs), 'all stages there ms': Math.round(allMs) })
      await context.close()
    }
    console.table(rows)
    await browser.close()
  } finally {
    server.kill()
  }
}

await main()
