import { drawOverlay, drawStart, stepDraw, type DrawState } from './draw.ts'
import { measureOverlay, measureStart, stepMeasure, type MeasureState } from './measure.ts'
import { placeOverlay, placeStart, stepPlace, type PlaceState } from './place.ts'
import { rollOffOverlay, rollOffStart, stepRollOff, type RollOffState } from './rollOff.ts'
import { rowOverlay, rowStart, stepRow, type RowState } from './row.ts'
import { idle, selectOverlay, stepSelect, type SelectState } from './select.ts'
import { stepStrip, stripOverlay, stripStart, type StripState } from './strip.ts'
import type { Step, ToolContext, ToolEvent, ToolOverlay } from './types.ts'

/** State of whichever tool is in hand. */
export type ToolState = SelectState | PlaceState | RowState | DrawState | StripState | MeasureState | RollOffState

/** Fresh state of the tool the view names. */
export const startTool = (context: Pick<ToolContext, 'tool' | 'gesture' | 'rowSpacingM'>): ToolState => {
  const { tool } = context
  if (tool === null) return idle
  if (tool.name === 'measure') return measureStart
  if (tool.name === 'strip') return stripStart
  if (tool.name === 'rollOff') return rollOffStart
  if (tool.name === 'row') return rowStart(context)
  return context.gesture === 'item' || context.gesture === null ? placeStart : drawStart
}

export const stepTool = (state: ToolState, event: ToolEvent, context: ToolContext): Step<ToolState> => {
  switch (state.name) {
    case 'placing': return stepPlace(state, event, context)
    case 'rowing': return stepRow(state, event, context)
    case 'drawing': return stepDraw(state, event, context)
    case 'stripping': return stepStrip(state, event, context)
    case 'measuring': return stepMeasure(state, event, context)
    case 'rollingOff': return stepRollOff(state, event, context)
    default: return stepSelect(state, event, context)
  }
}

export const toolOverlay = (state: ToolState, context: ToolContext): ToolOverlay => {
  switch (state.name) {
    case 'placing': return placeOverlay(state, context)
    case 'rowing': return rowOverlay(state, context)
    case 'drawing': return drawOverlay(state, context)
    case 'stripping': return stripOverlay(state, context)
    case 'measuring': return measureOverlay(state, context)
    case 'rollingOff': return rollOffOverlay()
    default: return selectOverlay(state, context)
  }
}

/** Whether something is under way that Esc should end, keys should be typed into, or an edge should push the view. */
export const isBusy = (state: ToolState): boolean => {
  switch (state.name) {
    case 'idle': return false
    case 'placing': return state.at !== null
    case 'rowing': return state.first !== null
    case 'drawing': return state.points.length > 0
    case 'stripping': return state.from !== null
    case 'measuring': return state.from !== null
    case 'rollingOff': return state.press !== null
    default: return true
  }
}

/** Whether the pointer held at the edge of the band pushes the view. */
export const pushesEdge = (state: ToolState): boolean =>
  ['moving', 'reshaping', 'boxing'].includes(state.name) || (state.name === 'rowing' && state.pointerId !== null) || ((state.name === 'stripping' || state.name === 'measuring') && state.press !== null && state.from !== null)
