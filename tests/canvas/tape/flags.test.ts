import { describe, expect, it } from 'vitest'
import { flagParts, flagLook, flagSizePx } from '../../../src/canvas/tape/flagDrawing.ts'
import { flagDistance, flagName, proposedFlags, tapeFlags } from '../../../src/canvas/tape/flags.ts'
import { liveFigures } from '../../../src/canvas/tape/liveFigures.ts'
import { tapeFrame } from '../../../src/canvas/tape/tapeFrame.ts'
import type { CheckRun, Finding } from '../../../src/checks/finding.ts'
import { profileAt } from '../../../src/derive/profile.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { alongToPx } from '../../../src/state/frames.ts'
import { initialView } from '../../../src/state/viewStore.ts'
import { item, job, onRun, yard } from '../../helpers/documents.ts'

const ft = 0.3048
const reader = { system: 'feetInches', language: 'en' } as const

const finding = (level: Finding['level'], itemId: string, over: Partial<Finding> = {}): Finding => ({
  checkId: 'x', key: `x@${itemId}${level}`, level, isUnknown: false, missing: [], itemIds: [itemId], where: null, what: { text: { en: 'a', es: 'a' } },
  measured: null, limit: null, margin: null, source: { class: 'mechanics', cite: '' }, phases: [], move: null, remedy: null, ...over,
})
const runOf = (...findings: Finding[]): CheckRun => ({ findings, counts: { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0, toConfirm: 0 } })
const document = yard(
  job({ pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, stickLengthM: 40 * ft, neededLengthM: 280 * ft }),
  item('machine', 'machine:1', onRun(0)),
  item('rack', 'rack:1', onRun(-20 * ft)),
  item('stand', 'stand:1', onRun(12.5 * ft)),
  item('stand', 'stand:2', onRun(25 * ft)),
  item('puller', 'puller:1', onRun(338 * ft)),
)
const site = deriveSite(document)
const flagsOf = (run: CheckRun | null = null, hidden: readonly string[] = []) => tapeFlags(site, profileAt(site, { phase: 'fuse', joint: 1 }), run, reader, hidden)

describe('what hangs on the tape', () => {
  it('is every support, the jaws, the nose and the puller, in order along it', () => {
    expect(flagsOf().map(({ label }) => label)).toEqual(['R2', 'R1', 'jaws', 'E1', 'E2', 'nose', 'P'])
  })

  it.each([[25, "25'"], [12.5, "12' 6\""], [-8.5, "8' 6\""], [0, '0'], [319.5, "319' 6\""], [0.5, '6"']])('says %d ft as a tape does: %s', (feet, text) => {
    expect(flagDistance(feet * ft, reader)).toBe(text)
  })

  it('says metres bare on a metric tape, the band being in metres', () => {
    expect(flagDistance(7.62, { system: 'metric', language: 'en' })).toBe('7.62')
  })

  it('shows the level of the worst open finding, not of missing input nor of what is met', () => {
    const flags = flagsOf(runOf(finding('NOTE', 'stand:1'), finding('FIX', 'stand:1'), finding('CHECK', 'stand:2', { isUnknown: true }), finding('met', 'puller:1')))
    expect(flags.filter(({ level }) => level !== null).map(({ label, level }) => [label, level])).toEqual([['E1', 'FIX']])
  })

  it('gives a finding about one beam of the rack to that beam', () => {
    const r1 = site.supports.find(({ label }) => label === 'R1')?.runningM ?? 0
    const flags = flagsOf(runOf(finding('FIX', 'rack:1', { where: { at: 'run', runningM: r1, levelM: null, offsetM: 0 } })))
    expect(flags.filter(({ level }) => level === 'FIX').map(({ label }) => label)).toEqual(['R1'])
  })

  it('neither slides the machine nor the nose', () => {
    expect(flagsOf().filter(({ canSlide }) => !canSlide).map(({ label }) => label)).toEqual(['jaws', 'nose'])
  })

  it('leaves out kinds that are hidden', () => {
    expect(flagsOf(null, ['stand', 'puller']).map(({ label }) => label)).toEqual(['R2', 'R1', 'jaws', 'nose'])
  })

  it('is named in full for those who hear it', () => {
    const flag = flagsOf(runOf(finding('STOP', 'stand:2'))).find(({ label }) => label === 'E2')
    // A stand is made on the jaw line: 0.9 m less half of 10.75 in is 0.7635 m, 30 1/16 in.
    expect(flagName(flag!, reader)).toBe('E2, exit 25 ft 0 in, saddle 30\u20091/16 in, STOP')
  })
})

describe('flags as drawn', () => {
  const [flag] = flagsOf(runOf(finding('FIX', 'rack:1')))
  const drawn = (over = {}) => ({ flag: flag!, place: { key: 'x', row: 0, hang: 1 as const, startPx: 100, footPx: 100, isFolded: false }, alongPx: 100, sizePx: 42, isChosen: false, isStale: false, ...over })

  it('carry the level as a shape, and only its outline while the checks are behind', () => {
    const fresh = JSON.stringify(flagParts(drawn(), flagLook(false, false)))
    expect(fresh).toContain('"fill":"fix"')
    expect(JSON.stringify(flagParts(drawn({ isStale: true }), flagLook(false, false)))).not.toContain('"fill":"fix"')
  })

  it('are teal when chosen', () => {
    expect(JSON.stringify(flagParts(drawn({ isChosen: true }), flagLook(false, false)))).toContain('"fill":"chosen"')
  })

  it('hang to the side of the free hand on an upright tape', () => {
    const xs = (isMirrored: boolean) => flagParts(drawn({ isMirrored }), flagLook(true, true)).flatMap((p) => (p.t === 'path' && p.closed === true ? p.points.filter((_, i) => i % 2 === 0) : []))
    expect(Math.max(...xs(false))).toBeLessThan(0)
    expect(Math.min(...xs(true))).toBeGreaterThan(0)
  })

  it('are wide enough for what stands on them', () => {
    expect(flagSizePx({ label: 'nose', distance: "319' 6\"", level: 'FIX' }, flagLook(false, false))).toBeGreaterThan(flagSizePx({ label: 'E1', distance: "25'", level: null }, flagLook(false, false)))
  })
})

describe('a proposal on the tape', () => {
  it('shows what it would add or move, and nothing that stays', () => {
    const proposed = deriveSite(yard(...Object.values(document.records), item('stand', 'stand:2', onRun(26 * ft)), item('stand', 'stand:9', onRun(40 * ft))))
    const ghosts = proposedFlags(flagsOf(), tapeFlags(proposed, profileAt(site, { phase: 'fuse', joint: 1 }), null, reader))
    expect(ghosts.map(({ distance, itemId, isProposal }) => [distance, itemId, isProposal])).toEqual([["26'", null, true], ["40'", null, true]])
  })
})

describe('figures while a flag is dragged', () => {
  it('say the running distance and the way to both neighbours', () => {
    const state = { name: 'sliding', key: flagsOf().find(({ label }) => label === 'E1')!.key, ids: [], startM: 0, runningM: 13 * ft, snap: 'round', pointerId: 1, pointer: 'mouse', alongPx: 0, acrossPx: 0 } as const
    expect(liveFigures(state, flagsOf(), reader)).toEqual({ main: 'exit 13 ft 0 in', more: '13 ft 0 in from jaws · 12 ft 0 in to E2' })
  })
  it('say the saddle in both systems', () => {
    const state = { name: 'dropping', key: 'x', ids: [], startM: 0.7, saddleM: 0.635, onJawLine: true, pointerId: 1, pointer: 'mouse', alongPx: 0, acrossPx: 0 } as const
    expect(liveFigures(state, [], reader)).toEqual({ main: 'saddle 25 in (635 mm)', more: 'on the jaw line' })
  })
})

describe('where the tape lies', () => {
  it.each([[false, false], [true, false], [false, true], [true, true]])('puts running distances where the shared frame does (turned %s, upright %s)', (turned, tapeVertical) => {
    const view = { ...initialView, turned, tapeVertical }
    const { matrix, frame, fromM, toM } = tapeFrame(view, tapeVertical ? 58 : 1072, tapeVertical ? 522 : 56, false)
    for (const runningM of [-10, 0, 30]) {
      const px = tapeVertical ? matrix.b * runningM + matrix.f : matrix.a * runningM + matrix.e
      expect(px).toBeCloseTo(alongToPx(frame, runningM))
    }
    expect(toM - fromM).toBeCloseTo((tapeVertical ? 522 : 1072) / view.pxPerM)
  })
})
