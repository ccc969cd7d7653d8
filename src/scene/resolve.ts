/** Where things lie and what they are called, both derived from the document and never stored. */
export { isFeature, isItem, middleOf, onAxis, pathOf, PlaceError, resolvePlace, runIdOf, type ResolvedPlace } from './places.ts'
export { beamLabels, labelsOf } from './labels.ts'
