import type { Paint2D } from '../../src/drawing/paint.ts'

export interface Call {
  name: string
  args: readonly (number | string | boolean | undefined)[]
  state: { fillStyle: string | object; strokeStyle: string | object; lineWidth: number; globalAlpha: number; font: string; dash: readonly number[] }
}

/** A 2D context that writes down every call with the pen it was made with. Text is 0.5 em a letter wide. */
export const createRecorder = (): Paint2D & { calls: Call[] } => {
  const calls: Call[] = []
  const stack: { state: object; dash: readonly number[] }[] = []
  let dash: readonly number[] = []
  const noted = (name: string) => (...args: (number | string | boolean | undefined)[]): void => {
    const { fillStyle, strokeStyle, lineWidth, globalAlpha, font } = recorder
    calls.push({ name, args, state: { fillStyle, strokeStyle, lineWidth, globalAlpha, font, dash } })
  }
  const recorder: Paint2D & { calls: Call[] } = {
    calls,
    fillStyle: '#000000', strokeStyle: '#000000', lineWidth: 1, lineCap: 'butt', lineJoin: 'miter', globalAlpha: 1, font: '10px sans-serif', textAlign: 'left', textBaseline: 'alphabetic',
    save: () => {
      const { fillStyle, strokeStyle, lineWidth, lineCap, lineJoin, globalAlpha, font, textAlign, textBaseline } = recorder
      stack.push({ state: { fillStyle, strokeStyle, lineWidth, lineCap, lineJoin, globalAlpha, font, textAlign, textBaseline }, dash })
    },
    restore: () => {
      const kept = stack.pop()
      if (kept === undefined) throw new Error('restore without save')
      Object.assign(recorder, kept.state)
      dash = kept.dash
    },
    setLineDash: (segments) => {
      dash = [...segments]
    },
    measureText: (text) => ({ width: text.length * 0.5 * Number(/([\d.]+)px/.exec(recorder.font)?.[1] ?? 10) }),
    beginPath: noted('beginPath'), moveTo: noted('moveTo'), lineTo: noted('lineTo'), arcTo: noted('arcTo'), ellipse: noted('ellipse'), closePath: noted('closePath'),
    fill: noted('fill'), stroke: noted('stroke'), clip: noted('clip'), fillText: noted('fillText'), strokeText: noted('strokeText'),
  }
  return recorder
}
