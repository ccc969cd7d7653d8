import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { facePartFile } from '../../src/headless/faceFiles.ts'
import { sfntOf } from '../../src/write/woff.ts'

const woff = new Uint8Array(readFileSync(facePartFile(400, 'latin')))

describe('a WOFF font unpacked', () => {
  it('is the same font to an independent reader', () => {
    const { create } = createRequire(import.meta.url)('fontkit') as { create: (bytes: Uint8Array) => { postscriptName: string; numGlyphs: number; glyphForCodePoint: (code: number) => { advanceWidth: number; path: { toSVG: () => string } } } }
    const [packed, plain] = [create(woff), create(sfntOf(woff))]
    expect([plain.postscriptName, plain.numGlyphs]).toEqual([packed.postscriptName, packed.numGlyphs])
    for (const letter of 'Añ½8') expect(plain.glyphForCodePoint(letter.codePointAt(0)!).path.toSVG()).toBe(packed.glyphForCodePoint(letter.codePointAt(0)!).path.toSVG())
  })

  it('is refused where it is none, or cut off, or says more than it holds', () => {
    expect(() => sfntOf(new Uint8Array(10))).toThrow(/not a WOFF/)
    expect(() => sfntOf(woff.slice(0, 60))).toThrow(/cut off/)
    expect(() => sfntOf(woff.slice(0, 4000))).toThrow(/out of bounds/)
    const bomb = woff.slice()
    new DataView(bomb.buffer).setUint32(44 + 12, 900_000_000)
    expect(() => sfntOf(bomb)).toThrow(/out of bounds/)
  })
})
