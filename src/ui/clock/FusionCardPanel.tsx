import { useMemo, type ReactNode } from 'react'
import { fusionFiguresOf, type FusionFigures } from '../../derive/clock.ts'
import { clockWords as text } from '../../messages/ui/clockWords.ts'
import { jobOf } from '../../scene/document.ts'
import { unknownFigure } from '../../scene/parts.ts'
import type { JobRecord } from '../../scene/records/frame.ts'
import type { QuantityKind } from '../../units/quantity.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { TextField } from '../fields/OtherFields.tsx'

type Procedure = NonNullable<JobRecord['procedure']>
type Own = FusionFigures['own'][number]

const emptyProcedure = (): Procedure => ({
  name: '', heaterC: unknownFigure(), soakS: unknownFigure(), openCloseS: unknownFigure(), coolS: unknownFigure(), holdBeforePullS: unknownFigure(), interfacialPressurePa: unknownFigure(), beadM: unknownFigure(),
})

const procedureFields: readonly { path: Exclude<keyof Procedure, 'name'>; label: keyof typeof text; kind: QuantityKind; min: number; max: number }[] = [
  { path: 'heaterC', label: 'heater', kind: 'temperature', min: 100, max: 300 },
  { path: 'interfacialPressurePa', label: 'interfacial', kind: 'pressure', min: 1e4, max: 3e6 },
  { path: 'beadM', label: 'bead', kind: 'shortLength', min: 1e-4, max: 0.05 },
  { path: 'soakS', label: 'soak', kind: 'duration', min: 1, max: 7200 },
  { path: 'openCloseS', label: 'heaterOut', kind: 'duration', min: 1, max: 300 },
  { path: 'coolS', label: 'cool', kind: 'duration', min: 1, max: 36_000 },
  { path: 'holdBeforePullS', label: 'hold', kind: 'duration', min: 0, max: 36_000 },
]

const F2620 = 'ASTM F2620'

/** Bead, pressures, times and allowance for the pipe of the job; each with its source, or the operator's own procedure. */
export const FusionCardPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { local } = words
  const run = useCommand()
  const job = useDocuments((state) => jobOf(state.document))
  const site = useSite((state) => state.site)
  const figures = useMemo(() => fusionFiguresOf(site), [site])
  const set = (path: string, value: unknown, mergeKey?: string): void => { run('setJob', { path, value }, undefined, mergeKey) }
  const { procedure } = job
  const figure = (kind: QuantityKind, value: number): string => words.figure({ kind, value })
  const heater = (f: FusionFigures): string => (f.heaterLowC === f.heaterHighC ? figure('temperature', f.heaterLowC) : `${figure('temperature', f.heaterLowC)} – ${figure('temperature', f.heaterHighC)}`)
  const rows = (f: FusionFigures): readonly (readonly [label: keyof typeof text, value: string, own: Own | null, cite: string, fromMemory: boolean])[] => [
    ['heater', heater(f), 'heaterC', F2620, false],
    ['interfacial', figure('pressure', f.interfacialPa), 'interfacialPressurePa', `${F2620}; PPI TR-33`, true],
    ['fusionForce', figure('force', f.forceN), null, 'pressure × face (PPI TR-33)', false],
    ['gauge', f.gaugePa === null ? local(text.gaugeUnknown) : figure('pressure', f.gaugePa), null, 'force ÷ piston area (PPI TR-33)', false],
    ['bead', figure('shortLength', f.beadM), 'beadM', F2620, true],
    ['soak', figure('duration', f.soakS), 'soakS', `${F2620}; ISO 21307:2017 below 14 in`, true],
    ['heaterOut', figure('duration', f.heaterOutS), 'openCloseS', F2620, true],
    ['cool', figure('duration', f.coolS), 'coolS', F2620, true],
    ['hiLo', figure('shortLength', f.hiLoM), null, `${F2620}, ISO 21307, DVS 2207-1`, true],
    ['damage', figure('shortLength', f.damageM), null, 'PPI Municipal Advisory Board, handling and storage of PE pipe', false],
  ]
  return (
    <Panel title={local(text.cardTitle)} onClose={onClose} wide>
      <p><strong>{local(text.cardCaution)}</strong></p>
      {figures === null ? <p>{local(text.needsPipe)}</p> : (
        <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.cardTitle)}>
          <table className="limits limits-sourced">
            <thead><tr><th scope="col">{local(text.figure)}</th><th scope="col">{local(text.value)}</th><th scope="col">{local(text.source)}</th></tr></thead>
            <tbody>
              {rows(figures).map(([label, value, own, cite, fromMemory]) => {
                const isOwn = own !== null && figures.own.includes(own)
                return (
                  <tr key={label}>
                    <th scope="row">{local(text[label])}</th>
                    <td className="limit-value"><Figure text={value} /></td>
                    <td><em>{isOwn ? local(text.source_procedure) : fromMemory ? local(text.source_publishedFromMemory) : words.say('sourcePublished')}</em><span className="quiet-text block">{isOwn ? procedure?.name : cite}</span></td>
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      )}
      <p className="quiet-text">{local(text.gaugeDrag)}</p>
      <h3>{local(text.ownProcedure)}</h3>
      <p className="quiet-text">{local(text.ownAbout)}</p>
      {procedure === null
        ? <p className="buttons"><button type="button" onClick={() => set('procedure', emptyProcedure())}>{local(text.ownUse)}</button></p>
        : (
          <>
            <div className="field-grid">
              <TextField label={local(text.procedureName)} value={procedure.name} name={fieldName(job.id, 'procedure.name')} onCommit={(value, key) => set('procedure.name', value, key)} />
              {procedureFields.map(({ path, label, kind, min, max }) => (
                <NumberField
                  key={path} label={local(text[label])} kind={kind} value={procedure[path].value} nullable min={min} max={max} name={fieldName(job.id, `procedure.${path}.value`)}
                  onCommit={(value, key) => set(`procedure.${path}`, { value, basis: 'jobRule' }, key)}
                />
              ))}
            </div>
            <p className="buttons"><button type="button" onClick={() => set('procedure', null)}>{local(text.ownDrop)}</button></p>
          </>
        )}
    </Panel>
  )
}
