// `npm run pictures`: the pictures of README and docs, taken from the running app (built before). With a folder as
// argument it also takes every arrangement in both languages, the pseudo-language and all themes, to be looked at.
import { spawn } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { setTimeout as wait } from 'node:timers/promises'
import { chromium } from 'playwright'
import { chromiumArgs, findChromium } from './chromium.mjs'
import { root } from './install.mjs'

const PORT = 4994
const out = `${root}docs/pictures/`
const folder = process.argv[2] ?? null
mkdirSync(out, { recursive: true })
const server = spawn(process.execPath, [`${root}node_modules/vite/bin/vite.js`, 'preview', '--port', String(PORT), '--strictPort'], { cwd: root, stdio: 'ignore' })
await wait(1500)
const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: chromiumArgs })

const sizes = { desktop: [1440, 900], tablet: [820, 1180], landscape: [1180, 820], phone: [390, 844] }

const open = async ({ size = 'desktop', example = /Maple Fork pump house, first/, locale = 'en-US', dark = false, query = '' }) => {
  const [width, height] = sizes[size]
  const context = await browser.newContext({ viewport: { width, height }, locale, colorScheme: dark ? 'dark' : 'light', serviceWorkers: 'block', hasTouch: size !== 'desktop', reducedMotion: 'reduce', timezoneId: 'America/Chicago' })
  const page = await context.newPage()
  await page.goto(`http://localhost:${PORT}/${query}`)
  await page.waitForFunction(() => window.stringyard !== undefined)
  if (example !== null) {
    await page.locator('.start-choices button, button').nth(1).click()
    await page.locator('dialog li').filter({ hasText: example }).getByRole('button').click()
    await page.waitForFunction(() => window.stringyard.isSettled() && window.stringyard.labels().includes('E1'))
    await wait(900)
  }
  return { page, context }
}

const shot = async (file, options, act = async () => {}) => {
  const { page, context } = await open(options)
  await act(page)
  await wait(700)
  await page.screenshot({ path: file })
  await context.close()
}

const choose = (label) => async (page) => {
  const at = await page.evaluate((name) => window.stringyard.itemToPage(name), label)
  await page.mouse.click(at.x, at.y)
}

await shot(`${out}desktop.png`, {}, choose('E1'))
await shot(`${out}tablet.png`, { size: 'tablet' })
await shot(`${out}phone.png`, { size: 'phone', example: /Maple Fork pump house, mended/ })
await shot(`${out}run-through.png`, {}, async (page) => {
  await page.locator('.sheet-run').click()
  await page.locator('.pull-curve').waitFor()
  // Pull 3, its nose at the first support it comes to.
  await page.locator('.stage-table').getByRole('button', { name: /^pull 3: / }).click()
  await page.locator('.run-arrivals button').first().click()
})
{
  const { page, context } = await open({ example: /Maple Fork pump house, mended/ })
  await page.locator('.title-image').click()
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'PNG 1×' }).click()
  await (await download).saveAs(`${out}image.png`)
  await context.close()
}

if (folder !== null) {
  mkdirSync(folder, { recursive: true })
  const examples = { maple: /^Maple Fork.*(first|primer)/s, redstem: /^Redstem Flat.*(first|primer)/s, campo: /^Campo Arenal.*(first|primer)/s }
  const done = []
  for (const size of Object.keys(sizes)) {
    for (const locale of ['en-US', 'es-MX']) for (const dark of [false, true]) {
      done.push(`${size}-${locale.slice(0, 2)}-${dark ? 'night' : 'day'}.png`)
      await shot(`${folder}/${done.at(-1)}`, { size, locale, dark, example: examples.maple })
    }
    done.push(`${size}-pseudo.png`)
    await shot(`${folder}/${done.at(-1)}`, { size, query: '?pseudo', example: null }, async () => {})
    done.push(`${size}-start.png`)
    await shot(`${folder}/${done.at(-1)}`, { size, example: null })
  }
  for (const [name, example] of Object.entries(examples)) await shot(`${folder}/desktop-${name}.png`, { example })
  writeFileSync(`${folder}/list.txt`, done.join('\n'))
}
await browser.close()
server.kill()
