import { expect, it } from 'vitest'
import { earlierItems } from '../../../src/canvas/plan/earlier.ts'
import { thePlan } from '../../../src/derive/whatIf.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { comparisonOf } from '../../../src/state/comparison.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'
import { appOf } from '../appHarness.ts'

const then = yard(item('stand', 'stand:1', onRun(6)), item('stand', 'stand:2', onRun(12)), item('stand', 'stand:3', onRun(18)))
const now = yard(item('stand', 'stand:1', onRun(6)), item('stand', 'stand:2', onRun(12.5)), item('stand', 'stand:4', onRun(24)))

it('of a plan compared with, what has moved or gone is drawn where it stood, and nothing that stands as it did', () => {
  const app = appOf(now)
  const { placed } = app.site.getState().site
  expect(earlierItems(app, placed)).toEqual([])
  comparisonOf(app).setState({ compared: { name: 'A', document: then } })
  const ghosts = earlierItems(app, placed)
  expect(ghosts.map(({ id }) => id)).toEqual(['stand:2', 'stand:3'])
  expect(ghosts[0]?.xM).toBeCloseTo(deriveSite(then, thePlan).placed.get('stand:2')?.xM ?? NaN)
  comparisonOf(app).setState({ compared: null })
  expect(earlierItems(app, placed)).toEqual([])
})
