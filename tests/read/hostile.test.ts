import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { layPlan } from '../../src/read/plan/layPlan.ts'
import { readPlan } from '../../src/read/plan/readPlan.ts'
import { findColumns } from '../../src/read/levelBook/columns.ts'
import { readLevels } from '../../src/read/levelBook/levels.ts'
import { readTable } from '../../src/read/levelBook/table.ts'
import { readImageHeader } from '../../src/read/photo/imageHeader.ts'
import { dxfOf } from '../../src/write/dxf.ts'
import { geoJsonOf } from '../../src/write/geoJson.ts'
import { exampleDocument } from '../sheet/crew/content.ts'

const site = deriveSite(exampleDocument('maple-fork-good'))
const boundary = [...site.placed.values()].find(({ kind }) => kind === 'boundary')!

/** Small generator of its own (linear congruence of Numerical Recipes), so that every run is the same. */
const random = (seed: number) => () => (seed = (1_664_525 * seed + 1_013_904_223) % 4_294_967_296) / 4_294_967_296

const mutated = (text: string, next: () => number): string => {
  let out = text
  for (let i = 0; i < 1 + next() * 4; i++) {
    const at = Math.floor(next() * out.length)
    const kind = next()
    if (kind < 0.25) out = out.slice(0, at)
    else if (kind < 0.5) out = out.slice(0, at) + String.fromCharCode(Math.floor(next() * 300)) + out.slice(at + 1)
    else if (kind < 0.75) out = out.slice(0, at) + out.slice(at + Math.floor(next() * 40))
    else out = out.slice(0, at) + out.slice(Math.floor(next() * out.length), Math.floor(next() * out.length)) + out.slice(at)
  }
  return out
}

describe('plans written by this program', () => {
  it.each([['DXF', dxfOf(site)], ['GeoJSON', geoJsonOf(site)]])('come back from %s with the boundary where it was', (_name, text) => {
    const read = readPlan(text)
    if (!read.ok) throw new Error(read.reason.en)
    expect(read.plan.saidUnit).toBe('m')
    const laid = layPlan(read.plan, { unit: 'm', where: 'map', datum: { xM: 0, yM: 0 }, mapOrigin: null })
    if (!laid.ok) throw new Error(laid.reason.en)
    const back = laid.laid.shapes.find(({ layer, as }) => layer.toLowerCase() === 'boundary' && as === 'area')!
    const corners = Array.from({ length: boundary.outlineM.length / 2 }, (_, i) => ({ xM: boundary.outlineM[2 * i]!, yM: boundary.outlineM[2 * i + 1]! }))
    expect(back.points).toHaveLength(corners.length)
    // 0.01 mm; the ring may begin elsewhere and turn the other way.
    for (const { xM, yM } of corners) expect(Math.min(...back.points.map((point) => Math.hypot(point.xM - xM, point.yM - yM)))).toBeLessThan(1e-5)
  })
})

describe('mutated files', () => {
  it.each([['DXF', dxfOf(site)], ['GeoJSON', geoJsonOf(site)]])('of %s are read or refused with a reason, never thrown', (_name, text) => {
    const next = random(7)
    for (let i = 0; i < 60; i++) {
      const read = readPlan(mutated(text, next))
      if (!read.ok) expect(read.reason.en.length * read.reason.es.length).toBeGreaterThan(0)
      else for (const { points } of read.plan.shapes) expect(points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y))).toBe(true)
    }
  })

  it('of a level book give levels that are numbers, faults, or a reason', () => {
    const next = random(11)
    const text = `Station,Offset,Level\n${Array.from({ length: 40 }, (_, i) => `0+${String(10 + i)},R ${i},1${i}.5`).join('\n')}`
    for (let i = 0; i < 200; i++) {
      const book = readTable(mutated(text, next))
      if (!book.ok) continue
      findColumns(book.table)
      const read = readLevels(book.table.rows, { unit: 'ft', columns: { station: 0, offset: 1, level: 2 }, datumStationM: 0, datumLevelM: 3, stationsRise: 'exit', plusOffset: 'right' })
      expect(read.ok && read.levels.every((one) => [one.runningM, one.offsetM, one.aboveDatumM].every(Number.isFinite))).toBe(true)
    }
  })

  it('of a photo keep to the limits of size', () => {
    const next = random(13)
    const head = [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 4, 0, 0, 0, 3, 0, 8, 6, 0, 0, 0]
    for (let i = 0; i < 500; i++) {
      const bytes = new Uint8Array(head.map((byte) => (next() < 0.1 ? Math.floor(next() * 256) : byte)))
      const read = readImageHeader(bytes)
      if (read.ok) expect(read.header.widthPx * read.header.heightPx).toBeLessThanOrEqual(50_000_000)
    }
  })
})
