import { describe, expect, it } from 'vitest'
import type { ProposalRequest, ProposalResult } from '../../src/checks/proposals/types.ts'
import type { GearItem } from '../../src/scene/gear.ts'
import { createProposalDesk, type StartSearch } from '../../src/state/proposalDesk.ts'
import { appOf } from '../canvas/appHarness.ts'
import { examples } from '../helpers/makeExamples.ts'

const found: ProposalResult = {
  kind: 'stands', status: 'found', solveCount: 1, runCount: 1, command: { command: 'sequence', args: { commands: [], label: { text: { en: 'a', es: 'a' } } }, label: { en: 'a', es: 'a' } },
  reasons: [], said: [], present: { stands: 1, rollers: 10 }, proposed: { stands: 3, rollers: 20 }, clears: [], toConfirm: [],
}

function deskOf(owned: readonly GearItem[] = []) {
  const app = appOf(examples['maple-fork-first-sketch']!(), { screen: 'yard' })
  const started: { request: ProposalRequest; on: Parameters<StartSearch>[1]; isCancelled: boolean }[] = []
  const start: StartSearch = (request, on) => {
    const one = { request, on, isCancelled: false }
    started.push(one)
    return { cancel: () => { one.isCancelled = true } }
  }
  const desk = createProposalDesk(app, start, () => owned)
  const title = (value: string): void => void app.command('setLayout', { path: 'title', value })
  return { app, desk, started, title }
}

describe('the proposal desk', () => {
  it('shows what was found as a ghost of the revision it was searched from, and progress before that', () => {
    const { app, desk, started } = deskOf()
    desk.ask('stands')
    expect(desk.store.getState()).toMatchObject({ kind: 'stands', status: 'working', share: 0 })
    started[0]!.on.progress(0.5)
    expect(desk.store.getState().share).toBe(0.5)
    started[0]!.on.done(found)
    expect(app.view.getState().proposal).toMatchObject({ command: 'sequence', isSearched: true, revision: app.documents.getState().revision })
  })

  it('drops the ghost and searches again when the layout changes, whether the search was done or not', () => {
    const { app, desk, started, title } = deskOf()
    desk.ask('rollers')
    title('one')
    expect([started.length, started[0]!.isCancelled, started[1]!.request.kind]).toEqual([2, true, 'rollers'])
    expect(started[1]!.request.document).toBe(app.documents.getState().document)
    started[1]!.on.done(found)
    title('two')
    expect(app.view.getState().proposal).toBeNull()
    expect([started.length, desk.store.getState().status]).toEqual([3, 'working'])
  })

  it('ends the search on cancel and asks for nothing more', () => {
    const { app, desk, started, title } = deskOf()
    desk.ask('stands')
    desk.clear()
    expect([started[0]!.isCancelled, desk.store.getState().status]).toEqual([true, 'idle'])
    title('one')
    expect([started.length, app.view.getState().proposal]).toEqual([1, null])
  })

  it('lets go where the view lets go: Esc takes the ghost and the card', () => {
    const { app, desk, started } = deskOf()
    desk.ask('stands')
    started[0]!.on.done(found)
    app.view.setState({ proposal: null })
    expect(desk.store.getState().kind).toBeNull()
    desk.ask('stands')
    app.view.setState({ screen: 'start' })
    expect([desk.store.getState().kind, started[1]!.isCancelled]).toEqual([null, true])
  })

  it('another layout ends it', () => {
    const { app, desk, started } = deskOf()
    desk.ask('stands')
    app.documents.getState().load(examples['otter-bend-good']!())
    expect([desk.store.getState().kind, started[0]!.isCancelled, started.length]).toEqual([null, true, 1])
  })

  it('leaves a proposal of another maker alone', () => {
    const { app, desk } = deskOf()
    const usual = { command: 'usualSetUp', args: {}, label: { en: 'u', es: 'u' }, revision: 0 }
    app.view.setState({ proposal: usual })
    desk.clear()
    expect(app.view.getState().proposal).toBe(usual)
  })

  it('passes the crew’s gear, an empty list as none', () => {
    const none = deskOf([])
    none.desk.ask('stands')
    expect(none.started[0]!.request.owned).toBeNull()
  })
})
