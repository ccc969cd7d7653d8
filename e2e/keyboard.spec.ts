import type { Locator, Page } from '@playwright/test'
import { expect, openStart, settled, test } from './support.ts'
import { newYard } from './newYard.ts'

/** Goes to a control as the keyboard does: by Tab. */
const tabTo = async (page: Page, target: Locator): Promise<void> => {
  for (let i = 0; i < 140; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('Tab does not reach it')
}

const stands = (page: Page): Promise<number[]> => page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'stand' && record.place.at === 'onRun' ? [record.place.runningM] : [])).sort((a, b) => a - b))

test('a stand is placed, moved and removed by keyboard alone', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await tabTo(page, page.getByRole('button', { name: 'items' }))
  await page.keyboard.press('Enter')
  const list = page.locator('.item-list')
  await expect(list).toBeVisible()

  await tabTo(page, list.getByLabel('distance'))
  await page.keyboard.type("52' 6\"")
  await page.keyboard.press('Enter')
  await tabTo(page, list.getByRole('button', { name: /^place it/i }))
  await page.keyboard.press('Enter')
  await settled(page)
  expect((await stands(page)).map((runningM) => Math.round((runningM / 0.3048) * 10) / 10)).toEqual([20, 35, 52.5])

  const third = list.getByRole('option', { name: /52 ft 6 in/ })
  await list.getByRole('option').first().focus()
  for (let i = 0; i < 12 && !(await third.evaluate((element) => element === document.activeElement)); i++) await page.keyboard.press('ArrowDown')
  await expect(third).toBeFocused()
  await page.keyboard.press('Space')
  await tabTo(page, list.getByLabel(/along/i).first())
  await page.keyboard.type('infeed 2 ft 6 in')
  await page.keyboard.press('Enter')
  await settled(page)
  expect(((await stands(page))[2] ?? 0) / 0.3048).toBeCloseTo(50, 6)

  await list.getByRole('option').first().focus()
  const moved = list.getByRole('option', { name: /50 ft 0 in/ })
  for (let i = 0; i < 12 && !(await moved.evaluate((element) => element === document.activeElement)); i++) await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Delete')
  await settled(page)
  expect(await stands(page)).toHaveLength(2)
  await page.keyboard.press('Control+z')
  await settled(page)
  expect(await stands(page)).toHaveLength(3)
})
