import { expect, test as base, type Page } from '@playwright/test'

export type ShownFinding = { checkId: string; level: string; itemIds: readonly string[] }

/** Every test fails on an error of the page, a refused request and a violation of the content policy. */
export const test = base.extend<{ faults: string[] }>({
  faults: [async ({ page }, use) => {
    const faults: string[] = []
    page.on('pageerror', (error) => faults.push(`page error: ${error.message}`))
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(`console: ${message.text()}`)
    })
    page.on('request', (request) => {
      const { protocol, hostname } = new URL(request.url())
      if (/^https?:$/.test(protocol) && hostname !== 'localhost') faults.push(`asked another origin: ${request.url()}`)
    })
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event: SecurityPolicyViolationEvent) => console.error(`content policy: ${event.violatedDirective} ${event.blockedURI}`))
    })
    await use(faults)
    expect(faults).toEqual([])
  }, { auto: true }],
})
export { expect }

/** Waits until results and drawing belong to the document on screen. */
export const settled = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => window.stringyard?.isSettled() === true)
}

export const openStart = async (page: Page): Promise<void> => {
  await page.goto('/')
  await page.waitForFunction(() => window.stringyard !== undefined)
  await page.evaluate(() => document.fonts.ready.then(() => true))
}

export const itemAt = async (page: Page, label: string): Promise<{ x: number; y: number }> => {
  const at = await page.evaluate((name) => window.stringyard.itemToPage(name), label)
  if (at === null) throw new Error(`no item is called ${label}`)
  return at
}

export const dragBy = async (page: Page, from: { x: number; y: number }, dx: number, dy: number): Promise<void> => {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(from.x + dx / 2, from.y + dy / 2, { steps: 6 })
  await page.mouse.move(from.x + dx, from.y + dy, { steps: 6 })
  await page.mouse.up()
}

export const findings = (page: Page): Promise<readonly ShownFinding[]> => page.evaluate(() => window.stringyard.findings())
