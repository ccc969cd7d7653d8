/** A piece of drawn lettering: as it stands, or a fraction set with a small numerator above a small denominator. */
export type TextRun = { as: 'plain'; text: string } | { as: 'fraction'; above: string; below: string }

/** Size of the digits of a fraction, and how far its numerator stands above the baseline, in shares of the size of the text. */
export const FRACTION_SIZE_RATIO = 0.62
export const FRACTION_RISE_RATIO = 0.28
export const FRACTION_SLASH = '\u2044'

/** The face has no eighths, and a stand-in face once turned 2⅝ into 25/8: they are set here instead. */
const eighths: Readonly<Record<string, string>> = { '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' }

/** A tape fraction (halves to sixty-fourths) not part of a longer number, or an eighth as one character. */
const tapeFraction = /(?<![\d/.])(\d{1,2})\/(2|4|8|16|32|64)(?![\d/])|([⅛⅜⅝⅞])/gu

/** Splits text into plain pieces and true fractions; `1/200` (a ratio) and dates stay plain. */
export const textRuns = (text: string): readonly TextRun[] => {
  const runs: TextRun[] = []
  let from = 0
  for (const match of text.matchAll(tapeFraction)) {
    if (match.index > from) runs.push({ as: 'plain', text: text.slice(from, match.index) })
    const [above = '', below = ''] = match[3] === undefined ? [match[1], match[2]] : (eighths[match[3]] ?? '').split('/')
    runs.push({ as: 'fraction', above, below })
    from = match.index + match[0].length
  }
  if (from < text.length || runs.length === 0) runs.push({ as: 'plain', text: text.slice(from) })
  return runs
}

/**
 * Width of text before any face is at hand (placing labels, SVG). Mean widths of a narrow face, em;
 * true to some 6 %, so leave a few px.
 */
export const guessedWidthPx = (text: string, sizePx: number): number => {
  let em = 0
  for (const letter of text) {
    if (/[\u2009\u202f]/u.test(letter)) em += 0.16
    else if (/[ilIj.,:;'"!|]/u.test(letter)) em += 0.23
    else if (/[mwMW—]/u.test(letter)) em += 0.72
    else if (/[A-Z]/u.test(letter)) em += 0.53
    else if (letter === ' ') em += 0.23
    else em += 0.455
  }
  return em * sizePx
}
