import type { Localized } from '../../messages/localized.ts'
import type { StepLabel } from '../../scene/edit.ts'
import type { Pickable } from './types.ts'

const named = (verb: { en: string; es: string }, items: readonly Pickable[]): StepLabel => {
  const [first] = items
  if (items.length === 1 && first !== undefined) return { text: { en: `${verb.en} ${first.title.en}`, es: `${verb.es} ${first.title.es}` } }
  return { text: { en: `${verb.en} {count} items`, es: `${verb.es} {count} elementos` }, values: { count: items.length } }
}

export const moveLabel = (items: readonly Pickable[]): StepLabel => named({ en: 'move', es: 'mover' }, items)
export const turnLabel = (items: readonly Pickable[]): StepLabel => named({ en: 'turn', es: 'girar' }, items)
export const reshapeLabel = (items: readonly Pickable[]): StepLabel => named({ en: 'reshape', es: 'cambiar la forma de' }, items)

export const movedText = (items: readonly Pickable[]): Localized => {
  const [first] = items
  return items.length === 1 && first !== undefined
    ? { en: `${first.title.en} moved.`, es: `${first.title.es} movido.` }
    : { en: `${items.length} items moved.`, es: `${items.length} elementos movidos.` }
}

export const frozenText: Localized = { en: 'Held still: nothing can be moved. Release it to edit.', es: 'Vista fija: nada se mueve. Suéltela para editar.' }
export const lockedText = (items: readonly Pickable[]): Localized => {
  const [first] = items
  return items.length === 1 && first !== undefined
    ? { en: `${first.title.en} is locked.`, es: `${first.title.es} está bloqueado.` }
    : { en: 'These items are locked.', es: 'Estos elementos están bloqueados.' }
}
