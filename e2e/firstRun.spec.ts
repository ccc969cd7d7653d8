import { Actions, newYard } from './newYard.ts'
import { expect, findings, openStart, settled, test } from './support.ts'

test('a first run by visible labels alone reaches a true finding within eight actions', async ({ page }) => {
  await openStart(page)
  await expect(page.getByText('Works without signal. Nothing leaves this device.')).toBeVisible()
  await expect(page.getByText(/Local law, the owner’s rules/)).toBeVisible()
  const a = new Actions(page)
  await a.tap(/^A new yard/)
  await a.choose('sizing', /IPS/)
  await a.choose('size', /^10 in/)
  await a.choose('DR', /^(DR )?17$/)
  await a.choose('class', /PE4710/)
  await a.fill('stick length', '40 ft')
  await a.tap('Draw it')
  await settled(page)
  // True without a stand drawn: 40 ft of pipe held by the jaws alone cannot be held level.
  const found = (await findings(page)).filter(({ level }) => level === 'FIX' || level === 'STOP')
  console.log(`first run: ${a.count} actions to ${found.length} findings`)
  expect(a.count).toBeLessThanOrEqual(8)
  expect(found.map(({ checkId }) => checkId)).toContain('jaw-effort')
  await expect(page.getByText(/jaws fight the pipe/).first()).toBeVisible()
})

test('the short form answers in words at once, and the usual set-up is a ghost until it is accepted', async ({ page }) => {
  await openStart(page)
  const a = await newYard(page, { accept: false })
  expect(await page.evaluate(() => window.stringyard.labels())).not.toContain('E1')
  await a.tap('Accept')
  await settled(page)
  expect(await page.evaluate(() => window.stringyard.labels())).toEqual(expect.arrayContaining(['M', 'R', 'E1', 'E2']))
  const levels = (await findings(page)).map(({ level }) => level)
  expect(levels).not.toContain('STOP')
  expect(levels).not.toContain('FIX')
  // One step takes the whole set-up back.
  await page.getByRole('button', { name: /^undo/i }).click()
  await settled(page)
  expect(await page.evaluate(() => window.stringyard.labels())).not.toContain('E1')
})
