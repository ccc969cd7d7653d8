import { parse } from 'csv-parse/sync'
import DxfParser from 'dxf-parser'
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js'
import GeoJSONReader from 'jsts/org/locationtech/jts/io/GeoJSONReader.js'
import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { layoutOf, type YardDocument, type YardRecord } from '../../src/scene/document.ts'
import { csvOf } from '../../src/write/csv.ts'
import { dxfOf } from '../../src/write/dxf.ts'
import { geoJsonOf } from '../../src/write/geoJson.ts'
import { contentOf, exampleDocument } from '../sheet/crew/content.ts'

const document = exampleDocument('maple-fork-good')
const withRecord = (change: (record: YardRecord) => YardRecord): YardDocument => ({ records: Object.fromEntries(Object.entries(document.records).map(([id, record]) => [id, change(record)])) })
const boundary = [...deriveSite(document).placed.values()].find(({ kind }) => kind === 'boundary')!

describe('the setting-out table as CSV, read back by csv-parse', () => {
  const rowsOf = (of: YardDocument): Record<string, string>[] => parse(csvOf(contentOf(of, { rehearsal: null })), { columns: true, bom: true })

  it('holds what the solver found of every support, in metres and newtons', () => {
    const content = contentOf(document, { rehearsal: null })
    const rows = rowsOf(document)
    for (const { key, label, runningM, groundLevelM, plannedSaddleM } of content.site.supports) {
      const row = rows.find((one) => one['no.'] === label)!
      expect(Number(row['tape m'])).toBeCloseTo(runningM, 4)
      expect(Number(row['ground m'])).toBeCloseTo(groundLevelM, 4)
      expect(Number(row['BOP above ground m'])).toBeCloseTo(plannedSaddleM!, 4)
      expect(Number(row['most load N'])).toBeCloseTo(content.run!.quantities!.supports[key]!.loadN!, 0)
    }
    expect(rows.map((row) => Number(row['tape m']))).toEqual(rows.map((row) => Number(row['tape m'])).toSorted((a, b) => a - b))
  })

  it('leaves a cell of what is not known empty', () => {
    const rows: Record<string, string>[] = parse(csvOf({ ...contentOf(document, { rehearsal: null }), run: null }), { columns: true, bom: true })
    expect(rows.every((row) => row['most load N'] === '')).toBe(true)
  })

  it.each(['=1', '+A', '-2', '@x', '|c', '%1'])('writes the revision %s as text, and negative numbers as numbers', (revision) => {
    const rows = rowsOf({ records: { ...document.records, 'layout:this': { ...layoutOf(document), revision } } })
    expect(rows.every((row) => row['revision'] === `'${revision}`)).toBe(true)
    expect(rows.some((row) => /^-\d/.test(row['tape m']!))).toBe(true)
  })
})

describe('the plan as DXF, read back by dxf-parser', () => {
  const read = (of: YardDocument): NonNullable<ReturnType<DxfParser['parseSync']>> => new DxfParser().parseSync(dxfOf(deriveSite(of)))!

  it('is in metres, with a layer a kind, and the boundary where it is', () => {
    const dxf = read(document)
    expect(dxf.header['$INSUNITS']).toBe(6)
    expect(Object.keys(dxf.tables.layer.layers)).toEqual(expect.arrayContaining(['boundary', 'roller', 'stand', 'machine', 'run', 'zone red']))
    const line = dxf.entities.find((entity) => entity.layer === 'boundary' && entity.type === 'LWPOLYLINE') as unknown as { vertices: { x: number; y: number }[]; shape: boolean }
    expect(line.shape).toBe(true)
    expect(line.vertices.flatMap(({ x, y }) => [x, y])).toEqual(boundary.outlineM.map((value) => expect.closeTo(value, 6)))
  })

  it('lies at the map origin where the layout has one', () => {
    const moved = read({ records: { ...document.records, 'layout:this': { ...layoutOf(document), mapOrigin: { eastM: 500_000, northM: 4_000_000 } } } })
    const line = moved.entities.find((entity) => entity.layer === 'boundary' && entity.type === 'LWPOLYLINE') as unknown as { vertices: { x: number; y: number }[] }
    expect(line.vertices[0]!.x).toBeCloseTo(500_000 + boundary.outlineM[0]!, 5)
    expect(line.vertices[0]!.y).toBeCloseTo(4_000_000 + boundary.outlineM[1]!, 5)
  })

  it('takes a name that looks like the format for a name', () => {
    const evil = 'A\n  0\nLINE\n  8\nx\n%%d^J\\U+0041\\P'
    const before = read(document)
    const dxf = read(withRecord((record) => (record.id === boundary.id && 'name' in record ? { ...record, name: evil } as YardRecord : record)))
    expect(dxf.entities.length).toBe(before.entities.length)
    const texts = dxf.entities.filter(({ type, layer }) => type === 'TEXT' && layer === 'boundary').map((entity) => (entity as unknown as { text: string }).text)
    expect(texts).toHaveLength(1)
    expect(texts[0]).not.toMatch(/%%|\^J|\\/)
  })
})

describe('the plan as GeoJSON, read back by the reader of a geometry library', () => {
  it('holds valid shapes with the figures of the plan', () => {
    const site = deriveSite(document)
    const collection = JSON.parse(geoJsonOf(site)) as { coordinateSystem: string; features: { id: string; geometry: unknown; properties: Record<string, unknown> }[] }
    expect(collection.coordinateSystem).toContain('metres')
    const reader = new GeoJSONReader(new GeometryFactory())
    const found = collection.features.find(({ id }) => id === boundary.id)!
    const shape = reader.read(found.geometry as never) as unknown as { getArea: () => number; isValid?: () => boolean }
    // Shoelace of the outline itself.
    const twice = boundary.outlineM.reduce((sum, x, i, all) => (i % 2 === 1 ? sum : sum + x * all[(i + 3) % all.length]! - all[(i + 2) % all.length]! * all[i + 1]!), 0)
    expect(shape.getArea()).toBeCloseTo(Math.abs(twice / 2), 3)
    for (const { geometry } of collection.features) expect(() => reader.read(geometry as never)).not.toThrow()
    const stand = site.supports.find(({ label }) => label === 'E2')!
    expect(collection.features.find(({ id }) => id === stand.itemId)?.properties['bopAboveGroundM']).toBeCloseTo(stand.plannedSaddleM!, 9)
  })
})
