import AxeBuilder from '@axe-core/playwright'
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { expect, openStart, settled, test } from './support.ts'

/** Opens an example with nothing chosen. */
const openSketch = async (page: Page): Promise<void> => {
  await openStart(page)
  await page.locator('.start-choice').nth(1).click()
  await page.getByRole('button', { name: /Maple Fork.*first sketch/s }).first().click()
  // Settled is also the empty sheet behind the start page.
  await page.locator('.yard').waitFor()
  await settled(page)
}

const levels = (page: Page): Promise<string[]> => page.evaluate(() => window.stringyard.findings().map(({ key, level, measured }) => `${level} ${key} ${measured?.value ?? ''}`))
const documentText = (page: Page): Promise<string> => page.evaluate(() => JSON.stringify(window.stringyard.document()))

const imageHash = async (page: Page): Promise<string> => {
  await page.getByRole('button', { name: 'image', exact: true }).click()
  const saved = page.waitForEvent('download')
  await page.getByRole('dialog').getByRole('button', { name: /1×|save/i }).first().click()
  const path = await (await saved).path()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  return createHash('sha256').update(readFileSync(path)).digest('hex')
}

test.describe('what if', () => {
  test('warmer by a tap changes a finding; back to the plan all is as before, with nothing to undo', async ({ page }) => {
    await openSketch(page)
    const [plan, file] = [await levels(page), await documentText(page)]
    await page.getByRole('button', { name: /^what if/ }).click()
    const band = page.getByRole('region', { name: 'case shown' })
    await band.getByRole('button', { name: /20 °F warmer/ }).click()
    await expect(band.getByRole('status')).toContainText('What if: 20 °F warmer')
    await settled(page)
    const warm = await levels(page)
    expect(warm).not.toEqual(plan)
    // A softer pipe droops farther.
    const droop = (all: string[]): number => Number(all.find((line) => line.includes('face-gap'))?.split(' ').at(-1))
    expect(droop(warm)).toBeGreaterThan(droop(plan))
    expect(await documentText(page)).toBe(file)
    await expect(page.locator('.sheet-undo')).toBeDisabled()
    await band.getByRole('button', { name: 'back to the plan' }).click()
    await settled(page)
    await expect(band).toHaveCount(0)
    expect(await levels(page)).toEqual(plan)
    expect(await documentText(page)).toBe(file)
    await expect(page.locator('.sheet-undo')).toBeDisabled()
  })

  test('taps add up, the stand taken away leaves plan and side view, and a second tap brings it back', async ({ page }) => {
    await openSketch(page)
    const labels = await page.evaluate(() => window.stringyard.labels())
    await page.getByRole('button', { name: /^what if/ }).click()
    const band = page.getByRole('region', { name: 'case shown' })
    await band.getByRole('button', { name: /missing/ }).click()
    await band.getByRole('button', { name: /wind 30 mph/ }).click()
    await expect(band.getByRole('status')).toContainText(/What if: [A-Z]+\d+ missing · wind 30 mph/)
    await settled(page)
    const left = await page.evaluate(() => window.stringyard.labels())
    const gone = labels.filter((label) => label !== '' && !left.includes(label))
    expect(gone).toHaveLength(1)
    await expect(band.getByRole('status')).toContainText(`${gone[0]} missing`)
    expect((await levels(page)).some((line) => line.startsWith('FIX wind-chock'))).toBe(true)
    await band.getByRole('button', { name: /missing/ }).click()
    await settled(page)
    await expect(band.getByRole('status')).not.toContainText('missing')
    expect(await page.evaluate(() => window.stringyard.labels())).toEqual(labels)
  })

  test('the image is the same with a what-if on the screen as without, and a reload comes back to the plan', async ({ page }) => {
    // The page of the image carries the time of day.
    await page.clock.setFixedTime(new Date('2026-03-05T10:00:00'))
    await openSketch(page)
    const plan = await imageHash(page)
    await page.getByRole('button', { name: /^what if/ }).click()
    await page.getByRole('region', { name: 'case shown' }).getByRole('button', { name: /missing/ }).click()
    await settled(page)
    expect(await imageHash(page)).toBe(plan)
    await page.reload()
    await page.waitForFunction(() => window.stringyard !== undefined)
    await settled(page)
    await expect(page.getByRole('region', { name: 'case shown' })).toHaveCount(0)
  })

  test('an opened note shows low, likely and high, and says between which levels the finding stands', async ({ page }) => {
    await openSketch(page)
    await page.getByRole('button', { name: /^what if/ }).click()
    await page.getByRole('region', { name: 'case shown' }).getByRole('button', { name: /20 °F warmer/ }).click()
    await settled(page)
    await page.locator('.note[data-key^="jaw-effort@exit"] .note-main, .note[data-key="face-gap"] .note-main').first().click()
    await expect(page.locator('.note .band-figure')).toContainText(/low .*likely .*high /)
    await expect(page.locator('.note .band-figure')).toContainText(/by the range of the modulus|Range by the modulus/)
  })
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`accessibility rules hold with a what-if and the band of a note on the screen in ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    await openSketch(page)
    await page.getByRole('button', { name: /^what if/ }).click()
    await page.getByRole('region', { name: 'case shown' }).getByRole('button', { name: /missing/ }).click()
    await expect(page.getByRole('region', { name: 'case shown' }).getByRole('status')).toContainText('missing')
    await settled(page)
    await page.locator('.note[data-key="jaw-effort@exit"] .note-main, .note[data-key="face-gap"] .note-main').first().click()
    await expect(page.locator('.note .band-figure')).toBeVisible()
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ target }) => target.join(' ')).join(' | ')}`)).toEqual([])
  })
}
