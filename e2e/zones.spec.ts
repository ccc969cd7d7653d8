import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

const changes = (page: Page) => page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'zoneChange' ? [record] : [])))

test('a zone is opened from the list, made wider and another class with a reason, shows as changed, and is put back', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await page.locator('.title-more').click()
  await page.locator('.more-group button').filter({ hasText: 'zones of this stage' }).click()
  const list = page.locator('.zone-list')
  // A question mark after the name: something of it is not known.
  const name = (await list.locator('button strong').first().innerText()).replace(/ \?$/, '')
  await list.locator('button').first().click()
  await expect(page.getByRole('dialog', { name })).toBeVisible()

  // Without a reason nothing is written.
  await page.getByLabel('class', { exact: true }).selectOption({ label: 'AMBER: only the tasks named' })
  await page.getByRole('button', { name: 'Change the zone' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'Give the reason first.' })).toBeVisible()
  expect(await changes(page)).toHaveLength(0)

  const wider = page.getByLabel('wider all round by')
  await wider.fill('2 ft')
  await wider.press('Enter')
  await page.getByLabel('reason', { exact: true }).fill('narrow lot, flagman stands here')
  await page.getByLabel('reason', { exact: true }).press('Enter')
  await page.getByRole('button', { name: 'Change the zone' }).click()
  await expect(page.getByText('Changed here: narrow lot, flagman stands here')).toBeVisible()
  await settled(page)
  const [change] = await changes(page)
  expect(change).toMatchObject({ zoneClass: 'AMBER', reason: 'narrow lot, flagman stands here' })
  // 2 ft · 0.3048 m.
  expect(change?.marginM).toBeCloseTo(0.6096, 9)
  await page.getByRole('button', { name: 'All zones' }).click()
  await expect(list.locator('li').first()).toContainText('AMBER')
  await expect(list.locator('li').first()).toContainText('Changed here: narrow lot')

  await list.locator('button').first().click()
  await page.getByRole('button', { name: 'Put it back as worked out' }).click()
  await expect(page.getByText(/^Changed here/)).toHaveCount(0)
  expect(await changes(page)).toHaveLength(0)
})

test('a pipe is dropped, carried about and taken away again by keyboard alone, and each place is said', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await page.locator('.title-more').focus()
  await page.keyboard.press('Enter')
  const entry = page.locator('.more-group button').filter({ hasText: 'where would it roll?' })
  await entry.focus()
  await page.keyboard.press('Enter')
  const said = page.locator('.tool-hint[role="status"]')
  await expect(said).toContainText('press Enter')
  await expect(page.locator('[data-band="plan"]').first()).toBeFocused()
  const at = () => page.evaluate(() => window.stringyard.view().rollOff)
  await page.keyboard.press('Enter')
  await expect.poll(at).not.toBeNull()
  await expect(said).toContainText(/^It |^Nothing stops it/)
  const from = (await at())!
  // Half a metre a press, five with Shift; the sheet lies along the tape.
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => { const to = (await at())!; return Math.round(Math.hypot(to.xM - from.xM, to.yM - from.yM) * 1000) / 1000 }).toBe(5.5)
  await page.keyboard.press('Escape')
  await expect.poll(at).toBeNull()
  await expect(said).toContainText('press Enter')
  await page.keyboard.press('Escape')
  await expect(said).toHaveCount(0)
  // Looking changes nothing.
  expect(await page.evaluate(() => window.stringyard.view().tool)).toBeNull()
})
