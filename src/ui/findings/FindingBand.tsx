import { useEffect, useState, type CSSProperties, type ReactNode } from 'react'
import type { Finding, Level } from '../../checks/finding.ts'
import type { FindingRange } from '../../checks/ranges/range.ts'
import { rangeWords } from '../../messages/ui/rangeWords.ts'
import { Figure } from '../common/Figure.tsx'
import { useIsStale, useSite, useUi, useWords, type Words } from '../context.tsx'
import { levelKey, sentenceWords } from './words.ts'

/** Asks the worker for the band of a finding, once a stamp; undefined while it is worked out, null where there is none. */
const useRange = (finding: Finding): FindingRange | null | undefined => {
  const { app } = useUi()
  const stamp = useSite((state) => state.stamp)
  const isStale = useIsStale()
  const [answer, setAnswer] = useState<{ stamp: string; finding: Finding; range: FindingRange | null } | null>(null)
  useEffect(() => {
    // A finding of an older layout would be held against the present one.
    if (isStale || finding.measured === null || finding.isUnknown) return
    let isWanted = true
    void app.ask({ name: 'range', args: { finding } }).then((range) => { if (isWanted) setAnswer({ stamp, finding, range }) })
    return () => { isWanted = false }
  }, [app, stamp, isStale, finding])
  if (finding.measured === null || finding.isUnknown) return null
  return answer !== null && answer.stamp === stamp && answer.finding === finding ? answer.range : undefined
}

/** Low, likely and high of what a finding measures, with the limit, as a bar and in figures; nothing where it has no band. `named` says what it is about. */
const FindingBand = ({ finding, named = false }: { finding: Finding; named?: boolean }): ReactNode => {
  const words = useWords()
  const range = useRange(finding)
  if (range === null || range === undefined) return null
  return (
    <div className="band-figure">
      {named ? <p className="band-name"><Figure text={sentenceWords(finding.what, words)} /></p> : null}
      <BandFigure range={range} words={words} />
    </div>
  )
}
export default FindingBand

const levelWord = (level: Level, words: Words): string => (level === 'met' ? words.local(rangeWords.levelMet) : words.say(levelKey(level)))

/** 'Between met and FIX by the range of the modulus.' */
export const causesSentence = (range: FindingRange, words: Words): string => {
  const causes = range.by.map((cause) => words.local(rangeWords[cause]))
  const list = causes.length < 2 ? causes.join('') : `${causes.slice(0, -1).join(', ')}${words.local(rangeWords.and)}${causes.at(-1)}`
  return range.best === range.worst ? words.local(rangeWords.within, { causes: list }) : words.local(rangeWords.straddles, { best: levelWord(range.best, words), worst: levelWord(range.worst, words), causes: list })
}

const BandFigure = ({ range, words }: { range: FindingRange; words: Words }): ReactNode => {
  const { low, likely, high, limit, kind } = range
  const text = (value: number): string => words.figure({ kind, value })
  // The bar takes in the limit where that lies within reach of the band; one far off would press the band flat.
  const isNear = limit !== null && limit > low - 1.5 * (high - low) && limit < high + 1.5 * (high - low)
  const [from, to] = isNear ? [Math.min(low, limit), Math.max(high, limit)] : [low, high]
  const at = (value: number): string => `${(100 * (value - from)) / (to - from)}%`
  const values = { low: text(low), likely: text(likely), high: text(high) }
  return (
    <>
      <div className="band-bar" role="img" aria-label={limit === null ? words.local(rangeWords.said, values) : words.local(rangeWords.saidLimit, { ...values, limit: text(limit) })}>
        <span className="band-line" style={{ '--from': at(low), '--to': at(high) } as CSSProperties} />
        <span className="band-likely" style={{ '--at': at(likely) } as CSSProperties} />
        {isNear ? <span className="band-limit" style={{ '--at': at(limit) } as CSSProperties} /> : null}
      </div>
      <p className="band-numbers" aria-hidden="true">
        <span>{words.local(rangeWords.low)} <Figure text={values.low} /></span>
        <span>{words.local(rangeWords.likely)} <Figure text={values.likely} /></span>
        <span>{words.local(rangeWords.high)} <Figure text={values.high} /></span>
      </p>
      {limit === null ? null : <p className="band-limit-word" aria-hidden="true"><Figure text={words.local(rangeWords.limit, { limit: text(limit) })} /></p>}
      <p>{causesSentence(range, words)}</p>
    </>
  )
}
