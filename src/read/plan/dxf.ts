/** Boundaries and features from DXF, the text form. */
import DxfParser from 'dxf-parser'
import { refused, type Reading } from '../refusal.ts'
import { Collector } from './collect.ts'
import { cleanDxf } from './dxfPairs.ts'
import { planLimits, type ForeignPlan, type ForeignShape, type PlanLimits, type PlanUnit } from './types.ts'

/** $INSUNITS of the header (DXF reference, header variables). */
const unitOfCode: Readonly<Record<number, PlanUnit>> = { 1: 'in', 2: 'ft', 4: 'mm', 5: 'cm', 6: 'm', 21: 'usft' }

/** Arcs are followed in steps of this turn: on a circle of 10 m the chord leaves it by 4 mm. */
const STEP_RAD = Math.PI / 60

type Points = [number, number][]
type Group = Readonly<Record<string, unknown>>
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null
const number = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN)
const pointOf = (value: unknown): [number, number] => (isGroup(value) ? [number(value['x']), number(value['y'])] : [Number.NaN, Number.NaN])

const arcPoints = ([x, y]: [number, number], radius: number, fromRad: number, turnRad: number): Points => {
  const steps = Math.max(2, Math.min(400, Math.ceil(Math.abs(turnRad) / STEP_RAD)))
  return Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const at = fromRad + (turnRad * i) / steps
    return [x + radius * Math.cos(at), y + radius * Math.sin(at)]
  })
}

/** The arc from a to b of a bulge: the tangent of a quarter of its turn, counter-clockwise positive; a itself left out. */
const bulgePoints = (a: [number, number], b: [number, number], bulge: number): Points => {
  const turn = 4 * Math.atan(bulge)
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  // Centre: from the middle of the chord, to its left by half the chord over tan(turn / 2).
  const k = (1 - bulge * bulge) / (4 * bulge)
  const centre: [number, number] = [(a[0] + b[0]) / 2 - dy * k, (a[1] + b[1]) / 2 + dx * k]
  const points = arcPoints(centre, Math.hypot(a[0] - centre[0], a[1] - centre[1]), Math.atan2(a[1] - centre[1], a[0] - centre[0]), turn).slice(1)
  points[points.length - 1] = b
  return points
}

const polylinePoints = (vertices: unknown, isClosed: boolean): Points => {
  const list = Array.isArray(vertices) ? (vertices as readonly unknown[]) : []
  const corners = list.map(pointOf)
  const points: Points = corners.slice(0, 1)
  const legs = isClosed ? corners.length : corners.length - 1
  for (let i = 0; i < legs; i++) {
    const vertex = list[i]
    const [a, b] = [corners[i]!, corners[(i + 1) % corners.length]!]
    const bulge = isGroup(vertex) && typeof vertex['bulge'] === 'number' ? vertex['bulge'] : 0
    points.push(...(bulge === 0 ? [b] : bulgePoints(a, b, bulge)))
  }
  return points
}

/** The shape of an entity, or null for one that is not read. */
function shapeOf(entity: Group): Pick<ForeignShape, 'as' | 'points'> | null {
  switch (entity['type']) {
    case 'LINE': return { as: 'line', points: polylinePoints(entity['vertices'], false) }
    case 'LWPOLYLINE':
    case 'POLYLINE': {
      if (entity['isPolyfaceMesh'] === true || entity['is3dPolygonMesh'] === true) return null
      const isClosed = entity['shape'] === true
      return { as: isClosed ? 'area' : 'line', points: polylinePoints(entity['vertices'], isClosed) }
    }
    case 'CIRCLE': return { as: 'area', points: arcPoints(pointOf(entity['center']), number(entity['radius']), 0, 2 * Math.PI).slice(0, -1) }
    case 'ARC': {
      const [from, to] = [number(entity['startAngle']), number(entity['endAngle'])]
      return { as: 'line', points: arcPoints(pointOf(entity['center']), number(entity['radius']), from, to > from ? to - from : to - from + 2 * Math.PI) }
    }
    case 'POINT': return { as: 'point', points: [pointOf(entity['position'])] }
    default: return null
  }
}

/** Looked from below, x runs the other way; such entities are passed over rather than put in the wrong place. */
const isMirrored = (entity: Group): boolean => {
  const direction = entity['extrusionDirection']
  return entity['extrusionDirectionZ'] === -1 || (isGroup(direction) && number(direction['z']) < 0)
}

/**
 * Reads lines, polylines with their bulges, circles, arcs and points of a DXF text. Blocks, splines, texts, paper space are passed
 * over and counted by name. Never throws. Unit said: `$INSUNITS`; 0 or none says nothing.
 */
export function readDxf(text: string, limits: PlanLimits = planLimits): Reading<{ plan: ForeignPlan }> {
  if (text.length > limits.chars) return refused(`the file has ${text.length} characters; more than ${limits.chars} are not read`, `el archivo tiene ${text.length} caracteres; no se leen más de ${limits.chars}`)
  if (text.includes('\u0000') || text.startsWith('AutoCAD Binary DXF')) return refused('is DXF in its binary form; save it as text (ASCII)', 'es DXF en forma binaria; guárdelo como texto (ASCII)')
  if (!/^\s*0\s*\r?\n\s*SECTION\b/m.test(text)) return refused('is no DXF text: it has no section', 'no es texto DXF: no tiene ninguna sección')
  const clean = cleanDxf(text)
  if (!clean.ok) return clean
  let drawing: unknown
  try {
    drawing = new DxfParser().parseSync(clean.dxf)
  } catch {
    return refused('the DXF is damaged or cut off', 'el DXF está dañado o cortado')
  }
  const entities = isGroup(drawing) ? drawing['entities'] : null
  if (!isGroup(drawing) || !Array.isArray(entities)) return refused('the DXF has no section ENTITIES', 'el DXF no tiene la sección ENTITIES')
  const into = new Collector(limits)
  for (const type of clean.passed) into.pass(type)
  for (const [i, entity] of (entities as readonly unknown[]).entries()) {
    if (!isGroup(entity)) continue
    const type = String(entity['type'])
    const shape = entity['inPaperSpace'] === true || isMirrored(entity) ? null : shapeOf(entity)
    if (shape === null) {
      into.pass(type)
      continue
    }
    const bad = into.take({ layer: typeof entity['layer'] === 'string' ? entity['layer'] : '', name: '', ...shape }, `ENTITIES ${i + 1} (${type})`)
    if (bad !== null) return bad
  }
  return into.plan(clean.unitCode === null ? null : (unitOfCode[clean.unitCode] ?? null))
}
