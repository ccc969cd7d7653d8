import type { App } from '../../state/app.ts'
import type { RunThroughDesk } from '../../state/runThroughDesk.ts'

/** The desk of the run-through, loaded and made once when a screen first asks. */
export const runThroughOnce = (app: App): (() => Promise<RunThroughDesk>) => {
  let desk: Promise<RunThroughDesk> | null = null
  const load = async (): Promise<RunThroughDesk> => {
    const [{ createRunThroughDesk }, { openRunThroughPort }] = await Promise.all([import('../../state/runThroughDesk.ts'), import('../runThroughPort.ts')])
    return createRunThroughDesk(app, openRunThroughPort)
  }
  return () => (desk ??= load())
}
