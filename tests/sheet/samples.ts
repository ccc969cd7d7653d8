import type { CheckRun, Finding, Level } from '../../src/checks/finding.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { SiteModel, Stage } from '../../src/derive/types.ts'
import { zonesAt } from '../../src/derive/zones.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import type { ImageContent } from '../../src/sheet/imagePage.ts'
import { footM } from '../../src/units/factors.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'

export const ft = (feet: number): number => feet * footM
const measured = (value: number): { value: number; basis: 'measured' } => ({ value, basis: 'measured' })
const ringFt = (x0: number, y0: number, x1: number, y1: number): { xM: number; yM: number }[] => [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(([x, y]) => ({ xM: ft(x!), yM: ft(y!) }))

/** A gravel lot of 420 × 70 ft with a rack, a machine, stands, ground rollers, a puller and a crew; 10 in IPS DR 17, 280 ft needed. */
export const lotYard = (over: { layout?: Parameters<typeof layout>[0]; job?: Parameters<typeof job>[0]; more?: readonly YardRecord[] } = {}): YardDocument => documentOf(
  layout({ title: 'Maple Fork pump house', revision: 'C', northRad: -2.6, ...over.layout }),
  job({ pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, stickLengthM: ft(40), neededLengthM: ft(280), ...over.job }),
  setUp({ fallRatio: 0.01, crossFallRatio: 0 }), run({ surfaces: ['gravel'] }),
  item('boundary', 'boundary:1', ringFt(-62, -41, 358, 29), { name: 'gravel lot' }),
  item('building', 'building:1', ringFt(36, 12, 74, 27), { name: 'pump house' }),
  item('walkway', 'walkway:1', [{ xM: ft(-70), yM: ft(35) }, { xM: ft(365), yM: ft(35) }], { name: 'public footway' }),
  item('machine', 'machine:1', onRun(0)),
  item('rack', 'rack:1', onRun(ft(-20))),
  ...[12.5, 25, 34.75, 44.5, 54.25].map((x, i) => item('stand', `stand:${i}`, onRun(ft(x)), i < 2 ? {} : { height: { rule: 'belowAxis', dropM: [0.18, 0.42, 0.56][i - 2] } })),
  ...Array.from({ length: 13 }, (_, i) => item('roller', `roller:${i}`, onRun(ft(64 + 20 * i)))),
  item('puller', 'puller:1', onRun(ft(338))),
  item('crew', 'crew:o', onRun(ft(1), { offsetM: ft(6) }), { role: 'operator' }),
  item('crew', 'crew:i', onRun(ft(-52), { offsetM: ft(-5) }), { role: 'infeedHand' }),
  item('crew', 'crew:n', onRun(ft(324), { offsetM: ft(6) }), { role: 'noseSpotter' }),
  item('loader', 'loader:1', free(ft(-26), ft(-22), Math.PI / 2)),
  item('offload', 'offload:1', free(ft(-26), ft(-35))),
  ...([[-50, 12], [78, 18], [290, 18]] as const).map(([x, y], i) => item('level', `level:${i}`, free(ft(x), ft(y)), { figures: { levelM: measured(-0.01 * ft(x)) } })),
  ...(over.more ?? []),
)

const say = (en: string, es: string, values?: Finding['what']['values']): Finding['what'] => ({ text: { en, es }, ...(values === undefined ? {} : { values }) })

/** A finding as a check would make it; `limit` is a most. */
export const findingOf = (level: Level, over: Partial<Finding> = {}): Finding => ({
  checkId: 'sample', key: `sample@${level}`, level, isUnknown: false, missing: [], itemIds: [], where: null,
  what: say('Something stands where it should not.', 'Algo está donde no debe.'),
  measured: null, limit: null, margin: null, source: { class: 'houseRule', cite: 'common practice, no published source' }, phases: [], move: null, remedy: null, ...over,
})

const length = (value: number): { kind: 'length'; value: number } => ({ kind: 'length', value })

/** One of each level and more: least and most, published and house rule, missing input, met. */
export const someFindings: readonly Finding[] = [
  findingOf('STOP', {
    what: say('The nose spotter stands in the line of the tight rope.', 'El vigía de la punta está en la línea de la cuerda tensa.'),
    measured: length(ft(77 / 12)), limit: length(ft(10)), margin: length(ft(77 / 12 - 10)), itemIds: ['crew:n'],
    move: say('Move the spot to {at}, {side}.', 'Mueva el puesto a {at}, {side}.', { at: { runningM: ft(304.5) }, side: { offsetM: ft(18) } }),
  }),
  findingOf('FIX', {
    what: say('Rollers {spacing} apart: a free nose comes to the next one {droop} low.', 'Rodillos cada {spacing}: la punta libre llega al siguiente {droop} baja.', { spacing: length(ft(20)), droop: { kind: 'shortLength', value: 0.7493 } }),
    measured: { kind: 'shortLength', value: 0.7493 }, limit: { kind: 'shortLength', value: 0.066675 }, margin: { kind: 'shortLength', value: 0.066675 - 0.7493 }, source: { class: 'mechanics', cite: 'mechanics, docs/formulas/nose.md' },
    move: say('Set them {spacing} apart.', 'Póngalos cada {spacing}.', { spacing: length(ft(11)) }),
  }),
  findingOf('CHECK', { what: say('Ground falls 1 %: hold-back on before the jaws open.', 'El suelo cae 1 %: retenida puesta antes de abrir las mordazas.'), measured: { kind: 'force', value: 124.6 }, source: { class: 'mechanics', cite: 'mechanics' } }),
  findingOf('CHECK', { what: say('The puller comes near the overhead line.', 'El tractor se acerca a la línea aérea.'), measured: length(6.4), limit: length(6.1), margin: length(0.3), source: { class: 'published', cite: '29 CFR 1926.1408 Table A', fromMemory: true } }),
  findingOf('CHECK', { isUnknown: true, missing: [{ recordId: 'stand:0', path: 'figures.ratedLoadN.value', label: { en: 'rated load of E1', es: 'carga nominal de E1' } }, { recordId: 'job:this', path: 'wallTemperatureC.value', label: { en: 'wall temperature of the pipe', es: 'temperatura del tubo' } }] }),
  findingOf('NOTE', { what: say('Eight sticks give {made}, {needed} needed: cut to suit.', 'Ocho tubos dan {made}, se necesitan {needed}: corte al ajuste.', { made: length(ft(319.5)), needed: length(ft(280)) }) }),
  findingOf('met', { what: say('Machine pitch.', 'Inclinación de la máquina.') }),
]

export const runOf = (findings: readonly Finding[]): CheckRun => {
  const counts: CheckRun['counts'] = { STOP: 0, FIX: 0, CHECK: 0, NOTE: 0, met: 0, toConfirm: 0 }
  for (const { level, isUnknown } of findings) {
    counts[level] += 1
    if (isUnknown) counts.toConfirm += 1
  }
  return { findings, counts }
}

const noPainter = (): void => undefined

/** Content of an image of a document, without its three drawings. */
export const contentOf = (document: YardDocument, over: Partial<ImageContent> = {}, stage: Stage = { phase: 'pull', joint: 7 }): ImageContent => {
  const site: SiteModel = deriveSite(document)
  return {
    site, profile: profileAt(site, stage), run: runOf(someFindings), isSettled: true, zones: zonesAt(site, stage), stageWords: 'pull, joint 7 of 7', language: 'en', system: site.layout.displayUnits, when: '3 June 2025, 14:32',
    paintPlan: noPainter, paintTape: noPainter, paintSection: noPainter, ...over,
  }
}
