import type { Page } from '@playwright/test'
import { newYard } from './newYard.ts'
import { expect, itemAt, openStart, settled, test } from './support.ts'

test.use({ viewport: { width: 1180, height: 820 }, hasTouch: true })

type Touch = { x: number; y: number; id: number }
const touch = async (page: Page): Promise<(type: 'touchStart' | 'touchMove' | 'touchEnd', points: Touch[]) => Promise<void>> => {
  const session = await page.context().newCDPSession(page)
  return async (type, touchPoints) => {
    await session.send('Input.dispatchTouchEvent', { type, touchPoints })
  }
}
const swipe = async (page: Page, from: { x: number; y: number }, dx: number, dy: number): Promise<void> => {
  const send = await touch(page)
  await send('touchStart', [{ ...from, id: 0 }])
  for (let i = 1; i <= 8; i++) await send('touchMove', [{ x: from.x + (dx * i) / 8, y: from.y + (dy * i) / 8, id: 0 }])
  await send('touchEnd', [])
}
const view = (page: Page): Promise<{ pxPerM: number; leftRunningM: number; selection: readonly string[] }> => page.evaluate(() => window.stringyard.view())
const standAt = (page: Page): Promise<number> => page.evaluate(() => Math.max(...Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'stand' && record.place.at === 'onRun' ? [record.place.runningM] : []))))

test('with a finger a drag pans, the first tap selects, and a drag of what is selected moves it with UNDO offered', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  const send = await touch(page)
  const machine = await itemAt(page, 'M')
  // Pinch out twice about the machine: the scale grows and the machine stays under the fingers.
  for (let pinch = 0; pinch < 2; pinch++) {
    await send('touchStart', [{ x: machine.x - 30, y: machine.y, id: 0 }, { x: machine.x + 30, y: machine.y, id: 1 }])
    for (let i = 1; i <= 8; i++) await send('touchMove', [{ x: machine.x - 30 - i * 7.5, y: machine.y, id: 0 }, { x: machine.x + 30 + i * 7.5, y: machine.y, id: 1 }])
    await send('touchEnd', [])
  }
  await settled(page)
  const after = await itemAt(page, 'M')
  expect(Math.abs(after.x - machine.x)).toBeLessThan(3)
  expect((await page.evaluate(() => window.visualViewport?.scale)) ?? 1).toBe(1)

  const before = await view(page)
  const place = await standAt(page)
  const e2 = await itemAt(page, 'E2')
  await swipe(page, e2, -60, 0)
  expect((await view(page)).leftRunningM).toBeGreaterThan(before.leftRunningM + 60 / before.pxPerM / 2)
  expect(await standAt(page)).toBe(place)

  const again = await itemAt(page, 'E2')
  await page.touchscreen.tap(again.x, again.y)
  expect((await view(page)).selection).toHaveLength(1)
  // The tag of the chosen item may take room: the item is where it is now.
  await settled(page)
  await swipe(page, await itemAt(page, 'E2'), 45, 0)
  await settled(page)
  expect(await standAt(page)).toBeGreaterThan(place)
  await page.getByRole('button', { name: /^undo$/i }).last().click()
  await settled(page)
  expect(await standAt(page)).toBeCloseTo(place, 9)
})
