import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, itemAt, openStart, settled, test } from './support.ts'

const violations = async (page: Page): Promise<string[]> => {
  const { violations: found } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).analyze()
  return found.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ target }) => target.join(' ')).join(' | ')}`)
}

for (const [name, viewport] of Object.entries({ desktop: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } })) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`accessibility rules hold on a ${name} in ${colorScheme}`, async ({ page }) => {
      await page.setViewportSize(viewport)
      await page.emulateMedia({ colorScheme })
      await openStart(page)
      expect(await violations(page)).toEqual([])
      await page.getByRole('button', { name: /^A new yard/ }).click()
      expect(await violations(page)).toEqual([])
      await page.keyboard.press('Escape')
      await newYard(page)
      expect(await violations(page)).toEqual([])
      if (name === 'desktop') {
        const e2 = await itemAt(page, 'E2')
        await page.mouse.click(e2.x, e2.y)
        await settled(page)
        expect(await violations(page)).toEqual([])
        await page.getByRole('button', { name: 'items' }).click()
        expect(await violations(page)).toEqual([])
      }
    })
  }
}
