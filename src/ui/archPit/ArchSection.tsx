import type { ReactNode } from 'react'
import { archOf, lastRollerM, USUAL_SPACING_M, type ArchView } from '../../derive/arch.ts'
import type { SiteModel } from '../../derive/types.ts'
import { archPitWords as text } from '../../messages/ui/archPitWords.ts'
import type { JobRecord } from '../../scene/records/frame.ts'
import type { Quantity } from '../../units/quantity.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { useDocuments, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ArchPicture } from './ArchPicture.tsx'
import { Rows } from './Rows.tsx'

type Arch = NonNullable<JobRecord['arch']>

const newArch = (): Arch => ({ entryAngleRad: null, radiusM: null, ownerTimesOd: null, rollerHeightM: null, supportSpacingM: null })

/** Fields of the job's arch and what comes of them. */
export const ArchSection = ({ site, job }: { site: SiteModel; job: JobRecord }): ReactNode => {
  const words = useWords()
  const { local } = words
  const run = useCommand()
  const writable = useDocuments((state) => state.writable)
  const { arch } = job
  const set = (path: string, value: unknown, mergeKey?: string): void => { run('setJob', { path, value }, undefined, mergeKey) }
  const view = archOf(site)
  const figure = (quantity: Quantity): string => words.figure(quantity)
  if (arch === null) {
    return (
      <>
        <p className="quiet-text">{local(text.archAbout)}</p>
        <p className="buttons"><button type="button" disabled={!writable} onClick={() => set('arch', newArch())}>{local(text.plan)}</button></p>
      </>
    )
  }
  const field = (path: keyof Arch): { name: string; nullable: true; disabled: boolean; value: number | null; onCommit: (value: number | null, key: string) => void } =>
    ({ name: fieldName(job.id, `arch.${path}`), nullable: true, disabled: !writable, value: arch[path], onCommit: (value, key) => set(`arch.${path}`, value, key) })
  return (
    <>
      <p className="quiet-text">{local(text.archAbout)}</p>
      <div className="field-grid">
        <NumberField label={local(text.angle)} kind="angle" min={0.0035} max={Math.PI / 2} {...field('entryAngleRad')} />
        <NumberField label={local(text.radius)} kind="length" min={0.5} max={1000} placeholder={local(text.leastTaken)} {...field('radiusM')} />
        <NumberField label={local(text.ownerTimes)} kind="ratio" min={1} max={500} {...field('ownerTimesOd')} />
        <NumberField label={local(text.rollerHeight)} kind="height" min={0} max={20} placeholder={local(text.asPlanned, { height: figure({ kind: 'height', value: lastRollerM(site) }) })} {...field('rollerHeightM')} />
        <NumberField label={local(text.spacing)} kind="length" min={0.5} max={60} placeholder={local(text.usual, { length: figure({ kind: 'length', value: USUAL_SPACING_M }) })} {...field('supportSpacingM')} />
      </div>
      {view === null || 'missing' in view ? <p role="status">{local(text.archNeeds)}</p> : <Answer view={view} lineLoadNPerM={site.pipe.properties?.lineLoadNPerM ?? null} />}
      <p className="buttons"><button type="button" disabled={!writable} onClick={() => set('arch', null)}>{local(text.drop)}</button></p>
    </>
  )
}

const Answer = ({ view, lineLoadNPerM }: { view: ArchView; lineLoadNPerM: number | null }): ReactNode => {
  const words = useWords()
  const { local, figure } = words
  const { arch, supports, radiusM, leastM, ownerM } = view
  const length = (value: number): string => figure({ kind: 'length', value })
  const tight = leastM !== null && radiusM < leastM - 1e-6
  const low = ownerM !== null && radiusM < ownerM - 1e-6
  const highest = Math.max(...supports.map(({ levelM }) => levelM))
  return (
    <>
      {tight ? <p role="status"><strong><Figure text={local(text.tooTight, { radius: length(radiusM), least: length(leastM) })} /></strong></p> : null}
      {!tight && low ? <p role="status"><strong><Figure text={local(text.belowOwner, { radius: length(radiusM), least: length(ownerM) })} /></strong></p> : null}
      <ArchPicture view={view} />
      <Rows
        label={local(text.archTitle)}
        rows={[
          [local(text.workedRadius), length(radiusM)], [local(text.rise), figure({ kind: 'height', value: arch.riseM })], [local(text.over), length(arch.overM)],
          [local(text.ramp), length(arch.rampM)], [local(text.ground), length(arch.lengthM)], [local(text.pipeUp), length(arch.pipeM)],
          ...(lineLoadNPerM === null ? [] : [[local(text.weight), figure({ kind: 'force', value: lineLoadNPerM * arch.pipeM })] as const]),
        ]}
      />
      <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.slings)}>
        <table className="limits">
          <thead><tr><th scope="col">{local(text.slings)}</th><th scope="col">{local(text.back)}</th><th scope="col">{local(text.high)}</th><th scope="col">{local(text.carries)}</th></tr></thead>
          <tbody>
            {supports.map(({ backM, levelM, loadN }, i) => (
              <tr key={backM}>
                <th scope="row">{i + 1}{levelM === highest ? ` · ${local(text.top)}` : ''}</th>
                <td><Figure text={length(backM)} /></td><td><Figure text={figure({ kind: 'height', value: levelM })} /></td><td>{loadN === null ? '?' : <Figure text={figure({ kind: 'force', value: loadN })} />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="quiet-text">{local(text.estimate)}</p>
    </>
  )
}
