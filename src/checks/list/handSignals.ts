import { spotsOf } from '../../derive/people/spots.ts'
import type { Localized } from '../../messages/localized.ts'
import { defineCheck, finding, houseRule, listOf, say } from '../make.ts'

const ID = 'hand-signals'
const languageWords: Record<'en' | 'es' | 'other', Localized> = {
  en: { en: 'English', es: 'inglés' }, es: { en: 'Spanish', es: 'español' }, other: { en: 'another language', es: 'otra lengua' },
}

export const handSignals = defineCheck({
  id: ID,
  title: { en: 'Hand signals', es: 'Señales de mano' },
  cost: 'quick',
  run: (site) => {
    const spots = spotsOf(site).filter(({ record }) => record.language !== null)
    const spoken = [...new Set(spots.flatMap(({ record }) => record.language ?? []))]
    if (spoken.length < 2) return []
    return [finding(ID, {
      level: 'CHECK', items: spots.map(({ id }) => id), source: houseRule,
      what: say('The crew speaks {languages}: words on the radio are not enough.', 'La cuadrilla habla {languages}: las palabras por radio no bastan.', { languages: listOf(spoken.map((one) => languageWords[one])) }),
      move: say('Print the hand signals card (under Why?) and go through it in the talk. STOP and ALTO are the same word for everybody.', 'Imprima la tarjeta de señales de mano (en ¿Por qué?) y repásela en la charla. STOP y ALTO son la misma palabra para todos.'),
    })]
  },
})
