import { useMemo } from 'react'
import type { Localized } from '../messages/localized.ts'
import type { StepLabel } from '../scene/edit.ts'
import { useUi, useWords } from './context.tsx'

/** What lies beside the plan or only makes it safer goes on while the plan is held still. */
const besideThePlan: ReadonlySet<string> = new Set(['setAsSet', 'lockStaked'])

export type RunCommand = (name: string, args: unknown, label?: StepLabel, mergeKey?: string) => boolean

const reasonOf = (error: unknown): Localized | null => {
  if (typeof error !== 'object' || error === null || !('reason' in error)) return null
  const { reason } = error
  return typeof reason === 'object' && reason !== null && 'en' in reason && 'es' in reason ? (reason as Localized) : null
}

/** Runs a command of the registry as one step; what a command refuses is said in the notice line, never thrown at the screen. */
export const useCommand = (): RunCommand => {
  const { app } = useUi()
  const words = useWords()
  return useMemo(() => (name, args, label, mergeKey) => {
    const { documents, view } = app
    if (!documents.getState().writable) {
      view.setState({ notice: { text: words.say('readOnlyNotice'), undo: false, atRevision: documents.getState().revision } })
      return false
    }
    if (view.getState().holdStill && !besideThePlan.has(name)) {
      view.setState({ notice: { text: words.say('holdStillNotice'), undo: false, atRevision: documents.getState().revision } })
      return false
    }
    try {
      return app.command(name, args, label, mergeKey)
    } catch (error) {
      const reason = reasonOf(error)
      const text = reason === null ? words.say('commandFailed', { reason: error instanceof Error ? error.message : String(error) }) : words.local(reason)
      view.setState({ notice: { text, undo: false, atRevision: documents.getState().revision } })
      return false
    }
  }, [app, words])
}
