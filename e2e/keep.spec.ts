import { readFileSync } from 'node:fs'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

const labels = (page: import('@playwright/test').Page): Promise<readonly string[]> => page.evaluate(() => window.stringyard.labels())

test('what was on screen when the page was killed is there again', async ({ page, context }) => {
  await openStart(page)
  await newYard(page)
  await expect(page.getByText(/saved here/)).toBeVisible()
  const session = await context.newCDPSession(page)
  // No time to say goodbye: the page's process dies.
  void session.send('Page.crash').catch(() => undefined)
  await page.waitForEvent('crash')
  const next = await context.newPage()
  await next.goto('/')
  await next.waitForFunction(() => window.stringyard?.labels().includes('E2'))
  await settled(next)
  await expect(next.getByRole('button', { name: /undo.*usual/i })).toBeVisible()
})

test('a broken file is refused by field and reason, and what is open stays', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  const before = await labels(page)
  const good = await page.evaluate(() => window.stringyard.document())
  const text = readFileSync('shared/formats/v0001/minimal.yard.json', 'utf8')
  const broken = text.replace(/"stickLengthM": [^,]+/, '"stickLengthM": "forty feet"')
  expect(broken).not.toEqual(text)
  await page.locator('.title-saved').click()
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: /open a file/i }).first().click()
  await (await chooser).setFiles({ name: 'bad.yard.json', mimeType: 'application/json', buffer: Buffer.from(broken) })
  await expect(page.getByText(/bad\.yard\.json was not opened\..*stickLengthM/).first()).toBeVisible()
  expect(await labels(page)).toEqual(before)
  expect(await page.evaluate(() => window.stringyard.document())).toEqual(good)
})

test('a second window reads, follows, and may take over', async ({ page, context }) => {
  await openStart(page)
  await newYard(page)
  const second = await context.newPage()
  await second.goto('/')
  await second.waitForFunction(() => window.stringyard?.labels().includes('E2'))
  await expect(second.getByText(/open in another window/i).first()).toBeVisible()
  await page.getByRole('button', { name: /^undo/i }).click()
  await second.waitForFunction(() => !window.stringyard.labels().includes('E2'))
  await second.getByRole('button', { name: /take over/i }).click()
  await expect(second.getByText(/open in another window/i)).toHaveCount(0)
  await second.getByRole('button', { name: /^redo/i }).click()
  await second.waitForFunction(() => window.stringyard.labels().includes('E2'))
  await expect(page.getByText(/open in another window/i).first()).toBeVisible()
})
