import { newYard } from './newYard.ts'
import { expect, itemAt, settled, test } from './support.ts'

test('a late worker never shows an old finding as current', async ({ page }) => {
  await page.goto('/?slowWorker=1500')
  await page.waitForFunction(() => window.stringyard !== undefined)
  await newYard(page)
  const margin = page.locator('section.notes')
  await expect(margin).not.toContainText('working')
  const e2 = await itemAt(page, 'E2')
  await page.mouse.click(e2.x, e2.y)
  await page.keyboard.press('Delete')
  // The answer on screen is still of the layout with E2: greyed, and said so.
  await expect(margin).toContainText('working')
  expect(await page.evaluate(() => window.stringyard.isSettled())).toBe(false)
  await settled(page)
  await expect(margin).not.toContainText('working')
})
