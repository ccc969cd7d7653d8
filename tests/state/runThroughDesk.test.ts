import { describe, expect, it } from 'vitest'
import { createRunThroughDesk } from '../../src/state/runThroughDesk.ts'
import type { ToRunThrough } from '../../src/state/runThroughClient.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import type { RunThroughClient } from '../../src/state/runThroughClient.ts'
import { appOf } from '../canvas/appHarness.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const setup = () => {
  const app = appOf(fusionYard({ neededFt: 280 }))
  const sent: ToRunThrough[] = []
  let client: RunThroughClient | null = null
  const desk = createRunThroughDesk(app, (of) => ({
    post: (message) => {
      client = of()
      sent.push(message)
    },
    stop: () => undefined,
  }))
  const stamp = (): string => app.site.getState().stamp
  const finish = (): void => {
    const last = sent.at(-1)!
    if (last.type !== 'cancel') client!.receive({ type: 'done', requestId: last.requestId, stamp: last.stamp, run: runThroughOf(deriveSite(app.documents.getState().document)) })
  }
  return { app, desk, sent, stamp, finish }
}

describe('desk of the run-through', () => {
  it('asks for nothing while nobody looks', () => {
    const { app, sent } = setup()
    app.command('setLayout', { path: 'title', value: 'other lot' })
    expect(sent).toEqual([])
  })

  it('asks for what is shown, the stage looked at first, and again with every edit while somebody looks', () => {
    const { app, desk, sent, stamp, finish } = setup()
    const leave = desk.look(3)
    expect(sent).toMatchObject([{ type: 'run', from: 3, stamp: stamp() }])
    finish()
    expect(desk.results.getState()).toMatchObject({ status: 'settled', stamp: stamp() })
    app.command('setLayout', { path: 'title', value: 'other lot' })
    expect(sent.at(-1)).toMatchObject({ type: 'runDiff', stamp: stamp() })
    leave()
    expect(sent.at(-1)).toMatchObject({ type: 'cancel' })
    app.command('setLayout', { path: 'title', value: 'third lot' })
    expect(sent).toHaveLength(3)
  })

  it('goes on until the last of those who look has gone, each counted once', () => {
    const { app, desk, sent, finish } = setup()
    const [one, two] = [desk.look(), desk.look()]
    finish()
    one()
    one()
    app.command('setLayout', { path: 'title', value: 'other lot' })
    expect(sent.map(({ type }) => type)).toEqual(['run', 'runDiff'])
    two()
    expect(sent.at(-1)).toMatchObject({ type: 'cancel' })
  })
})
