import { kindOf } from '../../scene/kinds/index.ts'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import { deleteSays } from '../../scene/commands/remove.ts'
import { useAsk, useUi, useWords } from '../context.tsx'
import { useCommand } from '../command.ts'
import { itemLabel } from './names.ts'

/** Deletes the chosen items. Where something goes with them or stays behind loose, says what and waits. */
export const useRemove = (): ((ids: readonly string[]) => Promise<void>) => {
  const { app } = useUi()
  const words = useWords()
  const ask = useAsk()
  const run = useCommand()
  return async (ids) => {
    const { document } = app.documents.getState()
    const says = deleteSays(document, ids)
    const { site } = app.site.getState()
    const names = ids.flatMap((id) => {
      const record = document.records[id]
      return record === undefined || kindOf(record.kind) === undefined ? [] : [itemLabel(site, record as PlacedRecord, words)]
    })
    const { revision } = app.documents.getState()
    if (says.goes.length === 0) {
      app.view.setState({ notice: { text: words.say('removeLocked'), undo: false, atRevision: revision } })
      return
    }
    if (says.text !== null) {
      const sure = await ask({ title: words.say('removeTitle', { names: names.join(', ') }), lines: [words.local(says.text)], yes: words.say('remove'), no: words.say('cancel'), danger: true })
      if (!sure) return
    }
    if (run('remove', { ids })) app.view.setState({ selection: [], notice: { text: words.say('removed', { names: names.join(', ') }), undo: true, atRevision: app.documents.getState().revision } })
  }
}
