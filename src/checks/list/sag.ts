import { sourceOf } from '../limits.ts'
import { atRun, boundFor, defineCheck, finding, inRuns, levelFor, q, say } from '../make.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { SpanSagAt } from '../../derive/mechanics.ts'
import type { Localized } from '../../messages/localized.ts'

export const sag = defineCheck({
  id: 'sag',
  title: { en: 'Sag between jaws and stands', es: 'Flecha entre mordazas y soportes' },
  cost: 'quick',
  run: (site, { limits, mechanics }) => {
    const limit = limits.limit('sag-span')
    const sags = mechanics.sags().toSorted((a, b) => b.ratio - a.ratio)
    const [worst] = sags
    if (worst === undefined) return []
    const broken = sags.filter(({ ratio }) => levelFor(limit, ratio) !== 'met')
    if (broken.length === 0) {
      return [finding('sag', { level: 'met', measured: q('ratio', worst.ratio), limit: q('ratio', boundFor(limit, 'met')), source: sourceOf(limit), phases: ['fuse'], where: atRun(worst.atM, worst.levelM), what: say('The pipe hardly sags between jaws and stands.', 'El tubo casi no cuelga entre mordazas y soportes.') })]
    }
    const inOrder = broken.toSorted((a, b) => a.fromM - b.fromM)
    return inRuns(inOrder, (a, b) => levelFor(limit, a.ratio) === levelFor(limit, b.ratio) && Math.abs(a.toM - b.fromM) < 1e-6).map((group) => {
      const span = group.reduce((most, one) => (one.ratio > most.ratio ? one : most))
      const level = levelFor(limit, span.ratio)
      const [from, to] = [endName(site, span, span.fromM), endName(site, span, span.toM)]
      const middleM = (span.fromM + span.toM) / 2
      return finding('sag', {
        about: `${from.id}-${to.id}`,
        level,
        measured: q('ratio', span.ratio),
        limit: q('ratio', boundFor(limit, level)),
        source: sourceOf(limit),
        phases: ['fuse'],
        where: atRun(span.atM, span.levelM),
        items: [...new Set([from.id, to.id])].filter((id) => site.placed.has(id)),
        what: group.length === 1
          ? say('The pipe sags {sag} over {span} between {from} and {to}.', 'El tubo cuelga {sag} en {span} entre {from} y {to}.', { sag: q('shortLength', span.sagM), span: q('length', span.toM - span.fromM), from: from.name, to: to.name })
          : say('In {count} spans on end the pipe sags too far, most between {from} and {to}: {sag} over {span}.', 'En {count} claros seguidos el tubo cuelga de más, sobre todo entre {from} y {to}: {sag} en {span}.', { count: group.length, sag: q('shortLength', span.sagM), span: q('length', span.toM - span.fromM), from: from.name, to: to.name }),
        move: say('Put a stand between them, near {at}.', 'Ponga un soporte entre ellos, cerca de {at}.', { at: { runningM: middleM } }),
        remedy: site.run === null ? null : { command: 'place', args: { kind: 'stand', place: { at: 'onRun', runId: site.run.id, runningM: Math.round(middleM * 1000) / 1000, offsetM: 0, turnRad: 0 } }, label: say('Add a stand at {at}', 'Agregar un soporte en {at}', { at: { runningM: middleM } }) },
      })
    })
  },
})

function endName(site: SiteModel, span: SpanSagAt, runningM: number): { id: string; name: Localized } {
  const support = site.supports.find((one) => Math.abs(one.runningM - runningM) < 1e-6)
  if (support !== undefined) return { id: support.itemId, name: { en: support.label, es: support.label } }
  return { id: site.jaws.machineId ?? `jaw:${span.fromM < 0 ? 'infeed' : 'exit'}`, name: { en: 'the jaws', es: 'las mordazas' } }
}
