import type { ReactNode } from 'react'
import { crewCommands } from '../../derive/crewDefaults.ts'
import { peopleWords } from '../../messages/ui/peopleWords.ts'
import { useCommand } from '../command.ts'
import { useDocuments, useSite, useWords } from '../context.tsx'

/** Sets the usual spots of all tasks that have none, each clear of the zones; nothing on a layout without a line. */
export const CrewButton = (): ReactNode => {
  const { local } = useWords()
  const run = useCommand()
  const writable = useDocuments((state) => state.writable)
  const site = useSite((state) => state.site)
  if (site.run === null || site.setUp === null) return null
  const press = (): void => {
    const commands = crewCommands(site)
    if (commands.length > 0) run('sequence', { commands, label: peopleWords.usual })
  }
  return (
    <div className="propose-buttons">
      <button type="button" disabled={!writable} onClick={press}>{local(peopleWords.usual)}</button>
    </div>
  )
}
export default CrewButton
