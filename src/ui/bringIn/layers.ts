import type { LaidShape } from '../../read/plan/layPlan.ts'
import type { ForeignPlan, ForeignShape } from '../../read/plan/types.ts'
import type { Localized } from '../../messages/localized.ts'
import { kindOf, kinds } from '../../scene/kinds/index.ts'

export interface LayerGroup {
  /** Names layer and form together: lines and closed shapes of one layer may become different kinds. */
  key: string
  layer: string
  as: ForeignShape['as']
  count: number
}

export const keyOf = ({ layer, as }: Pick<ForeignShape, 'layer' | 'as'>): string => `${as} ${layer}`

/** Kind by the key of a layer group; null: left out. */
export type KindByLayer = Readonly<Record<string, string | null>>

/** Layers offered one by one; what comes beyond is left out. */
const MOST_GROUPS = 60

export function layersOf(plan: ForeignPlan): LayerGroup[] {
  const groups = new Map<string, LayerGroup>()
  for (const { layer, as } of plan.shapes) {
    const key = keyOf({ layer, as })
    const before = groups.get(key)
    groups.set(key, { key, layer, as, count: (before?.count ?? 0) + 1 })
  }
  return [...groups.values()].slice(0, MOST_GROUPS)
}

/** Kinds a shape may become: what is drawn on the site. A closed shape may also be a line that comes back to its start. Levels have their own panel. */
export const kindChoices = (as: ForeignShape['as']): readonly { kind: string; name: Localized }[] => {
  const placings = { area: ['polygon', 'polyline'], line: ['polyline'], point: ['item'] }[as]
  return kinds.filter(({ gear, placing, kind }) => gear === 'site' && placings.includes(placing) && !['level', 'note'].includes(kind)).map(({ kind, name }) => ({ kind, name }))
}

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[\s_-]+/g, ' ').trim()

/** A layer that bears the name of a kind is suggested as that; any other is left out until somebody chooses. */
export const suggestedKinds = (groups: readonly LayerGroup[]): KindByLayer =>
  Object.fromEntries(groups.map(({ key, layer, as }) => {
    const name = plain(layer)
    return [key, kindChoices(as).find((choice) => name !== '' && [plain(choice.kind), plain(choice.name.en), plain(choice.name.es)].includes(name))?.kind ?? null]
  }))

export interface BroughtRecord {
  kind: string
  place?: { at: 'free'; xM: number; yM: number; headingRad: number }
  points?: readonly { xM: number; yM: number }[]
  patch?: Readonly<Record<string, unknown>>
}

/** Arguments of the command for the shapes whose layer has a kind. */
export const recordsOfPlan = (shapes: readonly LaidShape[], byLayer: KindByLayer): BroughtRecord[] =>
  shapes.flatMap((shape): BroughtRecord[] => {
    const kind = byLayer[keyOf(shape)] ?? null
    const definition = kind === null ? undefined : kindOf(kind)
    if (kind === null || definition === undefined) return []
    const [first] = shape.points
    if (shape.as === 'point') return first === undefined ? [] : [{ kind, place: { at: 'free', ...first, headingRad: 0 } }]
    const isRound = shape.as === 'area' && definition.placing === 'polyline' && first !== undefined
    return [{ kind, points: isRound ? [...shape.points, first] : shape.points, ...(shape.name === '' ? {} : { patch: { name: shape.name } }) }]
  })
