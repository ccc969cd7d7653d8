import type { ReactNode } from 'react'
import { FRACTION_SLASH, textRuns } from '../../drawing/fractionText.ts'

/** Text with tape fractions set as true fractions: the face has no eighths, and a stand-in face once made 25/8 of 2⅝. */
export const Figure = ({ text }: { text: string }): ReactNode =>
  textRuns(text).map((run, at) =>
    run.as === 'plain' ? run.text : <span className="fraction" key={at}><span className="fraction-above">{run.above}</span>{FRACTION_SLASH}<span className="fraction-below">{run.below}</span></span>,
  )

/** The same in a text field, where only plain letters stand: 28⅛ becomes 28 1/8. */
export const plainFractions = (text: string): string =>
  textRuns(text).map((run) => (run.as === 'plain' ? run.text : `${run.above}/${run.below}`)).join('')
