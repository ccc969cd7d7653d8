import { dropHeightM } from '../../derive/dropHeight.ts'
import { itemsOf } from '../../derive/itemsOf.ts'
import { rollOffAt } from '../../derive/rollOff.ts'
import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { StackRecord } from '../../scene/kinds/stack.ts'
import type { Finding } from '../finding.ts'
import { atPoint, defineCheck, finding, mechanics, nameOf, q, say } from '../make.ts'

const ID = 'roll-off'

/** Stacks that nothing chocks on ground that falls: where a stick goes, and over whose way. */
export const rollOff = defineCheck({
  id: ID,
  title: { en: 'Pipe rolling off a stack', es: 'Tubo que rueda de una pila' },
  cost: 'slow',
  run: (site) => itemsOf(site, 'stack').flatMap((item) => ofStack(site, item)),
})

function ofStack(site: SiteModel, item: PlacedItem): Finding[] {
  // Whether it is chocked is asked for with what its zone needs.
  if ((item.record as StackRecord).chocked !== false) return []
  const roll = rollOffAt(site, item, dropHeightM(site, item))
  if (roll.missing.length > 0 || roll.end === 'staysPut') return []
  const inWay = roll.lane.length < 4 ? [] : [...site.placed.values()].filter((other) => isPersonOrWay(other) && distanceBetween({ kind: 'polygon', points: roll.lane }, wayShape(other)).distanceM <= 0)
  const common = { about: item.id, items: [item.id, ...(roll.itemId === null ? [] : [roll.itemId]), ...inWay.map(({ id }) => id)], where: atPoint(item.xM, item.yM), measured: q('length', roll.reachM), source: mechanics('roll-off') }
  const values = { stack: nameOf(site, item.id), reach: q('length', roll.reachM), fall: q('slope', roll.fallRatio), into: roll.itemId === null ? '' : nameOf(site, roll.itemId) }
  const isBad = roll.end === 'unstopped' || roll.end === 'drops' || inWay.length > 0
  if (!isBad) return [finding(ID, { ...common, level: 'NOTE', what: say('A stick that leaves {stack} rolls {reach} down the fall.', 'Un tubo que sale de {stack} rueda {reach} por la caída.', values) })]
  return [finding(ID, {
    ...common, level: 'FIX',
    what: roll.end === 'drops'
      ? say('{stack} is not chocked: a stick that leaves it rolls {reach} and drops into {into}.', '{stack} no está acuñada: un tubo que sale rueda {reach} y cae en {into}.', values)
      : roll.end === 'unstopped'
        ? say('{stack} is not chocked: the ground falls {fall}, and nothing drawn stops a stick that leaves it.', '{stack} no está acuñada: el suelo baja {fall}, y nada dibujado detiene un tubo que salga.', values)
        : say('{stack} is not chocked: a stick that leaves it rolls {reach}, over a way or a place where people stand.', '{stack} no está acuñada: un tubo que sale rueda {reach}, sobre un paso o un lugar donde hay gente.', values),
    move: say('Chock it on both sides, or put a stop below it that holds a stick.', 'Acúñela de ambos lados, o ponga abajo un tope que detenga un tubo.'),
  })]
}

const isPersonOrWay = ({ kind }: PlacedItem): boolean => kind === 'crew' || kind === 'walkway' || kind === 'road' || kind === 'emergencyLane' || kind === 'trafficLane' || kind === 'muster'
const wayShape = (item: PlacedItem): { kind: 'point'; point: Vec } | { kind: 'polyline'; points: readonly Vec[] } => ('points' in item.record ? { kind: 'polyline', points: item.record.points } : { kind: 'point', point: { xM: item.xM, yM: item.yM } })
