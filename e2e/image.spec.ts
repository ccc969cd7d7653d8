import { readFileSync } from 'node:fs'
import { newYard } from './newYard.ts'
import { expect, openStart, test } from './support.ts'

/** Width and height from the header of a PNG (ISO/IEC 15948, IHDR chunk). */
const pngSize = (bytes: Buffer): { width: number; height: number } => {
  expect(bytes.subarray(1, 4).toString()).toBe('PNG')
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) }
}

test('the image leaves the app as a PNG of Letter shape at each scale', async ({ page }) => {
  await openStart(page)
  await newYard(page)
  for (const scale of [1, 2, 4]) {
    await page.locator('.title-image').click()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: `PNG ${scale}×` }).click()
    const file = await download
    expect(file.suggestedFilename()).toBe('Maple-Fork-A.png')
    const bytes = readFileSync(await file.path())
    // 11 × 8.5 in at 144 px an inch.
    expect(pngSize(bytes)).toEqual({ width: 1584 * scale, height: 1224 * scale })
    expect(bytes.length).toBeGreaterThan(40_000)
    await page.keyboard.press('Escape')
  }
})
