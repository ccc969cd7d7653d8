import type { Localized } from '../localized.ts'

/** Texts of the roll-off tool: where a loose pipe goes. */
export const rollOffWords = {
  title: { en: 'where would it roll?', es: '¿a dónde rodaría?' },
  about: { en: 'drop a pipe anywhere: where it rolls, and what stops it', es: 'suelte un tubo en cualquier lugar: a dónde rueda y qué lo detiene' },
  wait: { en: 'Tap where the pipe lies, or press Enter.', es: 'Toque donde está el tubo, o pulse Intro.' },
  level: { en: 'It stays: the ground is level here.', es: 'Se queda: aquí el suelo es plano.' },
  stays: { en: 'It stays: the ground falls {fall}, less than would start it.', es: 'Se queda: el suelo baja {fall}, menos de lo que lo haría rodar.' },
  rests: { en: 'It rolls {reach} and comes to rest.', es: 'Rueda {reach} y se detiene.' },
  stopped: { en: 'It rolls {reach} and {what} stops it.', es: 'Rueda {reach} y {what} lo detiene.' },
  drops: { en: 'It rolls {reach} and drops into {what}.', es: 'Rueda {reach} y cae en {what}.' },
  unstopped: { en: 'Nothing stops it: it rolls {reach} and farther.', es: 'Nada lo detiene: rueda {reach} y más.' },
  doubt: { en: 'Nobody has said whether {what} stops a pipe; it is not counted.', es: 'Nadie ha dicho si {what} detiene un tubo; no se cuenta.' },
  stops: { en: 'Counted as a stop: buildings, and barriers said to stop a pipe, across its middle. Fences, trees and gear are not.', es: 'Cuenta como tope: edificios, y barreras que se dijo que detienen un tubo, frente a su parte media. Cercas, árboles y equipo no.' },
  missing: { en: 'Not known: {what}.', es: 'No se sabe: {what}.' },
  done: { en: 'Done', es: 'Listo' },
} satisfies Record<string, Localized>
