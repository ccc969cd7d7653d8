import { expect, findings, openStart, settled, test } from './support.ts'

test('a bowed stick is found, turned on the dial by keys, and the turn goes into the job as one step', async ({ page }) => {
  await openStart(page)
  await page.locator('.start-choice').nth(1).click()
  await page.getByRole('button', { name: /Maple Fork pump house, mended/ }).first().click()
  await settled(page)
  const bow = page.getByRole('textbox', { name: 'bow of a stick' })
  // Opening an example closes what is open once it is there; on a slow machine that may come after the first press.
  await expect(async () => {
    await page.getByRole('button', { name: 'Job', exact: true }).click({ timeout: 2000 })
    await expect(bow).toBeVisible({ timeout: 2000 })
  }).toPass()
  await bow.fill('3 in')
  await bow.press('Enter')
  await page.keyboard.press('Escape')
  await settled(page)
  expect((await findings(page)).find(({ checkId }) => checkId === 'stick-bow')?.level).toBe('FIX')

  await page.locator('.note[data-key="stick-bow"]').getByRole('button', { name: 'Turn the bow' }).click()
  const dial = page.getByRole('slider', { name: /turn of the sticks/ })
  await expect(dial).toHaveAttribute('aria-valuetext', 'ends up')
  await dial.focus()
  for (let step = 0; step < 6; step += 1) await page.keyboard.press('ArrowRight')
  await expect(dial).toHaveAttribute('aria-valuetext', 'ends to the right')
  await page.keyboard.press('End')
  await expect(dial).toHaveAttribute('aria-valuetext', 'ends down')
  // Straight away, from the curve; and again once the worker has said.
  await expect(page.locator('.bow-table')).toContainText('face gap')
  await page.getByRole('button', { name: 'use this turn' }).click()
  await expect(page.locator('.bow-said')).toContainText('The job has this turn.')
  await page.keyboard.press('Escape')
  await settled(page)
  expect((await findings(page)).find(({ checkId }) => checkId === 'stick-bow')?.level).toBe('CHECK')
  const turnOf = (): Promise<unknown> => page.evaluate(() => {
    const job = window.stringyard.document().records['job:this']
    return job !== undefined && 'stickBowTurnRad' in job ? job.stickBowTurnRad : 'none'
  })
  expect(await turnOf()).toBeCloseTo(Math.PI, 9)
  await page.keyboard.press('Control+z')
  expect(await turnOf()).toBeNull()
})
