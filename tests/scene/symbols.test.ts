import { describe, expect, it } from 'vitest'
import { paint } from '../../src/drawing/paint.ts'
import type { Primitive, SymbolContext } from '../../src/drawing/primitives.ts'
import { themes } from '../../src/drawing/theme.ts'
import { kindOf, kinds } from '../../src/scene/kinds/index.ts'
import { datumPlan } from '../../src/scene/symbols/datum.ts'
import { besideLine, insetRing, placesAlong } from '../../src/scene/symbols/lines.ts'
import { TRENCH_LEGAL_M } from '../../src/scene/symbols/trench.ts'
import { createRecorder } from '../helpers/recorder.ts'
import { sampleOf } from '../helpers/sampleRecords.ts'

const scales = [5, 15, 50, 120]
const at = (pxPerM: number, over: Partial<SymbolContext> = {}): SymbolContext => ({ pipeOuterDiameterM: 0.273, stickLengthM: 12.192, pxPerM, ...over })
const kindNames = kinds.map(({ kind }) => kind)
const itemKinds = kinds.filter(({ placing }) => placing === 'item').map(({ kind }) => kind)
const gearKinds = kinds.filter(({ gear, placing }) => (gear === 'line' || gear === 'lift') && placing === 'item').map(({ kind }) => kind)
const planOf = (kind: (typeof kindNames)[number], context: SymbolContext, over = {}) => kindOf(kind)?.planSymbol(sampleOf(kind, over), context) ?? []

/** Points of the symbol itself, m: without pipe lying on it, rope leaving it, words and marks of fixed size. */
const ownPoints = (list: readonly Primitive[]): number[] =>
  list.flatMap((p) => {
    if (p.t === 'path') return p.dash === 'rope' ? [] : [...p.points]
    if (p.t === 'rect') return [p.xM, p.yM, p.xM + p.widthM, p.yM + p.heightM]
    if (p.t === 'circle') return [p.xM - p.radiusM, p.yM - p.radiusM, p.xM + p.radiusM, p.yM + p.radiusM]
    return []
  })
const boundsOf = (points: readonly number[]) => {
  const [xs, ys] = [points.filter((_, i) => i % 2 === 0), points.filter((_, i) => i % 2 === 1)]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}
const numbersOf = (value: unknown): number[] => (typeof value === 'number' ? [value] : Array.isArray(value) ? value.flatMap(numbersOf) : typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [])

describe.each(kindNames)('plan symbol of %s', (kind) => {
  it.each(scales)('has only finite numbers at %d px a metre and paints without leaving the pen changed', (pxPerM) => {
    const list = planOf(kind, at(pxPerM))
    expect(numbersOf(list).every(Number.isFinite)).toBe(true)
    const recorder = createRecorder()
    paint(recorder, list, { matrix: { a: pxPerM, b: 0, c: 0, d: -pxPerM, e: 0, f: 0 }, theme: themes.day })
    expect(recorder.calls.flatMap(({ args }) => args.filter((value) => typeof value === 'number')).every(Number.isFinite)).toBe(true)
    expect(recorder.calls.length).toBeGreaterThan(0)
  })

  it('carries neither words nor loose pipe on the gear edge', () => {
    const list = planOf(kind, at(9, { onShelf: true }))
    expect(list.some(({ t }) => t === 'text' || t === 'pipe')).toBe(false)
  })
})

describe.each(itemKinds)('plan symbol of the item %s', (kind) => {
  // Where a symbol is enlarged to be seen at all (6 px least), 8 px about the origin are allowed instead.
  it.each(scales)('lies within one and a half times its footprint at %d px a metre', (pxPerM) => {
    const points = ownPoints(planOf(kind, at(pxPerM)))
    if (points.length === 0) return
    const drawn = boundsOf(points)
    const foot = boundsOf(kindOf(kind)?.footprint(sampleOf(kind), at(pxPerM)) ?? [])
    const [cx, cy] = [(foot.x0 + foot.x1) / 2, (foot.y0 + foot.y1) / 2]
    const [halfX, halfY] = [Math.max(0.75 * (foot.x1 - foot.x0), 4 / pxPerM), Math.max(0.75 * (foot.y1 - foot.y0), 4 / pxPerM)]
    expect(drawn.x0).toBeGreaterThanOrEqual(cx - halfX - 1e-9)
    expect(drawn.x1).toBeLessThanOrEqual(cx + halfX + 1e-9)
    expect(drawn.y0).toBeGreaterThanOrEqual(cy - halfY - 1e-9)
    expect(drawn.y1).toBeLessThanOrEqual(cy + halfY + 1e-9)
  })
})

describe.each(gearKinds)('gear %s', (kind) => {
  it.each([15, 50, 120])('is no unlabelled box at %d px a metre: more than three parts', (pxPerM) => {
    expect(planOf(kind, at(pxPerM)).length).toBeGreaterThan(3)
  })
  it('differs from every other gear on the gear edge', () => {
    const own = JSON.stringify(planOf(kind, at(9, { onShelf: true })))
    for (const other of gearKinds) if (other !== kind) expect(JSON.stringify(planOf(other, at(9, { onShelf: true })))).not.toBe(own)
  })
})

describe('symbols say what their record says', () => {
  it('shows the carriage arrow on the side whose jaws move', () => {
    const arrowX = (carriageSide: string) => {
      const arrow = planOf('machine', at(40), { carriageSide }).slice(-3)
      return boundsOf(ownPoints(arrow))
    }
    expect(arrowX('infeed').x1).toBeLessThan(0)
    expect(arrowX('exit').x0).toBeGreaterThan(0)
  })

  it('stores as many sticks as the rack holds side by side, on its open side', () => {
    const sticks = (over: object) => planOf('rack', at(15), over).filter((p) => p.t === 'pipe')
    expect(sticks({ stickCount: 3, openSide: 'R' })).toHaveLength(3)
    expect(sticks({ stickCount: 3, openSide: 'R' }).every((p) => (p.points[1] as number) < 0)).toBe(true)
    expect(sticks({ stickCount: 3, openSide: 'L' }).every((p) => (p.points[1] as number) > 0)).toBe(true)
    // 2.748 m of open beam less 0.35 m, 0.3085 m a stick: 7.
    expect(sticks({ stickCount: 40, openSide: 'R' })).toHaveLength(7)
  })

  it('draws stops that are up solid, unknown ones broken, and none where they are down', () => {
    const solidStops = (stops: boolean | null) => planOf('rack', at(15), { stopsLeft: stops, stopsRight: stops }).filter((p) => p.t === 'rect' && p.widthM === 0.4 && p.fill === 'ink')
    expect(solidStops(true)).toHaveLength(4)
    expect(solidStops(false)).toHaveLength(0)
    expect(planOf('rack', at(15), { stopsLeft: null, stopsRight: false }).filter((p) => p.t === 'rect' && p.dash === 'missing')).toHaveLength(2)
  })

  it('puts a question mark where a wire height, a voltage, a depth or a level is unknown', () => {
    for (const kind of ['overheadLine', 'trench', 'level'] as const) expect(JSON.stringify(planOf(kind, at(20)))).toContain('?')
    const known = { figures: { levelM: { value: -0.2413, basis: 'measured' } } }
    // 9.5 in down.
    expect(JSON.stringify(planOf('level', at(20), known))).toContain('\u22129\u2009½ in')
  })

  it('draws the legal line of a trench 2 ft outside its edges', () => {
    const reds = planOf('trench', at(20)).filter((p) => p.t === 'path' && p.stroke === 'red')
    const offsets = reds.map((p) => (p.t === 'path' ? Math.abs(p.points[1] as number) : 0))
    // Half of 1.2 m and 2 ft.
    expect(offsets).toEqual([expect.closeTo(0.6 + TRENCH_LEGAL_M), expect.closeTo(0.6 + TRENCH_LEGAL_M)])
  })

  it('keeps the classes of zones apart by hatch and by dash', () => {
    const edges = (['RED', 'AMBER', 'BLUE'] as const).map((zoneClass) => planOf('zone', at(20), { zoneClass })[0])
    expect(new Set(edges.map((p) => (p !== undefined && 'hatch' in p ? p.hatch : null))).size).toBe(3)
    expect(new Set(edges.map((p) => (p !== undefined && 'dash' in p ? (p.dash ?? 'solid') : null))).size).toBe(3)
  })

  it('shows a crew spot as a dot, then a letter, then letter and name, by scale', () => {
    const texts = (pxPerM: number) => JSON.stringify(planOf('crew', at(pxPerM), { role: 'noseSpotter' }))
    expect(texts(5)).not.toContain('"N"')
    expect(texts(10)).toContain('"N"')
    expect(texts(10)).not.toContain('nose spotter')
    expect(texts(20)).toContain('nose spotter')
  })

  it('keeps the rope end of a puller at its place: the vehicle lies ahead', () => {
    for (const pullerKind of ['tractor', 'loader', 'winch']) expect(boundsOf(kindOf('puller')?.footprint(sampleOf('puller', { pullerKind }), at(15)) ?? []).x0).toBe(0)
  })
})

describe('side view symbols', () => {
  const side = (kind: 'stand' | 'rack' | 'roller' | 'machine' | 'puller', saddleM: number, over = {}) => kindOf(kind)?.sectionSymbol?.(sampleOf(kind, over), { ...at(15.4), pxPerLevelM: 77, saddleM }) ?? []

  it.each(['stand', 'rack', 'roller', 'machine', 'puller'] as const)('draws %s from finite numbers at every scale and stretch', (kind) => {
    for (const pxPerM of scales) {
      for (const stretch of [1, 5]) {
        const list = kindOf(kind)?.sectionSymbol?.(sampleOf(kind), { ...at(pxPerM), pxPerLevelM: pxPerM * stretch, saddleM: 0.5 }) ?? []
        expect(list.length).toBeGreaterThan(1)
        expect(numbersOf(list).every(Number.isFinite)).toBe(true)
      }
    }
  })

  it('puts the roller of a stand at the bottom of the pipe', () => {
    const head = side('stand', 0.7).find((p) => p.t === 'mark')
    expect(head?.yM).toBe(0.7)
  })

  it('leaves no part of a stand above the pipe it carries', () => {
    for (const roller of ['flat', 'V', 'cradle']) {
      for (const saddleM of [0.1, 0.5, 1]) expect(boundsOf(ownPoints(side('stand', saddleM, { roller }))).y1).toBeLessThanOrEqual(saddleM)
    }
  })
})

describe('lines beside lines', () => {
  it('keeps a parallel at its distance round a corner', () => {
    // A right angle: the mitre of a line 1 m to the left of (0,0)-(10,0)-(10,10) is at (9, 1).
    const beside = besideLine([{ xM: 0, yM: 0 }, { xM: 10, yM: 0 }, { xM: 10, yM: 10 }], 1)
    expect(beside[1]).toEqual({ xM: expect.closeTo(9), yM: expect.closeTo(1) })
  })
  it('insets a ring of either direction, and gives up where it would turn inside out', () => {
    const ring = [{ xM: 0, yM: 0 }, { xM: 10, yM: 0 }, { xM: 10, yM: 4 }, { xM: 0, yM: 4 }]
    expect(insetRing(ring, 1)?.[0]).toEqual({ xM: expect.closeTo(1), yM: expect.closeTo(1) })
    expect(insetRing([...ring].reverse(), 1)?.at(-1)).toEqual({ xM: expect.closeTo(1), yM: expect.closeTo(1) })
    expect(insetRing(ring, 3)).toBeNull()
  })
  it('spaces places evenly across a corner', () => {
    const places = placesAlong([{ xM: 0, yM: 0 }, { xM: 3, yM: 0 }, { xM: 3, yM: 3 }], 2)
    // Half steps at 1, 3 and 5 m along.
    expect(places.map(({ xM, yM }) => [xM, yM])).toEqual([[1, 0], [3, 0], [3, 2]])
  })
  it('draws the datum nail at one size', () => {
    expect(datumPlan()[0]?.t).toBe('mark')
  })
})
