import type { ReactNode } from 'react'
import type { BowAt } from '../../derive/bow.ts'
import type { BowAnswer } from '../../derive/bowAnswer.ts'
import { bowTurnWords } from '../../messages/bowTurn.ts'
import { bowWords as text } from '../../messages/ui/bowWords.ts'
import type { QuantityKind } from '../../units/quantity.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useWords } from '../context.tsx'
import { gapLevel } from './useBow.ts'

const rows: readonly { label: keyof typeof text; kind: QuantityKind; of: (at: BowAt) => number }[] = [
  { label: 'upright', kind: 'shortLength', of: ({ uprightGapM }) => uprightGapM },
  { label: 'sideways', kind: 'shortLength', of: ({ sidewaysGapM }) => sidewaysGapM },
  { label: 'hiLo', kind: 'shortLength', of: ({ hiLoM }) => hiLoM },
  { label: 'clamp', kind: 'force', of: ({ clampN }) => clampN },
  { label: 'effort', kind: 'ratio', of: ({ effortRatio }) => effortRatio },
]

/** A gap with the shape of its level. */
export const Gap = ({ answer, at }: { answer: BowAnswer; at: BowAt | null }): ReactNode => {
  const { figure } = useWords()
  if (at === null) return '…'
  const level = gapLevel(at.faceGapM, answer)
  return <strong className="bow-gap">{level === 'met' ? null : <LevelMark level={level} sizePx={17} named />}<Figure text={figure({ kind: 'shortLength', value: at.faceGapM })} /></strong>
}

/** Figures of the turn shown beside those of the best one, and what follows from all turns. */
export const BowFigures = ({ answer, at }: { answer: BowAnswer; at: BowAt | null }): ReactNode => {
  const { local, figure } = useWords()
  const { sweep } = answer
  if (sweep === null) return null
  const best = sweep.leastGap
  const short = (valueM: number): string => figure({ kind: 'shortLength', value: valueM })
  const words = (turnRad: number): string => local(bowTurnWords(turnRad))
  return (
    <>
      <div className="table-scroll">
        <table className="bow-table">
          <thead><tr><th scope="col"><span className="visually-hidden">{local(text.figure)}</span></th><th scope="col">{local(text.thisTurn)}</th><th scope="col">{local(text.bestTurn, { turn: words(best.turnRad) })}</th></tr></thead>
          <tbody>
            <tr><th scope="row">{local(text.faceGap)}</th><td><Gap answer={answer} at={at} /></td><td><Gap answer={answer} at={best} /></td></tr>
            {rows.map(({ label, kind, of }) => (
              <tr key={label}><th scope="row">{local(text[label])}</th>{[at, best].map((one, i) => <td key={i}>{one === null ? '…' : <Figure text={figure({ kind, value: of(one) })} />}</td>)}</tr>
            ))}
          </tbody>
        </table>
      </div>
      <p><Figure text={local(text.worst, { worst: short(sweep.worstGapM), straight: short(sweep.straight.faceGapM) })} /></p>
      <p className="quiet-text"><Figure text={local(text.leastEffort, { turn: words(sweep.leastEffort.turnRad), effort: figure({ kind: 'ratio', value: sweep.leastEffort.effortRatio }) })} /> <Figure text={local(text.eachFace, { infeed: words(sweep.leastGapOf.infeed), exit: words(sweep.leastGapOf.exit) })} /></p>
    </>
  )
}
