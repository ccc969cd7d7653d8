import { expect, openStart, settled, test } from './support.ts'

test.beforeEach(async ({ page }) => {
  await openStart(page)
  await page.locator('.start-choice').nth(1).click()
  await page.getByRole('button', { name: /Maple Fork pump house, first/ }).first().click()
  await settled(page)
  await expect(page.getByRole('button', { name: /^run-through/ })).toBeVisible()
})

test('the lead steps through the job by keys, sees where the nose catches at its stage, opens the finding there and ends with Esc', async ({ page }) => {
  await page.getByRole('button', { name: /^run-through/ }).click()
  const stage = page.locator('.run-stage')
  const slider = page.getByRole('slider', { name: 'stage', exact: true })
  await expect(stage).toHaveText('fuse 1 of 6')
  await page.keyboard.press('Home')
  await expect(stage).toHaveText('set-up')
  // Set-up, offload, load 1, fuse 1, pull 1.
  for (const name of ['offload', 'load 1 of 6', 'fuse 1 of 6', 'pull 1 of 6']) {
    await page.keyboard.press('ArrowRight')
    await expect(stage).toHaveText(name)
  }
  await expect(slider).toHaveAttribute('aria-valuetext', 'pull 1 of 6, 5 of 23')
  // Sticks of 40 ft, the first roller at 100 ft: the nose comes to none before pull 2.
  const place = page.getByRole('region', { name: 'At this stage' }).or(page.locator('.run-place'))
  await expect(place.first()).toContainText('comes to no support')
  await page.getByRole('button', { name: 'next stage' }).click()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await expect(stage).toHaveText('pull 2 of 6')
  await expect(page.locator('.run-sentence')).toContainText(/the nose hits G1, .* low/)
  await expect(page.locator('.run-arrivals')).toContainText('G1')
  // The strip says it at a glance, in words too.
  await expect(page.locator('.stage-table').getByRole('button', { name: /^pull 2: (STOP|FIX)$/ })).toBeVisible()
  const finding = page.locator('.run-notes .note').filter({ hasText: 'G1' }).first()
  await finding.locator('.note-main').click()
  await expect(finding).toHaveAttribute('data-open', 'true')
  await page.keyboard.press('Escape')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: /^run-through/ })).toBeVisible()
})

test('an arrival and a drag of the nose along the tape take the string there, in plan and side view', async ({ page }) => {
  await page.getByRole('button', { name: /^run-through/ }).click()
  await page.getByRole('button', { name: 'pull 3: STOP' }).or(page.getByRole('button', { name: 'pull 3: FIX' })).first().click()
  const shown = (): Promise<{ phase: string; joint: number; noseM: number | null }> => page.evaluate(() => {
    const { phase, joint, noseM } = window.stringyard.view()
    return { phase, joint, noseM }
  })
  expect(await shown()).toEqual({ phase: 'pull', joint: 3, noseM: null })
  await page.locator('.run-arrivals button').first().click()
  const { noseM } = await shown()
  // Half an inch short of G2 at 120 ft: 36.576 − 0.0127 m.
  expect(noseM).toBeCloseTo(36.5633, 3)
  const mark = page.getByRole('slider', { name: /Nose of the string/ })
  await expect(mark).toHaveAttribute('aria-valuetext', /pull 3 of 6/)
  await mark.focus()
  await page.keyboard.press('ArrowRight')
  expect((await shown()).noseM).toBeCloseTo(36.5633 + 0.3048, 3)
  const box = (await mark.boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 300, y, { steps: 8 })
  await page.mouse.up()
  const after = await shown()
  expect(after.phase).toBe('pull')
  expect(after.joint).toBeLessThan(3)
  // Looking changes nothing: back on the sheet there is nothing to undo.
  await page.keyboard.press('Escape')
  await expect(page.locator('.sheet-undo')).toBeDisabled()
})

test('play goes on by itself, space stops and starts it', async ({ page }) => {
  await page.getByRole('button', { name: /^run-through/ }).click()
  await expect(page.locator('.run-stage')).toHaveText('fuse 1 of 6')
  await page.keyboard.press('Home')
  await page.getByRole('button', { name: 'play', exact: true }).click()
  await expect(page.locator('.run-stage')).toHaveText('offload')
  await page.getByRole('button', { name: 'pause', exact: true }).click()
  const at = await page.locator('.run-stage').textContent()
  // Longer than any stage stands.
  await page.waitForTimeout(1500)
  await expect(page.locator('.run-stage')).toHaveText(at ?? '')
  await page.locator('[data-band="plan"]').first().focus()
  await page.keyboard.press('Space')
  await expect(page.locator('.run-stage')).not.toHaveText(at ?? '')
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'play', exact: true })).toBeVisible()
})
