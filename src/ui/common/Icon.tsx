import type { ReactNode } from 'react'

/** Our own line marks for buttons, 24 × 24, drawn in the ink of the words beside them. */
const paths = {
  undo: 'M9 6L4 11l5 5M4 11h10a6 6 0 0 1 0 12h-3',
  redo: 'M15 6l5 5-5 5M20 11H10a6 6 0 0 0 0 12h3',
  turn: 'M4 9h14l-3-3M20 15H6l3 3',
  north: 'M12 3l5 17-5-4-5 4zM12 3v13',
  along: 'M2 9h20v7H2zM6 9v3M10 9v4M14 9v3M18 9v4',
  hold: 'M6 11V7a6 6 0 0 1 12 0v4M5 11h14v10H5zM12 15v3',
  list: 'M8 6h13M8 12h13M8 18h13M3.5 6h.01M3.5 12h.01M3.5 18h.01',
  measure: 'M3 12h18M3 6v12M21 6v12M9 9v6M15 9v6',
  strip: 'M3 18L9 7l6 7 6-9',
  level: 'M5 6h14l-7 10zM2 20h20',
  note: 'M3 4h18v12H11l-5 5v-5H3z',
  row: 'M3 12h18M5 8v8M12 8v8M19 8v8',
  up: 'M5 15l7-8 7 8',
  down: 'M5 9l7 8 7-8',
  raise: 'M5 13l7-8 7 8M4 20h16',
  lower: 'M5 6l7 8 7-8M4 20h16',
  left: 'M15 5l-8 7 8 7',
  right: 'M9 5l8 7-8 7',
  plus: 'M12 4v16M4 12h16',
  close: 'M5 5l14 14M19 5L5 19',
  lock: 'M7 11V8a5 5 0 0 1 10 0v3M5 11h14v10H5z',
  unlock: 'M7 11V8a5 5 0 0 1 9.6-2M5 11h14v10H5z',
  copy: 'M8 8h12v12H8zM16 8V4H4v12h4',
  remove: 'M4 7h16M9 7V4h6v3M6 7l1 14h10l1-14M10 11v6M14 11v6',
  attach: 'M9 15l6-6M8 12l-3 3a4 4 0 0 0 5 5l3-3M16 12l3-3a4 4 0 0 0-5-5l-3 3',
  more: 'M5 12h.01M12 12h.01M19 12h.01',
  whatIf: 'M4 20c6 0 6-8 8-8s2 4 8 4M4 20c6 0 6-14 16-14M17 3l3 3-3 3',
  help: 'M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .5-1.5 1.2-1.5 2.3M12 18.5h.01',
  gear: 'M4 6h16v5H4zM7 11v7M17 11v7M4 18h6M14 18h6',
  fit: 'M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5',
  runThrough: 'M3 12h12M11 8l4 4-4 4M18 6v12M21 9v6',
  play: 'M7 4l13 8-13 8z',
  pause: 'M8 4v16M16 4v16',
  arrivalNext: 'M3 12h10M9 8l4 4-4 4M18 5v14M15 19h6',
  arrivalBack: 'M21 12H11M15 8l-4 4 4 4M6 5v14M3 19h6',
  talk: 'M3 4h13v9H9l-4 4v-4H3zM18 8h3v9h-2v4l-4-4h-4',
  voice: 'M4 9v6h4l6 5V4L8 9zM17.5 8.5a5 5 0 0 1 0 7M20 6a9 9 0 0 1 0 12',
  wet: 'M12 3c4 5 6 8 6 11a6 6 0 0 1-12 0c0-3 2-6 6-11zM9.5 14.5a2.5 2.5 0 0 0 2.5 2.5',
  fold: 'M3 5h6v14H3zM15 5h6v14h-6M12 3v18',
} as const
export type IconName = keyof typeof paths

export const Icon = ({ name, sizePx = 20 }: { name: IconName; sizePx?: number }): ReactNode => (
  <svg className="icon" width={sizePx} height={sizePx} viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    <path d={paths[name]} fill="none" stroke="currentColor" strokeWidth={name === 'more' ? 3 : 1.7} strokeLinecap="round" strokeLinejoin="round" />
  </svg>
)
