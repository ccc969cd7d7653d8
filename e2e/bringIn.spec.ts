import type { Page } from '@playwright/test'
import { expect, openStart, settled, test } from './support.ts'

const openYard = async (page: Page): Promise<void> => {
  await openStart(page)
  await page.locator('.start-choice').nth(1).click()
  await page.getByRole('button', { name: /Maple Fork pump house, mended/ }).first().click()
  // Before the example is read the page shows an empty layout, settled too.
  await page.waitForFunction(() => window.stringyard.labels().includes('M'))
  await settled(page)
}

/** Opens a tool of the list 'more'. */
const openTool = async (page: Page, name: RegExp, title: string): Promise<void> => {
  await expect(async () => {
    await page.getByRole('button', { name: 'More tools and settings' }).first().click({ timeout: 2000 })
    await page.getByRole('dialog').getByRole('button', { name }).click({ timeout: 2000 })
    await expect(page.getByRole('dialog', { name: title })).toBeVisible({ timeout: 3000 })
  }).toPass()
}

const countOf = (page: Page, kind: string): Promise<number> => page.evaluate((one) => Object.values(window.stringyard.document().records).filter((record) => record.kind === one).length, kind)

test('a level book is pasted, its unit and datum said, its faults left out, and the ground follows; one undo takes it back', async ({ page }) => {
  await openYard(page)
  const before = await countOf(page, 'level')
  await openTool(page, /^level book/, 'Level book')
  const bring = page.getByRole('button', { name: /^Bring in \d+ levels/ })
  await page.getByLabel(/type or paste the book/).fill('Sta.,Offset,Elevation (ft)\n0+00,0,101.2\n0+25,R 10,100.9\n0+50,0,=C2-1\n1+00,L 5,99.2')
  await expect(page.getByText('3: Elevation (ft)').first()).toBeAttached()
  // Nothing is brought in before the unit and the datum are said.
  await expect(bring).toBeDisabled()
  await expect(page.getByText(/^Still to say: unit of the figures/)).toBeVisible()
  await page.getByLabel('unit of the figures').selectOption({ label: 'decimal feet' })
  await page.getByLabel('station of the datum nail in the book').fill('0 ft')
  await page.getByLabel('level of the ground at the datum nail in the book').fill('101.2 ft')
  await page.keyboard.press('Enter')
  await expect(page.getByText('3 levels are read.')).toBeVisible()
  await expect(page.getByText('line 4, level: "=C2-1" is a formula, not a number')).toBeVisible()
  await expect(bring).toBeDisabled()
  await page.getByLabel('leave out the rows with faults (1)').check()
  await bring.click()
  await settled(page)
  expect(await countOf(page, 'level')).toBe(before + 3)
  const book = await page.evaluate(() => Object.values(window.stringyard.document().records).flatMap((record) => (record.kind === 'level' && record.source.startsWith('level book') ? [record] : [])))
  // 99.2 − 101.2 ft = −2 ft = −0.6096 m, below the nail.
  expect(book.find(({ source }) => source.endsWith('line 5'))?.figures.levelM).toMatchObject({ value: expect.closeTo(-0.6096, 9) as unknown, basis: 'measured' })
  await page.keyboard.press('Control+z')
  await settled(page)
  expect(await countOf(page, 'level')).toBe(before)
})

test('a CSV file with decimal commas is opened as a level book in metres', async ({ page }) => {
  await openYard(page)
  await openTool(page, /^level book/, 'Level book')
  await page.getByLabel('Open a CSV file').last().setInputFiles({ name: 'libreta.csv', mimeType: 'text/csv', buffer: Buffer.from('Estación;Desplazamiento;Cota\n0;0;100\n7,62;0;99,85\n', 'latin1') })
  await expect(page.getByText('2 rows, split at semicolons.')).toBeVisible()
  await page.getByLabel('unit of the figures').selectOption({ label: 'metres' })
  await page.getByLabel('station of the datum nail in the book').fill('0 m')
  await page.getByLabel('level of the ground at the datum nail in the book').fill('100 m')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'Bring in 2 levels' })).toBeEnabled()
})

const geoJson = JSON.stringify({ type: 'FeatureCollection', coordinateSystem: 'map grid, metres, east, north', features: [
  { type: 'Feature', properties: { layer: 'boundary', name: 'east lot' }, geometry: { type: 'Polygon', coordinates: [[[500_000, 4_000_000], [500_120, 4_000_000], [500_120, 4_000_040], [500_000, 4_000_040], [500_000, 4_000_000]]] } },
  { type: 'Feature', properties: { layer: 'x-17' }, geometry: { type: 'LineString', coordinates: [[500_000, 4_000_000], [500_120, 4_000_000]] } },
] })

test('boundaries of a GeoJSON on a map grid are brought to the datum, their origin kept, a layer chosen as a fence', async ({ page }) => {
  await openYard(page)
  const [boundaries, fences] = [await countOf(page, 'boundary'), await countOf(page, 'fence')]
  await openTool(page, /^boundaries from a file/, 'Plan from another program')
  await page.getByLabel('Open a DXF or GeoJSON file').last().setInputFiles({ name: 'lot.geojson', mimeType: 'application/geo+json', buffer: Buffer.from(geoJson) })
  await expect(page.getByText('The file says: metres.')).toBeVisible()
  await page.getByLabel('unit of its coordinates').selectOption({ label: 'metres' })
  await expect(page.getByText(/^By its own coordinates it lies/)).toBeVisible()
  await page.getByLabel('where it goes').selectOption({ label: 'its middle on the datum nail' })
  await page.getByLabel('lines of x-17 (1)').selectOption({ label: 'fence' })
  await expect(page.getByText('2 of 2 shapes are brought in.')).toBeVisible()
  await page.getByRole('button', { name: 'Bring in 2 shapes' }).click()
  await settled(page)
  expect([await countOf(page, 'boundary'), await countOf(page, 'fence')]).toEqual([boundaries + 1, fences + 1])
  const layout = await page.evaluate(() => { const record = window.stringyard.document().records['layout:this']; return record?.kind === 'layout' ? record.mapOrigin : null })
  // Middle 500 060, 4 000 020 on the nail at 0, 0.
  expect(layout).toEqual({ eastM: 500_060, northM: 4_000_020 })
})

test('a damaged DXF is refused with its reason and the open layout stays as it was', async ({ page }) => {
  await openYard(page)
  const stamp = await page.evaluate(() => JSON.stringify(window.stringyard.document()))
  await openTool(page, /^boundaries from a file/, 'Plan from another program')
  await page.getByLabel('Open a DXF or GeoJSON file').last().setInputFiles({ name: 'cut.dxf', mimeType: 'application/dxf', buffer: Buffer.from('0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nfence\n10\n') })
  await expect(page.getByRole('alert')).toContainText('The open layout is as it was.')
  await expect(page.getByRole('alert')).toContainText(/cut off|damaged|no section/)
  expect(await page.evaluate(() => JSON.stringify(window.stringyard.document()))).toBe(stamp)
})
