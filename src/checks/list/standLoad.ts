import { sourceOf } from '../limits.ts'
import { atSupport, boundFor, defineCheck, finding, levelFor, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'

export const standLoad = defineCheck({
  id: 'stand-load',
  title: { en: 'Load on stands and rollers', es: 'Carga en soportes y rodillos' },
  cost: 'slow',
  run: (_site, { limits, mechanics }) => {
    const limit = limits.limit('stand-load')
    const rated = [...mechanics.loads().values()].filter(({ view }) => view.ratedLoadN !== null && view.kind !== 'rack')
    const shares = rated.map((load) => ({ ...load, share: load.loadN / load.view.ratedLoadN! })).toSorted((a, b) => b.share - a.share)
    const over = shares.filter(({ share }) => levelFor(limit, share) !== 'met')
    const [worst] = shares
    if (worst === undefined) return []
    const about = (one: typeof worst, level: ReturnType<typeof levelFor>): Parameters<typeof finding>[1] => {
      const bound = boundFor(limit, level)
      const values = { label: one.view.label, load: q('force', one.loadN), rated: q('force', one.view.ratedLoadN), when: phaseWords[one.when === 'feed' ? 'load' : one.when], joint: one.joint }
      return {
        about: one.view.key,
        level,
        measured: q('force', one.loadN),
        limit: q('force', bound === null ? null : bound * one.view.ratedLoadN!),
        source: level === 'FIX' ? { class: 'plate', cite: 'rated load on the plate of the stand' } : sourceOf(limit),
        phases: [one.when === 'feed' ? 'load' : one.when],
        where: atSupport(one.view),
        items: [one.view.itemId],
        what: level === 'met'
          ? say('No stand carries more than half its plate; {label} carries most, {load}.', 'Ningún soporte lleva más de la mitad de su placa; {label} lleva más, {load}.', values)
          : say('{label} carries {load} at {when} {joint}; its plate says {rated}.', '{label} lleva {load} en {when} {joint}; su placa dice {rated}.', values),
        ...(level === 'met' ? {} : { move: level === 'FIX' ? say('Use a stand rated for it, or share the load with one more.', 'Use un soporte con esa capacidad o reparta la carga con otro.') : say('See that it stands on firm, level ground.', 'Vea que esté en suelo firme y a nivel.') }),
      }
    }
    return over.length === 0 ? [finding('stand-load', { ...about(worst, 'met'), about: 'all' })] : over.map((one) => finding('stand-load', about(one, levelFor(limit, one.share))))
  },
})
