import { describe, expect, it } from 'vitest'
import type { Finding, Level } from '../../src/checks/finding.ts'
import { levelShape } from '../../src/drawing/levelShapes.ts'
import type { Paint2D } from '../../src/drawing/paint.ts'
import { zonePens } from '../../src/scene/symbols/zone.ts'
import { drawImagePage, type ImageContent } from '../../src/sheet/imagePage.ts'
import { imageBoxes, LEAST_LETTERING_PX } from '../../src/sheet/page.ts'
import { fitPlan } from '../../src/sheet/planFit.ts'
import { sheetWords } from '../../src/sheet/words.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'
import { createPage, regionOf, regionsOf, sizeOf, textsOf, wordsOf } from './drawn.ts'
import { contentOf, findingOf, ft, lotYard, runOf, someFindings } from './samples.ts'

const LONG = 'Pump station at the far end of the long meadow, rising main number two from the valve house to the tank on the hill, second attempt'
const longSentence: Finding['what'] = { text: { en: `${'The string leans on the guide of the bend and nothing holds it there. '.repeat(4)}`, es: 'La sarta se apoya en la guía de la curva y nada la detiene. '.repeat(5) } }
const many = (count: number, level: Level = 'CHECK'): Finding[] => Array.from({ length: count }, (_, i) => findingOf(level, { key: `many@${i}`, what: longSentence, measured: { kind: 'length', value: 3.123 + i }, limit: { kind: 'length', value: 2 }, margin: { kind: 'length', value: -1.123 - i } }))
const rollers = Array.from({ length: 60 }, (_, i) => item('roller', `roller:m${i}`, onRun(ft(100 + 7.3 * i), { offsetM: i % 3 === 0 ? 0.31 : -0.02 })))

const spanish = { language: 'es', stageWords: 'jalado, junta 7 de 7', when: '3 de junio de 2025, 14:32' } as const
const contents: Readonly<Record<string, () => ImageContent>> = {
  'a usual yard': () => contentOf(lotYard()),
  'a yard in Spanish': () => contentOf(lotYard({ layout: { title: LONG } }), { ...spanish, isSettled: false, fileName: 'casa-de-bombas-del-arroyo-largo-y-de-la-loma.yard.json' }),
  'a metric yard': () => contentOf(lotYard({ layout: { displayUnits: 'metric' }, job: { pipe: { system: 'metric', size: '450', dr: 26, material: 'PE100' }, stickLengthM: 12, neededLengthM: 90 } })),
  'long names everywhere': () => contentOf(lotYard({ layout: { title: LONG, revision: 'WXYZ' } }), { stageWords: LONG, when: LONG, fileName: LONG, sideWords: LONG, isSettled: false }),
  'one word without an end': () => contentOf(lotYard({ layout: { title: 'W'.repeat(200) } }), { stageWords: 'M'.repeat(200), when: 'W'.repeat(100) }),
  'more rows and findings than fit': () => contentOf(lotYard({ more: rollers }), { run: runOf([...someFindings, ...many(30), ...many(9, 'STOP')]) }),
  'the same in Spanish': () => contentOf(lotYard({ more: rollers }), { ...spanish, isSettled: false, run: runOf([...someFindings, ...many(30), ...many(9, 'STOP')]) }),
  'a turned sheet': () => contentOf(lotYard(), { isTurned: true }),
  'an empty document': () => contentOf(documentOf(layout({ title: '' }), job()), { run: null, isSettled: false, zones: [] }),
  'an axis and nothing else': () => contentOf(documentOf(layout(), job(), setUp(), run()), { run: runOf([]) }),
  'gear without a pipe': () => contentOf(lotYard({ job: { pipe: null, stickLengthM: null, neededLengthM: null } })),
}
const each = Object.entries(contents)

describe('lettering of the page', () => {
  it.each(each)('is never under 7 pt: %s', (_name, make) => {
    const page = createPage()
    drawImagePage(page, make())
    const sizes = page.calls.filter(({ name }) => name === 'fillText' || name === 'strokeText').map(({ state }) => sizeOf(state.font))
    expect(sizes.length).toBeGreaterThan(30)
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(LEAST_LETTERING_PX)
  })
  it.each(each)('stays inside its block: %s', (_name, make) => {
    for (const region of regionsOf(make())) {
      for (const { text, x0, x1, y0, y1 } of textsOf(region.list)) {
        expect(x0, `${region.name}: ${text}`).toBeGreaterThanOrEqual(region.box.x0 - 0.01)
        expect(x1, `${region.name}: ${text}`).toBeLessThanOrEqual(region.box.x1 + 0.01)
        expect(y0, `${region.name}: ${text}`).toBeGreaterThanOrEqual(region.box.y0)
        expect(y1, `${region.name}: ${text}`).toBeLessThanOrEqual(region.box.y1)
      }
    }
  })
  it.each(each)('never lies over other lettering: %s', (_name, make) => {
    for (const region of regionsOf(make())) {
      const texts = textsOf(region.list)
      // Pieces of one fraction touch; half a px is rounding.
      const clashes = texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > 0.5 && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > 0.5).map((b) => `"${a.text}" and "${b.text}"`))
      expect(clashes, region.name).toEqual([])
    }
  })
  it.each(each)('is not struck through by a rule: %s', (_name, make) => {
    for (const { name, list } of regionsOf(make())) {
      const rules = list.flatMap((primitive) => (primitive.t === 'path' && primitive.points.length === 4 && primitive.points[1] === primitive.points[3] ? [primitive.points] : []))
      for (const text of textsOf(list)) {
        const struck = rules.filter(([x0, y, x1]) => y! > text.y0 + 1 && y! < text.y1 - 1 && Math.min(x1!, text.x1) > Math.max(x0!, text.x0))
        expect(struck, `${name}: ${text.text}`).toEqual([])
      }
    }
  })
  it.each(['a usual yard', 'a yard in Spanish', 'a metric yard', 'more rows and findings than fit', 'the same in Spanish'])('shows every figure of the table whole: %s', (name) => {
    expect(textsOf(regionOf(contents[name]!(), 'dimensions').list).map(({ text }) => text).filter((text) => /[\d"(].*…$/u.test(text))).toEqual([])
  })
  it.each(each)('marks stay inside their block: %s', (_name, make) => {
    for (const { name, box, list } of regionsOf(make())) {
      for (const primitive of list) {
        if (primitive.t !== 'mark') continue
        const xs = primitive.parts.flatMap((part) => (part.t === 'path' ? part.points.filter((_p, i) => i % 2 === 0) : part.t === 'circle' ? [part.xM - part.radiusM, part.xM + part.radiusM] : []))
        expect(primitive.xM + Math.min(...xs), name).toBeGreaterThanOrEqual(box.x0)
        expect(primitive.xM + Math.max(...xs), name).toBeLessThanOrEqual(box.x1)
      }
    }
  })
})

describe('the drawings of the app', () => {
  it('are given the boxes of the page and the scale that fits the yard', () => {
    const seen: unknown[] = []
    const content = contentOf(lotYard(), {
      paintPlan: (_context, box, pxPerM) => void seen.push(['plan', box, pxPerM]), paintTape: (_context, box) => void seen.push(['tape', box]), paintSection: (_context, box) => void seen.push(['section', box]),
    })
    drawImagePage(createPage(), content)
    expect(seen).toContainEqual(['plan', imageBoxes.plan, fitPlan(content.site, imageBoxes.plan).pxPerM])
    expect(seen).toContainEqual(['tape', imageBoxes.tape])
    expect(seen).toContainEqual(['section', imageBoxes.section])
    expect(seen.length).toBe(3)
  })
  it('are clipped to their boxes, and pens they leave behind do not reach the rest', () => {
    const page = createPage()
    const spoil = (context: Paint2D): void => {
      context.globalAlpha = 0.1
      context.setLineDash([1, 2])
      context.fillText('mine', 0, 0)
    }
    drawImagePage(page, contentOf(lotYard(), { paintPlan: spoil, paintTape: spoil, paintSection: spoil }))
    const calls = page.calls
    const mine = calls.flatMap(({ name, args }, i) => (name === 'fillText' && args[0] === 'mine' ? [i] : []))
    expect(mine.length).toBe(3)
    for (const i of mine) expect(calls.slice(0, i).findLast(({ name }) => name !== 'fillText')?.name).toBe('clip')
    const [x, y] = calls[calls.slice(0, mine[0]).findLastIndex(({ name }) => name === 'moveTo')]!.args as [number, number]
    expect([x, y]).toEqual([imageBoxes.plan.x0, imageBoxes.plan.y0])
    expect(calls.filter(({ name, args, state }) => name === 'fillText' && args[0] !== 'mine' && state.globalAlpha !== 1)).toEqual([])
  })
  it('that fail leave the context as it was', () => {
    const page = createPage()
    page.lineWidth = 7
    const fail = (context: Paint2D): void => {
      context.lineWidth = 99
      throw new Error('no plan today')
    }
    expect(() => drawImagePage(page, contentOf(lotYard(), { paintPlan: fail }))).toThrow('no plan today')
    expect(page.lineWidth).toBe(7)
    expect(() => page.restore()).toThrow('restore without save')
  })
  it('leave the page the same whenever it is drawn again', () => {
    const [one, other] = [createPage(), createPage()]
    for (const page of [one, other]) drawImagePage(page, contentOf(lotYard()))
    expect(one.calls).toEqual(other.calls)
    expect(() => one.restore()).toThrow('restore without save')
  })
})

describe('what the page says', () => {
  const usual = contentOf(lotYard())
  it('title, pipe with its weight, sticks and made length, units, stage, revision, date', () => {
    const words = wordsOf(regionOf(usual, 'titleBlock'))
    // 10 in IPS DR 17 PE4710: OD 10.75 in, wall 0.632 in, mean wall 0.670 in; π·(10.75 − 0.670)·0.670 in² × 0.0345 lb/in³ × 12 = 8.78 lb/ft
    for (const text of ['Maple Fork pump house', 'IPS 10 in DR 17 PE4710, 8.78 lb/ft', '8 sticks of 40 ft make 319 ft', 'feet and inches; metric in brackets', 'pull, joint 7 of 7', 'revision C', '3 June 2025, 14:32']) expect(words).toContain(text)
  })
  it('says so where pipe and sticks are not known, and draws all the rest', () => {
    const bare = contentOf(lotYard({ job: { pipe: null, stickLengthM: null, neededLengthM: null } }))
    expect(wordsOf(regionOf(bare, 'titleBlock'))).toContain('not said yet')
    expect(wordsOf(regionOf(bare, 'titleBlock'))).toContain('not known yet')
    expect(wordsOf(regionOf(bare, 'dimensions'))).toContain('exit 25\' 0"')
  })
  it('names an untitled layout and says that nothing is laid out', () => {
    const empty = contents['an empty document']!()
    expect(wordsOf(regionOf(empty, 'titleBlock'))).toContain('untitled layout')
    expect(wordsOf(regionOf(empty, 'plan'))).toBe('Nothing is laid out yet.')
    expect(wordsOf(regionOf(empty, 'findings'))).toContain('have not run')
  })
  it('cuts a long title with an ellipsis after two lines', () => {
    const titles = textsOf(regionOf(contentOf(lotYard({ layout: { title: LONG } })), 'titleBlock').list).slice(0, 2)
    expect(titles[0]!.text.startsWith('Pump station')).toBe(true)
    expect(titles[1]!.text).toMatch(/…$/)
  })
  it('carries the caution in full, in both languages', () => {
    expect(wordsOf(regionOf(usual, 'foot'))).toContain('Advice only. Local law, the owner’s rules, the equipment maker’s manual and the qualified person on site come first.')
    expect(wordsOf(regionOf(contentOf(lotYard(), spanish), 'foot'))).toContain(sheetWords.caution.es)
    expect(wordsOf(regionOf(contents['long names everywhere']!(), 'foot'))).toContain(sheetWords.caution.en)
  })
  it('says what it was made with, when, and of which revision', () => expect(wordsOf(regionOf(usual, 'foot'))).toContain('made with Stringyard, 3 June 2025, 14:32, revision C'))
  it('says twice that results are not of this drawing, and not at all when they are', () => {
    const stale = contentOf(lotYard(), { isSettled: false })
    expect(wordsOf(regionOf(stale, 'heading'))).toContain('not settled: the results below are not of this drawing')
    expect(wordsOf(regionOf(stale, 'findings'))).toContain('not settled')
    expect(regionsOf(usual).map(wordsOf).join(' ')).not.toContain('not settled')
  })
  it('is in Spanish throughout', () => {
    const words = regionsOf(contentOf(lotYard(), spanish)).map(wordsOf).join(' ')
    for (const text of ['Planta', 'Vista lateral', 'ALTO', 'CORREGIR', 'REVISAR', 'NOTA', 'ROJA', 'salida 25\' 0"', 'soporte de tubo', 'regla de la casa', '8 tubos de 40 pies', 'por confirmar 1']) expect(words).toContain(text)
    for (const text of ['STOP', 'exit', 'house rule', 'Legend']) expect(words).not.toContain(text)
  })
})

describe('told apart in grey', () => {
  const legend = regionOf(contentOf(lotYard()), 'legend')
  const shapes = legend.list.flatMap((primitive) => (primitive.t === 'mark' ? [primitive.parts] : []))
  it('the legend has each level in its own shape with its word', () => {
    const outlines = (['STOP', 'FIX', 'CHECK', 'NOTE'] as const).map((level) => levelShape(level, 18))
    for (const outline of outlines) expect(shapes).toContainEqual(outline)
    // Octagon of 8 corners, triangle of 3, circle, square: no two alike even without fills.
    expect(outlines.map(([part]) => (part?.t === 'path' ? part.points.length / 2 : part?.t))).toEqual([8, 3, 'circle', 'rect'])
    for (const word of ['STOP', 'FIX', 'CHECK', 'NOTE']) expect(wordsOf(legend)).toContain(word)
  })
  it('the legend has each zone class with its own hatch, edge and word', () => {
    for (const zoneClass of ['RED', 'AMBER', 'BLUE'] as const) {
      const { hatch } = zonePens[zoneClass]
      expect(legend.list.some((primitive) => primitive.t === 'rect' && primitive.hatch === hatch)).toBe(true)
      expect(wordsOf(legend)).toContain(zoneClass)
    }
    expect(new Set(Object.values(zonePens).map(({ hatch }) => hatch)).size).toBe(3)
  })
  it('explains pipe, tape, ground level, crew, and a zone with a missing input only where there is one', () => {
    for (const word of ['pipe', 'tape', 'ground level', 'crew spot']) expect(wordsOf(legend)).toContain(word)
    expect(wordsOf(regionOf(contentOf(lotYard(), { zones: [] }), 'legend'))).not.toContain('missing')
    const zone = contentOf(lotYard()).zones[0]!
    expect(wordsOf(regionOf(contentOf(lotYard(), { zones: [{ ...zone, missing: [{ recordId: 'x:1', path: 'y', label: { en: 'y', es: 'y' } }] }] }), 'legend'))).toContain('input missing')
  })
  it('every open finding stands in the shape of its level with its number', () => {
    const { list } = regionOf(contentOf(lotYard()), 'findings')
    const marks = list.flatMap((primitive) => (primitive.t === 'mark' ? [primitive.parts] : []))
    ;(['STOP', 'FIX', 'CHECK', 'CHECK', 'NOTE'] as const).forEach((level, i) => expect(marks).toContainEqual(levelShape(level, 25, String(i + 1))))
  })
})
