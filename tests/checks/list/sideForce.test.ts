import { describe, expect, it } from 'vitest'
import { sideForce } from '../../../src/checks/list/sideForce.ts'
import { limitsOf } from '../../../src/checks/limits.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { onRun } from '../../helpers/documents.ts'
import { changed, ft, fusionYard, inch, levelsOf, mechanicsOf, runOne, siteOf, textOf, type YardSpec } from '../../helpers/fusionYard.ts'

/** Stand E1 moved off the line by some inches, with this roller. */
const off = (byIn: number, roller: 'flat' | 'V' | 'cradle', spec: YardSpec = {}) =>
  changed(fusionYard(spec), 'stand:e1', (record) => ({ ...record, roller, place: onRun(ft((spec.exits ?? [[25, 0]])[0]![0]), { offsetM: inch(byIn) }) }) as YardRecord)
const exitOf = (document: ReturnType<typeof fusionYard>) => mechanicsOf(document).sideForces().filter(({ side, joint }) => side === 'exit' && joint === 1)[0]!

describe('side force at jaws and guides', () => {
  it('everything on the line: nothing pushes', () => {
    const [one] = runOne(sideForce, fusionYard())
    expect([one!.level, textOf(one!)]).toEqual(['met', 'Nothing pushes the pipe sideways in the jaws.'])
  })
  it('a V stand d off, alone: F = 3 EI d / (L² (L + s)), with EI of the closed jaws', () => {
    // Only E1 on the exit at 25 ft: L = 25 ft − 28 in = 6.9088 m, s = 24 in = 0.6096 m.
    const document = off(0.5, 'V', { exits: [[25, 0]] })
    const EI = siteOf(document).pipe.stiffnessNm2('jaws')!
    const [L, s] = [ft(25) - inch(28), inch(24)]
    const { guides, innerN, outerN } = exitOf(document)
    expect(guides[0]!.forceN).toBeCloseTo((3 * EI * inch(0.5)) / (L * L * (L + s)), 4)
    expect(outerN).toBeCloseTo((-guides[0]!.forceN * (L + s)) / s, 3)
    expect(innerN + outerN + guides[0]!.forceN).toBeCloseTo(0, 3)
  })
  it('a flat roller far off gives its friction and no more: 0.3 of its load (house rule)', () => {
    const { guides } = exitOf(off(28, 'flat', { exits: [[25, 0]] }))
    expect(guides[0]!.forceN).toBeCloseTo(0.3 * guides[0]!.loadN, 6)
    expect(guides[0]!.isFull).toBe(true)
    expect(levelsOf(sideForce, off(28, 'flat', { exits: [[25, 0]] }))['stand:e1']).toBeUndefined()
  })
  it('the pipe climbs out of a V at tan 30° of its load, later out of a cradle', () => {
    const near: YardSpec = { exits: [[12, 0], [35, 0]] }
    const inV = exitOf(off(6, 'V', near)).guides[0]!
    expect([inV.isFull, inV.forceN / inV.loadN]).toEqual([true, expect.closeTo(Math.tan(Math.PI / 6), 6)])
    // 6 in off is more than a quarter of the OD, 3.2 in, however the pipe bends; 2 in is not (house rule).
    expect([6, 2].map((byIn) => levelsOf(sideForce, off(byIn, 'V', near))['stand:e1'])).toEqual(['FIX', 'CHECK'])
    expect(exitOf(off(6, 'cradle', near)).guides[0]!.forceN).toBeGreaterThan(inV.forceN)
  })
  it('left and right are mirror images', () => {
    const [right, left] = [exitOf(off(2, 'V')), exitOf(off(-2, 'V'))]
    expect(left.innerN).toBeCloseTo(-right.innerN, 5)
    expect(left.guides.map(({ forceN }) => forceN)).toEqual(right.guides.map(({ forceN }) => expect.closeTo(-forceN, 5)))
    expect(runOne(sideForce, off(-2, 'V')).map(({ level }) => level)).toEqual(runOne(sideForce, off(2, 'V')).map(({ level }) => level))
  })
  it('says at the jaws what pushes, which way, and offers to slide it on to the line', () => {
    const near: YardSpec = { exits: [[12, 0], [35, 0]] }
    const found = runOne(sideForce, off(2, 'cradle', near))
    const jaws = found.find(({ key }) => key === 'side-force@jaws:exit')!
    expect(['CHECK', 'FIX']).toContain(jaws.level)
    expect(textOf(jaws)).toMatch(/^E1 pushes the pipe to the right with [\d,]+ lb at joint \d: the exit jaws hold it with [\d,]+ lb and [\d,]+ lb\.$/)
    expect(jaws.remedy).toMatchObject({ command: 'setOnRun', args: { id: 'stand:e1', offsetM: 0 } })
    expect(textOf(jaws, 'es')).toContain('empuja el tubo a la derecha')
  })
  it('a turned rack pushes with both its beams', () => {
    // 5° over 7.112 m between the beams: each 0.31 m off, one to either side.
    const document = changed(fusionYard(), 'rack:1', (record) => ({ ...record, place: onRun(ft(-20), { turnRad: (5 * Math.PI) / 180 }) }) as YardRecord)
    const infeed = mechanicsOf(document).sideForces().find(({ side }) => side === 'infeed')!
    expect(infeed.guides).toHaveLength(2)
    expect(Math.sign(infeed.guides[0]!.forceN)).toBe(-Math.sign(infeed.guides[1]!.forceN))
    // Far past what either lane holds: the stick climbs out of both.
    expect(levelsOf(sideForce, document)['rack:1#1']).toBe('FIX')
  })
  it('says so where it did not settle', () => {
    const document = fusionYard()
    const mechanics = mechanicsOf(document)
    const unsettled = { ...mechanics, sideForces: () => mechanics.sideForces().map((one) => ({ ...one, isSettled: false })) }
    expect(sideForce.run(mechanics.site, { limits: limitsOf(document), mechanics: unsettled, owned: null }).map(({ key, level }) => [key, level])).toEqual([['side-force@unsettled', 'CHECK']])
  })
  it('does not judge what could not be solved upright', () => expect(runOne(sideForce, fusionYard({ job: { pipe: null } }))).toEqual([]))
})
