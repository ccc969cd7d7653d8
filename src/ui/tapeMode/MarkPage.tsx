import type { CSSProperties, ReactNode } from 'react'
import { tapeModeWords as text } from '../../messages/ui/tapeModeWords.ts'
import { AsSetField } from '../asSet/AsSetField.tsx'
import { Figure } from '../common/Figure.tsx'
import { useWords } from '../context.tsx'
import type { Mark } from './marks.ts'

/** One mark: its distance as large as the screen lets it, its height, sideways, how exactly, and what was measured. */
export const MarkPage = ({ mark }: { mark: Mark }): ReactNode => {
  const reader = useWords()
  const { local, figure, otherFigure, offset } = reader
  const { height, runningM, offsetM, rollerTopM } = mark
  const distance = { kind: 'length' as const, value: Math.abs(runningM) }
  const isDatum = figure(distance) === figure({ kind: 'length', value: 0 })
  const shown = isDatum ? local(text.datum) : figure(distance)
  const onLine = offset(offsetM) === offset(0)
  return (
    <>
      <section className="tapemode-band" data-side={runningM < 0 && !isDatum ? 'infeed' : 'exit'}>
        <p className="tapemode-side">{isDatum ? local(text.datumAbout) : local(runningM < 0 ? text.infeed : text.exit)}</p>
        <p className="tapemode-distance" style={{ '--chars': Math.max(6, shown.length) } as CSSProperties}><Figure text={shown} /></p>
        {isDatum ? null : <p className="tapemode-other"><Figure text={otherFigure(distance)} /></p>}
      </section>
      <dl className="tapemode-figures">
        {height === null ? null : (
          <div className="tapemode-height">
            <dt>{local(text.bop)}</dt>
            <dd>{height.plannedM === null ? local(text.heightUnknown) : <><b><Figure text={figure({ kind: 'height', value: height.plannedM })} /></b><small><Figure text={otherFigure({ kind: 'height', value: height.plannedM })} /></small></>}</dd>
          </div>
        )}
        {height === null ? null : (
          <div>
            <dt>{local(text.tolerance)}</dt>
            <dd>{height.toleranceM === null ? local(text.toleranceUnknown) : <b><Figure text={local(text.within, { tolerance: { kind: 'shortLength', value: height.toleranceM } })} /></b>}</dd>
          </div>
        )}
        <div>
          <dt>{local(text.offset)}{onLine ? '' : `, ${local(text.offsetAbout)}`}</dt>
          <dd><b><Figure text={offset(offsetM)} /></b>{onLine ? null : <small><Figure text={otherFigure({ kind: 'shortLength', value: Math.abs(offsetM) })} /></small>}</dd>
        </div>
        {rollerTopM === null ? null : (
          <div>
            <dt>{local(text.rollerTop)}</dt>
            <dd><b><Figure text={figure({ kind: 'height', value: rollerTopM })} /></b></dd>
          </div>
        )}
      </dl>
      {height === null ? null : <div className="tapemode-measured"><AsSetField key={mark.key} row={height} label={local(text.asSet)} /></div>}
    </>
  )
}
