import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { footM, inchM } from '../../src/units/factors.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp, yard } from '../helpers/documents.ts'
import type { YardRecord } from '../../src/scene/document.ts'

const ft = (feet: number): number => feet * footM
const twelveInch = { pipe: { system: 'IPS', size: '12', dr: 17, material: 'PE4710' } as const, stickLengthM: ft(40), neededLengthM: ft(280) }
const measured = (value: number): { value: number; basis: 'measured' } => ({ value, basis: 'measured' })
const level = (id: string, xM: number, yM: number, levelM: number): YardRecord => item('level', id, free(xM, yM), { figures: { levelM: measured(levelM) } })
/** 12 in IPS DR 17 in a machine with its jaw centreline at 0.9 m. */
const line = (over: Parameters<typeof setUp>[0], ...records: YardRecord[]): ReturnType<typeof documentOf> =>
  documentOf(layout(), job(twelveInch), setUp(over), run(), item('machine', 'machine:1', onRun(0)), ...records)

describe('the jaw line', () => {
  it('stands half the outside diameter below the jaw centreline', () => {
    // 0.9 m − 12.75 in / 2 = 0.9 − 0.161925
    expect(deriveSite(line({ fallRatio: 0 })).jaws.bopLevelM).toBeCloseTo(0.738075, 9)
  })
  it('follows the fall of the ground while no pitch is typed', () => {
    const { jaws } = deriveSite(line({ fallRatio: 0.01 }))
    expect(jaws.slopeRatio).toBeCloseTo(-0.01, 12)
    expect(jaws.pitchIsGround).toBe(true)
  })
  it('takes the typed pitch as an angle, up down-string', () => {
    expect(deriveSite(line({ fallRatio: 0.01, pitchRad: 0.02 })).jaws.slopeRatio).toBeCloseTo(Math.tan(0.02), 12)
  })
  it('is unknown without a pipe, not zero', () => {
    const site = deriveSite(documentOf(layout(), job(), setUp(), run(), item('machine', 'machine:1', onRun(0)), item('stand', 'stand:1', onRun(6))))
    expect(site.jaws.bopLevelM).toBeNull()
    expect(site.supports[0]?.levelM).toBeNull()
  })
})

describe('heights by rule', () => {
  const site = deriveSite(line({ fallRatio: 0.01, pitchRad: 0 },
    item('stand', 'stand:a', onRun(5)),
    item('stand', 'stand:b', onRun(10), { height: { rule: 'belowAxis', dropM: 0.05 } }),
    item('stand', 'stand:c', onRun(15), { height: { rule: 'aboveGround', saddleM: 0.4 } }),
    item('stand', 'stand:d', onRun(20), { height: { rule: 'unknown' } })))
  const support = (label: string): (typeof site.supports)[number] => site.supports.find((one) => one.label === label)!
  it('onAxis stands on the jaw line: the saddle grows as the ground falls away', () => {
    expect(support('E1').levelM).toBeCloseTo(0.738075, 9)
    expect(support('E1').saddleM).toBeCloseTo(0.738075 + 0.05, 9)
  })
  it('belowAxis hangs its drop under the jaw line', () => expect(support('E2').levelM).toBeCloseTo(0.688075, 9))
  it('aboveGround follows the ground', () => expect(support('E3').levelM).toBeCloseTo(0.4 - 0.15, 9))
  it('an unknown height stays unknown', () => expect([support('E4').levelM, support('E4').saddleM]).toEqual([null, null]))
  it('gives the saddle on the jaw line beside the planned one', () => expect(support('E3').jawLineSaddleM).toBeCloseTo(0.738075 + 0.15, 9))
})

describe('as set', () => {
  it('measured saddles stand in for planned ones, only where there are any', () => {
    const asSet = { id: 'asSet:1', kind: 'asSet', itemId: 'stand:a', saddleM: 0.7, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '2025-06-03' } as const
    const document = line({ fallRatio: 0 }, item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(9)), asSet)
    expect(deriveSite(document, { variant: 'asSet' }).supports.map(({ saddleM }) => Number(saddleM!.toFixed(6)))).toEqual([0.7, 0.738075])
    expect(deriveSite(document).supports[0]!.saddleM).toBeCloseTo(0.738075, 9)
  })
})

describe('the rack', () => {
  it('gives two beams, the near one first, at half the spacing to either side', () => {
    const site = deriveSite(line({ fallRatio: 0 }, item('rack', 'rack:1', onRun(ft(-20)))))
    expect(site.supports.map(({ label, runningM }) => [label, Number((runningM / footM).toFixed(4))])).toEqual([['R2', -31.6667], ['R1', -8.3333]])
  })
  it('is left out as a support while its beam spacing is unknown', () => {
    const rack = item('rack', 'rack:1', onRun(-6))
    const figures = { ...(rack as Extract<typeof rack, { kind: 'rack' }>).figures, beamSpacingM: { value: null, basis: 'typical' as const } }
    const site = deriveSite(line({ fallRatio: 0 }, { ...rack, figures } as YardRecord))
    expect(site.supports.every(({ levelM }) => levelM === null)).toBe(true)
  })
})

describe('supports', () => {
  it('are sorted along the run and take the side of their distance', () => {
    const site = deriveSite(line({ fallRatio: 0 }, item('roller', 'roller:1', onRun(30)), item('stand', 'stand:1', onRun(6)), item('stand', 'stand:2', onRun(-6))))
    expect(site.supports.map(({ label, side }) => [label, side])).toEqual([['I1', 'infeed'], ['E1', 'exit'], ['G1', 'exit']])
  })
  it('a stand parked beside the line carries nothing', () => {
    const site = deriveSite(line({ fallRatio: 0 }, item('stand', 'stand:1', onRun(6, { offsetM: 2 }))))
    expect(site.supports).toEqual([])
  })
  it('take the smaller of 3 in and OD/4 as lead-in depth while the plate says nothing', () => {
    // 12.75 in / 4 = 3.19 in, over 3 in
    expect(deriveSite(line({ fallRatio: 0 }, item('stand', 'stand:1', onRun(6)))).supports[0]?.leadInM).toBeCloseTo(3 * inchM, 12)
  })
})

describe('the ground', () => {
  it('without levels is an even slope from the set-up', () => {
    const { ground, groundLevelAt } = deriveSite(line({ fallRatio: 0.02, crossFallRatio: 0.01 }))
    expect(ground.from).toBe('evenSlope')
    expect(groundLevelAt(10)).toBeCloseTo(-0.2, 12)
    expect(groundLevelAt(10, 2)).toBeCloseTo(-0.22, 12)
  })
  it('without levels or a fall is unknown', () => {
    const { ground } = deriveSite(line({}))
    expect([ground.from, ground.fallRatio, ground.crossFallRatio]).toEqual(['unknown', null, null])
  })
  it('through three levels and the datum is triangulated', () => {
    const { ground, groundLevelAt } = deriveSite(line({}, level('level:1', 0, 10, 0.1), level('level:2', 20, 10, -0.3), level('level:3', 20, -10, -0.5)))
    expect(ground.from).toBe('levels')
    // Plane z = −0.02 x + 0.01 y through all four.
    expect(groundLevelAt(10)).toBeCloseTo(-0.2, 9)
    expect(ground.fallRatio).toBeCloseTo(0.02, 6)
    // y to the left is up, so it falls to the right.
    expect(ground.crossFallRatio).toBeCloseTo(0.01, 6)
  })
  it('through levels all in line follows them along the axis, cross-fall unknown', () => {
    const { ground, groundLevelAt } = deriveSite(line({}, level('level:1', 10, 0, -0.2), level('level:2', 20, 0, -0.2), level('level:3', 30, 0, -0.6)))
    expect(ground.from).toBe('evenSlope')
    expect(ground.crossFallRatio).toBeNull()
    expect(groundLevelAt(15)).toBeCloseTo(-0.2, 12)
    expect(groundLevelAt(25)).toBeCloseTo(-0.4, 12)
  })
  it('is guessed more than 25 ft from the nearest level; the datum is one', () => {
    const site = deriveSite(line({ fallRatio: 0 }, item('stand', 'stand:1', onRun(ft(25))), item('stand', 'stand:2', onRun(ft(26))), level('level:1', ft(60), 0, 0)))
    expect(site.supports.map(({ groundGuessed }) => groundGuessed)).toEqual([false, true])
    const within = site.ground.guessed.find(({ fromM }) => fromM > 0)
    expect([within!.fromM / footM, within!.toM / footM].map((x) => Number(x.toFixed(3)))).toEqual([25, 35])
  })
  it('subtracts the level the book gives the datum', () => {
    const { groundLevelAt } = deriveSite(line({ groundLevelM: 100 }, level('level:1', 10, 0, 99.5)))
    expect(groundLevelAt(10)).toBeCloseTo(-0.5, 9)
  })
})

describe('places', () => {
  it('an item on the run keeps its distance, one on an item follows it, a free one is projected', () => {
    const site = deriveSite(line({ datum: { xM: 5, yM: 7 }, headingRad: Math.PI / 2 }, item('puller', 'puller:1', onRun(50)), item('crew', 'crew:1', onItem('puller:1', 2, 0)), item('tree', 'tree:1', free(8, 17))))
    const at = (id: string): [number, number, number, number] => {
      const one = site.placed.get(id)!
      return [one.xM, one.yM, one.runningM!, one.offsetM!].map((x) => Number(x.toFixed(9)) + 0) as [number, number, number, number]
    }
    expect(at('puller:1')).toEqual([5, 57, 50, 0])
    expect(at('crew:1')).toEqual([5, 59, 52, 0])
    // Heading +y: right of it is +x.
    expect(at('tree:1')).toEqual([8, 17, 10, 3])
    expect(site.placed.get('crew:1')!.isAttached).toBe(true)
    expect(site.placed.get('tree:1')!.isAttached).toBe(false)
  })
  it('beyond a bend the tape unrolls the pipe', () => {
    const site = deriveSite(documentOf(layout(), job(twelveInch), setUp(), run({ vertices: [{ xM: 60, yM: 0, radiusM: 12 }, { xM: 60, yM: 40, radiusM: null }], surfaces: ['gravel', 'grass'] }), item('machine', 'machine:1', onRun(0))))
    const [bend] = site.bends
    // Tangent 12 m before the corner, quarter arc 12 π / 2.
    expect(bend!.fromM).toBeCloseTo(48, 9)
    expect(bend!.toM).toBeCloseTo(48 + 6 * Math.PI, 9)
    const end = site.atRunning(48 + 6 * Math.PI + 10)
    expect([end.xM, end.yM].map((x) => Number(x.toFixed(6)))).toEqual([60, 22])
    expect(site.surfaceAt(10)).toBe('gravel')
    expect(site.surfaceAt(80)).toBe('grass')
  })
})

describe('documents that lack things', () => {
  it('an empty layout has a model with nothing in it', () => {
    const site = deriveSite(documentOf(layout(), job()))
    expect([site.setUp, site.run, site.supports.length, site.ground.from]).toEqual([null, null, 0, 'unknown'])
  })
  it('keeps the object of an item that did not change', () => {
    const first = yard(item('stand', 'stand:1', onRun(5)), item('stand', 'stand:2', onRun(9)))
    const moved = { records: { ...first.records, 'stand:2': item('stand', 'stand:2', onRun(10)) } }
    expect(deriveSite(moved).placed.get('stand:1')).toBe(deriveSite(first).placed.get('stand:1'))
  })
})
