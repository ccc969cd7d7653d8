import { describe, expect, it } from 'vitest'
import { readDxf } from '../../src/read/plan/dxf.ts'
import { readGeoJson } from '../../src/read/plan/geoJson.ts'
import { layPlan, type LayChoices } from '../../src/read/plan/layPlan.ts'
import { readPlan } from '../../src/read/plan/readPlan.ts'
import type { ForeignPlan } from '../../src/read/plan/types.ts'
import type { Reading } from '../../src/read/refusal.ts'

const planOf = (read: Reading<{ plan: ForeignPlan }>): ForeignPlan => {
  if (!read.ok) throw new Error(read.reason.en)
  return read.plan
}
const whyNot = (read: Reading<object>): string => (read.ok ? 'read' : read.reason.en)

/** DXF text from group codes. */
const dxf = (entities: readonly (readonly [code: number, value: string | number])[], units = 6): string =>
  [[0, 'SECTION'], [2, 'HEADER'], [9, '$INSUNITS'], [70, units], [0, 'ENDSEC'], [0, 'SECTION'], [2, 'ENTITIES'], ...entities, [0, 'ENDSEC'], [0, 'EOF']].map(([code, value]) => `${code}\n${value}\n`).join('')

const square: readonly (readonly [number, string | number])[] = [[0, 'LWPOLYLINE'], [8, 'boundary'], [90, 4], [70, 1], [10, 0], [20, 0], [10, 60], [20, 0], [10, 60], [20, 30], [10, 0], [20, 30]]

describe('DXF', () => {
  it('reads closed polylines as areas, lines, points and circles with their layers, and the unit the header says', () => {
    const plan = planOf(readDxf(dxf([...square, [0, 'LINE'], [8, 'fence'], [10, 1], [20, 2], [11, 5], [21, 2], [0, 'POINT'], [8, 'tree'], [10, 7], [20, 8], [0, 'CIRCLE'], [8, 'tank'], [10, 0], [20, 0], [40, 2]], 2)))
    expect(plan.saidUnit).toBe('ft')
    expect(plan.shapes.map(({ layer, as, points }) => [layer, as, points.length])).toEqual([['boundary', 'area', 4], ['fence', 'line', 2], ['tree', 'point', 1], ['tank', 'area', 120]])
    expect(plan.shapes[1]!.points).toEqual([[1, 2], [5, 2]])
  })

  it('follows a bulge of one as the half circle to the right of its chord', () => {
    // From (0,0) to (2,0), counter-clockwise by half a turn: centre (1,0), radius 1, lowest at (1,−1).
    const { points } = planOf(readDxf(dxf([[0, 'LWPOLYLINE'], [8, 'a'], [90, 2], [70, 0], [10, 0], [20, 0], [42, 1], [10, 2], [20, 0]]))).shapes[0]!
    expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(-1, 9)
    for (const [x, y] of points) expect(Math.hypot(x - 1, y)).toBeCloseTo(1, 9)
  })

  it('counts what it does not read by name, and entities seen from below among it', () => {
    const plan = planOf(readDxf(dxf([...square, [0, 'TEXT'], [8, 'x'], [1, 'words'], [10, 0], [20, 0], [40, 1], [0, 'INSERT'], [8, 'x'], [2, 'BLOCK'], [10, 0], [20, 0], [0, 'ARC'], [8, 'a'], [10, 0], [20, 0], [40, 1], [50, 0], [51, 90], [230, -1]])))
    expect(plan.skipped).toEqual([{ what: 'TEXT', count: 1 }, { what: 'INSERT', count: 1 }, { what: 'ARC', count: 1 }])
    expect(plan.shapes).toHaveLength(1)
  })

  it('refuses a polyline that does not end and does not believe a count of corners', () => {
    expect(whyNot(readDxf(dxf([[0, 'POLYLINE'], [8, 'a'], [0, 'VERTEX'], [10, 0], [20, 0], [0, 'LINE'], [8, 'a']])))).toMatch(/POLYLINE does not end/)
    expect(planOf(readDxf(dxf([[0, 'LWPOLYLINE'], [8, 'a'], [90, 999_999_999], [70, 0], [10, 0], [20, 0], [10, 2], [20, 0]]))).shapes[0]!.points).toHaveLength(2)
  })

  it('refuses what is cut off, binary, without sections, too long, or has corners that are no places', () => {
    expect(whyNot(readDxf(dxf(square).slice(0, 120)))).toMatch(/cut off/)
    expect(whyNot(readDxf('AutoCAD Binary DXF\r\n\u001a\u0000'))).toMatch(/binary/)
    expect(whyNot(readDxf('hello'))).toMatch(/no section/)
    expect(whyNot(readDxf(dxf(square), { chars: 50, depth: 16, shapes: 9, cornersOfOne: 9, corners: 9 }))).toMatch(/more than 50 are not read/)
    expect(whyNot(readDxf(dxf([[0, 'CIRCLE'], [8, 'a'], [10, 'x'], [20, 0], [40, 2]])))).toMatch(/damaged: line \d+ is no number/)
    expect(whyNot(readDxf(dxf(square), { chars: 5000, depth: 16, shapes: 9, cornersOfOne: 3, corners: 9 }))).toMatch(/has 4 corners/)
    expect(whyNot(readDxf(dxf([[0, 'TEXT'], [8, 'x'], [1, 'words'], [10, 0], [20, 0]])))).toMatch(/holds no boundary/)
  })
})

const feature = (geometry: unknown, properties: unknown = null): object => ({ type: 'Feature', geometry, properties })
const collection = (features: readonly unknown[], over: object = {}): string => JSON.stringify({ type: 'FeatureCollection', features, ...over })
const ring = [[0, 0], [60, 0], [60, 30], [0, 30], [0, 0]]

describe('GeoJSON', () => {
  it('reads polygons, lines and points with layer and name; holes are counted, not read', () => {
    const plan = planOf(readGeoJson(collection([feature({ type: 'Polygon', coordinates: [ring, ring] }, { layer: 'boundary', name: 'lot' }), feature({ type: 'MultiLineString', coordinates: [[[0, 0], [1, 1]], [[2, 2], [3, 3]]] }, { kind: 'fence' }), feature({ type: 'Point', coordinates: [1, 2, 99] })], { coordinateSystem: 'site frame, metres, x right, y up' })))
    expect(plan.saidUnit).toBe('m')
    expect(plan.shapes.map(({ layer, name, as, points }) => [layer, name, as, points.length])).toEqual([['boundary', 'lot', 'area', 4], ['fence', '', 'line', 2], ['fence', '', 'line', 2], ['', '', 'point', 1]])
    expect(plan.skipped).toEqual([{ what: 'hole in a Polygon', count: 1 }])
  })

  it('says degrees only where the coordinates can be degrees and the file names no other system', () => {
    expect(planOf(readGeoJson(collection([feature({ type: 'Point', coordinates: [-90.1, 41.5] })]))).saidUnit).toBe('degrees')
    expect(planOf(readGeoJson(collection([feature({ type: 'Point', coordinates: [500_000, 4_000_000] })]))).saidUnit).toBeNull()
    expect(planOf(readGeoJson(collection([feature({ type: 'Point', coordinates: [1, 2] })], { crs: {} }))).saidUnit).toBeNull()
  })

  it('refuses hostile input by field', () => {
    expect(whyNot(readGeoJson(collection([feature({ type: 'LineString', coordinates: [[0, 0], ['1', 2]] })])))).toBe('features[0].geometry.coordinates[1] must be a place: [east, north]')
    expect(whyNot(readGeoJson(collection([feature({ type: 'Blob' })])))).toMatch(/^features\[0\]\.geometry\.type: "Blob"/)
    expect(whyNot(readGeoJson(collection([7])))).toMatch(/^features\[0\] must be a group/)
    expect(whyNot(readGeoJson('{"type":"FeatureCollection","features":{}}'))).toMatch(/^features must be a list/)
    expect(whyNot(readGeoJson('['.repeat(100)))).toMatch(/deeper than 16/)
    expect(whyNot(readGeoJson('{"type":'))).toMatch(/not JSON/)
    expect(whyNot(readGeoJson(collection([feature({ type: 'LineString', coordinates: [[0, 0], [1e300, 1]] })])))).toMatch(/corner 2 is no place/)
    expect(whyNot(readGeoJson(collection([feature({ type: 'LineString', coordinates: Array.from({ length: 3000 }, (_, i) => [i, 0]) })])))).toMatch(/3000 corners/)
    expect(whyNot(readGeoJson(collection(Array.from({ length: 5001 }, () => feature(null)))))).toMatch(/5001 entries/)
    expect(whyNot(readPlan(' '))).toMatch(/empty/)
  })

  it('keeps names on one line and without controls, and reads no field of a prototype', () => {
    const plan = planOf(readGeoJson('{"type":"Feature","geometry":{"type":"Point","coordinates":[1,2]},"properties":{"__proto__":{"layer":"x"},"name":"a\\u202e\\nb"}}'))
    expect(plan.shapes[0]).toMatchObject({ layer: '', name: 'a b' })
  })
})

describe('laying a plan on the site', () => {
  const lay = (points: readonly (readonly [number, number])[], over: Partial<LayChoices>) => {
    const read = layPlan({ shapes: [{ layer: '', name: '', as: 'line', points }] }, { unit: 'm', where: 'map', datum: { xM: 0, yM: 0 }, mapOrigin: null, ...over })
    if (!read.ok) throw new Error(read.reason.en)
    return read.laid
  }

  it('turns feet and survey feet into metres', () => {
    expect(lay([[0, 0], [100, 0]], { unit: 'ft' }).widthM).toBeCloseTo(30.48, 12)
    // 1200/3937 m each: 100 of them are 30.480061 m.
    expect(lay([[0, 0], [100, 0]], { unit: 'usft' }).widthM).toBeCloseTo(30.480061, 6)
  })

  it('puts the middle on the datum and keeps what it took off as the origin of the map', () => {
    const laid = lay([[500_000, 4_000_000], [500_060, 4_000_030]], { where: 'middle', datum: { xM: 5, yM: 0 } })
    // Middle 500 030, 4 000 015 comes to 5, 0.
    expect(laid.mapOrigin).toEqual({ eastM: 500_025, northM: 4_000_015 })
    expect(laid.shapes[0]!.points).toEqual([{ xM: -25, yM: -15 }, { xM: 35, yM: 15 }])
    expect(laid.awayM).toBeCloseTo(0, 9)
  })

  it('uses the origin the layout already has, and then keeps nothing new', () => {
    const laid = lay([[500_000, 4_000_000], [500_060, 4_000_030]], { mapOrigin: { eastM: 500_025, northM: 4_000_015 } })
    expect(laid.shapes[0]!.points[0]).toEqual({ xM: -25, yM: -15 })
    expect(laid.mapOrigin).toBeNull()
  })

  it('says how far coordinates of a map would lie from the datum', () => expect(lay([[500_000, 0], [500_001, 0]], {}).awayM).toBeGreaterThan(499_000))

  it('measures degrees on the ellipsoid', () => {
    // WGS 84 at latitude 45: one degree of latitude is 111 131.7 m, of longitude 78 846.8 m (published tables of the length of a degree).
    const laid = lay([[-90.0005, 44.9995], [-89.9995, 45.0005]], { unit: 'degrees' })
    expect(laid.heightM).toBeCloseTo(111.1317, 2)
    expect(laid.widthM).toBeCloseTo(78.8468, 2)
    expect(laid.mapOrigin).toBeNull()
  })

  it('refuses degrees that cannot be and a wrong unit that makes a country of a yard', () => {
    const shapes = [{ layer: '', name: '', as: 'line' as const, points: [[0, 0], [60_000, 0]] as const }]
    const choices = { where: 'middle', datum: { xM: 0, yM: 0 }, mapOrigin: null } as const
    expect(whyNot(layPlan({ shapes }, { ...choices, unit: 'degrees' }))).toMatch(/no degrees/)
    expect(whyNot(layPlan({ shapes }, { ...choices, unit: 'm' }))).toMatch(/20 km across/)
    expect(whyNot(layPlan({ shapes }, { ...choices, unit: 'mm' }))).toBe('read')
  })
})
