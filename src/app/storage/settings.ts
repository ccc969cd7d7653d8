import { viewPersistence, type ViewState } from '../../state/viewStore.ts'

const oneOf = (...values: readonly unknown[]) => (value: unknown): boolean => values.includes(value)
const flag = oneOf(true, false)

/** What each kept setting may be; a key that is kept and not here is dropped, as is any other value. */
const allowed: Partial<Record<keyof ViewState, (value: unknown) => boolean>> = {
  orientation: oneOf('alongTape', 'northUp'), turned: flag, snapping: flag, gearGroup: oneOf('line', 'lift', 'site', 'people'),
  theme: oneOf('day', 'night', 'sun', 'auto'), language: oneOf('en', 'es'), leftHanded: flag, wet: flag,
}

/** Settings from storage or a file: the known ones with a value they can have. Anything else is left out. Never throws. */
export function readSettings(value: unknown): Partial<ViewState> {
  if (typeof value !== 'object' || value === null) return {}
  const kept = Object.entries(value).filter(([key, one]) => {
    const name = key as keyof ViewState
    return Object.hasOwn(viewPersistence, key) && viewPersistence[name] && allowed[name]?.(one) === true
  })
  return Object.fromEntries(kept)
}
