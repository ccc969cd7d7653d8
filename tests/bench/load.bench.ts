/**
 * First load, repeat load without signal, and memory over many edits, in the built app in headless Chromium.
 * Processor 4 times slower by the browser's own brake (CDP Emulation.setCPUThrottlingRate; it brakes the page's thread,
 * not its workers). Times are on the clock: the load of the machine is printed, and above one program a core they are too long. Usable: the start page, or the sheet with its bands drawn, is there and answers. Run by all.ts after a build.
 */
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { cpus, loadavg } from 'node:os'
import { setTimeout as wait } from 'node:timers/promises'
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright'
import { chromiumArgs, findChromium } from '../tools/chromium.mjs'
import { root } from '../tools/install.mjs'

const PORT = 4994
const ADDRESS = `http://localhost:${PORT}/`
const SLOWER = 4
const RUNS = 5
const EDITS = 10_000
const EDITS_A_FRAME = 10
const BUDGET = { firstMs: 2500, repeatMs: 1000 } as const

declare global {
  interface Window {
    __usableMs?: number
    __settledMs?: number
  }
}

/** Looks once a frame, in the page's own time from the start of the load. */
const watch = (page: Page): Promise<unknown> => page.addInitScript(`{
  const look = () => {
    const app = window.stringyard
    const start = document.querySelector('.start button')
    const isThere = app !== undefined && (start !== null || (document.querySelector('[data-band="plan"] canvas') !== null && app.labels().length > 0))
    if (isThere && window.__usableMs === undefined) requestAnimationFrame(() => setTimeout(() => { window.__usableMs ??= performance.now() }))
    if (app !== undefined && app.isSettled() && window.__settledMs === undefined) window.__settledMs = performance.now()
    if (window.__usableMs === undefined || window.__settledMs === undefined) requestAnimationFrame(look)
  }
  requestAnimationFrame(look)
}`)

const slowed = async (page: Page): Promise<void> => {
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
}

interface Load {
  usableMs: number
  settledMs: number
}

const loaded = async (page: Page): Promise<Load> => {
  await page.waitForFunction(() => window.__usableMs !== undefined && window.__settledMs !== undefined, undefined, { timeout: 60_000 })
  return page.evaluate(() => ({ usableMs: window.__usableMs!, settledMs: window.__settledMs! }))
}

const openExample = async (page: Page, name: string): Promise<void> => {
  await page.locator('input[type=file]').first().setInputFiles({ name: 'bench.yard.json', mimeType: 'application/json', buffer: readFileSync(`${root}shared/examples/${name}.yard.json`) })
  await page.waitForFunction(() => window.stringyard.isSettled() && window.stringyard.labels().length > 3, undefined, { timeout: 60_000 })
}

const newContext = (browser: Browser): Promise<BrowserContext> => browser.newContext({ viewport: { width: 1180, height: 820 }, serviceWorkers: 'allow', locale: 'en-US' })

/** A device that has never seen the app. */
const firstLoad = async (browser: Browser): Promise<Load> => {
  const context = await newContext(browser)
  const page = await context.newPage()
  await watch(page)
  await slowed(page)
  await page.goto(ADDRESS, { waitUntil: 'commit' })
  const times = await loaded(page)
  await context.close()
  return times
}

/** The app put in, a layout open; then loads without signal, each opening that layout again. */
const repeatLoads = async (browser: Browser, name: string | null): Promise<Load[]> => {
  const context = await newContext(browser)
  const page = await context.newPage()
  await watch(page)
  await page.goto(ADDRESS)
  await page.waitForFunction(() => window.stringyard !== undefined)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
  if (name !== null) await openExample(page, name)
  await wait(1500)
  await page.reload()
  await loaded(page)
  await context.setOffline(true)
  await slowed(page)
  const times: Load[] = []
  for (let run = 0; run < RUNS; run++) {
    await page.reload({ waitUntil: 'commit' })
    times.push(await loaded(page))
    await wait(300)
  }
  await context.close()
  return times
}

/** Heap after a full collection, MB of 10⁶ bytes, at even steps through the edits: slide, raise, back, lower, each a step of undo. */
const memory = async (browser: Browser): Promise<{ edits: number; heapMB: number; records: number }[]> => {
  const context = await newContext(browser)
  const page = await context.newPage()
  await page.goto(ADDRESS)
  await page.waitForFunction(() => window.stringyard !== undefined)
  await openExample(page, 'maple-fork-good')
  const session = await context.newCDPSession(page)
  await session.send('HeapProfiler.enable')
  const at = await page.evaluate(() => window.stringyard.itemToPage('E2')!)
  await page.mouse.click(at.x, at.y)
  await page.waitForFunction(() => window.stringyard.view().selection.length === 1)
  const heap = async (edits: number): Promise<{ edits: number; heapMB: number; records: number }> => {
    await page.waitForFunction(() => window.stringyard.isSettled(), undefined, { timeout: 60_000 })
    await wait(1200)
    await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    return { edits, heapMB: usedSize / 1e6, records: await page.evaluate(() => Object.keys(window.stringyard.document().records).length) }
  }
  const rows = [await heap(0)]
  const stampBefore = await page.evaluate(() => window.stringyard.stamp())
  for (let done = 0; done < EDITS; done += EDITS / 10) {
    await page.evaluate(async ({ count, aFrame }) => {
      const target = document.querySelector('[data-band="plan"]')!
      const keys = [{ key: 'ArrowRight' }, { key: 'PageUp' }, { key: 'ArrowLeft' }, { key: 'PageDown' }]
      for (let i = 0; i < count; i++) {
        target.dispatchEvent(new KeyboardEvent('keydown', { ...keys[i % 4], bubbles: true, cancelable: true }))
        if (i % aFrame === 0) await new Promise((resolve) => { requestAnimationFrame(resolve) })
      }
    }, { count: EDITS / 10, aFrame: EDITS_A_FRAME })
    rows.push(await heap(done + EDITS / 10))
  }
  // Not every press makes a revision of its own: how many did is said beside the count of presses.
  const revisionOf = (stamp: string): number => Number.parseInt(stamp, 10)
  console.log(`${EDITS} presses made ${revisionOf(await page.evaluate(() => window.stringyard.stamp())) - revisionOf(stampBefore)} revisions`)
  await context.close()
  return rows
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN
const row = (what: string, loads: readonly Load[], budgetMs: number): Record<string, string | number> => {
  const usable = loads.map(({ usableMs }) => usableMs)
  return {
    what, 'usable, median ms': Math.round(median(usable)), 'worst ms': Math.round(Math.max(...usable)), budget: budgetMs, kept: median(usable) <= budgetMs ? 'yes' : 'NO',
    'checks in, median ms': Math.round(median(loads.map(({ settledMs }) => settledMs))),
  }
}

const main = async (): Promise<void> => {
  const server = spawn(process.execPath, [`${root}node_modules/vite/bin/vite.js`, 'preview', '--port', String(PORT), '--strictPort'], { cwd: root, stdio: 'ignore' })
  const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: chromiumArgs })
  try {
    await wait(1500)
    const first: Load[] = []
    for (let run = 0; run < RUNS; run++) first.push(await firstLoad(browser))
    console.table([
      row('first load, start page', first, BUDGET.firstMs),
      row('repeat without signal, start page', await repeatLoads(browser, null), BUDGET.repeatMs),
      row('repeat without signal, layout drawn', await repeatLoads(browser, 'maple-fork-good'), BUDGET.repeatMs),
    ])
    console.log(`load of the machine ${loadavg()[0]?.toFixed(1)} on ${cpus().length} cores`)
    if (process.argv.includes('loads')) return
    const rows = await memory(browser)
    console.table(rows.map(({ edits, heapMB, records }) => ({ presses: edits, 'heap MB': heapMB.toFixed(1), records })))
    const [early, late] = [rows[2]!, rows.at(-1)!]
    console.log(`after ${early.edits} presses ${early.heapMB.toFixed(1)} MB, after ${late.edits} ${late.heapMB.toFixed(1)} MB: ${((late.heapMB / early.heapMB - 1) * 100).toFixed(1)} %`)
  } finally {
    await browser.close()
    server.kill()
  }
}

await main()
