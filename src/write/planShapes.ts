/** What lies on the plan as plain shapes, for files that other programs read. Site frame, metres, x right, y up. */
import type { PlacedItem, SiteModel } from '../derive/types.ts'
import { pointsOf } from '../derive/ways.ts'
import { kindOf } from '../scene/kinds/index.ts'
import { plainText } from '../sheet/crew/face.ts'
import { numberedZones } from '../sheet/crew/zoneList.ts'

export interface PlanShape {
  /** Kind of the record, or `run`, `string`, `datum`, `zone red` …; names the layer. */
  layer: string
  id: string
  /** 'E2 pipe stand', 'zone 3, loader swing'. */
  text: string
  as: 'area' | 'line' | 'point'
  points: readonly { xM: number; yM: number }[]
  /** Place of the text. */
  at: { xM: number; yM: number }
  properties: Readonly<Record<string, string | number | boolean | null>>
}

const nameOf = (item: PlacedItem): string => {
  const { record } = item
  const own = 'name' in record && typeof record.name === 'string' ? record.name : ''
  return plainText([item.label, own === '' ? (kindOf(item.kind)?.name.en ?? item.kind) : own].filter((part) => part !== '').join(' ').trim())
}

const shapeOf = (item: PlacedItem, site: SiteModel): PlanShape => {
  const outline = pointsOf(item.outlineM)
  const isArea = 'place' in item.record ? outline.length >= 3 : kindOf(item.kind)?.placing === 'polygon' && outline.length >= 3
  const support = site.supports.find(({ itemId }) => itemId === item.id)
  return {
    layer: item.kind, id: item.id, text: nameOf(item), as: isArea ? 'area' : outline.length >= 2 ? 'line' : 'point',
    points: outline.length >= 2 ? outline : [{ xM: item.xM, yM: item.yM }], at: { xM: item.xM, yM: item.yM },
    properties: {
      label: item.label, kind: item.kind, headingRad: item.headingRad, runningM: item.runningM, offsetM: item.offsetM,
      ...(support === undefined ? {} : { groundLevelM: support.groundLevelM, bopAboveGroundM: support.plannedSaddleM }),
    },
  }
}

const RUN_STEPS = 200

/** Items and features, run, string, datum nail and zones of all phases; empty yards give no shape. */
export const planShapes = (site: SiteModel): readonly PlanShape[] => {
  const shapes = [...site.placed.values()].filter((item) => !('zoneClass' in item.record)).map((item) => shapeOf(item, site))
  const { setUp } = site
  if (setUp !== null) {
    const tipM = site.sticks.stringLengthM(site.sticks.stickCount)
    const tailM = -(site.sticks.stickLengthM ?? 0)
    const along = (fromM: number, toM: number): { xM: number; yM: number }[] => (site.bends.length === 0 ? [fromM, toM] : Array.from({ length: RUN_STEPS + 1 }, (_, i) => fromM + ((toM - fromM) * i) / RUN_STEPS)).map((x) => site.atRunning(x)).map(({ xM, yM }) => ({ xM, yM }))
    const line = (layer: string, id: string, text: string, fromM: number, toM: number): PlanShape => ({ layer, id, text, as: 'line', points: along(fromM, toM), at: site.atRunning(toM), properties: { fromRunningM: fromM, toRunningM: toM } })
    shapes.push({ layer: 'datum', id: setUp.id, text: 'datum nail', as: 'point', points: [setUp.datum], at: setUp.datum, properties: { headingRad: setUp.headingRad } })
    if (site.run !== null) shapes.push(line('run', site.run.id, 'run', Math.min(tailM, -1), Math.max(tipM, 1)))
    if (tipM > 0) shapes.push(line('string', 'string', 'string at its longest', 0, tipM))
  }
  const zones = numberedZones(site).flatMap(({ number, zone, rings, isUnknown }) => rings.filter((ring) => ring.length >= 3).map((ring, i): PlanShape => ({
    layer: `zone ${zone.zoneClass.toLowerCase()}`, id: `zone ${number}.${i + 1}`, text: plainText(`zone ${number}, ${zone.name.en}`), as: 'area',
    points: ring.map(({ xM, yM }) => ({ xM, yM })), at: ring[0]!,
    properties: { number, zoneClass: zone.zoneClass, sentence: plainText(zone.sentence.en), inputMissing: isUnknown },
  })))
  return [...shapes, ...zones]
}
