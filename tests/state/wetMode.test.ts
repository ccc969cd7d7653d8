import { expect, it } from 'vitest'
import { readSettings } from '../../src/app/storage/settings.ts'
import { createViewStore } from '../../src/state/viewStore.ts'
import { setWet } from '../../src/state/wetMode.ts'

it('wet mode holds the plan still and puts down what is in hand; off it lets go again', () => {
  const view = createViewStore({ tool: { name: 'measure' }, selection: ['stand:1'], gearOpen: true, panel: 'settings' })
  setWet(view, true)
  expect(view.getState()).toMatchObject({ wet: true, holdStill: true, tool: null, selection: [], gearOpen: false, panel: null })
  setWet(view, false)
  expect(view.getState()).toMatchObject({ wet: false, holdStill: false })
})
it('a tablet that starts anew in wet mode has its plan frozen from the first touch', () => {
  expect(createViewStore(readSettings({ wet: true })).getState()).toMatchObject({ wet: true, holdStill: true })
  expect(createViewStore(readSettings({ wet: 'yes' })).getState()).toMatchObject({ wet: false, holdStill: false })
})
