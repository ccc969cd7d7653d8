/** Checks whose findings can be shown as a band. One row each; what needs more than the same finding again names its figure. */
import { stringPullOf } from '../../derive/stringPull.ts'
import type { RangeDefinition } from './range.ts'

/** Uncertain where the pipe's stiffness decides. */
const byStiffness = ['modulus', 'temperature'] as const

export const ranges: readonly RangeDefinition[] = [
  { checkId: 'jaw-effort', by: byStiffness },
  { checkId: 'face-gap', by: byStiffness },
  { checkId: 'offset-change', by: byStiffness },
  {
    checkId: 'sag', by: byStiffness,
    // The span the finding lies in; where all are met it is the worst of them.
    valueIn: ({ level, where }, _site, { mechanics }) => {
      const sags = mechanics.sags()
      const shown = level === 'met' || where?.at !== 'run' ? sags : sags.filter(({ fromM, toM }) => fromM < where.runningM && where.runningM < toM)
      return shown.length === 0 ? null : Math.max(...shown.map(({ ratio }) => ratio))
    },
  },
  {
    checkId: 'nose-landing', by: byStiffness,
    valueIn: ({ measured, where }, _site, { mechanics }) => {
      const arrival = where?.at === 'run' ? mechanics.arrivals().find(({ view }) => Math.abs(view.runningM - where.runningM) < 1e-6) : undefined
      if (arrival === undefined) return null
      return measured?.kind === 'force' ? mechanics.liftN(arrival) : arrival.droopM
    },
  },
  {
    checkId: 'stand-load', by: byStiffness,
    valueIn: ({ where }, _site, { mechanics }) => (where?.at === 'run' ? ([...mechanics.loads().values()].find(({ view }) => Math.abs(view.runningM - where.runningM) < 1e-6)?.loadN ?? 0) : null),
  },
  { checkId: 'puller-pull', by: ['friction', 'modulus', 'temperature'] },
  {
    checkId: 'hold-back', by: ['friction', 'modulus', 'temperature'],
    // Where it would stay by itself nothing runs away.
    valueIn: ({ key, measured }, site) => {
      if (measured?.kind !== 'force' || key.includes(':anchor')) return measured?.value ?? null
      const end = key.includes('@exit') ? 'exit' : 'infeed'
      return Math.max(0, ...stringPullOf(site).joints.map(({ runAwayN }) => runAwayN[end]))
    },
  },
  { checkId: 'growth-gap', by: ['temperature'] },
]
