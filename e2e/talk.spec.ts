import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, openStart, settled, test } from './support.ts'

const violations = async (page: Page): Promise<string[]> =>
  (await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']).options({ rules: { 'color-contrast-enhanced': { enabled: true } } }).analyze()).violations.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ target }) => target.join(' ')).join(' | ')}`)

/** Rows of the log and the spots of the crew, read only. */
const talks = (page: Page) => page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'release' && record.what === 'talk' ? [record] : [])))
const step = (page: Page): Promise<string | null> => page.locator('.talk-body').getAttribute('data-step')

const openTalk = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^(toolbox talk|charla de seguridad)/ }).click()
  await expect(page.locator('.talk')).toBeVisible()
}

/** On to a page by the big button; a talk has no more than some thirty pages. */
const onTo = async (page: Page, name: string): Promise<void> => {
  for (let pages = 0; pages < 40 && (await step(page)) !== name; pages += 1) await page.locator('.talk-next').click()
  expect(await step(page)).toBe(name)
}

test.beforeEach(async ({ page }) => {
  await openStart(page)
  await newYard(page)
})

test('a talk in Spanish: a spot is moved out of a zone, names are signed, and the next talk says what changed', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await openTalk(page)
  await page.getByRole('button', { name: /^fuse/ }).click()
  await page.getByRole('button', { name: 'Español', exact: true }).click()
  await page.getByRole('button', { name: 'empezar la charla' }).click()
  await expect(page.getByRole('heading', { name: '¿Qué vamos a hacer?' })).toBeFocused()
  await onTo(page, 'zone')
  await expect(page.locator('.talk').getByText(/zona 1 de \d+/).first()).toBeVisible()
  await expect(page.locator('.talk-plan svg')).toBeVisible()
  await onTo(page, 'stand')
  await page.getByRole('button', { name: 'poner los puestos de costumbre' }).click()
  await expect(page.locator('.talk').getByText('libre', { exact: false }).first()).toBeVisible()
  const moves = await page.locator('.talk-spots > li').count()
  expect(moves).toBeGreaterThan(1)
  // Somebody points at a place by the jaws: the zone is told, and the nearest clear place is one tap.
  await page.locator('.talk-spots > li').filter({ hasText: 'ayudante de salida' }).getByRole('button', { name: /poner en el dibujo$/ }).click()
  const red = await page.evaluate(() => {
    const machine = document.querySelector('.talk-plan svg > g path[stroke="var(--red)"]')!.getBoundingClientRect()
    return { x: machine.x + machine.width / 2, y: machine.y + machine.height / 2 }
  })
  await page.mouse.click(red.x, red.y)
  const exitHand = page.locator('.talk-spots > li').filter({ hasText: 'ayudante de salida' })
  await expect(exitHand).toHaveAttribute('data-class', 'RED')
  await expect(exitHand).toContainText('Dentro de')
  await exitHand.getByRole('button', { name: /lugar libre más cercano$/ }).click()
  await expect(exitHand).toHaveAttribute('data-class', 'clear')
  await onTo(page, 'stops')
  await expect(page.locator('.talk').getByText('Cualquiera dice STOP o ALTO.', { exact: false })).toBeVisible()
  await onTo(page, 'changed')
  await expect(page.locator('.talk').getByText('Es la primera charla guardada en este plano.')).toBeVisible()
  await onTo(page, 'wrong')
  await page.getByLabel('Dónde nos reunimos').fill('portón norte')
  await page.keyboard.press('Enter')
  await onTo(page, 'question')
  await page.getByLabel('lo que dijeron').fill('¿Quién cuida el paso?')
  await onTo(page, 'sign')
  await expect(page.getByRole('button', { name: 'firmar' })).toBeDisabled()
  for (const name of ['Ana', 'Luis']) {
    await page.getByLabel('nombre').fill(name)
    await page.keyboard.press('Enter')
  }
  await page.getByRole('button', { name: 'firmar' }).click()
  await expect(page.locator('.talk').getByText(/Guardada en el registro: 2 nombres/)).toBeVisible()
  expect(await talks(page)).toMatchObject([{ what: 'talk', stageId: 'fuse:1', language: 'es', people: ['Ana', 'Luis'], text: '¿Quién cuida el paso?' }])
  await page.getByRole('button', { name: 'listo' }).click()
  await expect(page.locator('.talk')).toHaveCount(0)
  // Undo takes the place back, not the talk.
  await page.getByRole('button', { name: /^undo/ }).click()
  await settled(page)
  expect(await talks(page)).toHaveLength(1)
  await openTalk(page)
  await page.getByRole('button', { name: 'Español', exact: true }).click()
  await expect(page.locator('.talk').getByText('El plano cambió desde entonces.')).toBeVisible()
  await onTo(page, 'changed')
  // The one thing edited after the sign-off: the place to meet was taken back by undo.
  await expect(page.locator('.talk-list')).toContainText('punto de reunión: portón norte → nada', { ignoreCase: true })
})

test('keys turn the pages, Esc closes, and the talk goes on where it was', async ({ page }) => {
  await openTalk(page)
  for (const key of ['ArrowRight', 'ArrowRight', 'Enter']) await page.keyboard.press(key)
  const at = await page.locator('.talk-where').innerText()
  expect(await step(page)).toBe('zone')
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('ArrowRight')
  expect(await page.locator('.talk-where').innerText()).toBe(at)
  await page.keyboard.press('Escape')
  await expect(page.locator('.talk')).toHaveCount(0)
  await openTalk(page)
  expect(await page.locator('.talk-where').innerText()).toBe(at)
})

test('it works with no signal, is readable, and its targets are 48 px', async ({ page, context }) => {
  for (const [viewport, leastSentencePx, leastPx] of [[{ width: 390, height: 844 }, 27, 20], [{ width: 1180, height: 820 }, 48, 24], [{ width: 820, height: 1180 }, 48, 24]] as const) {
    await page.setViewportSize(viewport)
    await openTalk(page)
    await context.setOffline(true)
    for (;;) {
      const measured = await page.evaluate(() => {
        const shown = [...document.querySelectorAll<HTMLElement>('.talk *')].filter((element) => element.checkVisibility() && element.closest('svg') === null && [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== '') && element.closest('.fraction') === null)
        return {
          text: shown.map((element) => ({ px: parseFloat(getComputedStyle(element).fontSize), words: element.textContent })),
          sentences: [...document.querySelectorAll('.talk-sentence')].map((element) => parseFloat(getComputedStyle(element).fontSize)),
          small: [...document.querySelectorAll<HTMLElement>('.talk button, .talk input, .talk textarea')].map((element) => ({ box: element.getBoundingClientRect(), words: element.textContent })).filter(({ box }) => box.width < 48 || box.height < 48).map(({ words }) => words),
          isWide: document.querySelector('.talk-body')!.scrollWidth > document.querySelector('.talk-body')!.clientWidth,
        }
      })
      expect(measured.text.filter(({ px }) => px < leastPx)).toEqual([])
      expect(measured.sentences.filter((px) => px < leastSentencePx)).toEqual([])
      expect(measured.small).toEqual([])
      expect(measured.isWide).toBe(false)
      if ((await step(page)) === 'sign') break
      await page.locator('.talk-next').click()
    }
    for (;;) {
      if ((await step(page)) === 'choose') break
      await page.locator('.talk-back').click()
    }
    await page.keyboard.press('Escape')
    await context.setOffline(false)
  }
})

for (const theme of ['day', 'night', 'sun'] as const) {
  test(`accessibility rules hold on every page in both languages in the ${theme} theme`, async ({ page }) => {
    await page.getByRole('button', { name: /^more/i }).first().click()
    await page.getByRole('button', { name: /^settings/ }).click()
    await page.getByLabel('light', { exact: true }).selectOption({ label: { day: 'day', night: 'night', sun: 'full sun' }[theme] })
    await page.keyboard.press('Escape')
    await openTalk(page)
    for (;;) {
      expect(await violations(page), String(await page.locator('.talk-where').innerText())).toEqual([])
      const now = await step(page)
      if (now === 'sign') break
      await page.locator('.talk-next').click()
      // One zone stands for all: they differ in words and class only.
      while (now === 'zone' && (await step(page)) === 'zone') await page.locator('.talk-next').click()
    }
  })
}
