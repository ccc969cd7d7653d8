import { enter, when, type MayEnter } from './mayEnter.ts'
import { recordsOf } from '../../scene/document.ts'
import { runAwayWay } from '../runAwayWay.ts'
import { stringPullOf, type JointPull } from '../stringPull.ts'
import { pullerOf, pullerOperatorMayEnter } from './rope.ts'
import { noseAt, stripAlong } from './shapes.ts'
import type { PullerRecord } from '../../scene/kinds/puller.ts'
import type { MissingInput, SiteModel, Stage } from '../types.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

const HALF_WIDTH_M = 3.048
/** Curve-off: it need not keep to its line. */
const WIDENING = 0.1
/** Ground this flat lets a string come to rest; from here on a hold-back is drawn or the zone exists. */
const FLAT_RATIO = 0.01

type End = 'exit' | 'infeed'

/** Z-13. Where the string would go by itself: down the fall line to a positive stop or until the ground is under 1 %, and back over the machine where it hangs uphill. */
export const runAway: ZoneDefinition = {
  id: 'Z-13',
  name: { en: 'run-away line', es: 'línea de fuga' },
  sentence: { en: 'On a hill this pipe is a sled. No jaw opens until the hold-back is tight and someone has said so.', es: 'En la bajada este tubo es un trineo. Ninguna mordaza se abre hasta que la retención esté tensa y alguien lo confirme.' },
  follows: 'noseAndPhase',
  classes: { fuse: 'AMBER', pull: 'RED', move: 'RED', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [],
  source: { class: 'mechanics', cite: 'sum of grade and low friction over the whole string; 10 ft to each side and 1 in 10 are house rules' },
  size: { en: '10 ft to each side, widening 1 in 10, until the ground is under 1 % or something stops it', es: '10 pies a cada lado, abriendo 1 en 10, hasta que el suelo baje de 1 % o algo lo detenga' },
  shapes: (site, stage) => {
    if (site.run === null) return []
    const pull = stringPullOf(site)
    const missing: MissingInput[] = [...pull.missing, ...(site.ground.fallRatio === null ? [{ recordId: site.setUp?.id ?? site.layout.id, path: 'fallRatio', label: { en: 'fall of the ground', es: 'caída del terreno' } }] : [])]
    if (missing.length > 0) return (['exit', 'infeed'] as const).map((end) => toward(site, stage, end, missing))
    const isHeld = recordsOf(site.document, 'anchor').length > 0
    const joint = jointAt(pull.joints, noseAt(site, stage).toM)
    if (joint === null) return []
    return (['exit', 'infeed'] as const).filter((end) => goes(joint, end, isHeld)).map((end) => toward(site, stage, end, [], isHeld))
  },
}

/** The string nearest in length to what lies out. */
const jointAt = (joints: readonly JointPull[], noseM: number): JointPull | null =>
  joints.reduce<JointPull | null>((near, one) => (near === null || Math.abs(one.lengthM - noseM) < Math.abs(near.lengthM - noseM) ? one : near), null)

function goes({ runAwayN, gradeRatio }: JointPull, end: End, isHeld: boolean): boolean {
  return runAwayN[end] > 0 || (!isHeld && (end === 'exit' ? gradeRatio : -gradeRatio) >= FLAT_RATIO - 1e-9)
}

/** From the nose onward, or from the joint back over machine, rack and whoever feeds. With a hold-back drawn the crew may be there once it is tight. */
function toward(site: SiteModel, stage: Stage, end: End, missing: readonly MissingInput[], isHeld = false): ZoneShape {
  const fromM = end === 'exit' ? noseAt(site, stage).toM : 0
  const { reachM } = runAwayWay(site, fromM, end === 'exit' ? 1 : -1, FLAT_RATIO)
  const farM = end === 'exit' ? fromM + reachM : fromM - reachM - (site.sticks.stickLengthM ?? 0)
  const wide = HALF_WIDTH_M + Math.abs(farM - fromM) * WIDENING
  const ring = stripAlong(site, end === 'exit' ? [{ runningM: fromM, halfWidthM: HALF_WIDTH_M }, { runningM: farM, halfWidthM: wide }] : [{ runningM: farM, halfWidthM: wide }, { runningM: fromM, halfWidthM: HALF_WIDTH_M }])
  return { ownerId: `${site.run!.id}/${end}`, rings: [ring], itemIds: [], missing, mayEnter: [...(isHeld ? crewOnceHeld : []), ...driver(site)] }
}

const crewOnceHeld: readonly MayEnter[] = [enter('operator', when.heldBack), enter('infeedHand', when.heldBack), enter('exitHand', when.heldBack), enter('noseSpotter', when.heldBack)]

function driver(site: SiteModel): readonly MayEnter[] {
  const puller = pullerOf(site)
  return puller === null ? [] : pullerOperatorMayEnter(puller.record as PullerRecord).mayEnter
}
