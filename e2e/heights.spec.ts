import { newYard } from './newYard.ts'
import { expect, findings, openStart, settled, test } from './support.ts'

test.beforeEach(async ({ page }) => {
  await openStart(page)
  await newYard(page)
})

test('type 28 in at E2: the findings change, and plan and as set are both shown', async ({ page }) => {
  await page.locator('[data-band="plan"]').focus()
  await page.keyboard.press('a')
  const list = page.getByRole('region', { name: 'Heights as set' })
  const field = list.getByLabel('E2 as set', { exact: true })
  const planned = (await findings(page)).map(({ checkId, level }) => `${level} ${checkId}`)
  await field.fill('28 in')
  await field.press('Enter')
  await settled(page)
  await expect(list).toContainText('low')
  // Measured heights do not touch the plan.
  const saddle = await page.evaluate(() => Object.values(window.stringyard.document().records).filter(({ kind }) => kind === 'asSet').length)
  expect(saddle).toBe(1)
  expect((await findings(page)).filter(({ checkId }) => checkId === 'as-set').length).toBeGreaterThan(0)
  await list.getByRole('button', { name: 'work it out as set' }).click()
  await settled(page)
  await expect(page.getByText('As set: heights as they were measured')).toBeVisible()
  const asSet = (await findings(page)).map(({ checkId, level }) => `${level} ${checkId}`)
  expect(asSet).not.toEqual(planned)
  // What differs from the plan says so beside its level, or stands among what the plan had.
  await expect(page.locator('.planned-level, .gone-notes').first()).toBeAttached()
  // One step of undo takes the measured height back, nothing else.
  await page.getByRole('button', { name: /^undo: as set/ }).click()
  await settled(page)
  expect(await page.evaluate(() => Object.values(window.stringyard.document().records).filter(({ kind }) => kind === 'asSet').length)).toBe(0)
  await page.getByRole('button', { name: 'back to the plan' }).first().click()
  await settled(page)
  expect((await findings(page)).map(({ checkId, level }) => `${level} ${checkId}`)).toEqual(planned)
})

test('which stand must not move: ranked in a list, an edit greys it until it is worked out again, the amount can be typed', async ({ page }) => {
  await page.locator('[data-band="plan"]').focus()
  await page.keyboard.press('g')
  const list = page.getByRole('region', { name: 'Which stand must not move?' })
  const rows = list.locator('ol .critical-row')
  await expect(rows.first()).toBeVisible()
  await expect(list.locator('.critical-body')).toHaveAttribute('data-stale', 'false')
  await expect(rows.first()).toContainText('missing: ')
  await expect(rows.first()).toContainText('C ')
  await rows.first().click()
  expect((await page.evaluate(() => window.stringyard.view())).selection).toHaveLength(1)
  const before = await list.locator('.critical-body').innerText()
  await list.getByLabel('let down by').fill('2 in')
  await list.getByLabel('let down by').press('Enter')
  await expect(list.locator('.critical-body')).toHaveAttribute('data-stale', 'false')
  await expect(list.locator('.critical-body')).toContainText('2 in lower')
  expect(await list.locator('.critical-body').innerText()).not.toBe(before)
  await list.getByRole('button', { name: 'done' }).click()
  await expect(list).toHaveCount(0)
})
