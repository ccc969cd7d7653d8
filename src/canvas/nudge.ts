import type { App } from '../state/app.ts'
import { runCommand } from './run.ts'
import { screenRightRad } from './viewMoves.ts'

export type NudgeSide = 'right' | 'left' | 'up' | 'down' | 'raise' | 'lower'

/** Presses nearer together than this are one step of undo, ms. */
const burstMs = 1200
let burst = { key: '', atMs: 0, number: 0 }

/** Key that lets a burst of the same small move on the same items become one step. */
const burstKey = (what: string, ids: readonly string[]): string => {
  const nowMs = performance.now()
  const key = `${what}#${ids.join()}`
  const isSame = burst.key === key && nowMs - burst.atMs < burstMs
  burst = { key, atMs: nowMs, number: isSame ? burst.number : burst.number + 1 }
  return `nudge#${burst.number}#${key}`
}

/**
 * A small move across the sheet, or of the saddle: 1 in or 10 mm, far 1 ft or 100 mm, heights ¼ in or 5 mm. What is
 * attached to the run slides along it or across it, whichever the arrow is nearer to; the rest goes as the sheet shows.
 */
export const nudge = (app: App, ids: readonly string[], side: NudgeSide, isFar: boolean): void => {
  const { site } = app.site.getState()
  const isMetric = site.layout.displayUnits === 'metric'
  if (side === 'raise' || side === 'lower') {
    const stepM = isMetric ? 0.005 : 0.0254 / 4
    runCommand(app, 'dropBy', { ids, dLevelM: side === 'raise' ? stepM : -stepM }, undefined, burstKey('level', ids))
    return
  }
  const stepM = (isMetric ? 0.01 : 0.0254) * (isFar ? (isMetric ? 10 : 12) : 1)
  const right = screenRightRad(app.view.getState(), site.setUp)
  const headingRad = right + { right: 0, up: Math.PI / 2, left: Math.PI, down: -Math.PI / 2 }[side]
  const items = ids.flatMap((id) => site.placed.get(id) ?? [])
  const [first] = items
  const key = burstKey('move', ids)
  if (first !== undefined && site.setUp !== null && items.every(({ isAttached }) => isAttached)) {
    const run = site.atRunning(first.runningM ?? 0)
    const [alongRatio, rightRatio] = [Math.cos(headingRad - run.headingRad), -Math.sin(headingRad - run.headingRad)]
    const isAlong = Math.abs(alongRatio) >= Math.abs(rightRatio)
    runCommand(app, 'slideBy', { ids, dRunningM: isAlong ? Math.sign(alongRatio) * stepM : 0, dOffsetM: isAlong ? 0 : Math.sign(rightRatio) * stepM }, undefined, key)
    return
  }
  // Whole steps: a sheet along the axis leaves 1e-17 across it.
  const whole = (value: number): number => Math.round(value * 1e9) / 1e9
  runCommand(app, 'moveBy', { ids, dxM: whole(Math.cos(headingRad) * stepM), dyM: whole(Math.sin(headingRad) * stepM) }, undefined, key)
}

/** Turns by 15°, counter-clockwise for 1. */
export const turn = (app: App, ids: readonly string[], sign: 1 | -1): void => {
  runCommand(app, 'rotateBy', { ids, turnRad: (sign * 15 * Math.PI) / 180 }, undefined, burstKey('turn', ids))
}
