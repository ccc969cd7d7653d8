import type { Page } from '@playwright/test'
import { settled } from './support.ts'

/** Chooses an option by what it says. */
export const pick = async (page: Page, label: string, words: RegExp): Promise<void> => {
  const select = page.getByLabel(label, { exact: true })
  // Panels are fetched when they are first opened.
  await select.locator('option').nth(1).waitFor({ state: 'attached' })
  const options = await select.locator('option').allInnerTexts()
  const index = options.findIndex((option) => words.test(option))
  if (index < 0) throw new Error(`${label} offers ${options.join(', ')}, nothing like ${String(words)}`)
  await select.selectOption({ index })
}

/** Counts what the person does: a tap, a drag, a key chord, or one field confirmed each count one. */
export class Actions {
  readonly page: Page
  count = 0
  constructor(page: Page) {
    this.page = page
  }
  async tap(name: string | RegExp): Promise<void> {
    await this.page.getByRole('button', { name }).first().click()
    this.count++
  }
  async choose(label: string, words: RegExp): Promise<void> {
    await pick(this.page, label, words)
    this.count++
  }
  async fill(label: string | RegExp, text: string): Promise<void> {
    await this.page.getByLabel(label).fill(text)
    this.count++
  }
}

/** The yard of the job map's first scenario, from the short form, with the usual set-up accepted. */
export const newYard = async (page: Page, { accept = true } = {}): Promise<Actions> => {
  const a = new Actions(page)
  await a.tap(/^A new yard/)
  await a.choose('sizing', /IPS/)
  await a.choose('size', /^10 in/)
  await a.choose('DR', /^(DR )?17$/)
  await a.choose('class', /PE4710/)
  await a.fill('length needed', '280 ft')
  await a.fill('stick length', '40 ft')
  await a.fill('length of the strip', '420 ft')
  await a.fill('width of the strip', '70 ft')
  await a.fill(/fall along/, '1 %')
  await a.fill('name of the layout', 'Maple Fork')
  await a.tap('Draw it')
  await page.waitForFunction(() => window.stringyard.labels().includes('M'))
  if (accept) await a.tap('Accept')
  await settled(page)
  return a
}
