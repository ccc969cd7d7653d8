/**
 * The side view as a drawing list: ground, supports, bent pipe, machine, rope. One list for the screen and for the sheet.
 *
 * Frame of the list: x = running distance, y = level, m. Heights may be drawn larger than lengths (`pxPerLevelM`); parts that
 * stand for themselves keep their shape.
 */
import type { Pen, Primitive, SymbolContext } from '../drawing/primitives.ts'
import { shifted } from '../drawing/shifted.ts'
import { formatQuantity, type FormatOptions } from '../units/format.ts'
import { kindOf } from '../scene/kinds/index.ts'
import type { MachineRecord } from '../scene/kinds/machine.ts'
import type { RackRecord } from '../scene/kinds/rack.ts'
import { machineClamps } from '../scene/symbols/machine.ts'
import { trestle } from '../scene/symbols/rack.ts'
import { jawLineLevelM } from './supports.ts'
import type { PlacedItem, SectionProfile, SiteModel, SupportView } from './types.ts'

export interface SectionLook {
  pxPerM: number
  pxPerLevelM: number
  /** Stretch on screen. */
  fromM: number
  toM: number
  reader: Pick<FormatOptions, 'system' | 'language'>
  chosenIds: readonly string[]
  /** Kinds not shown. */
  hiddenKinds?: readonly string[]
  /** The pipe over the planned heights, while heights as set are shown. */
  planned?: SectionProfile | null
  /** Run-through: the puller gone ahead of the nose, in place of the one in the plan. */
  ahead?: PlacedItem | null
  /** Running distances where marks of findings stand over the pipe: words keep clear of them. */
  markedM?: readonly number[]
}

/** Words nearer to a mark than this would run into it, px. */
const MARK_ROOM_PX = 34
const isUnderMark = (runningM: number, { markedM, pxPerM }: SectionLook): boolean => markedM?.some((m) => Math.abs(m - runningM) * pxPerM < MARK_ROOM_PX) === true

/** Pipe that nobody has sized is drawn with a typical 12 in. */
const TYPICAL_OD_M = 0.3
const odOf = (site: SiteModel): number => site.pipe.odM ?? TYPICAL_OD_M

/** Lowest and highest level there is to draw in a stretch, m; the jaws are always in it. */
export const sectionRange = (site: SiteModel, profile: SectionProfile, fromM: number, toM: number): { lowestM: number; highestM: number } => {
  const levels: number[] = []
  const inView = (runningM: number): boolean => runningM >= fromM && runningM <= toM
  for (const x of groundStations(site, fromM, toM)) levels.push(site.groundLevelAt(x))
  for (const { runningM, levelM } of profile.bodies) for (let i = 0; i < runningM.length; i++) if (inView(runningM[i] as number)) levels.push(levelM[i] as number, (levelM[i] as number) + odOf(site))
  for (const support of site.supports) if (inView(support.runningM) && support.levelM !== null) levels.push(support.levelM)
  if (site.jaws.bopLevelM !== null && inView(0)) levels.push(site.jaws.bopLevelM + odOf(site))
  const [lowestM, highestM] = [Math.min(...levels), Math.max(...levels)]
  return { lowestM, highestM: Math.max(highestM, lowestM + 0.6) }
}

const groundStations = (site: SiteModel, fromM: number, toM: number): number[] => [fromM, ...site.ground.runningM.filter((x) => x > fromM && x < toM), toM]

/** Everything of the side view but figures rail, headings and findings. Back to front. */
export const sectionDrawing = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] => [
  ...groundLine(site, look),
  ...jawLine(site, profile, look),
  ...supports(site, look),
  ...machine(site, profile, look, 'under'),
  ...pipe(site, profile, look),
  ...machine(site, profile, look, 'over'),
  ...plannedLine(site, look),
  ...puller(site, profile, look),
  ...gaps(site, profile, look),
  ...sags(site, profile, look),
]

/** Ground with earth below it; broken where it is guessed. */
const groundLine = (site: SiteModel, look: SectionLook): Primitive[] => {
  const { fromM, toM, pxPerM, pxPerLevelM } = look
  const isGuessed = (x: number): boolean => site.ground.from === 'unknown' || site.ground.guessed.some((g) => x >= g.fromM && x <= g.toM)
  const edges = site.ground.guessed.flatMap((g) => [g.fromM, g.toM]).filter((x) => x > fromM && x < toM)
  const stations = [...groundStations(site, fromM, toM), ...edges].sort((a, b) => a - b)
  const lines: Primitive[] = []
  let open: number[] = []
  const close = (guessed: boolean): void => {
    if (open.length >= 4) lines.push({ t: 'path', points: open, stroke: 'ink', weight: 'gear', ...(guessed ? { dash: 'guess' as const } : {}) })
  }
  stations.forEach((x, i) => {
    const before = stations[i - 1]
    const wasGuessed = before === undefined ? null : isGuessed((before + x) / 2)
    const isBreak = i >= 2 && wasGuessed !== isGuessed(((stations[i - 2] as number) + (before as number)) / 2)
    if (isBreak) {
      close(!wasGuessed)
      open = [before as number, site.groundLevelAt(before as number)]
    }
    open.push(x, site.groundLevelAt(x))
    if (i === stations.length - 1) close(wasGuessed === true)
  })
  const stepM = 9 / pxPerM
  const earth: Primitive[] = []
  for (let i = Math.ceil(fromM / stepM); i * stepM <= toM; i++) {
    const x = i * stepM
    const y = site.groundLevelAt(x) - 2 / pxPerLevelM
    earth.push({ t: 'path', points: [x, y, x - 7 / pxPerM, y - 9 / pxPerLevelM], stroke: 'earth', weight: 'hair' })
  }
  return [...earth, ...lines]
}

/** The line of the pipe's bottom through the closed jaws, as far as anything stands near it. */
const jawLine = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] => {
  const at = (x: number): number | null => jawLineLevelM(site.jaws, x)
  const onLine = site.supports.filter(({ saddleM, jawLineSaddleM }) => saddleM !== null && jawLineSaddleM !== null && Math.abs(saddleM - jawLineSaddleM) < 0.03)
  const stick = site.job.stickLengthM ?? 12
  const fromM = Math.max(look.fromM, Math.min(-stick - 2, ...onLine.map(({ runningM }) => runningM - 3)))
  const toM = Math.min(look.toM, Math.max(stick * 0.9, ...onLine.map(({ runningM }) => runningM + 5)))
  const [from, to] = [at(fromM), at(toM)]
  if (from === null || to === null || toM <= fromM) return []
  const words = look.reader.language === 'es' ? 'línea de mordazas' : 'jaw line'
  // The name stands beyond the end of the line, where the pipe has sunk clear of it; else it is left out.
  const clearM = 20 / look.pxPerLevelM
  const isClear = (x: number): boolean => profile.bodies.every(({ startM, endM, result }) => x < startM || x > endM || (at(x) as number) - result.at(x).levelM - odOf(site) > clearM)
  const nameAtM = Array.from({ length: 9 }, (_, i) => toM + i * 1.5).find((x) => x < look.toM && isClear(x) && !isUnderMark(x + 30 / look.pxPerM, look))
  const endM = nameAtM ?? toM
  const end = at(endM) as number
  return [
    { t: 'path', points: [fromM, from, endM, end], stroke: 'ink2', weight: 'axis', dash: 'axis' },
    ...(nameAtM === undefined || look.pxPerM * 0.3048 < 4 ? [] : [{ t: 'text', xM: endM, yM: end, text: words, sizePx: 12, ink: 'ink2', dxPx: 5, dyPx: -4 } as const]),
  ]
}

const contextOf = (site: SiteModel, look: SectionLook, saddleM: number | null): SymbolContext & { saddleM: number | null } => ({
  pipeOuterDiameterM: site.pipe.odM, stickLengthM: site.job.stickLengthM, pxPerM: look.pxPerM, pxPerLevelM: look.pxPerLevelM, reader: look.reader, saddleM,
})

const isInView = (runningM: number, look: SectionLook, reachM = 4): boolean => runningM > look.fromM - reachM && runningM < look.toM + reachM
const isHidden = (kind: string, look: SectionLook): boolean => look.hiddenKinds?.includes(kind) === true

const supports = (site: SiteModel, look: SectionLook): Primitive[] =>
  site.supports.flatMap((support) => (isInView(support.runningM, look) && !isHidden(support.kind, look) ? supportSymbol(site, support, look) : []))

const supportSymbol = (site: SiteModel, support: SupportView, look: SectionLook): Primitive[] => {
  const record = site.placed.get(support.itemId)?.record
  if (record === undefined) return []
  const saddleM = support.saddleM ?? support.lowestSaddleM ?? 0.5
  const isOff = support.saddleM !== null && support.saddleM < 0
  const stretch = look.pxPerLevelM / look.pxPerM
  const list =
    support.kind === 'rack'
      ? trestle(0, Math.max(0.05, saddleM), stretch, (record as RackRecord).stopsLeft === true || (record as RackRecord).stopsRight === true)
      : (kindOf(record.kind)?.sectionSymbol?.(record, contextOf(site, look, Math.max(0.02, saddleM))) ?? [])
  const question: Primitive[] = support.saddleM === null || isOff ? [{ t: 'text', xM: 0, yM: Math.max(0, saddleM), text: '?', sizePx: 15, ink: 'amber', bold: true, align: 'center', dyPx: 6 }] : []
  return shifted([...list, ...question], support.runningM, support.groundLevelM)
}

const machine = (site: SiteModel, profile: SectionProfile, look: SectionLook, part: 'under' | 'over'): Primitive[] => {
  const id = site.jaws.machineId
  const record = id === null ? undefined : (site.placed.get(id)?.record as MachineRecord | undefined)
  if (record === undefined || !isInView(0, look, 6) || isHidden('machine', look)) return []
  const ground = site.groundLevelAt(0)
  const context = contextOf(site, look, site.jaws.bopLevelM === null ? null : site.jaws.bopLevelM - ground)
  const { phase } = profile.stage
  const list = part === 'under' ? (kindOf('machine')?.sectionSymbol?.(record, context) ?? []) : machineClamps(record, { ...context, jawsOpen: phase === 'pull' || phase === 'move' || phase === 'tieIn' || phase === 'offload' })
  return shifted(list, 0, ground)
}

/** Where the pipe would lie on the planned heights, thin and broken, and each planned saddle that was set otherwise. */
const plannedLine = (site: SiteModel, look: SectionLook): Primitive[] => {
  if (look.planned === undefined || look.planned === null) return []
  const curves = look.planned.bodies.flatMap((body): Primitive[] => {
    const points = curveInView(body.runningM, body.levelM, look)
    return points.length < 4 ? [] : [{ t: 'path', points, stroke: 'chosen', weight: 'context', dash: 'proposal' }]
  })
  const halfM = 13 / look.pxPerM
  const saddles = site.supports.flatMap(({ runningM, levelM, plannedSaddleM, groundLevelM }): Primitive[] => {
    if (plannedSaddleM === null || levelM === null || !isInView(runningM, look, 0) || Math.abs(groundLevelM + plannedSaddleM - levelM) < 1e-4) return []
    const level = groundLevelM + plannedSaddleM
    return [{ t: 'path', points: [runningM - halfM, level, runningM + halfM, level], stroke: 'chosen', weight: 'ticks' }]
  })
  return [...curves, ...saddles]
}

/** Under this many px the pipe is drawn as in plan, black with its stripe; over it in outline, or it would be a black slab. */
const OUTLINE_FROM_PX = 7

const pipe = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] =>
  profile.bodies.flatMap((body): Primitive[] => {
    const points = curveInView(body.runningM, body.levelM, look)
    if (points.length < 4) return []
    const od = odOf(site)
    const at = (share: number): number[] => points.map((value, i) => (i % 2 === 0 ? value : value + od * share))
    const ring = (low: number, high: number, pen: Pen): Primitive => ({ t: 'path', points: [...at(low), ...reversedPairs(at(high))], closed: true, ...pen })
    const joints = jointsOf(site, body).filter((x) => isInView(x, look, 0))
    const beads = joints.map((x): Primitive => {
      const level = body.result.at(x).levelM
      return { t: 'path', points: [x, level - 1.5 / look.pxPerLevelM, x, level + od + 1.5 / look.pxPerLevelM], stroke: 'pipeEdge', weight: 'building' }
    })
    if (od * look.pxPerLevelM < OUTLINE_FROM_PX) return [{ t: 'pipe', points: at(0.5), outerDiameterM: od * (look.pxPerLevelM / look.pxPerM) }, ...beads]
    return [
      ring(0, 1, { fill: 'pipeSide', stroke: 'pipeEdge', weight: 'rope' }),
      ring(0.4, 0.6, { fill: 'stripe' }),
      ...beads,
    ]
  })

const reversedPairs = (points: readonly number[]): number[] => Array.from({ length: points.length / 2 }, (_, i) => [points[points.length - 2 - 2 * i] as number, points[points.length - 1 - 2 * i] as number]).flat()

/** Points of a curve in the stretch on screen, none nearer than 1.5 px to the one before. */
const curveInView = (runningM: Float64Array, levelM: Float64Array, { fromM, toM, pxPerM }: SectionLook): number[] => {
  const points: number[] = []
  const last = runningM.length - 1
  let lastX = -Infinity
  for (let i = 0; i <= last; i++) {
    const x = runningM[i] as number
    if ((runningM[Math.min(i + 1, last)] as number) < fromM || (runningM[Math.max(i - 1, 0)] as number) > toM) continue
    if (i !== last && (x - lastX) * pxPerM < 1.5) continue
    points.push(x, levelM[i] as number)
    lastX = x
  }
  return points
}

/** Fused joints inside a body, counted from its nose. */
const jointsOf = (site: SiteModel, body: SectionProfile['bodies'][number]): number[] => {
  if (body.name !== 'string' || site.sticks.stickLengthM === null) return []
  const joints: number[] = []
  for (let n = 1; n < 2000; n++) {
    const x = body.endM - site.sticks.stringLengthM(n)
    if (x <= body.startM + 0.05) break
    joints.push(x)
  }
  return joints
}

/** The vehicle that pulls, and the rope from the nose to it. */
const puller = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] => {
  if (isHidden('puller', look)) return []
  const od = odOf(site)
  return [...site.placed.values()].flatMap((item): Primitive[] => {
    if (item.record.kind !== 'puller' || item.runningM === null || Math.abs(item.offsetM ?? 0) > 15) return []
    const at = (look.ahead?.id === item.id ? look.ahead.runningM : null) ?? item.runningM
    const ground = site.groundLevelAt(at)
    const hitch = ground + 0.45 * (look.pxPerM / look.pxPerLevelM)
    const string = profile.bodies.find(({ name }) => name === 'string')
    // Only while it pulls does a rope run to the nose.
    const hasRope = (profile.stage.phase === 'pull' || profile.stage.phase === 'move') && string !== undefined && profile.tipM !== null && at > profile.tipM
    const rope: Primitive[] = hasRope ? [{ t: 'path', points: [profile.tipM as number, (string.result.ends.levelM[1] as number) + od / 2, at, hitch], stroke: 'ink', weight: 'rope', dash: 'rope' }] : []
    const symbol = isInView(at, look) ? (kindOf('puller')?.sectionSymbol?.(item.record, contextOf(site, look, null)) ?? []) : []
    return [...rope, ...shifted(symbol, at, ground)]
  })
}

/** Clear air between a saddle that carries nothing and the pipe: two ticks and how much, where it can be seen. */
const gaps = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] =>
  site.supports.flatMap((support): Primitive[] => {
    const load = profile.loads.get(support.key)
    if (load?.floats !== true || support.levelM === null || !isInView(support.runningM, look, 0)) return []
    const isChosen = look.chosenIds.includes(support.itemId)
    const heightPx = load.gapM * look.pxPerLevelM
    if (heightPx < 2.5 && !isChosen) return []
    const tickM = 5 / look.pxPerM
    const [low, high] = [support.levelM, support.levelM + load.gapM]
    const tick = (y: number): Primitive => ({ t: 'path', points: [support.runningM - tickM, y, support.runningM + tickM, y], stroke: 'ink', weight: 'context' })
    const text: Primitive[] = heightPx >= 9 || isChosen
      ? [{ t: 'text', xM: support.runningM, yM: (low + high) / 2, text: formatQuantity({ kind: 'shortLength', value: load.gapM }, look.reader), sizePx: 12, dxPx: isChosen ? 16 : 9, dyPx: -4 }]
      : []
    return [tick(low), tick(high), { t: 'path', points: [support.runningM, low, support.runningM, high], stroke: 'ink', weight: 'context', dash: 'missing' }, ...text]
  })

/** Sixteenth of an inch: smaller sags are not written at working scale. */
const SAG_SHOWN_M = 0.0015875
const SAG_ROOM_PX = 58

/** Sag of each span by scale: none, the worst, those of 1/16 in and more, all. Written over the pipe. */
const sags = (site: SiteModel, profile: SectionProfile, look: SectionLook): Primitive[] => {
  const pxPerFt = look.pxPerM * 0.3048
  if (pxPerFt < 2) return []
  const worst = profile.sags.reduce<SectionProfile['sags'][number] | null>((best, sag) => (best === null || sag.sagM > best.sagM ? sag : best), null)
  const shown = pxPerFt < 4 ? (worst === null ? [] : [worst]) : profile.sags.filter(({ sagM }) => pxPerFt > 8 || sagM >= SAG_SHOWN_M)
  let lastM = -Infinity
  const word = look.reader.language === 'es' ? 'flecha' : 'sag'
  return shown.filter(({ atM }) => isInView(atM, look, 0)).flatMap((sag): Primitive[] => {
    if ((sag.atM - lastM) * look.pxPerM < SAG_ROOM_PX) return []
    // Among the clamps there is no room, and nothing hangs free.
    if (Math.abs(sag.atM) < site.jaws.outerClampM + 0.4) return []
    const text = formatQuantity({ kind: 'height', value: sag.sagM }, { ...look.reader, style: 'tape' }).replace('"', '')
    if (text === '0' || isUnderMark(sag.atM, look)) return []
    lastM = sag.atM
    return [{ t: 'text', xM: sag.atM, yM: sag.levelM + odOf(site), text: `${word} ${text}`, sizePx: 12, ink: 'ink2', align: 'center', dyPx: 6 }]
  })
}
