/** Lines of a chosen crew spot, from a module of its own that comes with the first one chosen. */
import type { Primitive } from '../../drawing/primitives.ts'
import type { Picture } from './picture.ts'

let painter: typeof import('./paintPeople.ts') | null = null
let isAsked = false

/** Nothing until the painter has come; the view is then painted anew. */
export const chosenSpotShapes = (picture: Picture, isMoving: boolean): Primitive[] => {
  const { app, site, view } = picture
  const [id] = view.selection
  if (view.selection.length !== 1 || id === undefined || site.placed.get(id)?.kind !== 'crew') return []
  if (painter !== null) return painter.peopleShapes(picture, isMoving)
  if (!isAsked) {
    isAsked = true
    // Offline without it the lines are missing and all else works; the next choice asks again.
    import('./paintPeople.ts').then(
      (loaded) => {
        painter = loaded
        app.view.setState((state) => ({ selection: [...state.selection] }))
      },
      () => { isAsked = false },
    )
  }
  return []
}
