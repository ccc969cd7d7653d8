import { expect, findings, openStart, settled, test } from './support.ts'
import type { Page } from '@playwright/test'

/** Opens the first sketch of the bypass: rollers 20 ft apart under a free nose. */
const openSketch = async (page: Page): Promise<void> => {
  await openStart(page)
  await page.getByRole('button', { name: /see an example|open an example|example/i }).first().click()
  await page.getByRole('button', { name: /Maple Fork pump house, first sketch/ }).click()
  await page.waitForFunction(() => window.stringyard.labels().includes('G10'))
  await settled(page)
}

const noseWarnings = async (page: Page): Promise<number> => (await findings(page)).filter(({ checkId, level }) => checkId === 'nose-landing' && level === 'FIX').length
const standsAndRollers = (page: Page): Promise<number> => page.evaluate(() => Object.values(window.stringyard.document().records).filter(({ kind }) => kind === 'stand' || kind === 'roller').length)

test('the planner places the stands: the nose warning goes, undo brings it back', async ({ page }) => {
  await openSketch(page)
  expect(await noseWarnings(page)).toBeGreaterThan(0)
  const note = page.locator('.note', { hasText: 'a free nose would hang' })
  await expect(note).toBeVisible()
  const before = await page.evaluate(() => JSON.stringify(window.stringyard.document()))

  await note.getByRole('button', { name: 'Place the stands' }).click()
  const card = page.getByRole('region', { name: 'Place the stands' })
  await expect(card.getByRole('button', { name: 'Accept' })).toBeVisible({ timeout: 20_000 })
  await expect(card).toContainText('G1 to G9 stand 20 ft 0 in apart')
  await expect(card).toContainText('on the jaw line')
  // A ghost only: nothing has changed.
  expect(await page.evaluate(() => JSON.stringify(window.stringyard.document()))).toBe(before)
  expect(await page.evaluate(() => window.stringyard.view().proposal?.isSearched)).toBe(true)

  await card.getByRole('button', { name: 'Accept' }).click()
  await settled(page)
  await expect(card).toBeHidden()
  expect(await noseWarnings(page)).toBe(0)
  await expect(note).toBeHidden()
  expect(await standsAndRollers(page)).toBeGreaterThan(11)

  await page.getByRole('button', { name: /undo.*place the stands/i }).click()
  await settled(page)
  expect(await page.evaluate(() => JSON.stringify(window.stringyard.document()))).toBe(before)
  expect(await noseWarnings(page)).toBeGreaterThan(0)
  await expect(note).toBeVisible()
})

test('a proposal is cleared without a trace, and made again when the layout changes under it', async ({ page }) => {
  await openSketch(page)
  const before = await page.evaluate(() => JSON.stringify(window.stringyard.document()))
  await page.locator('.gear-edge').getByRole('button', { name: 'Place the rollers' }).click()
  const card = page.getByRole('region', { name: 'Place the rollers' })
  await expect(card.getByRole('button', { name: 'Accept' })).toBeVisible({ timeout: 20_000 })
  await card.getByRole('button', { name: 'Clear' }).click()
  await expect(card).toBeHidden()
  expect(await page.evaluate(() => [JSON.stringify(window.stringyard.document()), window.stringyard.view().proposal])).toEqual([before, null])

  await page.locator('.gear-edge').getByRole('button', { name: 'Place the rollers' }).click()
  await expect(card.getByRole('button', { name: 'Accept' })).toBeVisible({ timeout: 20_000 })
  const revision = await page.evaluate(() => window.stringyard.view().proposal!.revision)
  await page.getByRole('button', { name: 'Work out the number of sticks' }).click()
  await settled(page)
  await page.waitForFunction((old) => (window.stringyard.view().proposal?.revision ?? old) > old, revision)
  // Eight sticks reach 40 ft farther than seven: more rollers than before.
  await expect(card.getByRole('button', { name: 'Accept' })).toBeVisible()
  await card.focus()
  await page.keyboard.press('Escape')
  await expect(card).toBeHidden()
})
