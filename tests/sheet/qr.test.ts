import jsQR from 'jsqr'
import { expect, it } from 'vitest'
import { EASY_QR_CHARS, MOST_QR_CHARS, QUIET_MODULES, qrModules, qrPath, type QrModules } from '../../src/sheet/qr.ts'

/** The code as a picture of 4 px a module, read by an independent library. */
const readBack = ({ size, isDark }: QrModules): string | undefined => {
  const scale = 4
  const side = (size + 2 * QUIET_MODULES) * scale
  const px = new Uint8ClampedArray(side * side * 4)
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const level = isDark(Math.floor(y / scale) - QUIET_MODULES, Math.floor(x / scale) - QUIET_MODULES) ? 0 : 255
      px.set([level, level, level, 255], (y * side + x) * 4)
    }
  }
  return jsQR(px, side, side)?.data
}
const textOf = (length: number): string => `https://plan.example/#yard1.${'aZ9-_x7Q'.repeat(400)}`.slice(0, length)

it('a code is read back letter by letter by another library', () => {
  for (const length of [1, 60, 400, EASY_QR_CHARS]) {
    const code = qrModules(textOf(length))
    expect(code?.isEasy).toBe(true)
    expect(code === null ? null : readBack(code)).toBe(textOf(length))
  }
})

it('the longest text a code can hold makes the largest code; one character more makes none', () => {
  const code = qrModules(textOf(MOST_QR_CHARS))
  // Version 40: 17 + 4 × 40 modules (ISO/IEC 18004:2015, table 1).
  expect([code?.size, code?.isEasy]).toEqual([177, false])
  expect(qrModules(textOf(MOST_QR_CHARS + 1))).toBeNull()
})

it('what is not plain ASCII has no code, so that nobody scans something else than was meant', () => {
  expect(['', 'https://plan.example/ñ', 'a\nb'].map(qrModules)).toEqual([null, null, null])
})

it('the path covers the dark modules and no others', () => {
  const code = qrModules('https://plan.example/#yard1.abc')
  if (code === null) throw new Error('no code')
  const { path, side } = qrPath(code)
  const dark = new Set<string>()
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) for (let i = 0; i < Number(run); i++) dark.add(`${Number(y)},${Number(x) + i}`)
  expect(side).toBe(code.size + 8)
  for (let row = 0; row < side; row++) for (let column = 0; column < side; column++) expect(dark.has(`${row},${column}`)).toBe(code.isDark(row - QUIET_MODULES, column - QUIET_MODULES))
})
