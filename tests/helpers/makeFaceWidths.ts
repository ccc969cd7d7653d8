/**
 * `npx tsx tests/helpers/makeFaceWidths.ts` writes src/sheet/crew/faceWidths.ts: advance widths of the face the sheets are set
 * in, read from the font files themselves. tests/sheet/crew/face.test.ts compares them with the files.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { facePartFile, type FaceWeight } from '../../src/headless/faceFiles.ts'

/** What is used of the reader of font files that the PDF library brings along; it has no types of its own. */
interface FontReader {
  create: (bytes: Uint8Array) => { characterSet: readonly number[]; unitsPerEm: number; glyphForCodePoint: (code: number) => { advanceWidth: number } }
}
const { create } = createRequire(import.meta.url)('fontkit') as FontReader

/** Width in thousandths of an em → the characters that have it. */
export const widthsOf = (weight: FaceWeight, part: 'latin' | 'latin-ext'): Record<number, string> => {
  const font = create(readFileSync(facePartFile(weight, part)))
  const widths: Record<number, string> = {}
  for (const code of font.characterSet) {
    // Marks that stand on another letter and what cannot be seen are not lettered.
    if (code < 32 || (code > 126 && code < 160) || font.glyphForCodePoint(code).advanceWidth === 0) continue
    const width = Math.round((font.glyphForCodePoint(code).advanceWidth * 1000) / font.unitsPerEm)
    widths[width] = (widths[width] ?? '') + String.fromCodePoint(code)
  }
  return widths
}

const chunks = (entries: readonly string[]): string[][] => Array.from({ length: Math.ceil(entries.length / 8) }, (_, i) => entries.slice(i * 8, i * 8 + 8))

if (process.argv[1]?.endsWith('makeFaceWidths.ts') === true) {
  const table = (weight: FaceWeight, part: 'latin' | 'latin-ext'): string => chunks(Object.entries(widthsOf(weight, part)).map(([width, letters]) => `${width}: ${JSON.stringify(letters)},`)).map((line) => `    ${line.join(' ')}`).join('\n')
  const part = (name: 'latin' | 'latin-ext'): string => `{\n  400: {\n${table(400, name)}\n  },\n  600: {\n${table(600, name)}\n  },\n}`
  writeFileSync('src/sheet/crew/faceWidths.ts', `/** Written by tests/helpers/makeFaceWidths.ts: advance widths of Fira Sans Condensed, thousandths of an em → characters. */
export type FaceWidths = Readonly<Record<400 | 600, Readonly<Record<number, string>>>>

/** The part of the face that every sheet needs. */
export const latinWidths: FaceWidths = ${part('latin')}

/** Letters of other Latin alphabets, in files of their own that are fetched only where a sheet needs them. */
export const latinExtWidths: FaceWidths = ${part('latin-ext')}
`)
}
