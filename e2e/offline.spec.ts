import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

test.use({ serviceWorkers: 'allow' })

test('from the second load on the whole app works without signal', async ({ page, context }) => {
  await openStart(page)
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    if (registration.active?.state !== 'activated') await new Promise((resolve) => registration.active?.addEventListener('statechange', resolve))
  })
  await page.reload()
  await context.setOffline(true)
  await page.reload()
  await page.waitForFunction(() => window.stringyard !== undefined)
  await newYard(page, { accept: false })
  await page.getByRole('button', { name: 'Clear' }).click()
  await settled(page)
  await page.getByRole('button', { name: 'Why?' }).first().click()
  await expect(page.getByRole('dialog')).toContainText(/limit|source|house rule/i)
  await page.keyboard.press('Escape')
  await page.locator('.title-image').click()
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'PNG 1×' }).click()
  expect((await download).suggestedFilename()).toMatch(/\.png$/)
  await settled(page)
})
