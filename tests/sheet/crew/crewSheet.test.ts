import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../../src/derive/site.ts'
import type { Primitive } from '../../../src/drawing/primitives.ts'
import { emptyDocument } from '../../../src/scene/newYard.ts'
import { assertPlaceholders, placeholdersOf } from '../../../src/messages/render.ts'
import { facePartFile } from '../../../src/headless/faceFiles.ts'
import { crewSheet } from '../../../src/sheet/crew/crewSheet.ts'
import { faceText, faceWidth, plainText } from '../../../src/sheet/crew/face.ts'
import { flow, type Block } from '../../../src/sheet/crew/flow.ts'
import { frameOf } from '../../../src/sheet/crew/paper.ts'
import { scaleFor } from '../../../src/sheet/crew/scale.ts'
import { crewReader } from '../../../src/sheet/crew/reader.ts'
import { svgOfPage } from '../../../src/sheet/crew/svgPages.ts'
import { checklistWords, crewWords } from '../../../src/sheet/crew/words.ts'
import { contentOf, exampleDocument } from './content.ts'

const textsOf = (list: readonly Primitive[]): string[] => list.flatMap((one) => (one.t === 'text' ? [one.text] : one.t === 'mark' ? textsOf(one.parts) : []))
const reader = (language: 'en' | 'es' | 'both') => crewReader(deriveSite(exampleDocument('maple-fork-good')), language, 'feetInches')

describe('what goes on a crew sheet', () => {
  it('is the plan only: heights as set and what-ifs are refused', () => {
    const content = contentOf(exampleDocument('maple-fork-good'), { rehearsal: null, run: null })
    for (const options of [{ variant: 'asSet' as const }, { whatIf: { warmerC: 11 } }]) expect(() => crewSheet({ ...content, site: deriveSite(content.site.document, options) })).toThrow(/only the plan/)
    expect(() => crewSheet({ ...content, site: deriveSite(content.site.document, { variant: 'planned', whatIf: {} }) })).not.toThrow()
  })

  it('says infeed and exit, never a minus, and spells feet out', () => {
    // 14 ft = 4.2672 m.
    expect(reader('en').runningCell(-4.2672)).toEqual(['infeed 14 ft 0 in', '(4.27 m)'])
    expect(reader('es').runningCell(4.2672)).toEqual(['salida 14 pies 0 pulg', '(4.27 m)'])
    expect(reader('both').runningCell(-4.2672)).toEqual(['infeed / entrada', '14 ft 0 in', '(4.27 m)'])
    expect(reader('both').offsetCell(0.1524)).toEqual(['R / D 6 in', '(152 mm)'])
  })

  it('rounds a tolerance down to a sixteenth of an inch, never up', () => {
    // 3.3 mm = 0.13 in: two sixteenths; 4.7 mm = 0.185 in: still two.
    expect(reader('en').toleranceCell(0.0033)[0]).toBe('± ⅛ in')
    expect(reader('en').toleranceCell(0.0047)[0]).toBe('± ⅛ in')
    expect(reader('en').toleranceCell(null)).toEqual(['?'])
  })

  it('is made of an empty yard too, and says what is not known', () => {
    let id = 0
    const document = emptyDocument({ newId: (prefix) => `${prefix}:t${id++}`, now: () => '2026-01-05T10:00:00.000Z' }, 'metric')
    const { pages } = crewSheet(contentOf(document, { system: 'metric', paper: 'a4', orientation: 'portrait' }))
    const all = pages.flatMap(({ groups }) => groups.flatMap(({ list }) => textsOf(list))).join('\n')
    expect(all).toContain('Nothing stands along the line yet.')
    expect(all).toContain('not known')
  })

  it('keeps every text of every page inside the page', () => {
    for (const language of ['en', 'es', 'both'] as const) {
      for (const orientation of ['landscape', 'portrait'] as const) {
        const { pages } = crewSheet(contentOf(exampleDocument('otter-bend-first-sketch'), { language, orientation, rehearsal: null }))
        for (const { groups, widthPt, heightPt } of pages) for (const { clipPt, list } of groups) {
          if (clipPt !== null) continue
          for (const one of list) {
            if (one.t !== 'text') continue
            const width = faceWidth(one.text, one.sizePx, one.bold === true ? 600 : 400)
            const left = one.xM - (one.align === 'right' ? width : one.align === 'center' ? width / 2 : 0)
            expect(left, one.text).toBeGreaterThan(20)
            expect(left + width, one.text).toBeLessThan(widthPt - 20)
            expect(one.yM, one.text).toBeLessThan(heightPt - 20)
          }
        }
      }
    }
  }, 60_000)

  it('has its words in both languages with the same places for values', () => {
    for (const text of [...Object.values(crewWords), ...checklistWords]) {
      assertPlaceholders(text, placeholdersOf(text.en))
      expect(text.es.length).toBeGreaterThan(0)
    }
  })

  it('escapes what a person wrote in SVG, and draws no control signs', () => {
    const content = contentOf(exampleDocument('maple-fork-good'), { rehearsal: null, run: null })
    const { layout } = content.site
    const { pages } = crewSheet({ ...content, site: { ...content.site, layout: { ...layout, title: '<script>"&\u0000\u202e' } } })
    const svg = svgOfPage(pages[0]!, layout.title)
    expect(svg).toContain('&lt;script&gt;&quot;&amp;')
    for (const unwanted of ['<script', '\u0000', '\u202e']) expect(svg).not.toContain(unwanted)
  })
})

describe('the scale of the key plan', () => {
  it('is the largest usual one at which the yard fits', () => {
    // 400 ft at 1 in = 40 ft takes 10 in = 720 pt.
    expect(scaleFor(400 * 0.3048, 720.001, 1, 500, false)).toMatchObject({ feetPerIn: 40, ratio: 480 })
    expect(scaleFor(400 * 0.3048, 719, 1, 500, false)).toMatchObject({ feetPerIn: 50, ratio: 600 })
    // 100 m at 1:500 takes 200 mm = 566.9 pt.
    expect(scaleFor(100, 567, 1, 500, true)).toMatchObject({ ratio: 500, feetPerIn: null })
    expect(scaleFor(100, 566, 1, 500, true)).toMatchObject({ ratio: 1000 })
  })
})

describe('the face of the sheet', () => {
  it('is as wide as the font files say, in both weights', () => {
    const { create } = createRequire(import.meta.url)('fontkit') as { create: (bytes: Uint8Array) => { unitsPerEm: number; glyphForCodePoint: (code: number) => { advanceWidth: number } } }
    for (const weight of [400, 600] as const) {
      const font = create(readFileSync(facePartFile(weight, 'latin')))
      for (const letter of 'ABCxyz0123456789½ñÑ±−·°—"\'()') expect(faceWidth(letter, 1000, weight), letter).toBeCloseTo((font.glyphForCodePoint(letter.codePointAt(0)!).advanceWidth * 1000) / font.unitsPerEm, 0)
    }
  })

  it('writes letters it lacks without their marks, or by a stand-in, and drops what cannot be seen', () => {
    expect(faceText('Ł ő ñ')).toBe('Ł ő ñ')
    expect(faceText('a ≥ b → c')).toBe('a >= b -> c')
    expect(faceText('漢😀')).toBe('¤¤')
    expect(plainText('a\u0000b\u200bc\u202ed\nE')).toBe('abcd E')
    expect(plainText('\ud800x')).toBe('x')
  })
})

describe('the flow over pages', () => {
  const frame = frameOf('letter', 'portrait')
  const block = (heightPt: number, isHead = false): Block => ({ heightPt, isHead, draw: (x, y) => [{ t: 'text', xM: x, yM: y, text: `${heightPt}`, sizePx: 11 }] })

  it('says the head of a table again on every page it goes on to', () => {
    // 680 pt a page: 30 + 32 rows, 31 + 32 rows, 31 + the last 16.
    const rows = Array.from({ length: 80 }, () => block(20))
    const { placed, pages } = flow([{ as: 'wide', again: () => [block(31, true)], blocks: () => [block(30, true), ...rows] }], frame, frame.topPt)
    expect(pages).toBe(3)
    const heads = placed.filter(({ list }) => textsOf(list)[0] === '31').map(({ page }) => page)
    expect(heads).toEqual([1, 2])
    expect(placed.filter(({ list }) => textsOf(list)[0] === '20')).toHaveLength(80)
  })

  it('never leaves a heading alone at the foot', () => {
    const room = frame.bottomPt - frame.topPt
    const { placed } = flow([{ as: 'wide', blocks: () => [block(room - 40), block(30, true), block(30)] }], frame, frame.topPt)
    expect(placed.map(({ page }) => page)).toEqual([0, 1, 1])
  })

  it('spreads what fits on a page evenly over its columns', () => {
    const { placed } = flow([{ as: 'columns', blocks: () => Array.from({ length: 10 }, () => block(20)) }], frame, frame.topPt)
    const xs = placed.map(({ list }) => (list[0] as Extract<Primitive, { t: 'text' }>).xM)
    expect(new Set(xs).size).toBe(2)
    expect(xs.filter((x) => x === xs[0])).toHaveLength(5)
  })
})
