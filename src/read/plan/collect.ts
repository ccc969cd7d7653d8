import { quoted, refused, type Reading } from '../refusal.ts'
import type { ForeignPlan, ForeignShape, PlanLimits } from './types.ts'

const MOST_NAME = 60

/** Gathers shapes of a plan under the limits, and what was passed over. */
export class Collector {
  readonly shapes: ForeignShape[] = []
  readonly limits: PlanLimits
  private readonly passed = new Map<string, number>()
  private corners = 0
  constructor(limits: PlanLimits) {
    this.limits = limits
  }

  /** Counts something of the file that is not read. */
  pass(what: string): void {
    const name = this.passed.size < 30 || this.passed.has(what) ? what.slice(0, MOST_NAME) : '…'
    this.passed.set(name, (this.passed.get(name) ?? 0) + 1)
  }

  /** Takes a shape, its doubled corners gone; null, or why the whole file is refused. */
  take(shape: ForeignShape, path: string): { ok: false; reason: { en: string; es: string } } | null {
    const { limits } = this
    const bad = shape.points.findIndex(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y) || Math.abs(x) > 1e12 || Math.abs(y) > 1e12)
    if (bad >= 0) return refused(`${path}: corner ${bad + 1} is no place`, `${path}: la esquina ${bad + 1} no es un lugar`)
    const points = shape.points.filter(([x, y], i) => i === 0 || x !== shape.points[i - 1]![0] || y !== shape.points[i - 1]![1])
    const [first, last] = [points[0], points.at(-1)]
    const isClosed = points.length > 3 && first![0] === last![0] && first![1] === last![1]
    const as = shape.as === 'line' && isClosed ? 'area' : shape.as
    const own = as === 'area' && first !== undefined && last !== undefined && points.length > 1 && first[0] === last[0] && first[1] === last[1] ? points.slice(0, -1) : points
    if (own.length < { area: 3, line: 2, point: 1 }[as]) {
      this.pass(`${shape.as} without extent`)
      return null
    }
    if (own.length > limits.cornersOfOne) return refused(`${path} has ${own.length} corners; more than ${limits.cornersOfOne} are not read`, `${path} tiene ${own.length} esquinas; no se leen más de ${limits.cornersOfOne}`)
    this.corners += own.length
    if (this.corners > limits.corners) return refused(`${path} brings the file above ${limits.corners} corners`, `${path} lleva el archivo a más de ${limits.corners} esquinas`)
    if (this.shapes.length >= limits.shapes) return refused(`${path} brings the file above ${limits.shapes} shapes`, `${path} lleva el archivo a más de ${limits.shapes} figuras`)
    this.shapes.push({ layer: plain(shape.layer), name: plain(shape.name), as, points: own })
    return null
  }

  plan(saidUnit: ForeignPlan['saidUnit']): Reading<{ plan: ForeignPlan }> {
    if (this.shapes.length === 0) return refused('the file holds no boundary, line or point that can be read', 'el archivo no tiene límite, línea ni punto que se pueda leer')
    return { ok: true, plan: { shapes: this.shapes, saidUnit, skipped: [...this.passed].map(([what, count]) => ({ what, count })) } }
  }
}

const plain = (text: string): string => quoted(text, MOST_NAME).slice(1, -1)
