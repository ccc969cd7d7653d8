import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

const violations = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze()).violations.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ target }) => target.join(' ')).join(' | ')}`)

const asSet = (page: Page) => page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'asSet' ? [record] : [])))
const lockedCount = (page: Page): Promise<number> => page.evaluate(() => Object.values(window.stringyard.document().records).filter((record) => 'locked' in record && record.locked).length)
const heading = (page: Page) => page.locator('#tapemode-heading')

const openTape = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^(setting out by tape|replanteo con cinta)/ }).click()
  await expect(page.locator('.tapemode')).toBeVisible()
}
/** On to a mark by its label. */
const onTo = async (page: Page, label: string): Promise<void> => {
  for (let marks = 0; marks < 60 && !(await heading(page).textContent())?.startsWith(label); marks += 1) await page.locator('.tapemode-next').click()
  await expect(heading(page)).toContainText(label)
}

test.beforeEach(async ({ page }) => {
  await openStart(page)
  await newYard(page)
  await settled(page)
})

test('setting out with one hand on a phone: distances from the nail, a tick, a height as measured, what comes of it, and the lock', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await openTape(page)
  await expect(page.locator('.tapemode-distance')).toHaveText('at the nail')
  await onTo(page, 'E1')
  // The yard's first stand: 20 ft from the jaws, as the usual set-up has it.
  await expect(page.locator('.tapemode-side')).toHaveText('exit')
  await expect(page.locator('.tapemode-distance')).toHaveText(/^\d+ ft \d+ in$/)
  await expect(page.locator('.tapemode-figures')).toContainText('bottom of pipe above ground')
  await expect(page.locator('.tapemode-figures')).toContainText('±')
  await expect(page.locator('.tapemode-jaws')).toContainText('jaws as planned C')
  const planned = await page.locator('.tapemode-jaws').textContent()
  await page.getByRole('textbox', { name: 'as measured' }).fill('20 in')
  await page.keyboard.press('Enter')
  await expect(page.locator('.tapemode-measured')).toContainText('typed 20 in, read as 20 in')
  await expect(page.locator('.tapemode-measured')).toContainText('off:')
  await expect(page.locator('.tapemode-jaws')).toContainText('jaws now C')
  await expect(page.locator('.tapemode-jaws')).toContainText('in the plan')
  expect(await page.locator('.tapemode-jaws').textContent()).not.toBe(planned)
  await page.locator('.tapemode-tick').click()
  await expect(page.locator('.tapemode-tick')).toHaveAttribute('aria-pressed', 'true')
  // 20 in are 0.508 m.
  expect(await asSet(page)).toMatchObject([{ saddleM: 0.508, isTicked: true }])
  while (await page.locator('.tapemode-tick').isVisible()) await page.locator('.tapemode-next').click()
  await expect(page.locator('.tapemode')).toContainText('Measured and out of tolerance:')
  await page.getByRole('button', { name: 'lock what is staked' }).click()
  await expect(page.locator('.tapemode')).toContainText('All that is staked is locked.')
  expect(await lockedCount(page)).toBe(1)
  await page.locator('.tapemode-next').click()
  await expect(page.locator('.tapemode')).toBeHidden()
})

test('by keys alone, in Spanish, and opened again at the mark it was left at', async ({ page }) => {
  await page.locator('.title-more').click()
  await page.getByRole('button', { name: /^settings/ }).click()
  await page.getByLabel('Language').selectOption({ label: 'Español' })
  await page.keyboard.press('Escape')
  await openTape(page)
  await expect(heading(page)).toBeFocused()
  await page.keyboard.press(' ')
  await expect(page.locator('.tapemode-tick')).toHaveAttribute('aria-pressed', 'true')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Enter')
  await expect(page.locator('.tapemode-head')).toContainText(/marca 3 de \d+/)
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('Escape')
  await expect(page.locator('.tapemode')).toBeHidden()
  await openTape(page)
  await expect(page.locator('.tapemode-head')).toContainText(/marca 2 de \d+ · 1 de \d+ colocadas/)
})

test('wet mode: the plan is frozen, setting out goes on, and only a held button leaves it', async ({ page }) => {
  await page.locator('.sheet-wet').click()
  await expect(page.locator('.wet-bar')).toContainText('the plan is frozen')
  for (const name of ['show all', 'talk', 'set out']) {
    const box = await page.locator('.sheet-buttons button', { hasText: name }).boundingBox()
    expect([name, Math.min(box!.height, box!.width) >= 64]).toEqual([name, true])
  }
  await expect(page.locator('.gear-edge')).toBeHidden()
  // A drag on the plan moves nothing.
  const before = await page.evaluate(() => JSON.stringify(window.stringyard.document()))
  const at = await page.evaluate(() => window.stringyard.itemToPage('E1'))
  await page.mouse.move(at!.x, at!.y)
  await page.mouse.down()
  await page.mouse.move(at!.x + 80, at!.y + 10, { steps: 5 })
  await page.mouse.up()
  expect(await page.evaluate(() => JSON.stringify(window.stringyard.document()))).toBe(before)
  await openTape(page)
  await page.locator('.tapemode-tick').click()
  expect(await asSet(page)).toMatchObject([{ isTicked: true }])
  await page.keyboard.press('Escape')
  // A drop of rain: pressed and let go at once.
  const leave = page.getByRole('button', { name: 'hold for a second to leave wet mode' })
  await leave.click()
  await leave.focus()
  await page.keyboard.press('Enter')
  await expect(page.locator('.wet-bar')).toBeVisible()
  await page.keyboard.down('Enter')
  await expect(page.locator('.wet-bar')).toBeHidden()
  await page.keyboard.up('Enter')
  await page.locator('.sheet-wet').click()
  const box = await leave.boundingBox()
  await page.mouse.move(box!.x + box!.width / 2, box!.y + box!.height / 2)
  await page.mouse.down()
  await expect(page.locator('.wet-bar')).toBeHidden()
  await page.mouse.up()
  await expect(page.locator('.gear-edge')).toBeVisible()
})

test('in wet mode what takes a layout away is held, not tapped', async ({ page }) => {
  await page.locator('.sheet-wet').click()
  await page.locator('.title-saved').click()
  await page.getByRole('dialog').getByRole('button', { name: 'Delete' }).first().click()
  const sure = page.getByRole('alertdialog').locator('.hold-button')
  await sure.click()
  await expect(page.getByRole('alertdialog')).toBeVisible()
  await sure.focus()
  await page.keyboard.down(' ')
  await expect(page.getByRole('alertdialog')).toBeHidden()
  await page.keyboard.up(' ')
})

for (const theme of ['day', 'sun', 'night'] as const) {
  test(`tape mode and wet mode stand up to axe, ${theme}`, async ({ page }) => {
    await page.locator('.title-more').click()
    await page.getByRole('button', { name: /^settings/ }).click()
    await page.getByLabel('light', { exact: true }).selectOption({ label: { day: 'day', night: 'night', sun: 'full sun' }[theme] })
    await page.keyboard.press('Escape')
    await openTape(page)
    expect(await violations(page)).toEqual([])
    await onTo(page, 'E1')
    await expect(page.locator('.tapemode-jaws')).not.toHaveAttribute('data-stale', 'true')
    expect(await violations(page)).toEqual([])
    while (await page.locator('.tapemode-tick').isVisible()) await page.locator('.tapemode-next').click()
    expect(await violations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.locator('.sheet-wet').click()
    await expect(page.locator('.wet-bar')).toBeVisible()
    expect(await violations(page)).toEqual([])
  })
}
