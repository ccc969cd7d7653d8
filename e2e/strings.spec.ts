import { expect, openStart, settled, test } from './support.ts'

test('a job is split into two strings, the second is shown, and undo takes the strings away', async ({ page }) => {
  await openStart(page)
  await page.locator('.start-choice').nth(1).click()
  await page.getByRole('button', { name: /Maple Fork pump house, mended/ }).first().click()
  await settled(page)
  const strings = (): Promise<number> => page.evaluate(() => Object.values(window.stringyard.document().records).filter(({ kind }) => kind === 'string').length)
  const before = await strings()
  await expect(async () => {
    await page.getByRole('button', { name: 'More tools and settings' }).first().click({ timeout: 2000 })
    await page.getByRole('dialog').getByRole('button', { name: /^strings/ }).click({ timeout: 2000 })
    await expect(page.getByRole('button', { name: 'Add a string' })).toBeVisible({ timeout: 2000 })
  }).toPass()
  await page.getByRole('button', { name: 'Add a string' }).click()
  await settled(page)
  expect(await strings()).toBe(2)
  // Eight sticks shared evenly.
  await expect(page.locator('[data-string]')).toHaveCount(2)
  await expect(page.getByRole('dialog').getByRole('status')).toContainText('8 sticks in 2 strings')
  await page.getByRole('button', { name: 'Show string B' }).click()
  await settled(page)
  expect(await page.evaluate(() => window.stringyard.view().shownCase.stringId)).toBeDefined()
  await expect(page.locator('[data-string][aria-current]')).toContainText('String B')
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+z')
  await settled(page)
  expect(await strings()).toBe(before)
})
