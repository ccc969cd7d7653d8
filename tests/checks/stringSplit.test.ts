import { describe, expect, it } from 'vitest'
import { endRoom } from '../../src/checks/list/endRoom.ts'
import { stringSplit } from '../../src/checks/list/stringSplit.ts'
import { clearance } from '../../src/checks/list/clearance.ts'
import { midJointsOf, restartOf, stringsOf } from '../../src/derive/strings.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'
import { moveOf, textOf } from '../helpers/fusionYard.ts'
import { after, calder, findings, inStrings } from './streetCase.ts'
import { boxM, findingsOf, ftM, inM, lbN, withFigures } from './yardCase.ts'

describe('a slipline in a short street', () => {
  it('is asked to be made in four strings of 5, 5, 5 and 4 sticks, written down by one step', () => {
    // One string: 71 + 947.75 + 30 = 1,048.75 ft of 360.
    const [short] = findings(endRoom, calder())
    expect(short!.level).toBe('FIX')
    expect(short!.measured!.value! / ftM).toBeCloseTo(1048.75, 6)
    expect(moveOf(short!)).toContain('make 4 strings, 5 + 5 + 5 + 4 sticks')
    const split = after(calder(), short!.remedy!.command, short!.remedy!.args)
    expect(stringsOf(deriveSite(split)).map(({ sticks }) => sticks)).toEqual([5, 5, 5, 4])
    expect(findings(endRoom, split).map(({ level }) => level)).toEqual(['NOTE'])
  })

  it('fits in four: each run takes 351 of 360 ft', () => {
    const site = deriveSite(inStrings([5, 5, 5, 4]))
    // 249.5, 249.5, 249.5 and 199.625 ft; 71 + 249.5 + 30 = 350.5 ft.
    expect(stringsOf(site).map(({ lengthM }) => lengthM! / ftM)).toEqual([249.5, 249.5, 249.5, 199.625].map((one) => expect.closeTo(one, 9)))
    const [fits] = findingsOf(stringSplit, site)
    expect(fits!.level).toBe('met')
    expect(fits!.measured!.value! / ftM).toBeCloseTo(350.5, 6)
    expect(fits!.limit!.value! / ftM).toBeCloseTo(360, 9)
  })

  it('does not fit in three: 7 sticks make 349 ft', () => {
    const document = inStrings([7, 6, 6])
    const [short] = findings(stringSplit, document)
    // 7 × 50 − 6 × 0.125 = 349.25; 71 + 349.25 + 30 = 450.25 ft: 90.25 short. Six make 299.375, 40.4 short.
    expect(short!.level).toBe('FIX')
    expect(short!.measured!.value! / ftM).toBeCloseTo(450.25, 6)
    expect(-short!.margin!.value! / ftM).toBeCloseTo(90.25, 6)
    expect(textOf(short!)).toContain('A, B and C')
    expect(moveOf(short!)).toContain('3 strings hold 15 of 19')
    expect(findings(endRoom, document)).toEqual([])
    const mended = after(document, short!.remedy!.command, short!.remedy!.args)
    expect(findings(stringSplit, mended)[0]!.level).toBe('met')
    expect(stringsOf(deriveSite(mended)).map(({ sticks }) => sticks)).toEqual([5, 5, 5, 4])
  })

  it('makes each of three mid joints in 40 to 45 min and starts 40,000 lb again with 30,000', () => {
    const site = deriveSite(inStrings([5, 5, 5, 4]))
    const mid = midJointsOf(site)
    expect(mid.joints.map(({ between }) => between.join(''))).toEqual(['AB', 'BC', 'CD'])
    // Clamp and face 8 + 0.6 × 24 = 22.4 min, soak of a 1.41 in wall 4.5 to 6 min, a few minutes to join, 11 min × 1.412 = 15.5 to cool.
    expect(mid.eachS!.likely / 60).toBeGreaterThan(40)
    expect(mid.eachS!.likely / 60).toBeLessThan(48)
    const restart = restartOf(site)!
    // 914 ft × 43.8 lb/ft = 40,030 lb; × 0.5 = 20,016; × 1.5 = 30,025.
    expect(restart.weightN / lbN).toBeCloseTo(40_030, -2)
    expect(restart.pullN / lbN).toBeCloseTo(20_016, -2)
    expect(restart.restartN / lbN).toBeCloseTo(30_025, -2)
    const found = findingsOf(stringSplit, site).find(({ key }) => key.endsWith('@mid'))!
    expect(found.level).toBe('CHECK')
  })

  it('finds a winch of 25,000 lb too small for the restart, and none of 32,000', () => {
    const winch = (ratedLb: number) => withFigures('puller', 'puller:1', onRun(280 * ftM), { towRatingN: ratedLb * lbN, lengthM: 4 * ftM }, { pullerKind: 'winch' })
    const levels = (ratedLb: number) => findings(stringSplit, { records: { ...inStrings([5, 5, 5, 4]).records, 'puller:1': winch(ratedLb) } }).filter(({ key }) => key.endsWith('@winch')).map(({ level }) => level)
    expect([levels(25_000), levels(32_000)]).toEqual([['FIX'], []])
  })

  it('takes the mid joints last on the clock', () => {
    const document = after(inStrings([5, 5, 5, 4]), 'setJob', { path: 'clock.startMin', value: 420 })
    const { joints } = midJointsOf(deriveSite(document))
    // 15 joints of the strings first, 4 + 4 + 4 + 3, then three more rounds.
    expect(joints).toHaveLength(3)
    const [one, two] = joints.map(({ doneAt }) => doneAt!.min)
    expect(two! - one!).toBeGreaterThan(45)
    expect(one!).toBeGreaterThan(420 + 15 * 45)
  })

  it('counts parked strings as in the way of gear', () => {
    const clear = findings(clearance, inStrings([5, 5, 5, 4])).filter(({ level }) => level === 'FIX')
    expect(clear).toEqual([])
    // A loader standing on row 2, 10 ft left of the line.
    const loader = item('loader', 'loader:1', onRun(120 * ftM, { offsetM: -10 * ftM }))
    const hit = findings(clearance, inStrings([5, 5, 5, 4], loader)).find(({ level }) => level === 'FIX')!
    expect(hit.itemIds).toContain('loader:1')
    expect(textOf(hit)).toContain('parked string B')
  })
})

/*
 * Two strings for a bore: 50 sticks of 50 ft, 16 in, 1¼ in lost: 25 make 1,247.5 ft. The strip is 1,330 ft; 50 of infeed and
 * a lead of 40 ft (rope 12, puller 18, over-run 10).
 */
describe('two strings for a bore', () => {
  const bore = { pipe: { system: 'IPS', size: '16', dr: 11, material: 'PE4710' }, stickLengthM: 50 * ftM, neededLengthM: 2460 * ftM, tailsM: 0, jointLossM: { value: 1.25 * inM, basis: 'measured' } } as const
  const tractor = withFigures('puller', 'puller:1', onRun(1250 * ftM), { ropeLengthM: 12 * ftM, lengthM: 18 * ftM })
  const strip = item('boundary', 'boundary:1', boxM(-50 * ftM, 1280 * ftM, -20 * ftM, 20 * ftM))
  const document = after(documentOf(layout(), job(bore), setUp({ fallRatio: 0.03, crossFallRatio: 0 }), run({ surfaces: ['grass'] }), tractor, strip), 'splitStrings', { setUpId: 'setUp:1', counts: [25, 25] })

  it('need 1,338 of 1,330 ft, 8 ft short', () => {
    const [short] = findings(stringSplit, document)
    // 25 × 50 − 24 × 1.25/12 = 1,247.5; 50 + 1,247.5 + 40 = 1,337.5: 7.5 ft short.
    expect(short!.level).toBe('FIX')
    expect(short!.measured!.value! / ftM).toBeCloseTo(1337.5, 6)
    expect(-short!.margin!.value! / ftM).toBeCloseTo(7.5, 6)
  })

  it('are not helped by a stick moved from one to the other: redirect block, or three strings', () => {
    const [short] = findings(stringSplit, document)
    // 24 sticks make 1,197.6 ft and fit; two strings of 24 hold 48 of 50.
    expect(moveOf(short!)).toContain('2 strings hold 48 of 50')
    expect(moveOf(short!)).toContain('does not help')
    expect(moveOf(short!)).toContain('redirect block')
    expect(moveOf(short!)).toContain('3 strings, 17 + 17 + 16')
  })

  it('wait for the joint between them with the hole open', () => {
    const mid = findings(stringSplit, document).find(({ key }) => key.endsWith('@mid'))!
    expect([mid.level, moveOf(mid).includes('bore')]).toEqual(['CHECK', true])
  })
})
