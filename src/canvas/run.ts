import { textIn, type Localized } from '../messages/localized.ts'
import { kindOf } from '../scene/kinds/index.ts'
import type { App } from '../state/app.ts'

/** A short notice; with `undo` it offers to take the last step back. */
export const say = (app: App, text: Localized, undo = false): void => {
  const { language } = app.view.getState()
  app.view.setState({ notice: { text: textIn(text, language), undo, atRevision: app.documents.getState().revision } })
}

const isLocalized = (value: unknown): value is Localized => typeof value === 'object' && value !== null && 'en' in value && 'es' in value

/** Runs a command; a refusal, hold still or a window that only reads become a notice. False where nothing changed. */
export const runCommand = (app: App, name: string, args: unknown, label?: Parameters<App['command']>[2], mergeKey?: string): boolean => {
  if (app.view.getState().holdStill) {
    say(app, { en: 'Held still: nothing can be changed. Release it to edit.', es: 'Vista fija: nada cambia. Suéltela para editar.' })
    return false
  }
  if (!app.documents.getState().writable) {
    say(app, { en: 'This window only reads.', es: 'Esta ventana solo lee.' })
    return false
  }
  try {
    return app.command(name, args, label, mergeKey)
  } catch (error) {
    say(app, typeof error === 'object' && error !== null && 'reason' in error && isLocalized(error.reason) ? error.reason : { en: error instanceof Error ? error.message : String(error), es: '' })
    return false
  }
}

/** Runs a command and chooses what it added. */
export const runAndSelect = (app: App, name: string, args: unknown): boolean => {
  const before = app.documents.getState().document.records
  if (!runCommand(app, name, args)) return false
  const added = Object.values(app.documents.getState().document.records).flatMap(({ id, kind }) => (before[id] === undefined && kindOf(kind) !== undefined ? [id] : []))
  if (added.length > 0) app.view.setState({ selection: added })
  return true
}
