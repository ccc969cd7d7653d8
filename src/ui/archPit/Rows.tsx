import type { ReactNode } from 'react'
import { Figure } from '../common/Figure.tsx'

/** Figures one under the other, each with its name. */
export const Rows = ({ label, rows }: { label: string; rows: readonly (readonly [name: string, value: string])[] }): ReactNode => (
  <div className="table-scroll" tabIndex={0} role="group" aria-label={label}>
    <table className="limits">
      <tbody>{rows.map(([name, value]) => <tr key={name}><th scope="row">{name}</th><td className="limit-value"><Figure text={value} /></td></tr>)}</tbody>
    </table>
  </div>
)
