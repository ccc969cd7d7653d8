import type { ReactNode } from 'react'
import { modulusRowsOf } from '../../derive/pipe.ts'
import { modulusWords } from '../../messages/ui/modulusWords.ts'
import type { JobRecord } from '../../scene/records/frame.ts'
import { hourS } from '../../units/factors.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { useSite, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'

/** Lowest and highest wall temperature, and the modulus each question works with at the wall temperature shown. */
export const WallModulus = ({ job }: { job: JobRecord }): ReactNode => {
  const words = useWords()
  const { local, figure } = words
  const run = useCommand()
  const pipe = useSite((state) => state.site.pipe)
  const { value, band } = job.wallTemperatureC
  const setEnd = (end: 'low' | 'high') => (next: number | null, mergeKey: string): void => {
    if (value === null) return
    const ends = { low: band?.low ?? value, high: band?.high ?? value, [end]: next ?? value }
    // Both ends at the value itself are no band.
    const { band: _before, ...plain } = job.wallTemperatureC
    const isBand = ends.low < value || ends.high > value
    run('setJob', { path: 'wallTemperatureC', value: isBand ? { ...plain, band: { low: ends.low, likely: value, high: ends.high } } : plain }, undefined, mergeKey)
  }
  const temperature = figure({ kind: 'temperature', value: pipe.wallTemperatureC })
  const hours = (count: number): string => figure({ kind: 'duration', value: count * hourS })
  const modulus = (valuePa: number | null): string => figure({ kind: 'stress', value: valuePa })
  return (
    <section aria-label={local(modulusWords.title)}>
      <div className="field-grid">
        <NumberField label={local(modulusWords.low)} kind="temperature" value={band?.low ?? null} nullable disabled={value === null} placeholder={local(modulusWords.bandNone)} min={-60} max={value ?? 90} name={fieldName(job.id, 'wallTemperatureC.band.low')} onCommit={setEnd('low')} />
        <NumberField label={local(modulusWords.high)} kind="temperature" value={band?.high ?? null} nullable disabled={value === null} placeholder={local(modulusWords.bandNone)} min={value ?? -60} max={90} name={fieldName(job.id, 'wallTemperatureC.band.high')} onCommit={setEnd('high')} />
      </div>
      {value === null ? <p className="quiet-text">{local(modulusWords.bandNeeds)}</p> : null}
      {pipe.properties === null ? null : (
        <div className="table-scroll">
          <table className="modulus">
            <caption className="quiet-text"><Figure text={`${local(modulusWords.title)}, ${local(pipe.temperatureAssumed ? modulusWords.assumed : modulusWords.at, { temperature })}`} /></caption>
            <thead><tr><th scope="col">{local(modulusWords.question)}</th><th scope="col">{local(modulusWords.duration)}</th><th scope="col">{local(modulusWords.modulus)}</th><th scope="col">{local(modulusWords.range)}</th></tr></thead>
            <tbody>
              {modulusRowsOf(pipe).map(({ question, durationH, readAtH, modulusPa, lowPa, highPa }) => (
                <tr key={question}>
                  <th scope="row">{local(modulusWords[question])}</th>
                  <td><Figure text={durationH === readAtH ? hours(durationH) : local(modulusWords.readAt, { lasts: hours(durationH), read: hours(readAtH) })} /></td>
                  <td><Figure text={modulus(modulusPa)} /></td>
                  <td><Figure text={`${modulus(lowPa)} – ${modulus(highPa)}`} /></td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="quiet-text">{local(modulusWords.source)}</p>
    </section>
  )
}
