import { describe, expect, it } from 'vitest'
import { arrivalsOf, ARRIVAL_CHECK_ID } from '../../../src/canvas/section/arrivals.ts'
import { markParts, sectionMarks } from '../../../src/canvas/section/marks.ts'
import type { CheckRun, Finding } from '../../../src/checks/finding.ts'
import { profileAt } from '../../../src/derive/profile.ts'
import { sectionDrawing, sectionRange } from '../../../src/derive/sectionDrawing.ts'
import { railColumns, sectionRail } from '../../../src/derive/sectionRail.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import type { Primitive } from '../../../src/drawing/primitives.ts'
import { shifted } from '../../../src/drawing/shifted.ts'
import { item, job, onRun, setUp, yard } from '../../helpers/documents.ts'

const ft = 0.3048
const inch = 0.0254
const reader = { system: 'feetInches', language: 'en' } as const
const stand = (n: number, feet: number, inches: number | null) => item('stand', `stand:${n}`, onRun(feet * ft), { height: inches === null ? { rule: 'unknown' } : { rule: 'aboveGround', saddleM: inches * inch } })
const document = (...more: readonly YardRecord[]) => yard(
  job({ pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, stickLengthM: 40 * ft, neededLengthM: 280 * ft }), setUp({ fallRatio: 0.01 }),
  item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(-20 * ft)),
  stand(1, 12.5, 30), stand(2, 25, 28.5), stand(3, 34.75, 21.5), stand(4, 44.5, 12.5), ...more,
)
const site = deriveSite(document())
const profile = profileAt(site, { phase: 'fuse', joint: 3 })
const look = { pxPerM: 15.4, pxPerLevelM: 77, fromM: -19, toM: 50, reader, chosenIds: [] as string[] }
const drawing = sectionDrawing(site, profile, look)
const texts = (list: readonly Primitive[]): string[] => list.flatMap((p) => (p.t === 'text' ? [p.text] : p.t === 'mark' ? texts(p.parts) : []))
const numbersOf = (value: unknown): number[] => (typeof value === 'number' ? [value] : Array.isArray(value) ? value.flatMap(numbersOf) : typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [])

describe('the side view as drawn', () => {
  it('holds only finite numbers at every scale, stage and for a yard without pipe', () => {
    for (const pxPerM of [2, 8, 15.4, 60]) {
      for (const phase of ['setUp', 'load', 'fuse', 'pull', 'rest', 'offload'] as const) expect(numbersOf(sectionDrawing(site, profileAt(site, { phase, joint: 2 }), { ...look, pxPerM })).every(Number.isFinite), `${phase} at ${pxPerM}`).toBe(true)
    }
    const bare = deriveSite(yard(item('machine', 'machine:1', onRun(0))))
    expect(numbersOf(sectionDrawing(bare, profileAt(bare, { phase: 'fuse', joint: 1 }), look)).every(Number.isFinite)).toBe(true)
  })

  it('bends the pipe through its solved shape: the outline starts at the bottom of the pipe', () => {
    const outlines = drawing.filter((p) => p.t === 'path' && p.fill === 'pipeSide')
    expect(outlines).toHaveLength(profile.bodies.length)
    const string = profile.bodies.find(({ name }) => name === 'string')!
    const path = outlines.find((p) => p.t === 'path' && Math.abs((p.points[0] as number) - string.startM) < 0.3)
    const [x, y] = path?.t === 'path' ? [path.points[0] as number, path.points[1] as number] : [NaN, NaN]
    expect(y).toBeCloseTo(string.result.at(x).levelM, 6)
  })

  it('draws the pipe with its stripe as in plan where it is thin', () => {
    const far = sectionDrawing(site, profile, { ...look, pxPerM: 3, pxPerLevelM: 15 })
    expect(far.some((p) => p.t === 'pipe')).toBe(true)
    expect(far.some((p) => p.t === 'path' && p.fill === 'pipeSide')).toBe(false)
  })

  it('breaks the ground line where the ground is guessed', () => {
    const lines = drawing.filter((p) => p.t === 'path' && p.weight === 'gear' && (p.dash === undefined || p.dash === 'guess') && p.points.length >= 4 && Math.abs((p.points[1] as number) - site.groundLevelAt(p.points[0] as number)) < 1e-9)
    expect(lines.some((p) => p.t === 'path' && p.dash === 'guess')).toBe(true)
    expect(lines.some((p) => p.t === 'path' && p.dash === undefined)).toBe(true)
  })

  it('asks with a question mark where nobody has said how high a stand stands', () => {
    const unknown = deriveSite(document(stand(5, 54, null)))
    expect(texts(sectionDrawing(unknown, profileAt(unknown, { phase: 'fuse', joint: 3 }), look))).toContain('?')
  })

  it('writes sags of a sixteenth and more at working scale, and none from afar', () => {
    expect(texts(drawing).filter((text) => text.startsWith('sag')).length).toBeGreaterThan(0)
    expect(texts(sectionDrawing(site, profile, { ...look, pxPerM: 5 })).some((text) => text.startsWith('sag'))).toBe(false)
  })

  it('draws nothing of a kind that is hidden', () => {
    expect(sectionDrawing(site, profile, { ...look, hiddenKinds: ['stand'] }).length).toBeLessThan(drawing.length)
  })

  it('reaches from the lowest ground to the top of the pipe in view', () => {
    const { lowestM, highestM } = sectionRange(site, profile, -19, 50)
    // 50 m at 1 % below the nail; the pipe is at least as high as the jaw line plus its 10.75 in.
    expect(lowestM).toBeCloseTo(-0.5)
    expect(highestM).toBeGreaterThanOrEqual((site.jaws.bopLevelM ?? 0) + 10.75 * inch - 1e-9)
  })
})

describe('figures rail', () => {
  const rail = (over = {}) => sectionRail(site, profile, { reader, fromM: -19, toM: 50, pxPerM: 15.4, chosenIds: [], leftM: -19, arrivals: null, figurePx: 13.5, ...over })

  it('writes saddle and load under each support, the unit once at the head of the row', () => {
    const all = texts(rail())
    expect(all).toContain('saddle, BOP above ground (in)')
    expect(all).toContain('28\u2009½')
    expect(all).toContain('carries (lb)')
    expect(all.some((text) => /^\d+$/.test(text))).toBe(true)
  })

  it('keeps the chosen column and drops those nearer than 30 px to one shown', () => {
    const columns = [0, 1, 2, 3].map((i) => ({ atM: i, isChosen: i === 1 }))
    // 20 px apart: the chosen at 1, then those at least 30 px from it: 3.
    expect(railColumns(columns, 20).map(({ atM }) => atM)).toEqual([1, 3])
  })

  it('marks the chosen column in its colour', () => {
    expect(rail({ chosenIds: ['stand:2'] }).filter((p) => p.t === 'text' && p.ink === 'chosen').map((p) => (p.t === 'text' ? p.text : ''))).toContain('28\u2009½')
  })

  it('has a third row only when the checks have said how the nose arrives', () => {
    expect(texts(rail())).not.toContain('free nose on arrival (in)')
    const arrivals = new Map([[site.supports.find(({ label }) => label === 'E4')!.key, { aboveM: -1 * inch, onGround: false, isBad: true }]])
    expect(texts(rail({ arrivals }))).toContain('\u22121')
    const bad = rail({ arrivals }).find((p) => p.t === 'text' && p.text === '\u22121')
    expect(bad).toMatchObject({ ink: 'red', bold: true })
  })
})

const finding = (level: Finding['level'], itemId: string, over: Partial<Finding> = {}): Finding => ({
  checkId: 'x', key: `${level}@${itemId}`, level, isUnknown: false, missing: [], itemIds: [itemId], where: null, what: { text: { en: 'a', es: 'a' } },
  measured: null, limit: null, margin: null, source: { class: 'mechanics', cite: '' }, phases: [], move: null, remedy: null, ...over,
})
const runOf = (...findings: Finding[]): CheckRun => ({ findings, counts: { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0, toConfirm: 0 } })

describe('marks of findings', () => {
  const map = { alongPx: (m: number) => (m + 19) * 15.4, levelPx: (m: number) => 200 - m * 77, widthPx: 1072, topPx: 40 }

  it('carry the number of their margin note, STOP first', () => {
    const marks = sectionMarks(runOf(finding('NOTE', 'stand:1'), finding('STOP', 'stand:3')), site, profile, map)
    expect(marks.map(({ level, number }) => [level, number])).toEqual([['STOP', 1], ['NOTE', 2]])
  })

  it('never cover each other', () => {
    const marks = sectionMarks(runOf(finding('FIX', 'stand:2'), finding('CHECK', 'stand:2'), finding('NOTE', 'stand:3')), site, profile, map)
    for (const a of marks) for (const b of marks) if (a !== b) expect(Math.hypot(a.markXPx - b.markXPx, a.markYPx - b.markYPx)).toBeGreaterThanOrEqual(17)
  })

  it('are drawn pale while they belong to an older document', () => {
    const marks = sectionMarks(runOf(finding('FIX', 'stand:2')), site, profile, map)
    expect(JSON.stringify(markParts(marks, true))).not.toContain('"fix"')
    expect(JSON.stringify(markParts(marks, false))).toContain('"fix"')
  })

  it('leave out what lies off the screen', () => {
    expect(sectionMarks(runOf(finding('FIX', 'stand:2')), site, profile, { ...map, widthPx: 100 })).toEqual([])
  })
})

describe('how the nose arrives', () => {
  it('is not known until the check has said so', () => {
    expect(arrivalsOf(runOf(finding('FIX', 'stand:4')), site)).toBeNull()
  })
  it('is the droop the check measured, downwards, and "set" where stick 1 is laid', () => {
    const run = runOf(finding('FIX', 'stand:4', { checkId: ARRIVAL_CHECK_ID, measured: { kind: 'shortLength', value: 6 * inch } }))
    const arrivals = arrivalsOf(run, site)
    const at = (label: string) => arrivals?.get(site.supports.find((s) => s.label === label)!.key)
    expect(at('E4')).toEqual({ aboveM: expect.closeTo(-6 * inch), onGround: false, isBad: true })
    expect(at('E1')).toEqual({ aboveM: null, onGround: false, isBad: false })
  })
})

describe('moved lists', () => {
  it('move places and leave the inside of marks', () => {
    const list: Primitive[] = [{ t: 'path', points: [1, 2, 3, 4], stroke: 'ink' }, { t: 'mark', xM: 0, yM: 0, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 3 }] }]
    expect(shifted(list, 10, 20)).toEqual([{ t: 'path', points: [11, 22, 13, 24], stroke: 'ink' }, { t: 'mark', xM: 10, yM: 20, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 3 }] }])
  })
})
