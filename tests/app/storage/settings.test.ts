import { expect, it } from 'vitest'
import { readSettings } from '../../../src/app/storage/settings.ts'
import { initialView, viewPersistence, type ViewState } from '../../../src/state/viewStore.ts'

it('every setting that is kept between visits is read back', () => {
  const kept = (Object.keys(viewPersistence) as (keyof ViewState)[]).filter((key) => viewPersistence[key])
  expect(kept.length).toBeGreaterThan(4)
  for (const key of kept) expect(readSettings({ [key]: initialView[key] })).toEqual({ [key]: initialView[key] })
})

it('what is none is left out', () => {
  expect([undefined, null, 7, 'x', [], { theme: 3, language: 'fr', screen: 'yard', __proto__: { theme: 'sun' } }].map(readSettings)).toEqual([{}, {}, {}, {}, {}, {}])
})
