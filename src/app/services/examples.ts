import type { ExampleEntry } from '../../ui/services.ts'
import { exampleNames } from './pages.ts'

const about: Readonly<Record<string, Omit<ExampleEntry, 'name'>>> = {
  'maple-fork-first-sketch': { title: { en: 'Maple Fork pump house, first sketch', es: 'Maple Fork, primer croquis' }, about: { en: 'Simple bypass on a gravel lot. Drawn as a new hand would; see what is wrong with it.', es: 'Desvío sencillo en un patio de grava. Dibujado como lo haría un novato; vea qué está mal.' } },
  'maple-fork-good': { title: { en: 'Maple Fork pump house, mended', es: 'Maple Fork, corregido' }, about: { en: 'The same yard after the findings were worked off.', es: 'El mismo patio después de atender los avisos.' } },
  'redstem-flat-first-sketch': { title: { en: 'Redstem Flat water main, first sketch', es: 'Redstem Flat, primer croquis' }, about: { en: '36 in pipe beside an open trench, a 138 kV line across the lane.', es: 'Tubo de 36 pulg junto a una zanja, una línea de 138 kV sobre el carril.' } },
  'redstem-flat-good': { title: { en: 'Redstem Flat water main, mended', es: 'Redstem Flat, corregido' }, about: { en: 'Clear of the trench edge and of the wires.', es: 'Lejos del borde de la zanja y de los cables.' } },
  'campo-arenal-first-sketch': { title: { en: 'Campo Arenal irrigation lateral, first sketch', es: 'Campo Arenal, primer croquis' }, about: { en: 'Metric, hot and thin-walled, with a 33 kV line over the gate.', es: 'Métrico, con calor y pared delgada, con una línea de 33 kV sobre el portón.' } },
  'campo-arenal-good': { title: { en: 'Campo Arenal irrigation lateral, mended', es: 'Campo Arenal, corregido' }, about: { en: 'Closer supports for the heat, the turn at a radius the pipe takes.', es: 'Apoyos más juntos por el calor, la vuelta con un radio que el tubo aguanta.' } },
  'otter-bend-first-sketch': { title: { en: 'Otter Bend bore string, first sketch', es: 'Otter Bend, sarta para perforación, primer croquis' }, about: { en: '1,247 ft of 16 in pipe on a strip that falls 3 %, 8 ft too short, across an open farm road.', es: '1,247 pies de tubo de 16 pulg en una franja que cae 3 %, 8 pies corta, a través de un camino abierto.' } },
  'otter-bend-good': { title: { en: 'Otter Bend bore string, mended', es: 'Otter Bend, corregido' }, about: { en: 'Tethered, the lead shortened, the road closed and kept clear of rollers.', es: 'Retenida, con el tiro acortado, el camino cerrado y libre de rodillos.' } },
}

/** Examples that ship with the app. One without words here shows its file name. */
export const examples: readonly ExampleEntry[] = exampleNames().map((name) => ({ name, ...(about[name] ?? { title: { en: name, es: name }, about: { en: '', es: '' } }) }))
