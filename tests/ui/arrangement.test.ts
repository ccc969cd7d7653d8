import { expect, it } from 'vitest'
import { formOf, isTapeVertical, leafAfterSwipe, regionsOf } from '../../src/ui/shell/arrangement.ts'

it.each([
  [1440, 900, 'desktop'], [1200, 560, 'desktop'], [1199, 900, 'tabletLandscape'], [1180, 820, 'tabletLandscape'], [820, 1180, 'tabletPortrait'],
  [390, 844, 'phone'], [844, 390, 'phone'], [320, 568, 'phone'], [1400, 500, 'phone'],
  // 1440 × 900 at 200 % zoom.
  [720, 450, 'phone'],
] as const)('a window of %i × %i px is arranged as %s', (widthPx, heightPx, form) => {
  expect(formOf(widthPx, heightPx)).toBe(form)
})

it('the tape stands upright only on a phone held upright, and lies level on its side-view leaf', () => {
  expect(isTapeVertical('phone', 'plan', 390, 844)).toBe(true)
  expect(isTapeVertical('phone', 'notes', 390, 844)).toBe(true)
  expect(isTapeVertical('phone', 'side', 390, 844)).toBe(false)
  expect(isTapeVertical('phone', 'plan', 844, 390)).toBe(false)
  expect(isTapeVertical('tabletPortrait', 'plan', 820, 1180)).toBe(false)
})

it('a phone shows one leaf, all else shows plan and side view together', () => {
  expect(regionsOf('phone', 'side')).toEqual({ plan: false, section: true, notes: false })
  expect(regionsOf('tabletLandscape', 'side')).toEqual({ plan: true, section: true, notes: false })
  expect(regionsOf('desktop', 'plan')).toEqual({ plan: true, section: true, notes: true })
})

it('a swipe across the tape turns one leaf and stops at the ends; a slip or a scroll does not', () => {
  expect(leafAfterSwipe('plan', -80, 10)).toBe('side')
  expect(leafAfterSwipe('side', -80, 10)).toBe('notes')
  expect(leafAfterSwipe('notes', -80, 10)).toBe('notes')
  expect(leafAfterSwipe('side', 80, 10)).toBe('plan')
  expect(leafAfterSwipe('plan', -30, 0)).toBe('plan')
  expect(leafAfterSwipe('plan', -80, 70)).toBe('plan')
})
