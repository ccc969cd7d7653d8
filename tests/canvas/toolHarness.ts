import { pickablesOf, handlesOf } from '../../src/canvas/plan/pickables.ts'
import { readDistance } from '../../src/canvas/plan/toolContext.ts'
import { startTool, stepTool, toolOverlay, type ToolState } from '../../src/canvas/tools/tool.ts'
import type { Effect, PointerFacts, ToolContext, ToolEvent, ToolOverlay } from '../../src/canvas/tools/types.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { kindOf } from '../../src/scene/kinds/index.ts'
import { formatQuantity, formatRunning } from '../../src/units/format.ts'

/**
 * A tool on a yard without a screen: the axis lies on y = 0, the sheet is drawn at `pxPerM` with the datum at px 500, 250
 * and y up the screen. Events are given in metres.
 */
export interface Harness {
  state: () => ToolState
  /** Effects since the last call. */
  take: () => Effect[]
  send: (event: ToolEvent) => Effect[]
  down: (xM: number, yM: number, over?: Partial<PointerFacts>) => Effect[]
  move: (xM: number, yM: number, over?: Partial<PointerFacts>) => Effect[]
  up: (xM: number, yM: number, over?: Partial<PointerFacts>) => Effect[]
  tap: (xM: number, yM: number, over?: Partial<PointerFacts>) => Effect[]
  key: (key: string) => Effect[]
  overlay: () => ToolOverlay
  context: ToolContext
}

export const contextOf = (document: YardDocument, over: Partial<ToolContext> = {}): ToolContext => {
  const site = deriveSite(document)
  const pxPerM = over.pxPerM ?? 20
  const pickables = over.pickables ?? pickablesOf(site, [])
  const matrix = { a: pxPerM, b: 0, c: 0, d: -pxPerM, e: 500, f: 250 }
  const selection = over.selection ?? []
  const kind = over.tool !== undefined && over.tool !== null && 'kind' in over.tool ? kindOf(over.tool.kind) : undefined
  const system = over.system ?? 'feetInches'
  return {
    bandPx: { widthPx: 1000, heightPx: 500 }, pxPerM, screenRightRad: 0, pickables, handles: handlesOf(pickables.filter(({ id }) => selection.includes(id)), matrix),
    selection, tool: null, snapping: true, frozen: false, hasSetUp: site.run !== null, runId: site.run?.id ?? null, runCorners: 0,
    gesture: kind === undefined ? null : kind.placing === 'polygon' || kind.placing === 'polyline' ? kind.placing : 'item', kindTitle: kind?.name ?? null, kindRidesOnRun: kind?.ridesOnRun === true,
    toRunning: site.toRunning, atRunning: site.atRunning, toPx: (xM, yM) => ({ xPx: 500 + xM * pxPerM, yPx: 250 - yM * pxPerM }),
    system, language: 'en', rowSpacingM: 6, readDistance: readDistance(system, 'en'),
    lengthText: (valueM) => formatQuantity({ kind: 'length', value: valueM }, { system, language: 'en' }), runningText: (runningM) => formatRunning(runningM, { system, language: 'en' }),
    spots: [], ...over,
  }
}

export const harness = (document: YardDocument, over: Partial<ToolContext> = {}): Harness => {
  const context = contextOf(document, over)
  let state = startTool(context)
  let kept: Effect[] = []
  const send = (event: ToolEvent): Effect[] => {
    const step = stepTool(state, event, context)
    state = step.state
    kept.push(...step.effects)
    return [...step.effects]
  }
  const facts = (xM: number, yM: number, over: Partial<PointerFacts> = {}): PointerFacts => ({
    pointerId: 1, pointer: 'mouse', xM, yM, ...context.toPx(xM, yM), shift: false, alt: false, mod: false, button: 0, timeMs: 0, ...over,
  })
  const down: Harness['down'] = (xM, yM, over) => send({ type: 'down', ...facts(xM, yM, over) })
  const up: Harness['up'] = (xM, yM, over) => send({ type: 'up', ...facts(xM, yM, over) })
  return {
    state: () => state, send, down, up, context,
    take: () => {
      const taken = kept
      kept = []
      return taken
    },
    move: (xM, yM, over) => send({ type: 'move', ...facts(xM, yM, over) }),
    tap: (xM, yM, over) => [...down(xM, yM, over), ...up(xM, yM, over)],
    key: (key) => send({ type: 'key', key, shift: false, alt: false, mod: false }),
    overlay: () => toolOverlay(state, context),
  }
}

export const named = (effects: readonly Effect[]): string[] => effects.map((effect) => effect.do)
/** Arguments of the last preview or command among the effects. */
export const lastArgs = (effects: readonly Effect[]): Record<string, unknown> => {
  const found = effects.findLast((effect) => effect.do === 'preview' || effect.do === 'command')
  if (found === undefined || !('args' in found)) throw new Error('no preview and no command')
  return found.args as Record<string, unknown>
}
