import { readFileSync, writeFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

test.use({ serviceWorkers: 'allow' })

/** Waits until the app's files lie on the device. */
const isPutIn = (page: Page): Promise<void> => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.ready
  if (registration.active?.state !== 'activated') await new Promise((resolve) => registration.active?.addEventListener('statechange', resolve))
})

test('from the second load on the whole app works without signal', async ({ page, context }) => {
  await openStart(page)
  await isPutIn(page)
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

test('a new version waits until it is asked for, and breaks no window that is open', async ({ page, context }) => {
  const [worker, html] = [readFileSync('dist/sw.js', 'utf8'), readFileSync('dist/index.html', 'utf8')]
  const version = (of: Page): Promise<string | null> => of.evaluate(() => document.querySelector('meta[name="version-of-test"]')?.getAttribute('content') ?? null)
  await openStart(page)
  await isPutIn(page)
  await page.reload()
  await newYard(page, { accept: false })
  await page.getByRole('button', { name: 'Clear' }).click()
  const other = await context.newPage()
  await openStart(other)
  try {
    writeFileSync('dist/sw.js', worker.replace(/stringyard-[0-9a-f]{16}/, 'stringyard-0000000000000002'))
    writeFileSync('dist/index.html', html.replace('<meta charset', '<meta name="version-of-test" content="2" /><meta charset'))
    await page.evaluate(() => navigator.serviceWorker.getRegistration().then((registration) => registration?.update()))
    await expect(page.getByText('New version: reload when you are ready.')).toBeVisible()
    // Loading anew without asking is still the old version, whole.
    await other.reload()
    await other.waitForFunction(() => window.stringyard !== undefined)
    expect(await version(other)).toBeNull()
    await page.getByRole('button', { name: 'Reload' }).click()
    await page.waitForFunction(() => document.querySelector('meta[name="version-of-test"]') !== null && window.stringyard !== undefined)
    expect(await version(page)).toBe('2')
    // What was open is open again; the other window goes on with its own version, also with parts it had not fetched yet.
    await expect(page.locator('.yard')).toBeVisible()
    await context.setOffline(true)
    await other.locator('.yard').waitFor()
    await other.locator('.title-more').click()
    await expect(other.getByRole('dialog')).toBeVisible()
    expect(await version(other)).toBeNull()
  } finally {
    writeFileSync('dist/sw.js', worker)
    writeFileSync('dist/index.html', html)
  }
})

test('it can be installed: name, start, icons of their sizes', async ({ page }) => {
  await openStart(page)
  const manifest = await page.evaluate(async () => {
    const address = document.querySelector<HTMLLinkElement>('link[rel="manifest"]')!.href
    const read = (await (await fetch(address)).json()) as { name: string; start_url: string; display: string; icons: { src: string; sizes: string; purpose: string }[] }
    const sizes = await Promise.all(read.icons.filter(({ sizes: said }) => said !== 'any').map(async ({ src, sizes: said }) => {
      const image = await createImageBitmap(await (await fetch(new URL(src, address))).blob())
      return `${said} is ${image.width}x${image.height}`
    }))
    return { ...read, sizes }
  })
  expect(manifest).toMatchObject({ name: 'Stringyard', start_url: './', display: 'standalone' })
  expect(manifest.sizes).toEqual(['192x192 is 192x192', '512x512 is 512x512', '512x512 is 512x512'])
  expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true)
  const session = await page.context().newCDPSession(page)
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors')
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([])
})
