import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { DrawnFigure } from './basic.ts'
import { detailLine, flat, outline } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { bandPoints, besideLine, middleOfLongest } from './lines.ts'
import { words } from './words.ts'

export interface DrawnRoad extends DrawnLine {
  traffic: 'open' | 'closed' | null
  figures: { widthM: DrawnFigure }
}

const asks = { en: 'traffic?', es: '¿tráfico?' } as const
const closed = { en: 'closed', es: 'cerrado' } as const

/** A carriageway: two kerbs and a broken centre line; a bar across it where it is closed, 'traffic?' while nobody has said. */
export const roadPlan = (r: DrawnRoad, context: SymbolContext): Primitive[] => {
  const half = (r.figures.widthM.value ?? 3.66) / 2
  const middle = middleOfLongest(r.points)
  const language = context.reader?.language ?? 'en'
  const state = r.traffic === null ? asks[language] : r.traffic === 'closed' ? closed[language] : ''
  return [
    outline(bandPoints(r.points, half * 2), { fill: 'way' }),
    { t: 'path', points: flat(besideLine(r.points, half)), ...detailLine },
    { t: 'path', points: flat(besideLine(r.points, -half)), ...detailLine },
    { t: 'path', points: flat(r.points), stroke: 'ink2', weight: 'context', dash: 'blue' },
    ...(r.traffic === 'closed' && middle !== null ? closedBar(middle.xM, middle.yM) : []),
    ...(middle === null ? [] : words([r.name, state].filter((text) => text !== '').join(' · '), middle.xM, middle.yM, context, { dyPx: 8 })),
  ]
}

/** A barrier across the way: slanted bars in a frame. */
const closedBar = (xM: number, yM: number): Primitive[] => [
  {
    t: 'mark', xM, yM,
    parts: [
      { t: 'rect', xM: -17, yM: -13, widthM: 34, heightM: 9, fill: 'sheet', stroke: 'ink', weight: 'boundary' },
      ...[-14, -4, 6].map((x): Primitive => outline([x, -13, x + 5, -13, x + 9, -4, x + 4, -4], { fill: 'ink' })),
    ],
  },
]
