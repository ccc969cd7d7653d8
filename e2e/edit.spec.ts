import { newYard } from './newYard.ts'
import { dragBy, expect, findings, itemAt, openStart, settled, test } from './support.ts'


const runningOf = async (page: import('@playwright/test').Page, kind: string): Promise<number[]> =>
  page.evaluate((wanted) => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === wanted && 'place' in record && record.place.at === 'onRun' ? [record.place.runningM] : [])).sort((a, b) => a - b), kind)

const zoomToMachine = async (page: import('@playwright/test').Page): Promise<void> => {
  const at = await itemAt(page, 'M')
  await page.mouse.move(at.x, at.y)
  for (let i = 0; i < 4; i++) await page.mouse.wheel(0, -120)
}

test('a stand is placed by two taps, dragged with snapping, undone by name and kept over a reload', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await zoomToMachine(page)
  await page.getByRole('button', { name: /^pipe stand, flat roller/ }).click()
  const spot = await page.evaluate(() => window.stringyard.worldToPage(16, 0))
  await page.mouse.click(spot.x, spot.y)
  await settled(page)
  expect(await runningOf(page, 'stand')).toHaveLength(3)
  await page.keyboard.press('Escape')

  const e3 = await itemAt(page, 'E3')
  const before = (await runningOf(page, 'stand')).at(-1)!
  await dragBy(page, e3, 41, 2)
  await settled(page)
  const after = (await runningOf(page, 'stand')).at(-1)!
  expect(after).toBeGreaterThan(before + 0.5)
  // Round tape distance: whole feet.
  expect(Math.abs(after / 0.3048 - Math.round(after / 0.3048))).toBeLessThan(1e-6)

  await expect(page.getByRole('button', { name: /undo.*move E3/i })).toBeVisible()
  await page.keyboard.press('Control+z')
  await settled(page)
  expect((await runningOf(page, 'stand')).at(-1)).toBeCloseTo(before, 6)
  await page.keyboard.press('Control+Shift+z')
  await settled(page)
  expect((await runningOf(page, 'stand')).at(-1)).toBeCloseTo(after, 6)

  await page.reload()
  await page.waitForFunction(() => window.stringyard?.labels().includes('E3'))
  await settled(page)
  expect((await runningOf(page, 'stand')).at(-1)).toBeCloseTo(after, 6)
  await expect(page.getByRole('button', { name: /undo.*move E3/i })).toBeVisible()
})

test('a remedy is one step: it clears its finding, and undo brings the finding back', async ({ page }) => {
  await openStart(page)
  await newYard(page, { accept: false })
  await page.getByRole('button', { name: 'Clear' }).click()
  await settled(page)
  expect((await findings(page)).filter(({ checkId, level }) => checkId === 'exit-stands' && level !== 'met').length + (await findings(page)).filter(({ checkId, level }) => checkId === 'jaw-effort' && level === 'FIX').length).toBeGreaterThan(0)
  const stands = (await runningOf(page, 'stand')).length
  await page.getByRole('button', { name: 'Do it' }).first().click()
  await settled(page)
  expect((await runningOf(page, 'stand')).length).toBe(stands + 1)
  await page.getByRole('button', { name: /^undo/i }).click()
  await settled(page)
  expect((await runningOf(page, 'stand')).length).toBe(stands)
})

test('a saddle height is typed, echoed in both systems, and an unclear number is asked about', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await zoomToMachine(page)
  const e2 = await itemAt(page, 'E2')
  await page.mouse.click(e2.x, e2.y)
  const saddle = page.getByLabel(/^saddle/).first()
  await saddle.fill('28.5')
  await expect(page.getByText(/reads as 28/)).toBeVisible()
  await saddle.press('Enter')
  await settled(page)
  const height = await page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'stand' && record.height.rule === 'aboveGround' ? [record.height.saddleM] : [])))
  expect(height).toHaveLength(1)
  expect(height[0]).toBeCloseTo(28.5 * 0.0254, 9)
})

test('Escape in the middle of a drag leaves everything as it was', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await zoomToMachine(page)
  const before = await runningOf(page, 'stand')
  const e2 = await itemAt(page, 'E2')
  await page.mouse.move(e2.x, e2.y)
  await page.mouse.down()
  await page.mouse.move(e2.x + 60, e2.y, { steps: 6 })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await settled(page)
  expect(await runningOf(page, 'stand')).toEqual(before)
  await expect(page.getByRole('button', { name: /undo.*usual/i })).toBeVisible()
})
