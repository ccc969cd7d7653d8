import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { t } from '../src/messages/ui/text.ts'
import { moreEntries } from '../src/ui/more/entries.ts'
import { expect, itemAt, openStart, settled, test } from './support.ts'

type Language = 'en' | 'es'
const themes = ['day', 'night', 'sun'] as const
const forms = { desktop: { width: 1440, height: 900 }, phone: { width: 390, height: 844 } } as const

/** Rules of A and AA with best practice, and every id once; of a dialog only itself, for the page behind is inert. */
const violations = async (page: Page, part?: string): Promise<string[]> => {
  const builder = new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
  const { violations: found } = await (part === undefined ? builder : builder.include(part)).analyze()
  const twice = await page.evaluate(() => [...document.querySelectorAll('[id]')].map(({ id }) => id).filter((id, i, all) => all.indexOf(id) !== i))
  return [...twice.map((id) => `id twice: ${id}`), ...found.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ target, failureSummary }) => `${target.join(' ')} (${(failureSummary ?? '').replace(/\s+/g, ' ').slice(0, 200)})`).join(' | ')}`)]
}

/** One way of looking at the app, as a person opens it. */
class Reader {
  readonly page: Page
  readonly language: Language
  readonly isPhone: boolean
  constructor(page: Page, language: Language, isPhone: boolean) {
    this.page = page
    this.language = language
    this.isPhone = isPhone
  }
  /** A cell of the title block; a phone has them under one line. */
  async cell(area: string, key: Parameters<typeof t>[1]): Promise<void> {
    if (!this.isPhone) return this.page.locator(`.title-${area}`).first().click()
    await this.page.locator('.title-line button').click()
    await this.page.locator('dialog .menu-list button').filter({ has: this.page.getByText(t(this.language, key), { exact: true }) }).click()
  }
  async more(panel: string): Promise<void> {
    await this.cell('more', 'moreTitle')
    const { label } = moreEntries.find((entry) => entry.panel === panel)!
    await this.page.locator('.more-group button').filter({ has: this.page.getByText(label[this.language], { exact: true }) }).click()
  }
  async set(label: string, choice: string): Promise<void> {
    await this.page.getByLabel(label, { exact: true }).selectOption({ label: choice })
  }
  async theme(theme: (typeof themes)[number]): Promise<void> {
    await this.more('settings')
    await this.set(t(this.language, 'theme'), t(this.language, `theme_${theme}`))
    await this.page.keyboard.press('Escape')
    await expect(this.page.locator('html')).toHaveAttribute('data-theme', theme)
  }
}

interface Screen {
  name: string
  /** What axe reads; left out, the whole page. */
  part?: string
  open: (reader: Reader) => Promise<void>
  close?: (reader: Reader) => Promise<void>
}

const PANEL = 'dialog[open]'
const fromMore = (panel: string, part?: string): Screen => ({ name: panel, ...(part === undefined ? {} : { part }), open: (reader) => reader.more(panel) })

const screens: readonly Screen[] = [
  {
    name: 'plan with a chosen item and its tag',
    open: async ({ page }) => {
      const label = await page.evaluate(() => window.stringyard.labels().find((one) => /^E\d/.test(one)) ?? '')
      const { x, y } = await itemAt(page, label)
      await page.mouse.click(x, y)
      await page.waitForFunction(() => window.stringyard.view().selection.length > 0)
    },
  },
  {
    name: 'run-through',
    open: async ({ page, language }) => {
      await page.getByRole('button', { name: language === 'en' ? /^run-through/ : /^ensayo/ }).click()
      await expect(page.locator('.run-stage')).toBeVisible()
    },
  },
  {
    name: 'what if',
    open: async ({ page, language }) => page.getByRole('button', { name: t(language, 'whatIfOpen') }).click(),
    close: async ({ page, language }) => page.getByRole('button', { name: t(language, 'whatIfOpen') }).click(),
  },
  fromMore('critical'), fromMore('asSet'), fromMore('compare'),
  { name: 'talk', part: '.talk', open: (reader) => reader.more('talk') },
  { name: 'setting out by tape', part: PANEL, open: (reader) => reader.more('tape') },
  fromMore('bow', PANEL), fromMore('strings', PANEL), fromMore('archPit', PANEL), fromMore('clock', PANEL), fromMore('fusionCard', PANEL), fromMore('mobilising', PANEL), fromMore('gear', PANEL), fromMore('settings', PANEL), fromMore('keys', PANEL), fromMore('about', PANEL), fromMore('levels', PANEL),
  {
    name: 'one zone', part: PANEL,
    open: async (reader) => {
      await reader.more('zones')
      await reader.page.locator('.zone-list button').first().click()
      await expect(reader.page.locator('.zone-change')).toBeVisible()
    },
  },
  { name: 'share and crew sheet', part: PANEL, open: (reader) => reader.cell('share', 'share') },
  { name: 'image', part: PANEL, open: (reader) => reader.cell('image', 'image') },
  { name: 'layouts', part: PANEL, open: (reader) => reader.cell('saved', 'layoutsTitle') },
  { name: 'limits', part: PANEL, open: (reader) => reader.cell('limits', 'limitsTitle') },
  { name: 'job', part: PANEL, open: (reader) => reader.cell('title', 'jobTitle') },
  { name: 'more', part: PANEL, open: (reader) => reader.cell('more', 'moreTitle') },
]

/** Esc until neither dialog, list nor mode is left; what was chosen goes too. */
const backToSheet = async ({ page }: Reader): Promise<void> => {
  for (let times = 0; times < 4; times += 1) {
    const { panel, selection, runThrough } = await page.evaluate(() => window.stringyard.view())
    if (panel === null && selection.length === 0 && !runThrough && (await page.locator('dialog[open]').count()) === 0) return
    if ((await page.locator('dialog[open]').count()) === 0 && panel !== null) await page.locator('.area-items').getByRole('button', { name: /^(close|cerrar)/i }).first().click()
    else await page.keyboard.press('Escape')
  }
  expect(await page.evaluate(() => window.stringyard.view().panel)).toBeNull()
}

let turn = 0
for (const [form, viewport] of Object.entries(forms)) {
  for (const language of ['en', 'es'] as const) {
    // Every screen in every language and form; its theme changes from one to the next, so that two readers see it in two.
    const first = turn++
    test(`every mode and panel keeps the accessibility rules on a ${form} in ${language === 'en' ? 'English' : 'Spanish'}, by day, by night and in full sun`, async ({ page }) => {
      test.setTimeout(150_000)
      await page.setViewportSize(viewport)
      await openStart(page)
      await page.locator('.start-choice').nth(1).click()
      await page.getByRole('button', { name: /Maple Fork pump house, mended/ }).first().click()
      await settled(page)
      await expect(page.locator('.yard')).toBeVisible()
      const english = new Reader(page, 'en', form === 'phone')
      await english.more('settings')
      await english.set(t('en', 'language'), language === 'en' ? 'English' : 'Español')
      await page.keyboard.press('Escape')
      const reader = new Reader(page, language, form === 'phone')
      const found: string[] = []
      for (const [i, theme] of themes.entries()) {
        await reader.theme(theme)
        for (const screen of screens.filter((_, at) => (at + first) % themes.length === i)) {
          await screen.open(reader)
          if (screen.part !== undefined) await expect(page.locator(screen.part).first()).toBeVisible()
          found.push(...(await violations(page, screen.part)).map((one) => `${screen.name}, ${theme}: ${one}`))
          await screen.close?.(reader)
          await backToSheet(reader)
        }
      }
      expect(found).toEqual([])
    })
  }
}
