import { walkOf, type WalkJoint } from '../../derive/walking.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Finding } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atRun, defineCheck, finding, listOf, q, say } from '../make.ts'

const ID = 'walk-window'

export const walkWindow = defineCheck({
  id: ID,
  title: { en: 'Level window at each joint', es: 'Ventana nivelada en cada junta' },
  cost: 'quick',
  run: (site, { limits }) => {
    const walk = walkOf(site)
    if (walk === null || walk.joints.length === 0) return []
    const source = sourceOf(limits.limit('walk-bump'))
    if (site.ground.from === 'unknown') {
      return [finding(ID, {
        level: 'CHECK', about: 'unknown', source, phases: ['fuse'],
        missing: [{ recordId: site.setUp!.id, path: 'fallRatio', label: { en: 'fall of the ground, or levels along the line', es: 'caída del suelo, o niveles en la línea' } }],
        what: say('Whether two sticks lie level at each joint is not known.', 'No se sabe si dos tubos quedan a nivel en cada junta.'),
        move: say('Take a level every stick.', 'Tome un nivel cada tubo.'),
      })]
    }
    const found = [...steep(walk.joints, limits), ...bumpy(walk.joints, limits), ...bent(site, walk.joints)]
    if (found.length > 0) return found
    const worst = walk.joints.reduce((most, one) => ((one.bumpM ?? 0) > (most.bumpM ?? 0) ? one : most))
    return [finding(ID, { level: 'met', source, phases: ['fuse'], where: atRun(worst.runningM), measured: q('shortLength', worst.bumpM), limit: q('shortLength', limits.limit('walk-bump').check), what: say('At every joint two sticks lie straight and level, within {bump}.', 'En cada junta dos tubos quedan rectos y a nivel, en {bump}.', { bump: q('shortLength', worst.bumpM) }) })]
  },
})

const named = (joints: readonly WalkJoint[]) => listOf(joints.map(({ joint }) => `J${joint}`), 6)

function steep(joints: readonly WalkJoint[], limits: Limits): Finding[] {
  const limit = limits.limit('machine-pitch')
  const over = joints.filter(({ slopeRatio }) => limit.check !== null && Math.atan(Math.abs(slopeRatio ?? 0)) > limit.check + 1e-9)
  if (over.length === 0) return []
  const worst = over.reduce((most, one) => (Math.abs(one.slopeRatio!) > Math.abs(most.slopeRatio!) ? one : most))
  const pitchRad = Math.atan(Math.abs(worst.slopeRatio!))
  return [finding(ID, {
    level: 'CHECK', about: 'slope', source: sourceOf(limit), phases: ['fuse'], joints: over.map(({ joint }) => joint), where: atRun(worst.runningM), measured: q('angle', pitchRad), limit: q('angle', limit.check),
    what: say('The ground under both sticks leans {pitch} at J{joint}; more than {limit} at {joints}.', 'El suelo bajo ambos tubos inclina {pitch} en J{joint}; más de {limit} en {joints}.', { pitch: q('angle', pitchRad), joint: worst.joint, limit: q('angle', limit.check), joints: named(over) }),
    move: say('Hold machine, string and loose stick there; block the machine level, or shift the joints.', 'Retenga ahí máquina, sarta y tubo suelto; nivele la máquina con bloques, o corra las juntas.'),
  })]
}

function bumpy(joints: readonly WalkJoint[], limits: Limits): Finding[] {
  const limit = limits.limit('walk-bump')
  const over = joints.filter(({ bumpM }) => limit.check !== null && (bumpM ?? 0) > limit.check + 1e-6)
  if (over.length === 0) return []
  const worst = over.reduce((most, one) => (one.bumpM! > most.bumpM! ? one : most))
  return [finding(ID, {
    level: 'CHECK', about: 'bump', source: sourceOf(limit), phases: ['fuse'], joints: over.map(({ joint }) => joint), where: atRun(worst.runningM), measured: q('shortLength', worst.bumpM), limit: q('shortLength', limit.check),
    what: say('Under the two sticks of J{joint} the ground stands {bump} off a straight line; more than {limit} at {joints}.', 'Bajo los dos tubos de J{joint} el suelo se aparta {bump} de una recta; más de {limit} en {joints}.', { bump: q('shortLength', worst.bumpM), joint: worst.joint, limit: q('shortLength', limit.check), joints: named(over) }),
    move: say('Two portable stands each side, raised or lowered by that; or make the joint a stick farther on.', 'Dos soportes portátiles por lado, subidos o bajados eso; o haga la junta un tubo más allá.'),
  })]
}

/** Beyond this the sticks no longer lie where they were strung: a hand's width. */
const SWING_M = 0.1

function bent(site: SiteModel, joints: readonly WalkJoint[]): Finding[] {
  const over = joints.filter(({ swingM }) => swingM > SWING_M)
  if (over.length === 0) return []
  const worst = over.reduce((most, one) => (one.swingM > most.swingM ? one : most))
  return [finding(ID, {
    level: 'NOTE', about: 'bend', source: { class: 'houseRule', cite: 'geometry of the run; common practice, no published source' }, phases: ['fuse'], joints: over.map(({ joint }) => joint), where: atRun(worst.runningM), measured: q('length', worst.swingM), items: site.run === null ? [] : [site.run.id],
    what: say('In the bend two sticks lined up straight for J{joint} reach {swing} off the line; so at {joints}.', 'En la curva, dos tubos alineados para J{joint} salen {swing} de la línea; así en {joints}.', { joint: worst.joint, swing: q('length', worst.swingM), joints: named(over) }),
    move: say('Keep that much beside the line free of traffic, fence and trench while fusing; lay the string back to the curve after cooling.', 'Mantenga ese ancho junto a la línea libre de tráfico, cerca y zanja al fundir; devuelva la línea a la curva ya fría.'),
  })]
}
