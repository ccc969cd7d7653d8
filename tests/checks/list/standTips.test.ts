import { describe, expect, it } from 'vitest'
import { standTips } from '../../../src/checks/list/standTips.ts'
import { standPushesOf } from '../../../src/derive/standTips.ts'
import { limitsOf } from '../../../src/checks/limits.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'
import { inchM } from '../../../src/units/factors.ts'
import { onRun } from '../../helpers/documents.ts'
import { changed, ft, fusionYard, inch, levelsOf, mechanicsOf, runOne, textOf, type YardSpec } from '../../helpers/fusionYard.ts'

type Figures = Partial<Record<'massKg' | 'baseLengthM' | 'baseWidthM' | 'rollerRadiusM' | 'leadInM', number | null>>
const withStand = (document: YardDocument, id: string, figures: Figures, over: Partial<YardRecord> = {}): YardDocument =>
  changed(document, id, (record) => ({ ...record, ...over, figures: { ...(record as { figures: object }).figures, ...Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, { value, basis: 'plate' }])) } }) as YardRecord)
const both = (figures: Figures, spec: YardSpec = {}): YardDocument => withStand(withStand(fusionYard(spec), 'stand:e1', figures), 'stand:e2', figures)
const pushes = (document: YardDocument) => {
  const mechanics = mechanicsOf(document)
  return standPushesOf(mechanics.site, mechanics, limitsOf(document))
}

describe('stands on their feet', () => {
  it('by drag: (load + own weight) × half the base over 0.15 × load × height', () => {
    // Saddle 30 in = 0.762 m, base 0.6 m, 40 kg = 392.27 N: (N + 392.27) · 0.3 / (0.15 N · 0.762). Roller friction 0.1 and breakaway 1.5 from the tables.
    const drag = pushes(both({ massKg: 40 })).find(({ view, cause }) => view.label === 'E1' && cause === 'drag')!
    const loadN = drag.pushN / 0.15
    expect(drag.ratio).toBeCloseTo(((loadN + 392.266) * 0.3) / (0.15 * loadN * 30 * inchM), 6)
  })
  it('passes where even a stand without weight stands twice over, asks for mass and base where not', () => {
    // Without weight b / (2 · 0.15 · 0.762): 2 at b = 0.4572 m.
    expect(levelsOf(standTips, both({ massKg: null, baseLengthM: 0.46 }))).toEqual({ all: 'met' })
    const [asked] = runOne(standTips, both({ massKg: null, baseLengthM: 0.45 }))
    expect([asked!.key, asked!.isUnknown]).toEqual(['stand-tips@unknown', true])
    expect(asked!.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['stand:e1 figures.massKg.value', 'stand:e2 figures.massKg.value'])
    expect(runOne(standTips, both({ massKg: 10, baseLengthM: null }))[0]!.missing.map(({ path }) => path)).toContain('figures.baseLengthM.value')
  })
  it('is FIX where the figures are known and it stands less than twice over (house rule), and follows the limit the layout sets', () => {
    const [found] = runOne(standTips, both({ massKg: 1, baseLengthM: 0.3 }))
    expect([found!.level, found!.source.class, found!.measured!.value! < 2]).toEqual(['FIX', 'houseRule', true])
    expect(textOf(found!)).toMatch(/^E1 and E2: the drag of the pipe pushes E\d with [\d,]+ lb at 30 in; it stands against 1\.\d+ times that, 2 are wanted\.$/)
    expect(textOf(found!, 'es')).toContain('el arrastre del tubo')
    const change = { id: 'limitChange:1', kind: 'limitChange', limitId: 'tip-factor', bound: 'fix', value: 1, reason: 'staked', who: 'lead', when: '2025-06-03T14:00:00Z' } as const
    expect(levelsOf(standTips, both({ massKg: 1, baseLengthM: 0.3 }, { more: [change] }))).toEqual({ all: 'met' })
  })
  it('tips outright under 1', () => expect(textOf(runOne(standTips, both({ massKg: 1, baseLengthM: 0.15 }))[0]!)).toMatch(/the drag of the pipe tips E\d, [\d,]+ lb at 30 in\.$/))
  it('across the line by a V that stands off it, and by a turned roller', () => {
    // 12 in DR 17: 0.577 N at 0.762 m against N · b/2: under 2 below b = 1.76 m once the flank gives all it holds.
    const off = withStand(both({ massKg: 5, baseLengthM: 2, baseWidthM: 0.9 }, { exits: [[12, 0], [35, 0]] }), 'stand:e1', {}, { roller: 'V', place: onRun(ft(12), { offsetM: inch(6) }) } as Partial<YardRecord>)
    const side = pushes(off).find(({ cause }) => cause === 'offLine')!
    expect(side.ratio).toBeLessThan(2)
    expect(levelsOf(standTips, off)['stand:e1:offLine']).toBe('FIX')
    // A turned roller draws with 0.3 of the load along its axle: b / (2 · 0.3 · 0.762) = 1.97 for 0.9 m without weight.
    const turned = withStand(both({ massKg: 0.001, baseLengthM: 2, baseWidthM: 0.9 }), 'stand:e2', {}, { place: onRun(ft(35), { turnRad: 0.1 }) } as Partial<YardRecord>)
    expect(pushes(turned).find(({ cause }) => cause === 'turned')!.ratio).toBeCloseTo(0.9 / (2 * 0.3 * 30 * inchM), 3)
    expect(levelsOf(standTips, turned)['stand:e2:turned']).toBe('FIX')
  })
  it('by the nose only where it comes free: it strikes a stand too far, and is told to be slung', () => {
    const far: YardSpec = { exits: [[20, 0], [35, 0], [70, 0]], neededFt: 110 }
    expect(pushes(fusionYard(far)).some(({ cause }) => cause === 'nose')).toBe(false)
    const free = withStand(fusionYard({ ...far, job: { noseHold: 'free' } }), 'stand:e3', { massKg: 40 })
    const struck = runOne(standTips, free).find(({ key }) => key === 'stand-tips@nose')!
    expect([struck.level, struck.itemIds]).toEqual(['FIX', ['stand:e3']])
    expect(textOf(struck)).toMatch(/^The free nose strikes E3, up to .* low: \d+ lb along the line tips it\.$/)
    expect(struck.remedy).toMatchObject({ command: 'setJob', args: { path: 'noseHold', value: 'slung' } })
    // A planned lift takes it over.
    expect(levelsOf(standTips, withStand(free, 'stand:e3', {}, { landingAid: 'liftByLoader' } as Partial<YardRecord>))['nose']).toBeUndefined()
  })
  it('by the nose riding up: less than the weight lifted at 45° at most', () => {
    const near = fusionYard({ exits: [[20, 0], [35, 0], [46, 0]], neededFt: 110, job: { noseHold: 'free' } })
    const nose = pushes(near).filter(({ cause }) => cause === 'nose')
    expect(nose.map(({ view }) => view.label)).toEqual(['E3'])
    expect(nose[0]!.pushN).toBeGreaterThan(0)
  })
  it('round a bend by the pull behind it over the radius and by the couple that bends the pipe', () => {
    const bent = (radiusFt: number) => pushes({ records: { ...fusionYard({ exits: [[20, 0], [25, 0], [75, 0]], neededFt: 150 }).records, 'run:1': { ...fusionYard().records['run:1']!, vertices: [{ xM: ft(75), yM: 0, radiusM: ft(radiusFt) }, { xM: ft(75), yM: ft(150), radiusM: null }] } as YardRecord } }).filter(({ cause }) => cause === 'bend')
    const [tight, wide] = [bent(40), bent(48)]
    expect([tight.length, wide.length]).toEqual([1, 1])
    expect(tight[0]!.pushN).toBeGreaterThan(wide[0]!.pushN)
  })
})
