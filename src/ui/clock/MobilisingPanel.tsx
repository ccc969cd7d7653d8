import { useMemo, type ReactNode } from 'react'
import { mobilisingOf } from '../../derive/mobilising.ts'
import { alsoBring, clockWords as text } from '../../messages/ui/clockWords.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useSite, useWords } from '../context.tsx'

/** Counts from the plan with spares, sticks and truckloads. */
export const MobilisingPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { local } = words
  const site = useSite((state) => state.site)
  const list = useMemo(() => mobilisingOf(site), [site])
  const height = (value: number): string => words.figure({ kind: 'height', value })
  const mass = (value: number): string => words.figure({ kind: 'mass', value })
  return (
    <Panel title={local(text.bringTitle)} onClose={onClose} wide>
      {list.rows.length === 0 ? <p>{local(text.nothingPlaced)}</p> : (
        <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.bringTitle)}>
          <table className="limits">
            <thead><tr><th scope="col">{local(text.gearKind)}</th><th scope="col">{local(text.placed)}</th><th scope="col">{local(text.bring)}</th><th scope="col">{local(text.heights)}</th></tr></thead>
            <tbody>
              {list.rows.map((row) => (
                <tr key={row.kind}>
                  <th scope="row">{local(row.name)}</th><td>{row.placed}</td><td><strong>{row.bring}</strong></td>
                  <td>{row.saddleM === null ? '–' : <Figure text={[...new Set([height(row.saddleM.lowM), height(row.saddleM.highM)])].join(' – ')} />}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="quiet-text">{local(text.spares)}</p>
      <p><Figure text={list.stickMassKg === null ? local(text.sticksOnly, { sticks: list.sticks }) : local(text.sticks, { sticks: list.sticks, mass: mass(list.stickMassKg), total: mass(list.stickMassKg * list.sticks) })} /></p>
      {list.sticksAssumed ? <p className="quiet-text">{local(text.sticksAssumed)}</p> : null}
      {list.truck === null ? null : <p><Figure text={local(list.truck.loads === 1 ? text.trucksOne : text.trucks, { loads: list.truck.loads, per: list.truck.sticksPerLoad, why: local(list.truck.endedBy === 'mass' ? text.byMass : text.byRoom) })} /></p>}
      <h3>{local(text.alsoTitle)}</h3>
      <ul className="plain-list">{alsoBring.map((item) => <li key={item.en}>{local(item)}</li>)}</ul>
    </Panel>
  )
}
