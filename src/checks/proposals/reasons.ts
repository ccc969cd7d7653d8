/** One line a support, or a stretch of equal ones, saying why it stands there. */
import type { SiteModel, SupportView } from '../../derive/types.ts'
import type { Sentence } from '../finding.ts'
import { inRuns, q, say } from '../make.ts'
import type { Layout } from './layouts.ts'
import { saddleOf } from './trialSite.ts'
import type { PlannedSupport, Sort, SupportReason, Why } from './types.ts'

const isRow = (why: Why): boolean => why === 'row'

/** In order along the run; a row of rollers with one reason is one line. */
export function reasonsOf(site: SiteModel, { planned, slings }: Layout): SupportReason[] {
  const along = planned.toSorted((a, b) => a.runningM - b.runningM)
  const groups = inRuns(along, (a, b) => isRow(a.why) && isRow(b.why))
  return groups.map((group) => {
    const [first, last] = [group[0]!, group.at(-1)!]
    return { kind: first.kind, fromM: first.runningM, toM: last.runningM, count: group.length, text: textOf(site, group, slings) }
  })
}

const labelAt = (site: SiteModel, runningM: number): string => site.supports.find((view: SupportView) => Math.abs(view.runningM - runningM) < 0.001)?.label ?? ''

function textOf(site: SiteModel, group: readonly PlannedSupport[], slings: boolean): Sentence {
  const [first, last] = [group[0]!, group.at(-1)!]
  const worst = group.reduce((most, one) => ((one.droopM ?? -Infinity) > (most.droopM ?? -Infinity) ? one : most))
  const values = {
    label: labelAt(site, first.runningM), last: labelAt(site, last.runningM), at: { runningM: first.runningM }, saddle: q('height', saddleOf(site, first)),
    count: group.length, spacing: q('length', Math.max(0, ...group.slice(1).map((one, i) => one.runningM - group[i]!.runningM))),
    droop: q('shortLength', Math.max(0, worst.droopM ?? 0)), lead: q('shortLength', worst.leadInM ?? 0),
    drop: q('shortLength', first.height.rule === 'belowAxis' ? first.height.dropM : 0),
  }
  switch (first.why) {
    case 'infeed': return say('{label} at {at}, {saddle}: on the jaw line, under the stick that is fed.', '{label} en {at}, {saddle}: en la línea de mordazas, bajo el tubo que entra.', values)
    case 'level': return say('{label} at {at}, {saddle}: on the jaw line, so that the pipe lies quiet in the jaws.', '{label} en {at}, {saddle}: en la línea de mordazas, para que el tubo quede quieto en ellas.', values)
    case 'softStart': return say('{label} at {at}, {saddle}: last level stand, {drop} below the jaw line for a soft start of the lay-down.', '{label} en {at}, {saddle}: último soporte a nivel, {drop} bajo la línea de mordazas para empezar suave el descenso.', values)
    case 'layDown':
      return first.droopM === null
        ? say('{label} at {at}, {saddle}: on the curve by which the pipe comes down by its own weight.', '{label} en {at}, {saddle}: en la curva con que el tubo baja por su propio peso.', values)
        : say('{label} at {at}, {saddle}: on the way down, the free nose comes {droop} low and {lead} is taken in.', '{label} en {at}, {saddle}: en el descenso, la punta libre llega {droop} abajo y se admiten {lead}.', values)
    case 'bridge':
      return first.droopM === null
        ? say('{label} at {at}: takes the pipe on its way to the ground.', '{label} en {at}: recibe el tubo al bajar al suelo.', values)
        : say('{label} at {at}: the nose still points down here; it comes {droop} low and {lead} is taken in.', '{label} en {at}: aquí la punta aún apunta hacia abajo; llega {droop} abajo y se admiten {lead}.', values)
    case 'row':
      if (group.length === 1) return say('{label} at {at}: as far on as a free nose still rides on.', '{label} en {at}: tan lejos como la punta libre aún sube sola.', values)
      return slings || worst.droopM === null
        ? say('{label} to {last}: {count} rollers, at most {spacing} apart, as far as a free nose still rides on.', '{label} a {last}: {count} rodillos, a {spacing} como máximo, hasta donde una punta libre aún sube sola.', values)
        : say('{label} to {last}: {count} rollers, at most {spacing} apart; the free nose comes {droop} low at most and {lead} is taken in.', '{label} a {last}: {count} rodillos, a {spacing} como máximo; la punta libre llega {droop} abajo como máximo y se admiten {lead}.', values)
  }
}

interface Said {
  site: SiteModel
  layout: Layout
  stands: readonly Sort[]
  rollers: readonly Sort[]
  wasSlung: boolean
}

/** What holds for the whole proposal: whose gear it is, how the nose is held, what stays. */
export function saidOf({ site, layout, stands, rollers, wasSlung }: Said): Sentence[] {
  const uses = (kind: Sort['kind']): boolean => layout.planned.some((one) => one.kind === kind)
  const said: Sentence[] = []
  if (layout.slings && !wasSlung) said.push(say('The nose is to be slung on its way down to the rollers: no height of these stands lets a free nose come down by itself. On the rollers it rides by itself.', 'La punta va colgada al bajar a los rodillos: ninguna altura de estos soportes deja bajar sola una punta libre. Sobre los rodillos va sola.'))
  if ((uses('stand') && stands.some(({ from }) => from === 'typical')) || (uses('roller') && rollers.some(({ from }) => from === 'typical'))) {
    said.push(say('No gear list or plate says what you own: typical stands and rollers, as many as it takes.', 'Ni lista de equipo ni placa dicen lo que tiene: soportes y rodillos típicos, los que hagan falta.'))
  }
  const locked = site.supports.filter((view) => view.locked && view.side === 'exit').length
  if (locked > 0) said.push(say('Locked and left where they are: {count}.', 'Fijados y dejados donde están: {count}.', { count: locked }))
  return said
}
