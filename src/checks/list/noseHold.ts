import { atRun, defineCheck, finding, houseRule, say } from '../make.ts'

export const noseHold = defineCheck({
  id: 'nose-hold',
  title: { en: 'How the nose is held', es: 'Cómo se sostiene la punta' },
  cost: 'quick',
  run: (site, { mechanics }) => {
    const first = mechanics.firstArrival()
    if (first === null || site.job.noseHold !== null) return []
    return [finding('nose-hold', {
      level: 'CHECK',
      missing: [{ recordId: site.job.id, path: 'noseHold', label: { en: 'how the nose is held while pulled', es: 'cómo se sostiene la punta al jalar' } }],
      what: say('Nobody has said how the nose is held from {label} on; it is taken as slung.', 'Nadie ha dicho cómo se sostiene la punta desde {label}; se toma como colgada.', { label: first.label }),
      source: houseRule,
      phases: ['pull'],
      where: atRun(first.runningM, first.levelM),
      move: say('Choose: slung, on a sled, carried, or free.', 'Elija: colgada, en trineo, cargada o libre.'),
      remedy: { command: 'setJob', args: { path: 'noseHold', value: 'slung' }, label: say('Sling it', 'Colgarla') },
    })]
  },
})
