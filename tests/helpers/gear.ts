import type { GearItem } from '../../src/scene/gear.ts'

/** A sort of stand the crew owns, with two figures from its plate. */
export const gearItem = (over: Partial<GearItem> = {}): GearItem => ({
  id: 'gear:v1', kind: 'stand', name: 'V stands, blue', count: 6, choices: { roller: 'V' },
  figures: { ratedLoadN: { value: 11_120, basis: 'plate' }, highestSaddleM: { value: 1.1, basis: 'measured' } }, ...over,
})
