/** What the pipe can lie on along the shown run, with its level by the height rule. */
import { projectOnPath, type Path } from '../geometry/arc.ts'
import { inchM } from '../units/factors.ts'
import { beamLabels } from '../scene/resolve.ts'
import type { RackRecord } from '../scene/kinds/rack.ts'
import type { RollerRecord } from '../scene/kinds/roller.ts'
import type { StandRecord } from '../scene/kinds/stand.ts'
import type { HeightRule } from '../scene/parts.ts'
import type { AsSetRecord } from '../scene/records/beside.ts'
import type { GroundModel } from './ground.ts'
import type { JawsView, PlacedItem, SupportView } from './types.ts'

/** An item whose middle lies farther than this from the line stands beside the pipe, not under it. */
export const UNDER_PIPE_M = 0.75
/** Typical lead-in depth of a support: the smaller of 3 in and OD/4 (limit `nose-lead-in`). */
const LARGEST_LEAD_IN_M = 3 * inchM
const LEAD_IN_OF_OD = 0.25
const TYPICAL_BEAM_SPACING_M = 7.112

export type SupportRecord = StandRecord | RollerRecord | RackRecord

export interface SupportScene {
  path: Path
  ground: GroundModel
  jaws: JawsView
  /** The jaws as planned: what nobody has measured stands where the plan puts it, whatever the jaws were found at. */
  plannedJaws: JawsView
  odM: number | null
  /** Measured heights by item. */
  asSet: ReadonlyMap<string, AsSetRecord>
  /** As measured where there is a figure, else as planned. */
  usesAsSet: boolean
}

export const isSupport = (item: PlacedItem): item is PlacedItem & { record: SupportRecord } =>
  item.kind === 'stand' || item.kind === 'roller' || item.kind === 'rack'

/** BOP level on the straight line through the closed jaws; null while the jaw height or the pipe is unknown. */
export const jawLineLevelM = (jaws: JawsView, runningM: number): number | null => (jaws.bopLevelM === null ? null : jaws.bopLevelM + jaws.slopeRatio * runningM)

export const typicalLeadInM = (odM: number | null): number | null => (odM === null ? null : Math.min(LARGEST_LEAD_IN_M, LEAD_IN_OF_OD * odM))

/** Supports under the shown run, sorted along it. A rack gives its two beams, near (…1) and far (…2) from the jaws. */
export function supportsOf(items: Iterable<PlacedItem>, scene: SupportScene): SupportView[] {
  const supports: SupportView[] = []
  for (const item of items) if (isSupport(item) && item.runningM !== null && item.offsetM !== null) supports.push(...viewsOf(item, scene))
  return supports.sort((a, b) => a.runningM - b.runningM || (a.key < b.key ? -1 : 1))
}

// Keeps nothing but what its key and the scene determine: it spares work while one of many supports is dragged.
const views = new WeakMap<PlacedItem, { scene: SupportScene; asSet: AsSetRecord | undefined; views: readonly SupportView[] }>()

function viewsOf(item: PlacedItem & { record: SupportRecord }, scene: SupportScene): readonly SupportView[] {
  const before = views.get(item)
  const asSet = scene.asSet.get(item.id)
  if (before !== undefined && before.asSet === asSet && isSameScene(before.scene, scene)) return before.views
  const at = { runningM: item.runningM!, offsetM: item.offsetM! }
  const isUnder = Math.abs(at.offsetM) <= UNDER_PIPE_M
  const made = item.record.kind === 'rack' ? beamsOf(item, item.record, scene) : isUnder ? [viewOf(item, item.record, at, scene, asSet?.saddleM ?? null)] : []
  views.set(item, { scene, asSet, views: made })
  return made
}

const isSameScene = (a: SupportScene, b: SupportScene): boolean => a.ground === b.ground && a.jaws === b.jaws && a.plannedJaws === b.plannedJaws && a.odM === b.odM && a.usesAsSet === b.usesAsSet && a.path === b.path

function beamsOf(item: PlacedItem, record: RackRecord, scene: SupportScene): SupportView[] {
  const halfM = (record.figures.beamSpacingM.value ?? TYPICAL_BEAM_SPACING_M) / 2
  const asSet = scene.asSet.get(record.id)
  const labels = beamLabels(item.label)
  const beams = [-halfM, halfM].map((alongM) => {
    const xM = item.xM + Math.cos(item.headingRad) * alongM
    const yM = item.yM + Math.sin(item.headingRad) * alongM
    // On the axis without turn the distance is exact; a projection would leave rounding in the tape figure.
    return item.turnRad === 0 && item.runningM! <= 0 && record.place.at === 'onRun' ? { runningM: item.runningM! + alongM, offsetM: item.offsetM! } : projectOnPath(scene.path, { xM, yM })
  })
  return beams
    .filter(({ offsetM }) => Math.abs(offsetM) <= UNDER_PIPE_M)
    .toSorted((a, b) => Math.abs(a.runningM) - Math.abs(b.runningM))
    .map((at, index) => ({ ...viewOf(item, record, at, scene, (index === 0 ? asSet?.saddleM : asSet?.farSaddleM) ?? null), key: `${item.id}#${index + 1}`, label: index === 0 ? labels.near : labels.far, leadInM: typicalLeadInM(scene.odM), leadInIsTypical: true }))
}

function viewOf(item: PlacedItem, record: SupportRecord, at: { runningM: number; offsetM: number }, scene: SupportScene, measuredSaddleM: number | null): SupportView {
  const groundLevelM = scene.ground.levelAt(at.runningM, at.offsetM)
  const jawLineM = jawLineLevelM(scene.jaws, at.runningM)
  const plannedM = levelOf(record, record.height, { groundLevelM, jawLineM: jawLineLevelM(scene.plannedJaws, at.runningM) })
  const levelM = scene.usesAsSet && measuredSaddleM !== null ? groundLevelM + measuredSaddleM : plannedM
  const leadIn = record.kind === 'rack' ? null : record.figures.leadInM.value
  return {
    key: item.id,
    itemId: item.id,
    label: item.label,
    kind: record.kind,
    roller: record.kind === 'stand' ? record.roller : 'flat',
    side: at.runningM < 0 ? 'infeed' : 'exit',
    runningM: at.runningM,
    offsetM: at.offsetM,
    turnRad: item.turnRad,
    levelM,
    groundLevelM,
    saddleM: levelM === null ? null : levelM - groundLevelM,
    plannedSaddleM: plannedM === null ? null : plannedM - groundLevelM,
    measuredSaddleM,
    jawLineSaddleM: jawLineM === null ? null : jawLineM - groundLevelM,
    lowestSaddleM: record.kind === 'roller' ? null : record.figures.lowestSaddleM.value,
    highestSaddleM: record.kind === 'roller' ? null : record.figures.highestSaddleM.value,
    ratedLoadN: record.figures.ratedLoadN.value,
    leadInM: leadIn ?? typicalLeadInM(scene.odM),
    leadInIsTypical: leadIn === null,
    rollerRadiusM: record.kind === 'rack' ? null : record.figures.rollerRadiusM.value,
    landingAid: record.kind === 'rack' ? 'none' : record.landingAid,
    groundGuessed: scene.ground.isGuessed(at.runningM, at.offsetM),
    locked: record.locked,
  }
}

function levelOf(record: SupportRecord, height: HeightRule, at: { groundLevelM: number; jawLineM: number | null }): number | null {
  if (record.kind === 'rack' && record.figures.beamSpacingM.value === null) return null
  if (height.rule === 'aboveGround') return at.groundLevelM + height.saddleM
  if (height.rule === 'unknown' || at.jawLineM === null) return null
  return height.rule === 'onAxis' ? at.jawLineM : at.jawLineM - height.dropM
}

