import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { facePartFile } from '../../src/headless/faceFiles.ts'
import { layoutOf, type YardDocument } from '../../src/scene/document.ts'
import { crewSheet, type CrewSheet } from '../../src/sheet/crew/crewSheet.ts'
import { paperNames, papers } from '../../src/sheet/crew/paper.ts'
import type { CrewSheetContent } from '../../src/sheet/crew/types.ts'
import { pdfOf } from '../../src/write/pdf.ts'
import { contentOf, exampleDocument } from '../sheet/crew/content.ts'
import { readPdf, type ReadPage, type ReadText } from './pdfReader.ts'

const made = (sheet: CrewSheet, over: Partial<Parameters<typeof pdfOf>[1]> = {}): Promise<Uint8Array> =>
  pdfOf(sheet.pages, { title: 'sheet', language: 'en-US', whenIso: '2026-01-05T10:00:00.000Z', loadFace: (weight, part) => Promise.resolve(new Uint8Array(readFileSync(facePartFile(weight, part)))), ...over })
/** 0.1 mm in points. */
const TENTH_MM_PT = (0.1 / 25.4) * 72
const PT_PER_M = 72 / 0.0254

describe('the crew sheet as PDF, read back by pdf.js', { timeout: 60_000 }, () => {
  let content: CrewSheetContent
  let sheet: CrewSheet
  let pages: readonly ReadPage[]
  beforeAll(async () => {
    content = contentOf(exampleDocument('maple-fork-good'), { system: 'metric' })
    sheet = crewSheet(content)
    pages = await readPdf(await made(sheet))
  }, 60_000)

  it('lies on the paper asked for, all four and both ways', async () => {
    const empty = { ...content, rehearsal: null }
    for (const paper of paperNames) for (const orientation of ['landscape', 'portrait'] as const) {
      const { pages: [first] } = crewSheet({ ...empty, paper, orientation })
      const [read] = await readPdf(await made({ pages: [first!], scale: sheet.scale }))
      const { shortM, longM } = papers[paper]
      const [widthM, heightM] = orientation === 'portrait' ? [shortM, longM] : [longM, shortM]
      expect(Math.abs(read!.widthPt - widthM * PT_PER_M)).toBeLessThan(TENTH_MM_PT)
      expect(Math.abs(read!.heightPt - heightM * PT_PER_M)).toBeLessThan(TENTH_MM_PT)
    }
  }, 30_000)

  it('draws distances of the site true to the scale it states, to 0.1 mm on paper', () => {
    const { site } = content
    const [page] = pages
    const stated = page!.texts.map(({ text }) => /^1:(\d+),/.exec(text)?.[1]).find((ratio) => ratio !== undefined)
    expect(Number(stated)).toBe(sheet.scale.ratio)
    const ptPerM = PT_PER_M / Number(stated)
    // Points of the site on paper: along the exit to the right, right side looking down-string below.
    const { datum, headingRad } = site.setUp!
    const model = (xM: number, yM: number): readonly [number, number] => {
      const [dx, dy] = [xM - datum.xM, yM - datum.yM]
      return [(dx * Math.cos(headingRad) + dy * Math.sin(headingRad)) * ptPerM, (dx * Math.sin(headingRad) - dy * Math.cos(headingRad)) * ptPerM]
    }
    const flat = (values: readonly number[]): (readonly [number, number])[] => Array.from({ length: values.length / 2 }, (_, i) => model(values[2 * i]!, values[2 * i + 1]!))
    const isSame = (path: ReadPage['paths'][number], wanted: readonly (readonly [number, number])[]): boolean => {
      const bare = path.length === wanted.length + 1 ? path.slice(0, -1) : path
      return bare.length === wanted.length && wanted.every(([x, y], i) => Math.hypot(bare[i]![0] - bare[0]![0] - (x - wanted[0]![0]), bare[i]![1] - bare[0]![1] - (y - wanted[0]![1])) < TENTH_MM_PT)
    }
    const features = [...site.placed.values()].filter(({ record, kind }) => !('place' in record) && ['boundary', 'building'].includes(kind))
    expect(features.length).toBeGreaterThan(0)
    for (const { outlineM } of features) expect(page!.paths.some((path) => isSame(path, flat(outlineM)))).toBe(true)
    // The string at its longest: from a stick before the datum to the tip, 319 ft 5⅞ in + 40 ft on a straight axis.
    const longPt = (site.sticks.stringLengthM(site.sticks.stickCount) + site.sticks.stickLengthM!) * ptPerM
    expect(page!.paths.some((path) => path.length > 100 && Math.abs(Math.hypot(path.at(-1)![0] - path[0]![0], path.at(-1)![1] - path[0]![1]) - longPt) < TENTH_MM_PT)).toBe(true)
    // A wrong scale is noticed: a plan a thousandth larger has no such string.
    expect(page!.paths.some((path) => path.length > 100 && Math.abs(Math.hypot(path.at(-1)![0] - path[0]![0], path.at(-1)![1] - path[0]![1]) - longPt * 1.001) < TENTH_MM_PT)).toBe(false)
  })

  it('has two marks 100 mm apart on metric paper and 4 in apart else, and a bar as long as it says', async () => {
    const isApart = (page: ReadPage, pt: number): boolean => {
      const uprights = page.paths.filter((path) => path.length === 2 && Math.abs(path[0]![0] - path[1]![0]) < 1e-6 && Math.abs(Math.abs(path[0]![1] - path[1]![1]) - 14) < 1e-6)
      return uprights.length === 2 && Math.abs(Math.abs(uprights[0]![0]![0] - uprights[1]![0]![0]) - pt) < TENTH_MM_PT
    }
    expect(isApart(pages[0]!, (100 / 25.4) * 72)).toBe(true)
    const feet = crewSheet({ ...content, system: 'feetInches' })
    const [page] = await readPdf(await made({ ...feet, pages: feet.pages.slice(0, 1) }))
    expect(isApart(page!, 288)).toBe(true)
    const said = page!.texts.map(({ text }) => /^([\d.]+) ft \(/.exec(text)?.[1]).find((count) => count !== undefined)
    const barPt = Number(said) * 0.3048 * feet.scale.ptPerM
    expect(page!.paths.some((path) => path.length >= 4 && Math.abs(Math.max(...path.map(([x]) => x)) - Math.min(...path.map(([x]) => x)) - barPt) < TENTH_MM_PT && Math.max(...path.map(([, y]) => y)) - Math.min(...path.map(([, y]) => y)) < 7)).toBe(true)
  })

  it('prints in the table what the solver found: tape, height, load and tolerance of every support', () => {
    const heads = pages.filter(({ texts }) => texts.some(({ text }) => text === 'Setting out by tape'))
    expect(heads.length).toBeGreaterThan(0)
    const rowOf = (label: string): readonly string[] => {
      for (const { texts } of heads) {
        const at = texts.find(({ text, x }) => text === label && x < 60)
        if (at !== undefined) return texts.filter(({ y }) => Math.abs(y - at.y) < 1).toSorted((a: ReadText, b: ReadText) => a.x - b.x).map(({ text }) => text)
      }
      return []
    }
    let checked = 0
    for (const { key, label, runningM, plannedSaddleM } of content.site.supports) {
      const cells = rowOf(label)
      const tape = cells.map((text) => /^(infeed|exit) ([\d.]+) m$/.exec(text)).find((match) => match !== null)
      expect(tape, `${label}: ${cells.join(' | ')}`).toBeTruthy()
      // To the centimetre, as metres are written; infeed is said, never a minus.
      expect(Math.abs((tape![1] === 'infeed' ? -1 : 1) * Number(tape![2]) - runningM)).toBeLessThanOrEqual(0.005 + 1e-9)
      const heights = cells.flatMap((text) => (/^[\d.]+ mm$/.test(text) ? [Number.parseFloat(text)] : []))
      expect(heights.some((mm) => Math.abs(mm - plannedSaddleM! * 1000) <= 0.51), label).toBe(true)
      const { loadN, toleranceM } = content.run!.quantities!.supports[key]!
      const load = cells.map((text) => /^([\d.]+) (k?)N$/.exec(text)).find((match) => match !== null)
      // Three figures.
      if (loadN !== null) expect(Math.abs(Number(load![1]) * (load![2] === 'k' ? 1000 : 1) - loadN) / loadN).toBeLessThan(0.006)
      const within = cells.map((text) => /^± ([\d.]+) mm$/.exec(text)).find((match) => match !== null)
      // Rounded down, never up.
      if (toleranceM !== null) {
        expect(Number(within![1])).toBeLessThanOrEqual(toleranceM * 1000 + 1e-6)
        expect(Number(within![1])).toBeGreaterThan(toleranceM * 1000 - 1)
      }
      checked += 1
    }
    expect(checked).toBe(content.site.supports.length)
  })

  it('letters nothing under 11 pt but the digits of fractions', async () => {
    const feet = await readPdf(await made(crewSheet({ ...content, system: 'feetInches', language: 'both' })))
    const small = [...pages, ...feet].flatMap(({ texts }) => texts).filter(({ sizePt, text }) => sizePt < 10.99 && !/^\d{1,2}$/.test(text.trim()))
    expect(small.map(({ text }) => text)).toEqual([])
  })

  it('says DRAFT on every page while the checks have not settled, in both languages', async () => {
    const draft = await readPdf(await made(crewSheet({ ...content, run: null, isSettled: false, language: 'both' })))
    for (const { texts } of draft) {
      const all = texts.map(({ text }) => text).join(' ')
      expect(all).toContain('DRAFT')
      expect(all).toContain('BORRADOR')
    }
  })

  it('keeps every number of page, revision and date on each page, and Spanish letters', async () => {
    const spanish = await readPdf(await made(crewSheet({ ...content, language: 'es' })))
    spanish.forEach(({ texts }, i) => expect(texts.map(({ text }) => text).join(' ')).toContain(`revisión A, página ${i + 1} de ${spanish.length}`))
    expect(spanish.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')).toContain('Números de alto')
  })

  it('sets hostile and odd names as text: formulas, markup, marks that turn writing round, letters the face lacks', async () => {
    const document = exampleDocument('maple-fork-good')
    const title = '=HYPERLINK("x")<script>alert(1)</script>\u202e) Łódź Ø \u0000\n漢'
    const renamed: YardDocument = { records: { ...document.records, 'layout:this': { ...layoutOf(document), title } } }
    const read = await readPdf(await made(crewSheet({ ...content, site: deriveSite(renamed), rehearsal: null })))
    const all = read[0]!.texts.map(({ text }) => text).join('').replaceAll(' ', '')
    expect(all).toContain('=HYPERLINK("x")<script>alert(1)</script>)ŁódźØ¤')
    for (const unseen of ['\u202e', '\u0000']) expect(all).not.toContain(unseen)
  })

  it('breaks a very long name over lines instead of losing it', async () => {
    const document = exampleDocument('maple-fork-good')
    const title = 'W'.repeat(200)
    const renamed: YardDocument = { records: { ...document.records, 'layout:this': { ...layoutOf(document), title } } }
    const [page] = await readPdf(await made(crewSheet({ ...content, site: deriveSite(renamed), rehearsal: null })))
    expect(page!.texts.filter(({ text }) => /^W+$/.test(text)).map(({ text }) => text.length).reduce((a, b) => a + b, 0)).toBeGreaterThanOrEqual(200)
    for (const { x, text, sizePt } of page!.texts) if (/^W+$/.test(text)) expect(x + text.length * sizePt * 0.5).toBeLessThan(page!.widthPt)
  })

  it('stops between two pages when it is cancelled, and tells how far it is', async () => {
    const controller = new AbortController()
    const seen: string[] = []
    await expect(made(sheet, { signal: controller.signal, onPage: (page, of) => { seen.push(`${page} of ${of}`); if (page === 2) controller.abort() } })).rejects.toThrow(/abort/i)
    expect(seen).toEqual([`1 of ${sheet.pages.length}`, `2 of ${sheet.pages.length}`])
  })

  it('gives the same bytes for the same sheet', async () => {
    expect(Buffer.from(await made(sheet)).equals(Buffer.from(await made(crewSheet(content))))).toBe(true)
  })
})
