import { renderText } from '../../messages/render.ts'
import { formatQuantity, formatRunning, type FormatOptions } from '../../units/format.ts'
import type { FlagState, FlagTarget } from '../tools/flagDrag.ts'
import { tapeWords } from './words.ts'

/** What a drag on the tape says while it runs: the running distance, and the way to the neighbours; or the saddle. */
export const liveFigures = (state: FlagState, flags: readonly FlagTarget[], options: FormatOptions): { main: string; more: string } | null => {
  if (state.name === 'dropping') {
    const main = renderText(tapeWords.saddle, { height: { kind: 'height', value: state.saddleM } }, { ...options, both: true })
    return { main, more: state.onJawLine ? renderText(tapeWords.onJawLine, {}, options) : '' }
  }
  if (state.name !== 'sliding') return null
  const dragged = flags.find(({ key }) => key === state.key)
  const others = flags.filter(({ key, itemId, saddleM }) => key !== state.key && itemId !== dragged?.itemId && (saddleM !== null || key === 'jaws'))
  const before = others.filter(({ runningM }) => runningM < state.runningM).at(-1)
  const after = others.find(({ runningM }) => runningM > state.runningM)
  const gap = (toM: number): string => formatQuantity({ kind: 'length', value: Math.abs(toM - state.runningM) }, options)
  return {
    main: formatRunning(state.runningM, options),
    more: [
      before === undefined ? '' : renderText(tapeWords.after, { gap: gap(before.runningM), label: before.label }, options),
      after === undefined ? '' : renderText(tapeWords.before, { gap: gap(after.runningM), label: after.label }, options),
    ].filter((text) => text !== '').join(' · '),
  }
}
