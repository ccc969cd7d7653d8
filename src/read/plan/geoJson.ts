/** Boundaries and features from GeoJSON (RFC 7946). */
import { quoted, refused, type Reading } from '../refusal.ts'
import { Collector } from './collect.ts'
import { planLimits, type ForeignPlan, type PlanLimits } from './types.ts'

type Refusal = { ok: false; reason: { en: string; es: string } }
type Group = Readonly<Record<string, unknown>>
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value)
const own = (group: Group, key: string): unknown => (Object.hasOwn(group, key) ? group[key] : undefined)
const textOf = (group: Group | null, keys: readonly string[]): string | null => {
  for (const key of keys) {
    const value = group === null ? undefined : own(group, key)
    if (typeof value === 'string' && value.trim() !== '') return value.trim()
  }
  return null
}

const notPlace = (path: string): Refusal => refused(`${path} must be a place: [east, north]`, `${path} debe ser un lugar: [este, norte]`)
const notList = (path: string): Refusal => refused(`${path} must be a list [ … ]`, `${path} debe ser una lista [ … ]`)

type Points = readonly (readonly [number, number])[]

function pointsOf(value: unknown, path: string, most: number): Points | Refusal {
  if (!Array.isArray(value)) return notList(path)
  if (value.length > most + 1) return refused(`${path} has ${value.length} corners; more than ${most} are not read`, `${path} tiene ${value.length} esquinas; no se leen más de ${most}`)
  const points: [number, number][] = []
  for (const [i, at] of (value as readonly unknown[]).entries()) {
    if (!Array.isArray(at) || typeof at[0] !== 'number' || typeof at[1] !== 'number') return notPlace(`${path}[${i}]`)
    points.push([at[0], at[1]])
  }
  return points
}

interface Owner {
  layer: string
  name: string
}

/** Takes a geometry apart into shapes; null, or why the file is refused. */
function takeGeometry(geometry: unknown, path: string, owner: Owner, into: Collector): Refusal | null {
  if (geometry === null) return null
  if (!isGroup(geometry)) return refused(`${path} must be a group of fields { … }`, `${path} debe ser un grupo de campos { … }`)
  const type = own(geometry, 'type')
  const coordinates = own(geometry, 'coordinates')
  const at = `${path}.coordinates`
  const most = into.limits.cornersOfOne
  const line = (value: unknown, where: string, as: 'line' | 'area'): Refusal | null => {
    const points = pointsOf(value, where, most)
    return 'ok' in points ? points : into.take({ ...owner, as, points }, where)
  }
  const polygon = (value: unknown, where: string): Refusal | null => {
    if (!Array.isArray(value)) return notList(where)
    value.slice(1).forEach(() => into.pass('hole in a Polygon'))
    return value.length === 0 ? null : line(value[0], `${where}[0]`, 'area')
  }
  const point = (value: unknown, where: string): Refusal | null => {
    const points = pointsOf([value], where, most)
    return 'ok' in points ? notPlace(where) : into.take({ ...owner, as: 'point', points }, where)
  }
  const each = (value: unknown, where: string, one: (part: unknown, where: string) => Refusal | null): Refusal | null => {
    if (!Array.isArray(value)) return notList(where)
    for (const [i, part] of (value as readonly unknown[]).entries()) {
      const bad = one(part, `${where}[${i}]`)
      if (bad !== null) return bad
    }
    return null
  }
  switch (type) {
    case 'Point': return point(coordinates, at)
    case 'LineString': return line(coordinates, at, 'line')
    case 'Polygon': return polygon(coordinates, at)
    case 'MultiPoint': return each(coordinates, at, point)
    case 'MultiLineString': return each(coordinates, at, (part, where) => line(part, where, 'line'))
    case 'MultiPolygon': return each(coordinates, at, polygon)
    case 'GeometryCollection': return each(own(geometry, 'geometries'), `${path}.geometries`, (part, where) => takeGeometry(part, where, owner, into))
    default: return refused(`${path}.type: ${quoted(String(type))} is no geometry known here`, `${path}.type: ${quoted(String(type))} no es una geometría conocida aquí`)
  }
}

/** Deepest nesting of brackets outside strings. */
function depthOf(text: string, most: number): number {
  let [depth, deepest, isInString] = [0, 0, false]
  for (let i = 0; i < text.length && deepest <= most; i++) {
    const c = text.charCodeAt(i)
    if (isInString) {
      if (c === 0x5c) i++
      else if (c === 0x22) isInString = false
    } else if (c === 0x22) isInString = true
    else if (c === 0x7b || c === 0x5b) deepest = Math.max(deepest, ++depth)
    else if (c === 0x7d || c === 0x5d) depth--
  }
  return deepest
}

/**
 * Reads a FeatureCollection, a Feature or a bare geometry. Never throws.
 *
 * Layer: the property `layer`, `kind`, `type` or `class`; name: `name`, `nombre` or `label`. Unit said: degrees where the file says no other
 * coordinate system and all coordinates can be degrees (RFC 7946, section 4); metres where the member `coordinateSystem` of our own files says so.
 * Refused by field: size and depth before parsing, then what is no place, list or geometry.
 */
export function readGeoJson(text: string, limits: PlanLimits = planLimits): Reading<{ plan: ForeignPlan }> {
  if (text.length > limits.chars) return refused(`the file has ${text.length} characters; more than ${limits.chars} are not read`, `el archivo tiene ${text.length} caracteres; no se leen más de ${limits.chars}`)
  if (depthOf(text, limits.depth) > limits.depth) return refused(`groups in groups go deeper than ${limits.depth}`, `hay grupos dentro de grupos a más de ${limits.depth} niveles`)
  let json: unknown
  try {
    json = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  } catch {
    return refused('is not JSON text: it ends too early or is something else', 'no es texto JSON: está cortado o es otra cosa')
  }
  if (!isGroup(json)) return refused('is no GeoJSON: it must be a group of fields { … }', 'no es GeoJSON: debe ser un grupo de campos { … }')
  const into = new Collector(limits)
  const isCollection = own(json, 'type') === 'FeatureCollection'
  const features = isCollection ? own(json, 'features') : [json]
  if (!Array.isArray(features)) return notList('features')
  if (features.length > limits.shapes) return refused(`features has ${features.length} entries; more than ${limits.shapes} are not read`, `features tiene ${features.length} elementos; no se leen más de ${limits.shapes}`)
  for (const [i, feature] of (features as readonly unknown[]).entries()) {
    const path = isCollection ? `features[${i}]` : ''
    if (!isGroup(feature)) return refused(`${path} must be a group of fields { … }`, `${path} debe ser un grupo de campos { … }`)
    const properties = own(feature, 'properties')
    const group = isGroup(properties) ? properties : null
    const owner = { layer: textOf(group, ['layer', 'kind', 'type', 'class']) ?? '', name: textOf(group, ['name', 'nombre', 'label']) ?? '' }
    const isFeature = own(feature, 'type') === 'Feature'
    const dot = path === '' ? '' : `${path}.`
    const bad = isFeature ? takeGeometry(own(feature, 'geometry'), `${dot}geometry`, owner, into) : isCollection ? refused(`${path}.type must be "Feature"`, `${path}.type debe ser "Feature"`) : takeGeometry(feature, 'geometry', owner, into)
    if (bad !== null) return bad
  }
  const said = own(json, 'coordinateSystem')
  if (typeof said === 'string' && /metres/.test(said)) return into.plan('m')
  const canBeDegrees = own(json, 'crs') === undefined && into.shapes.every(({ points }) => points.every(([x, y]) => Math.abs(x) <= 180 && Math.abs(y) <= 90))
  return into.plan(canBeDegrees ? 'degrees' : null)
}
