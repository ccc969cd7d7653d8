import { describe, expect, it } from 'vitest'
import { archOf, lastRollerM, leastRadiusM, parkedView, pitLengthM } from '../../src/derive/arch.ts'
import { assertPlaceholders, placeholdersOf } from '../../src/messages/render.ts'
import { archPitWords } from '../../src/messages/ui/archPitWords.ts'
import { item, onRun } from '../helpers/documents.ts'
import { ftM, siteOf } from '../checks/yardCase.ts'

const arch = { entryAngleRad: (12 * Math.PI) / 180, radiusM: null, ownerTimesOd: null, rollerHeightM: null, supportSpacingM: null }

describe('the arch of a job', () => {
  it('takes the height of the last roller of the exit where nobody typed one', () => {
    const rollers = [10, 20].map((at, i) => item('roller', `roller:${i}`, onRun(at), { height: { rule: 'aboveGround', saddleM: i === 0 ? 0.5 : 0.2 } }))
    const site = siteOf({ job: { arch } }, ...rollers)
    expect(lastRollerM(site)).toBeCloseTo(0.2, 9)
    const view = archOf(site)
    if (view === null || 'missing' in view) throw new Error('no arch')
    expect(view.rollerHeightM).toBeCloseTo(0.2, 9)
    expect(view.arch.levelM(view.arch.lengthM)).toBeCloseTo(Math.min(0.2, view.arch.riseM), 9)
  })
  it('loads its slings with the weight of the pipe they carry', () => {
    const site = siteOf({ job: { arch } })
    const view = archOf(site)
    if (view === null || 'missing' in view) throw new Error('no arch')
    for (const { loadN, carriesM } of view.supports) expect(loadN).toBeCloseTo(carriesM * site.pipe.properties!.lineLoadNPerM, 9)
  })
  it('names what is missing', () => {
    const view = archOf(siteOf({ job: { pipe: null, arch: { ...arch, entryAngleRad: null } } }))
    expect(view !== null && 'missing' in view ? view.missing.map(({ path }) => path) : []).toEqual(['arch.entryAngleRad', 'arch.radiusM', 'pipe'])
    expect(archOf(siteOf({}))).toBe(null)
  })
})

describe('pit and parked string', () => {
  it('a pit deeper than two radii has no such length', () => {
    expect(pitLengthM(8 * ftM, 54 * ftM)! / ftM).toBeCloseTo(40.79, 2)
    expect(pitLengthM(110, 54)).toBe(null)
    expect(pitLengthM(null, 54)).toBe(null)
  })
  it('a parked string is held by EI/R, less after a night', () => {
    const site = siteOf({})
    const view = parkedView(site, 60, 40)!
    expect(view.coupleNm).toBeCloseTo(site.pipe.stiffnessNm2('pull')! / 40, 9)
    expect(view.guideN).toBeCloseTo(view.coupleNm! / 4.572, 9)
    expect(view.guideLaterN!).toBeLessThan(view.guideN!)
    expect(parkedView(site, null, 40)).toBe(null)
    expect(parkedView(siteOf({ job: { pipe: null } }), 60, 40)!.guideN).toBe(null)
  })
  it('the least radius is that of the table, and none above DR 41', () => {
    expect(leastRadiusM(siteOf({}))).toBeCloseTo(27 * 10.75 * 0.0254, 9)
    expect(leastRadiusM(siteOf({ job: { pipe: { system: 'IPS', size: '10', dr: 50, material: 'PE4710' } } }))).toBe(null)
  })
})

describe('words of arch and pit', () => {
  it('have the same placeholders in both languages, and none is empty', () => {
    for (const text of Object.values(archPitWords)) {
      expect(text.es).not.toBe('')
      assertPlaceholders(text, placeholdersOf(text.en))
    }
  })
})
