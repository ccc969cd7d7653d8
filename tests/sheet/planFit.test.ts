import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { imageBoxes } from '../../src/sheet/page.ts'
import { fitPlan } from '../../src/sheet/planFit.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'
import { ft, lotYard } from './samples.ts'

const box = { x0: 100, y0: 50, x1: 1100, y1: 350 }
const pipe = { system: 'IPS', size: '10', dr: 17, material: 'PE4710' } as const
const siteOf = (over: Parameters<typeof setUp>[0], records: readonly YardRecord[], jobOver: Parameters<typeof job>[0] = {}): SiteModel => deriveSite(documentOf(layout(), job(jobOver), setUp(over), run(), ...records))
const boundary = (points: readonly (readonly [number, number])[]): YardRecord => item('boundary', 'boundary:1', points.map(([xM, yM]) => ({ xM, yM })))

/** Px of a site point in the box under a fit, as the plan along the tape is drawn. */
const placed = (site: SiteModel, at: { xM: number; yM: number }, into = box): { x: number; y: number } => {
  const fit = fitPlan(site, into)
  const { datum, headingRad } = site.setUp!
  const [dx, dy] = [at.xM - datum.xM, at.yM - datum.yM]
  const along = dx * Math.cos(headingRad) + dy * Math.sin(headingRad)
  const right = dx * Math.sin(headingRad) - dy * Math.cos(headingRad)
  return { x: into.x0 + (along - fit.leftRunningM) * fit.pxPerM, y: (into.y0 + into.y1) / 2 + (right - fit.midOffsetM) * fit.pxPerM }
}

describe('the scale that fits a yard', () => {
  it('leaves 4 % of the width on each side of a long lot', () => {
    const site = siteOf({}, [boundary([[-20, -5], [80, -5], [80, 5], [-20, 5]])])
    // 100 m over 1000 px less 2 × 4 %: 9.2 px/m; the middle of the lot, 30 m, at the middle of the box: 30 − 500/9.2
    const fit = fitPlan(site, box)
    expect(fit.pxPerM).toBeCloseTo(9.2, 9)
    expect(fit.leftRunningM).toBeCloseTo(30 - 500 / 9.2, 9)
    expect(fit.midOffsetM).toBeCloseTo(0, 9)
  })
  it('leaves 4 % of the height where the lot is deep, right of the axis positive', () => {
    const site = siteOf({}, [boundary([[0, -40], [40, -40], [40, 20], [0, 20]])])
    // 60 m over 300 px less 8 %: 4.6 px/m; offsets run from −20 (left, y = 20) to 40 (right, y = −40): middle 10
    const fit = fitPlan(site, box)
    expect(fit.pxPerM).toBeCloseTo(4.6, 9)
    expect(fit.midOffsetM).toBeCloseTo(10, 9)
  })
  it('keeps every outline inside whatever the heading and place of the set-up', () => {
    const points = [[-62, -41], [358, -41], [358, 29], [-62, 29]] as const
    for (const headingRad of [0, 0.7, 2.4, -1.9]) {
      const site = siteOf({ datum: { xM: 12, yM: -7 }, headingRad }, [boundary(points)])
      const shown = points.map(([xM, yM]) => placed(site, { xM, yM }))
      for (const { x, y } of shown) {
        expect(x).toBeGreaterThan(box.x0 + 39)
        expect(x).toBeLessThan(box.x1 - 39)
        expect(y).toBeGreaterThan(box.y0 + 11)
        expect(y).toBeLessThan(box.y1 - 11)
      }
    }
  })
  it('shows the string at its longest and the stick before it, though nothing else stands there', () => {
    const site = siteOf({}, [item('machine', 'machine:1', onRun(0))], { pipe, stickLengthM: ft(40), neededLengthM: ft(280) })
    const tipM = site.sticks.plan!.madeLengthM
    const fit = fitPlan(site, box)
    // From −40 ft to the tip over 92 % of 1000 px
    expect(fit.pxPerM).toBeCloseTo(920 / (ft(40) + tipM), 9)
  })
  it('keeps spot heights and items without an outline in view', () => {
    const site = siteOf({}, [item('level', 'level:1', free(150, 3)), item('machine', 'machine:1', onRun(0))])
    expect(placed(site, { xM: 150, yM: 3 }).x).toBeLessThanOrEqual(box.x1 - 39)
  })
  it('keeps the unrolled tape in view beyond a bend', () => {
    const bent = documentOf(layout(), job({ pipe, stickLengthM: ft(40), neededLengthM: ft(400) }), setUp(), run({ vertices: [{ xM: 60, yM: 0, radiusM: 20 }, { xM: 60, yM: 100, radiusM: null }] }), item('machine', 'machine:1', onRun(0)))
    const site = deriveSite(bent)
    const fit = fitPlan(site, box)
    expect(fit.leftRunningM + 1000 / fit.pxPerM).toBeGreaterThan(site.sticks.stringLengthM(site.sticks.stickCount))
    const end = site.atRunning(site.sticks.stringLengthM(site.sticks.stickCount))
    expect(placed(site, end).y).toBeGreaterThan(box.y0 + 11)
  })
  it('of an empty document is 30 m about the datum', () => {
    for (const document of [documentOf(layout(), job()), documentOf(layout(), job(), setUp(), run())]) {
      const fit = fitPlan(deriveSite(document), box)
      // 30 m over 920 px; 15 m to each side of the datum, and the margins
      expect(fit.pxPerM).toBeCloseTo(920 / 30, 9)
      expect(fit.leftRunningM).toBeCloseTo(-500 / (920 / 30), 9)
    }
  })
  it('puts the sample yard on the page with its lot inside the plan', () => {
    const site = deriveSite(lotYard())
    const corners = [[-62, -41], [358, 29]].map(([x, y]) => placed(site, { xM: ft(x!), yM: ft(y!) }, imageBoxes.plan))
    for (const { x, y } of corners) {
      expect(x > imageBoxes.plan.x0 && x < imageBoxes.plan.x1).toBe(true)
      expect(y > imageBoxes.plan.y0 && y < imageBoxes.plan.y1).toBe(true)
    }
  })
})
