import { describe, expect, it } from 'vitest'
import { readImageHeader } from '../../src/read/photo/imageHeader.ts'
import { checkScale, photoScale } from '../../src/read/photo/photoScale.ts'

const ascii = (text: string): number[] => [...text].map((one) => one.charCodeAt(0))
const be32 = (value: number): number[] => [(value >>> 24) & 255, (value >>> 16) & 255, (value >>> 8) & 255, value & 255]
const png = (widthPx: number, heightPx: number, extra: readonly number[] = []): Uint8Array => new Uint8Array([0x89, ...ascii('PNG\r\n\u001a\n'), ...be32(13), ...ascii('IHDR'), ...be32(widthPx), ...be32(heightPx), 8, 6, 0, 0, 0, 0, 0, 0, 0, ...extra])
const jpeg = (widthPx: number, heightPx: number, isWithExif: boolean): Uint8Array => new Uint8Array([
  0xff, 0xd8, ...(isWithExif ? [0xff, 0xe1, 0, 8, ...ascii('Exif\0\0')] : []),
  0xff, 0xc0, 0, 11, 8, heightPx >> 8, heightPx & 255, widthPx >> 8, widthPx & 255, 1, 1, 0x11, 0, 0xff, 0xda,
])
const whyNot = (bytes: Uint8Array): string => {
  const read = readImageHeader(bytes)
  return read.ok ? 'read' : read.reason.en
}

describe('the header of a photo', () => {
  it('is told by the bytes: size and whether the file carries camera or place data', () => {
    expect(readImageHeader(png(640, 480))).toEqual({ ok: true, header: { mime: 'image/png', widthPx: 640, heightPx: 480, holdsMetadata: false } })
    expect(readImageHeader(png(640, 480, [...be32(0), ...ascii('eXIf'), 0, 0, 0, 0]))).toMatchObject({ header: { holdsMetadata: true } })
    expect(readImageHeader(jpeg(4000, 3000, true))).toEqual({ ok: true, header: { mime: 'image/jpeg', widthPx: 4000, heightPx: 3000, holdsMetadata: true } })
    expect(readImageHeader(jpeg(4000, 3000, false))).toMatchObject({ header: { holdsMetadata: false } })
  })

  it('reads the size of WebP with extension and EXIF flag', () => {
    // VP8X: flags 0x08 (EXIF), then width − 1 and height − 1 in 24 bits, low byte first: 799 = 0x31f, 599 = 0x257.
    const webp = new Uint8Array([...ascii('RIFF'), 0, 0, 0, 0, ...ascii('WEBPVP8X'), 10, 0, 0, 0, 0x08, 0, 0, 0, 0x1f, 0x03, 0, 0x57, 0x02, 0])
    expect(readImageHeader(webp)).toEqual({ ok: true, header: { mime: 'image/webp', widthPx: 800, heightPx: 600, holdsMetadata: true } })
  })

  it('refuses a few bytes that promise a picture of billions of pixels, before anything is decoded', () => {
    expect(whyNot(png(60_000, 60_000))).toMatch(/60000 × 60000 px/)
    expect(whyNot(png(10_000, 8_000))).toMatch(/more than 50 million/)
  })

  it('refuses what is no picture, says no size, or is too large a file', () => {
    expect(whyNot(new Uint8Array(ascii('<svg onload=x>')))).toMatch(/PNG, JPEG or WebP/)
    expect(whyNot(new Uint8Array([]))).toMatch(/PNG, JPEG or WebP/)
    expect(whyNot(png(0, 10))).toMatch(/does not say its size/)
    expect(whyNot(new Uint8Array([0xff, 0xd8, 0xff, 0xe1, 0, 0, 0, 0, 0, 0, 0, 0]))).toMatch(/does not say its size/)
    expect(whyNot(new Uint8Array(20_000_001))).toMatch(/21 MB/)
  })
})

describe('the scale of a photo', () => {
  it('is the known length over the pixels between two taps', () => {
    // 3-4-5: 500 px for 20 ft = 6.096 m.
    expect(photoScale({ xPx: 0, yPx: 0 }, { xPx: 300, yPx: 400 }, 6.096)).toBeCloseTo(0.012192, 12)
  })

  it('is unknown from taps too near to one another or a length of nothing', () => {
    expect(photoScale({ xPx: 0, yPx: 0 }, { xPx: 10, yPx: 0 }, 6)).toBeNull()
    expect(photoScale({ xPx: 0, yPx: 0 }, { xPx: 500, yPx: 0 }, 0)).toBeNull()
  })

  it('warns where a gate of 12 ft reads 13 ft 1 in', () => {
    // 12 ft = 3.6576 m, 13 ft 1 in = 3.98780 m at 0.01 m a pixel = 398.78 px; 13/144 = 9.03 % over.
    const check = checkScale(0.01, { xPx: 0, yPx: 0 }, { xPx: 398.78, yPx: 0 }, 3.6576)
    expect(check?.readsM).toBeCloseTo(3.9878, 9)
    expect(check?.offRatio).toBeCloseTo(13 / 144, 9)
    expect(check?.isSkewed).toBe(true)
    expect(checkScale(0.01, { xPx: 0, yPx: 0 }, { xPx: 370, yPx: 0 }, 3.6576)?.isSkewed).toBe(false)
  })
})
