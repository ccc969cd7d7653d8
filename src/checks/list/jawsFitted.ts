import { atJaws, defineCheck, finding, machineIds, plate, q, say } from '../make.ts'

/** Inserts are made to the pipe's outside diameter; more than this is another size. */
const SAME_SIZE_M = 0.001

export const jawsFitted = defineCheck({
  id: 'jaws-fitted',
  title: { en: 'Jaws fitted for the pipe', es: 'Mordazas a la medida del tubo' },
  cost: 'quick',
  run: (site) => {
    const { odM } = site.pipe
    const record = site.placed.get(site.jaws.machineId ?? '')?.record
    if (odM === null || record?.kind !== 'machine') return []
    const { jawsFittedOdM, smallestOdM, largestOdM } = record.figures
    const common = { source: plate('size range and inserts of the machine'), phases: ['setUp'] as const, where: atJaws(site), items: machineIds(site), measured: q('shortLength', odM) }
    const [smallest, largest] = [smallestOdM.value, largestOdM.value]
    if (largest !== null && odM > largest + SAME_SIZE_M) return [finding('jaws-fitted', { ...common, about: 'range', level: 'FIX', limit: q('shortLength', largest), what: say('The pipe is {od} outside; the machine takes no more than {limit}.', 'El tubo mide {od} por fuera; la máquina no admite más de {limit}.', { od: q('shortLength', odM), limit: q('shortLength', largest) }), move: say('Bring a larger machine.', 'Traiga una máquina más grande.') })]
    if (smallest !== null && odM < smallest - SAME_SIZE_M) return [finding('jaws-fitted', { ...common, about: 'range', level: 'FIX', bound: 'least', limit: q('shortLength', smallest), what: say('The pipe is {od} outside; the machine takes no less than {limit}.', 'El tubo mide {od} por fuera; la máquina no admite menos de {limit}.', { od: q('shortLength', odM), limit: q('shortLength', smallest) }), move: say('Bring a smaller machine.', 'Traiga una máquina más pequeña.') })]
    const fitted = jawsFittedOdM.value
    if (fitted === null) return []
    const fits = Math.abs(fitted - odM) <= SAME_SIZE_M
    return [finding('jaws-fitted', {
      ...common,
      about: 'inserts',
      level: fits ? 'met' : 'FIX',
      limit: q('shortLength', fitted),
      bound: odM > fitted ? 'most' : 'least',
      what: fits
        ? say('The jaws are fitted for this pipe.', 'Las mordazas están a la medida de este tubo.')
        : say('The jaws are fitted for {fitted}, the pipe is {od} outside.', 'Las mordazas son para {fitted}, el tubo mide {od} por fuera.', { fitted: q('shortLength', fitted), od: q('shortLength', odM) }),
      ...(fits ? {} : { move: say('Change the inserts; say the OD system as well as the size.', 'Cambie los insertos; diga el sistema de diámetro además del tamaño.') }),
    })]
  },
})
