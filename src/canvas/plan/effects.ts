import type { App } from '../../state/app.ts'
import { runAndSelect, runCommand, say } from '../run.ts'
import { showPlace } from '../actions.ts'
import { panned } from '../viewMoves.ts'
import type { Effect } from '../tools/types.ts'
import { frameSetUp } from './toolContext.ts'

/** How long an undo is offered after a touch move, ms. */
const NOTICE_MS = 5000

/** A notice that goes after its time, unless another took its place. */
const sayFor = (app: App, text: Extract<Effect, { do: 'notice' }>['text'], undo: boolean): void => {
  say(app, text, undo)
  const { notice } = app.view.getState()
  setTimeout(() => {
    if (app.view.getState().notice === notice) app.view.setState({ notice: null })
  }, NOTICE_MS)
}

/** Carries out what a tool asked for. A preview whose command refuses leaves the one before standing. */
export const runEffect = (app: App, effect: Effect): void => {
  const documents = app.documents.getState()
  switch (effect.do) {
    case 'begin': return documents.begin(effect.label)
    case 'preview':
      try {
        documents.showPreview(app.edit(effect.command, effect.args))
      } catch {
        // A corner dragged on to its neighbour, a row of none: shown again as soon as the command can.
      }
      return
    case 'commit': return void documents.commitPreview(effect.label)
    case 'cancelPreview': return documents.cancelPreview()
    case 'command': return void (effect.select === true ? runAndSelect(app, effect.command, effect.args) : runCommand(app, effect.command, effect.args, effect.label))
    case 'select': return app.view.setState({ selection: effect.ids })
    case 'pan': return app.view.setState(panned(app.view.getState(), frameSetUp(app), effect.dxPx, effect.dyPx))
    case 'tool': return app.view.setState({ tool: effect.tool })
    case 'measure': return app.view.setState({ measure: effect.measure })
    case 'rollOff': return app.view.setState({ rollOff: effect.rollOff })
    case 'notice': return sayFor(app, effect.text, effect.undo)
    case 'hover': return app.view.getState().hoverId === effect.id ? undefined : app.view.setState({ hoverId: effect.id })
    case 'openZone': return app.view.setState({ panel: 'zones', zoneKey: effect.key })
    case 'openFinding': return app.view.setState({ openFindingKey: effect.key })
    case 'show': return showPlace(app, effect.xM, effect.yM)
  }
}
