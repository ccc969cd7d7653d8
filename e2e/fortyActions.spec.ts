import type { Page } from '@playwright/test'
import { newYard, pick, type Actions } from './newYard.ts'
import { expect, findings, openStart, settled, test } from './support.ts'

const FT = 0.3048
const at = (page: Page, runningFt: number, rightFt = 0): Promise<{ x: number; y: number }> =>
  page.evaluate(([x, y]) => window.stringyard.worldToPage(x!, y!), [runningFt * FT, -rightFt * FT])

const tapPlan = async (a: Actions, runningFt: number, rightFt = 0): Promise<void> => {
  const { x, y } = await at(a.page, runningFt, rightFt)
  await a.page.mouse.click(x, y)
  a.count++
  await settled(a.page)
}
const tapFlag = async (a: Actions, label: RegExp): Promise<void> => {
  await a.page.locator('[data-band="tape"]').getByRole('option', { name: label }).click()
  a.count++
}
const remedy = async (a: Actions, note: RegExp): Promise<void> => {
  const row = a.page.locator('section.notes li', { hasText: note }).first()
  if ((await row.getByRole('button', { name: 'Do it' }).count()) === 0) {
    await row.getByRole('button').first().click()
    a.count++
  }
  await row.getByRole('button', { name: 'Do it' }).click()
  a.count++
  await settled(a.page)
}

test('from blank to the good plan of the first scenario in at most 40 actions', async ({ page }) => {
  await openStart(page)
  // Datum and positions of the site frame agree: the axis of a new yard runs along +x from the datum.
  const a = await newYard(page)

  // A lower stand where the pipe comes down.
  await a.tap(/^pipe stand, flat roller/)
  await tapPlan(a, 46)
  await page.keyboard.press('Escape')
  a.count++
  await tapFlag(a, /^E3/)
  await page.getByLabel(/^saddle/).first().fill('21.5')
  await page.keyboard.press('Enter')
  a.count++
  await settled(page)

  // Rollers 11 ft apart in one drag, out to the end of the string.
  await a.tap(/^ground roller/)
  await a.tap(/^A row of/)
  const [from, to] = [await at(page, 66), await at(page, 320)]
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move((from.x + to.x) / 2, to.y, { steps: 6 })
  await page.mouse.move(to.x, to.y, { steps: 6 })
  await page.keyboard.type("11'")
  await page.keyboard.press('Enter')
  await page.mouse.up()
  a.count += 2
  await settled(page)

  // Puller, and the loader beside the rack.
  await a.tap(/^lift, pull/)
  await a.tap(/^(puller|tractor)/)
  await tapPlan(a, 345)
  await page.keyboard.press('Escape')
  a.count++

  // The nose rides in a sling.
  await page.locator('.title-pipe').click()
  a.count++
  await pick(page, 'nose while pulled', /slung/)
  a.count++
  await page.keyboard.press('Escape')
  a.count++
  await settled(page)

  // What the notes offer.
  await remedy(a, /String and pull lead reach/)
  await remedy(a, /nothing holds it/)

  const levels = await findings(page)
  console.log(`blank to good plan: ${a.count} actions, ${levels.filter(({ level }) => level === 'CHECK').length} CHECK, ${levels.filter(({ level }) => level === 'NOTE').length} NOTE`)
  expect(levels.filter(({ level }) => level === 'STOP' || level === 'FIX')).toEqual([])
  const labels = await page.evaluate(() => window.stringyard.labels())
  for (const label of ['M', 'R', 'E1', 'E2', 'E3', 'G1', 'G20', 'P', 'H']) expect(labels).toContain(label)
  expect(await page.evaluate(() => Object.values(window.stringyard.document().records).find((record) => record.kind === 'job'))).toMatchObject({ noseHold: 'slung' })
  // Rollers stand 11 ft 0 in apart: the spacing at which OD/4 of droop still rides on.
  const rollers = await page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'roller' && record.place.at === 'onRun' ? [record.place.runningM] : [])).sort((p, q) => p - q))
  expect((rollers[1]! - rollers[0]!) / FT).toBeCloseTo(11, 6)
  expect(a.count).toBeLessThanOrEqual(40)
})
