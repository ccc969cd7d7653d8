import { expect, it } from 'vitest'
import * as tolerance from '../../src/geometry/tolerance.ts'

it('every tolerance is a positive number far below a tape’s inch, so that none decides a finding', () => {
  for (const [name, value] of Object.entries(tolerance)) {
    expect(value, name).toBeGreaterThan(0)
    expect(value, name).toBeLessThan(0.0254)
  }
  expect(Object.keys(tolerance).length).toBeGreaterThan(5)
})
