import { wordsFor, type Words } from '../../src/ui/context.tsx'

export const english: Words = wordsFor('en', 'feetInches', false)
export const metric: Words = wordsFor('en', 'metric', false)
export const spanish: Words = wordsFor('es', 'metric', false)
