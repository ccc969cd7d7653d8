import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import { readFile } from '../../src/scene/readFile.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { foldFor, foldWords, keptFold, type FoldView } from '../../src/state/fold.ts'
import { initialView } from '../../src/state/viewStore.ts'
import { changed, ft, fusionYard } from '../helpers/fusionYard.ts'
import { item, onRun } from '../helpers/documents.ts'

const view = (over: Partial<FoldView> = {}): FoldView => ({ ...initialView, ...over })
const band = (widthPx: number): Pick<FoldView, 'bandSizePx'> => ({ bandSizePx: { ...initialView.bandSizePx, plan: { widthPx, heightPx: 522 } } })

/** Rollers every 20 ft from 60 ft to 360 ft, a puller at 400 ft: machine end and nose end of a 340 ft string on level ground. */
const everyTwenty = Array.from({ length: 16 }, (_, i) => 60 + 20 * i)
const longYard = (over: { rollers?: readonly number[]; more?: readonly YardRecord[] } = {}) =>
  fusionYard({ neededFt: 340, rollers: over.rollers ?? everyTwenty, more: [item('puller', 'puller:1', onRun(ft(400))), ...(over.more ?? [])] })
const siteOf = (over: Parameters<typeof longYard>[0] = {}): SiteModel => deriveSite(longYard(over))
const inFt = ({ fromM, toM }: { fromM: number; toM: number }): [number, number] => [fromM / 0.3048, toM / 0.3048]

/** A finding as far as folding asks for it. */
const finding = (over: Partial<Finding>): Finding => ({
  checkId: 'sag', key: 'sag@test', level: 'FIX', isUnknown: false, missing: [], itemIds: [], where: null, what: { text: { en: '', es: '' } }, measured: null, limit: null, margin: null,
  source: { class: 'houseRule', cite: 'test' } as Finding['source'], phases: [], move: null, remedy: null, ...over,
})

describe('a long even row', () => {
  it('both ends come to working scale, and the fold lies as near the nose as it can', () => {
    const site = siteOf()
    const plan = foldFor(site, [], view())!
    // Working scale of a desktop: 4.7 px/ft.
    expect(plan.pxPerM * 0.3048).toBeCloseTo(4.7, 9)
    // The last roller at 360 ft stays in sight: the fold ends 0.6 m (1.97 ft) before it, on the half foot below: 358 ft.
    expect(inFt(plan)[1]).toBeCloseTo(358, 9)
    // First and last distance of the sheet: a 40 ft stick and 1 m behind the machine; the puller's far end and 1 m beyond.
    const puller = site.placed.get('puller:1')!
    const farFt = Math.max(...Array.from({ length: puller.outlineM.length / 2 }, (_, i) => puller.outlineM[2 * i]!)) / 0.3048
    expect(plan.leftRunningM).toBeCloseTo(-ft(40) - 1, 9)
    const wholeFt = farFt + 40 + 2 / 0.3048
    // Shown at 4.7 px/ft in 1072 − 30 px: 221.7 ft; the rest is folded, give or take the half foot and the roller at its edge.
    const foldedFt = inFt(plan)[1] - inFt(plan)[0]
    expect(foldedFt).toBeGreaterThan(wholeFt - 1042 / 4.7 - 0.5)
    expect(foldedFt).toBeLessThan(wholeFt - 1042 / 4.7 + 5)
  })

  it('no edge of the fold cuts a roller', () => {
    for (const widthPx of [900, 960, 1000, 1040, 1072, 1100]) {
      const site = siteOf()
      const plan = foldFor(site, [], view(band(widthPx)))!
      for (const { runningM } of site.supports) for (const edgeM of [plan.fromM, plan.toM]) expect(Math.abs(runningM - edgeM)).toBeGreaterThanOrEqual(0.6 - 1e-9)
    }
    // Somebody standing just beyond a roller, so that the fold has to end at it: the roller is shown.
    for (const atFt of [340, 343, 345, 347]) {
      const site = siteOf({ more: [item('crew', 'crew:n', onRun(ft(atFt), { offsetM: 6 }))] })
      const plan = foldFor(site, [], view())!
      for (const { runningM } of site.supports) expect(Math.abs(runningM - plan.toM)).toBeGreaterThanOrEqual(0.6 - 1e-9)
    }
  })

  it('its words name length, the first and last roller hidden and the ground', () => {
    const site = siteOf()
    const plan = foldFor(site, [], view())!
    const hidden = site.supports.filter(({ runningM }) => runningM > plan.fromM && runningM < plan.toM)
    expect(plan.words.along).toBe(`folded: ${Math.floor(inFt(plan)[1] - inFt(plan)[0] + 1e-6)} ft ${(inFt(plan)[1] - inFt(plan)[0]) % 1 > 0.4 ? 6 : 0} in, ${hidden[0]!.label} to ${hidden.at(-1)!.label} alike`)
    expect(hidden.at(-1)!.label).toBe('G15')
    expect(plan.words.ground).toBe('ground level')
    expect(foldWords(site, plan, { language: 'es' }).along).toMatch(/^plegado: .*, G\d+ a G15 iguales$/)
    // Falling 1 % over 100 ft: 1 ft.
    const falling = deriveSite(fusionYard({ rollers: everyTwenty, fallRatio: 0.01 }))
    expect(foldWords(falling, { fromM: ft(100), toM: ft(200) }, { language: 'en' }).ground).toBe('ground falls 1 ft 0 in')
    expect(foldWords(falling, { fromM: ft(100), toM: ft(200) }, { language: 'es' }).ground).toMatch(/^el suelo baja 1 pie/)
  })

  it('nothing is folded where the whole tape fits at 4 px/ft, north up, or on an upright tape', () => {
    const site = siteOf()
    // About 455 ft need 1,820 px at 4 px/ft.
    expect(foldFor(site, [], view(band(1900)))).toBeNull()
    expect(foldFor(site, [], view({ orientation: 'northUp' }))).toBeNull()
    expect(foldFor(site, [], view({ tapeVertical: true }))).toBeNull()
    expect(foldFor(deriveSite(fusionYard({ rollers: [55, 75] })), [], view())).toBeNull()
  })
})

describe('what must stay in sight', () => {
  const outside = (site: SiteModel, findings: readonly Finding[], over: Partial<FoldView>, atFt: number, tipM: number | null = null): void => {
    const plan = foldFor(site, findings, view(over), tipM)
    if (plan === null) throw new Error('nothing folded at all')
    expect(atFt <= inFt(plan)[0] || atFt >= inFt(plan)[1]).toBe(true)
  }

  it('stands are never folded, whatever stands beside them', () => {
    // The row is even from stand E3 at 80 ft on, but a stand is no ground roller.
    const site = siteOf({ rollers: everyTwenty.filter((at) => at !== 80), more: [item('stand', 'stand:e3', onRun(ft(80)))] })
    expect(site.supports.find(({ itemId }) => itemId === 'stand:e3')?.kind).toBe('stand')
    outside(site, [], {}, 80)
    expect(foldFor(site, [], view())).not.toBeNull()
  })

  it('a chosen roller, a crew spot far beside the line, the nose as it lies', () => {
    const site = siteOf()
    outside(site, [], { selection: ['roller:10'] }, 240)
    outside(siteOf({ more: [item('crew', 'crew:n', onRun(ft(200), { offsetM: 12 }))] }), [], {}, 200)
    outside(site, [], {}, 199.6, ft(199.6))
    // Without any of them 200 and 240 ft are folded away: the checks above can fail.
    const [fromFt, toFt] = inFt(foldFor(site, [], view())!)
    expect(fromFt).toBeLessThan(190)
    expect(toFt).toBeGreaterThan(250)
  })

  it('the place of a FIX and the rollers it names, but not what is said of a whole row', () => {
    const site = siteOf()
    outside(site, [finding({ itemIds: ['roller:10'], where: { at: 'run', runningM: ft(240), levelM: null, offsetM: 0 } })], {}, 240)
    outside(site, [finding({ level: 'CHECK', itemIds: ['roller:10'] })], {}, 240)
    // Said of rollers 3 to 14: the first (100 ft) and the last (320 ft) stay, those between are alike.
    const some = Array.from({ length: 12 }, (_, i) => `roller:${i + 3}`)
    const [fromFt, toFt] = inFt(foldFor(site, [finding({ itemIds: some })], view())!)
    expect(fromFt).toBeGreaterThanOrEqual(100)
    expect(toFt).toBeLessThanOrEqual(320)
    // A note, missing input and a finding about no item fold away with the rest.
    const plain = foldFor(site, [], view())!
    for (const over of [{ level: 'NOTE', itemIds: ['roller:10'] }, { isUnknown: true, itemIds: ['roller:10'] }, { where: { at: 'run', runningM: ft(240), levelM: null, offsetM: 0 } }] as const) {
      expect(foldFor(site, [finding(over)], view())).toEqual(plain)
    }
  })

  it('a roller set otherwise: spacing, landing aid, height', () => {
    outside(siteOf({ rollers: everyTwenty.map((at) => (at === 200 ? 203 : at)) }), [], {}, 203)
    for (const other of [{ landingAid: 'ramp' }, { height: { rule: 'aboveGround', saddleM: 0.2 } }]) outside(deriveSite(changed(longYard(), 'roller:8', (record) => ({ ...record, ...other }) as YardRecord)), [], {}, 200)
  })

  it('a crossing of the line, and a corner near it; farther corners fold away only where the ends find no room, and are named', () => {
    const corner = (acrossFt: number) => item('building', 'building:1', [[180, acrossFt], [220, acrossFt], [220, acrossFt + 30], [180, acrossFt + 30]].map(([x, y]) => ({ xM: ft(x!), yM: ft(y!) })), { name: 'pump house' })
    const near = foldFor(siteOf({ more: [corner(8)] }), [], view())
    if (near !== null) expect(inFt(near)[1] <= 180 || inFt(near)[0] >= 220).toBe(true)
    const far = foldFor(siteOf({ more: [corner(20)] }), [], view())!
    expect(far.words.along).toMatch(/alike; pump house beside$/)
    const road = item('road', 'road:1', [{ xM: ft(200), yM: -40 }, { xM: ft(200), yM: 40 }])
    outside(siteOf({ more: [road] }), [], {}, 200)
  })

  it('a pull path with a bend is not folded at all', () => {
    const bent = changed(longYard(), 'run:1', (record) => ({ ...record, vertices: [{ xM: ft(500), yM: 0, radiusM: 30 }, { xM: ft(500), yM: 80, radiusM: null }], surfaces: ['grass', 'grass'] }) as YardRecord)
    const site = deriveSite(bent)
    expect(site.bends.length).toBeGreaterThan(0)
    expect(foldFor(site, [], view())).toBeNull()
  })
})

describe('a fold that stands', () => {
  const site = siteOf()
  const plan = foldFor(site, [], view())!
  const fold = { fromM: plan.fromM, toM: plan.toM }
  const standing = (over: Partial<FoldView> = {}): FoldView => view({ ...plan, fold, ...over })

  it('stays as it is while nothing in it has to be in sight', () => {
    expect(keptFold(site, [], standing())).toBe(fold)
    expect(keptFold(site, [], standing({ selection: ['stand:e1'] }))).toBe(fold)
    // The roller in sight next to the fold: choosing it moves nothing.
    const next = site.supports.filter(({ kind, runningM }) => kind === 'roller' && runningM < fold.fromM).at(-1)!
    expect(keptFold(site, [], standing({ selection: [next.itemId] }))).toBe(fold)
  })

  it('opens where something in it is chosen, and where the sheet is laid another way', () => {
    expect(keptFold(site, [], standing({ selection: ['roller:10'] }))).toBeNull()
    expect(keptFold(site, [], standing({ orientation: 'northUp' }))).toBeNull()
    expect(keptFold(site, [], view())).toBeNull()
  })

  it('shrinks to its larger part where a finding comes up in it', () => {
    // At 300 ft, of a fold that ends at 358 ft: the part before it is the larger; 1.5 m (4.92 ft) stay clear: 295.08 ft, on the half foot 295.
    const kept = keptFold(site, [finding({ itemIds: ['roller:13'], where: { at: 'run', runningM: ft(300), levelM: null, offsetM: 0 } })], standing())!
    expect(kept.fromM).toBe(fold.fromM)
    expect(kept.toM / 0.3048).toBeCloseTo(295, 9)
  })

  it('opens where hardly more than its own width is left to hide', () => {
    const listed = [200, 240, 280, 320].map((atFt, i) => finding({ key: `sag@${i}`, itemIds: ['x'], where: { at: 'run', runningM: ft(atFt), levelM: null, offsetM: 0 } }))
    const narrow = standing({ fold: { fromM: ft(190), toM: ft(330) }, pxPerM: 3 })
    // Four marks leave 40 ft less 3 m between them: 9 m at 3 px/m are 27 px.
    expect(keptFold(site, listed, narrow)).toBeNull()
  })
})

describe('the example with eight sticks', () => {
  const read = readFile(readFileSync('shared/examples/maple-fork-good.yard.json', 'utf8'))
  if (!read.ok) throw new Error('example not readable')
  const site = deriveSite(read.document)
  const { findings } = runChecks(site)

  it('folds the rollers between the machine end and the nose spotter, and names what is beside them', () => {
    const plan = foldFor(site, findings, view({ form: 'desktop' }))!
    expect(plan.pxPerM * 0.3048).toBeCloseTo(4.7, 9)
    // The nose spotter's mark is 0.25 m to either side of its place; 1.5 m before it the fold may end; a roller there is shown.
    const spotter = [...site.placed.values()].find(({ kind, runningM }) => kind === 'crew' && runningM !== null && runningM > ft(200) && runningM < ft(330))!
    const nearM = Math.min(...Array.from({ length: spotter.outlineM.length / 2 }, (_, i) => site.toRunning(spotter.outlineM[2 * i]!, spotter.outlineM[2 * i + 1]!).runningM))
    expect(plan.toM).toBeLessThanOrEqual(nearM - 1.5)
    expect(plan.toM).toBeGreaterThan(nearM - 1.5 - 2 * 0.6 - 3 * 0.1524)
    for (const { runningM } of site.supports) for (const edgeM of [plan.fromM, plan.toM]) expect(Math.abs(runningM - edgeM)).toBeGreaterThanOrEqual(0.6 - 1e-9)
    // From about 50 ft behind the nail to 355 ft are some 405 ft; 1042 px / 4.7 = 221.7 ft fit beside the fold.
    expect(inFt(plan)[1] - inFt(plan)[0]).toBeGreaterThan(175)
    expect(inFt(plan)[1] - inFt(plan)[0]).toBeLessThan(190)
    const hidden = site.supports.filter(({ runningM }) => runningM > plan.fromM && runningM < plan.toM)
    expect(hidden.every(({ kind }) => kind === 'roller')).toBe(true)
    expect(plan.words.along).toContain(`, ${hidden[0]!.label} to ${hidden.at(-1)!.label} alike; pump house beside`)
    // 1 % over 182 ft: 1 ft 9 to 10 in.
    expect(plan.words.ground).toMatch(/^ground falls 1 ft (8|9|10)\s/u)
    expect(keptFold(site, findings, view({ ...plan, fold: { fromM: plan.fromM, toM: plan.toM } }))).toEqual({ fromM: plan.fromM, toM: plan.toM })
  })

  it('on a tablet both ends come to 4 px/ft at least, at most 5.6', () => {
    const plan = foldFor(site, findings, view({ form: 'tabletLandscape', ...band(1124) }))!
    expect(plan.pxPerM * 0.3048).toBeGreaterThan(4)
    expect(plan.pxPerM * 0.3048).toBeLessThanOrEqual(5.6 + 1e-9)
  })
})
