import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

const letter = (page: Page): Promise<string> => page.evaluate(() => (window.stringyard.document().records['layout:this'] as { revision: string }).revision)
const ids = (page: Page): Promise<readonly string[]> => page.evaluate(() => Object.keys(window.stringyard.document().records).sort())

/** Makes the link in the share panel and gives it. */
const makeLink = async (page: Page): Promise<string> => {
  await page.locator('.title-share').click()
  await page.getByRole('button', { name: /make a link/i }).click()
  return page.getByLabel('link', { exact: true }).inputValue()
}

test('a link opens on another device as a copy, and only when asked to', async ({ page, browser, baseURL }) => {
  await openStart(page)
  await newYard(page)
  await settled(page)
  const link = await makeLink(page)
  expect(link.startsWith(`${baseURL}/#yard1.`)).toBe(true)
  await expect(page.getByRole('img', { name: /QR code/i })).toBeVisible()
  const other = await browser.newContext({ serviceWorkers: 'block', locale: 'en-US' })
  const there = await other.newPage()
  const asked: string[] = []
  there.on('request', (request) => asked.push(request.url()))
  await there.goto(link)
  await expect(there.getByRole('dialog', { name: /a layout in a link/i })).toContainText(/items on it/i)
  expect(await there.evaluate(() => window.stringyard.view().screen)).toBe('start')
  await there.getByRole('button', { name: /open as a copy/i }).click()
  await there.waitForFunction(() => window.stringyard.labels().includes('E2') || window.stringyard.view().screen === 'yard')
  expect(await ids(there)).toEqual(await ids(page))
  // The address is cleared once the copy is stored, a moment after the yard is up.
  await expect.poll(() => there.evaluate(() => location.hash)).toBe('')
  // What stands behind '#' never leaves the device.
  expect(asked.filter((url) => url.includes('yard1'))).toEqual([])
  await other.close()
})

test('a link met while a yard is open leaves it alone until it is chosen; a broken one is refused with a reason', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await settled(page)
  const link = await makeLink(page)
  await page.keyboard.press('Escape')
  const before = await page.evaluate(() => window.stringyard.document())
  await page.evaluate((hash) => { location.hash = hash }, new URL(link).hash)
  await expect(page.getByRole('dialog', { name: /a layout in a link/i })).toContainText(/from the same source is on this device/)
  await page.getByRole('button', { name: /keep mine/i }).click()
  expect(await page.evaluate(() => window.stringyard.document())).toEqual(before)
  for (const [hash, reason] of [[`${new URL(link).hash.slice(0, -30)}`, /cut off or damaged/], ['#yard1.<script>alert(1)</script>', /characters that no such link has/], ['#yard7.abcd', /newer Stringyard/]] as const) {
    await page.evaluate((to) => { location.hash = to }, hash)
    await expect(page.getByRole('dialog', { name: /was not opened/i })).toContainText(reason)
    await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).last().click()
    expect(await page.evaluate(() => window.stringyard.document())).toEqual(before)
  }
})

test('markup in a name stays a name: in the dialog of a link and on the sheet', async ({ page }) => {
  const hostile = '<img src=x onerror="window.hit=1"><script>window.hit=1</script>'
  await openStart(page)
  await newYard(page)
  await page.locator('.title-title').click()
  await page.getByLabel(/^name/i).first().fill(hostile)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Escape')
  const link = await makeLink(page)
  await page.keyboard.press('Escape')
  await page.evaluate((hash) => { location.hash = hash }, new URL(link).hash)
  await expect(page.getByRole('dialog', { name: /a layout in a link/i })).toContainText('<script>')
  expect(await page.evaluate(() => [(window as { hit?: number }).hit ?? null, document.querySelectorAll('img[src="x"]').length])).toEqual([null, 0])
})

test('the first edit after a share begins the next letter, and the two are compared in words and on the plan', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await settled(page)
  expect(await letter(page)).toBe('A')
  await makeLink(page)
  await page.keyboard.press('Escape')
  expect(await letter(page)).toBe('A')
  await page.getByRole('button', { name: /^undo/i }).click()
  await page.getByRole('button', { name: /^redo/i }).click()
  await page.evaluate(() => document.fonts.ready.then(() => true))
  const at = await page.evaluate(() => window.stringyard.itemToPage('E2'))
  await page.mouse.click(at!.x, at!.y)
  await page.keyboard.press('ArrowRight')
  await page.waitForFunction(() => (window.stringyard.document().records['layout:this'] as { revision: string }).revision === 'B')
  await expect(page.locator('.title-revision')).toContainText(/B\s*was A/)
  await page.locator('.title-revision').click()
  const list = page.getByRole('region', { name: /what changed/i })
  await expect(list).toContainText(/content [0-9a-f]{8}/)
  await list.getByRole('button', { name: /^A shared/ }).click()
  await expect(list).toContainText(/E2 moved .* (up|down)-string/)
  await list.getByRole('button', { name: /end comparing/i }).click()
  await expect(list).toHaveCount(0)
})

test('two windows: an edit in one is in the other, and a file saved by hand holds it', async ({ page, context }) => {
  await openStart(page)
  await newYard(page)
  const second = await context.newPage()
  await second.goto('/')
  await second.waitForFunction(() => window.stringyard?.labels().includes('E2'))
  const download = second.waitForEvent('download')
  await page.getByRole('button', { name: /^undo/i }).click()
  await second.waitForFunction(() => !window.stringyard.labels().includes('E2'))
  await second.locator('.title-saved').click()
  await second.getByRole('button', { name: /save.*file/i }).first().click()
  const text = readFileSync(await (await download).path(), 'utf8')
  expect(JSON.parse(text)).toMatchObject({ format: 'stringyard' })
  expect(text).not.toContain('"kind": "stand"')
})
