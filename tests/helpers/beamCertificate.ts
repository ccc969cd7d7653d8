import type { ContactBeamInput, ContactBeamResult } from '../../src/engine/beam/types.ts'

/**
 * Proof of a solution, from its result alone: the problem is convex, so a shape that balances, bends as its moments say,
 * stays above everything and is pushed only where it touches is *the* solution. Shares no code with the solver.
 */
export interface Certificate {
  /** |Σ forces − weight| / weight, and the same of moments about the middle over weight × length. */
  forceRatio: number
  momentRatio: number
  /** Most negative one-way force / (weight / contacts). */
  pullRatio: number
  /** Deepest place below a support or the ground, over contacts, corners and a fine grid. */
  penetrationM: number
  /** Largest misfit of levels where parts join or supports carry, and of slopes times 1 m. */
  levelM: number
  slopeM: number
  /** Largest misfit of moments at joins and ends, over the largest moment or weight × length × 1e-3. */
  momentMisfitRatio: number
  /** Largest misfit between the jump of shear and the force reported, over the weight. */
  shearRatio: number
  /** Largest force × gap over weight × 1 m. */
  complementarityM: number
  /** Moment or sag found on a grid above the reported extreme. */
  extremeM: number
  extremeMomentRatio: number
}

interface State {
  w: number
  s: number
  m: number
  v: number
}

function groundLevel(input: ContactBeamInput, x: number): number {
  if (!input.ground) return -Infinity
  const { xM, levelM } = input.ground
  if (x <= xM[0]!) return levelM[0]!
  for (let i = 1; i < xM.length; i++) {
    if (x <= xM[i]!) return levelM[i - 1]! + ((levelM[i]! - levelM[i - 1]!) * (x - xM[i - 1]!)) / (xM[i]! - xM[i - 1]!)
  }
  return levelM[levelM.length - 1]!
}

export function certify(input: ContactBeamInput, result: ContactBeamResult): Certificate {
  const { bendingStiffnessNm2: EI, lineLoadNPerM: q } = input.section
  const start = input.startM ?? 0
  const end = start + input.lengthM
  const weight = q * input.lengthM
  const k0 = input.bow ? input.bow.curvaturePerM * Math.cos(input.bow.angleRad) : 0
  const out: Certificate = {
    forceRatio: 0, momentRatio: 0, pullRatio: 0, penetrationM: 0, levelM: 0, slopeM: 0, momentMisfitRatio: 0,
    shearRatio: 0, complementarityM: 0, extremeM: 0, extremeMomentRatio: 0,
  }
  const worse = (key: keyof Certificate, value: number): void => {
    if (!(value <= out[key])) out[key] = value
  }

  // Places where parts join, with the force there.
  const forceAt = new Map<number, number>()
  // Supports that count as one are taken at the highest of them.
  const placeOf = (x: number): number => {
    const tolerance = input.mergeToleranceM ?? 1e-6
    const together = input.supports.filter((s) => Math.abs(s.xM - x) <= tolerance && s.levelM > groundLevel(input, s.xM))
    if (together.length < 2) return x
    return together.reduce((a, b) => (b.levelM > a.levelM ? b : a)).xM
  }
  const addForce = (x: number, f: number): void => void forceAt.set(x, (forceAt.get(x) ?? 0) + f)
  let contacts = 0
  input.supports.forEach((support, i) => {
    const found = result.supports[i]!
    const x = Math.min(Math.max(support.xM, start), end)
    if (found.reactionN !== 0) {
      contacts++
      addForce(placeOf(x), found.reactionN)
      if (!support.twoWay) worse('pullRatio', (-found.reactionN / weight) * input.supports.length)
    }
    worse('complementarityM', Math.abs((found.reactionN * found.gapM) / weight))
    const level = result.at(placeOf(x)).levelM
    worse('penetrationM', support.twoWay ? Math.abs(support.levelM - level) : support.levelM - level)
  })
  for (const clamp of result.clamps) addForce(clamp.xM, clamp.forceN)
  for (const contact of result.groundContacts) {
    contacts++
    worse('pullRatio', -contact.forceN / weight)
    if (contact.kind === 'point') addForce(contact.startM, contact.forceN)
  }
  const lies = (a: number, b: number): boolean => result.groundContacts.some((g) => g.kind === 'interval' && g.startM <= a && g.endM >= b)
  const breaks = [start, end, ...forceAt.keys(), ...result.groundContacts.flatMap((g) => [g.startM, g.endM])].sort((a, b) => a - b)
  const joins = breaks.filter((x, i) => i === 0 || x > breaks[i - 1]!)

  // Ends of each part, carried by the beam equation from its middle.
  const carry = (at: State, t: number, load: number): State => ({
    w: at.w + t * at.s + ((t * t) / 2) * (at.m / EI + k0) + ((t ** 3 / 6) * at.v) / EI - (load * t ** 4) / (24 * EI),
    s: at.s + t * (at.m / EI + k0) + ((t * t) / 2) * (at.v / EI) - (load * t ** 3) / (6 * EI),
    m: at.m + t * at.v - (load * t * t) / 2,
    v: at.v - load * t,
  })
  const read = (x: number): State => {
    const p = result.at(x)
    return { w: p.levelM, s: p.slopeRatio, m: p.momentNm, v: p.shearN }
  }
  const momentScale = Math.max(Math.abs(result.maxMoment.momentNm), weight * input.lengthM * 1e-3)
  const parts = joins.slice(1).map((b, i) => {
    const a = joins[i]!
    const load = lies(a, b) ? 0 : q
    const middle = read((a + b) / 2)
    const half = (b - a) / 2
    for (const share of [-0.9, -0.5, 0.5, 0.9]) {
      const here = carry(middle, share * half, load)
      const said = read((a + b) / 2 + share * half)
      worse('levelM', Math.abs(here.w - said.w))
      worse('momentMisfitRatio', Math.abs(here.m - said.m) / momentScale)
    }
    return { a, b, load, left: carry(middle, -half, load), right: carry(middle, half, load) }
  })

  // Joins.
  let force = 0
  let moment = 0
  const centre = (start + end) / 2
  for (let i = 0; i <= parts.length; i++) {
    const x = joins[i]!
    const before = i > 0 ? parts[i - 1]!.right : null
    const after = i < parts.length ? parts[i]!.left : null
    const clamp = result.clamps.find((c) => c.xM === x)
    const given = clamp ? input.clamps!.find((c) => Math.abs(c.xM - x) < 1e-9)! : null
    if (given) {
      for (const side of [before, after]) {
        if (!side) continue
        worse('levelM', Math.abs(side.w - given.levelM))
        worse('slopeM', Math.abs(side.s - given.slopeRatio))
      }
      if (before) worse('momentMisfitRatio', Math.abs(before.m - clamp!.momentLeftNm) / momentScale)
      if (after) worse('momentMisfitRatio', Math.abs(after.m - clamp!.momentRightNm) / momentScale)
    } else {
      if (before && after) {
        worse('levelM', Math.abs(before.w - after.w))
        worse('slopeM', Math.abs(before.s - after.s))
      }
      worse('momentMisfitRatio', Math.abs((before?.m ?? 0) - (after?.m ?? 0)) / momentScale)
    }
    const jump = (after?.v ?? 0) - (before?.v ?? 0)
    const atEdge = result.groundContacts.find((g) => g.kind === 'interval' && (g.startM === x || g.endM === x))
    if (atEdge && !clamp) worse('pullRatio', -jump / weight)
    else worse('shearRatio', Math.abs(jump - (forceAt.get(x) ?? 0)) / weight)
    force += jump
    moment += jump * (x - centre) + (given ? clamp!.momentLeftNm - clamp!.momentRightNm : 0)
  }
  for (const contact of result.groundContacts) {
    for (const x of [contact.startM, contact.endM]) worse('levelM', Math.abs(result.at(x).levelM - groundLevel(input, x)))
    if (contact.kind !== 'interval') continue
    const width = contact.endM - contact.startM
    const inside = parts.filter((p) => p.load === 0 && p.a >= contact.startM && p.b <= contact.endM)
    for (const p of inside) {
      worse('momentMisfitRatio', Math.abs(p.left.m + EI * k0) / momentScale)
      worse('shearRatio', Math.abs(p.left.v) / weight)
    }
    force += q * width
    moment += q * width * ((contact.startM + contact.endM) / 2 - centre)
  }
  const total = result.supports.reduce((sum, s) => sum + s.reactionN, 0) + result.clamps.reduce((sum, c) => sum + c.forceN, 0) + result.groundTotalN
  worse('forceRatio', Math.abs(total - weight) / weight)
  worse('forceRatio', Math.abs(force - weight) / weight)
  worse('momentRatio', Math.abs(moment) / (weight * input.lengthM))

  // Nothing below, nothing larger than said, on a grid and at all corners.
  const grid = [...(input.ground?.xM ?? []).filter((x) => x >= start && x <= end)]
  const steps = 400
  for (let i = 0; i <= steps; i++) grid.push(start + ((end - start) * i) / steps)
  for (const { a, b } of parts) for (const share of [0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 0.98]) grid.push(a + share * (b - a))
  for (const x of grid) {
    const p = result.at(x)
    worse('penetrationM', groundLevel(input, x) - p.levelM)
    worse('extremeMomentRatio', (Math.abs(p.momentNm) - Math.abs(result.maxMoment.momentNm)) / momentScale)
    const sag = result.sags.find((s) => x > s.fromM && x < s.toM)
    if (!sag) continue
    const from = result.at(sag.fromM).levelM
    const to = result.at(sag.toM).levelM
    worse('extremeM', from + ((to - from) * (x - sag.fromM)) / (sag.toM - sag.fromM) - p.levelM - sag.sagM)
  }
  void contacts
  return out
}
