import type { MissingInput, SiteModel } from '../../derive/types.ts'
import type { LoaderRecord } from '../../scene/kinds/loader.ts'
import type { Finding } from '../finding.ts'
import { sourceOf, type Limits } from '../limits.ts'
import { atPoint, boundFor, defineCheck, finding, levelFor, listOf, nameOf, q, say, shareOfPlate } from '../make.ts'

const ID = 'loader-plate'

export const loaderPlate = defineCheck({
  id: ID,
  title: { en: 'Loader against the stick', es: 'Cargador frente al tubo' },
  cost: 'quick',
  run: (site, { limits }) => {
    const loaders = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'loader' ? [record] : []))
    if (loaders.length === 0) return []
    const { properties } = site.pipe
    const { stickLengthM } = site.sticks
    const missing: MissingInput[] = [
      ...loaders.filter(({ figures }) => figures.plateLoadN.value === null).map(({ id }) => ({ recordId: id, path: 'figures.plateLoadN.value', label: { en: 'rated load of the loader at that reach', es: 'carga del cargador a ese alcance' } })),
      ...(properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
      ...(stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : []),
    ]
    const unknown: Finding[] = missing.length === 0 ? [] : [finding(ID, {
      level: 'CHECK', about: 'unknown', missing, items: loaders.map(({ id }) => id), source: sourceOf(limits.limit('loader-share')), phases: ['offload', 'load'],
      what: say('{loaders}: whether it may lift a stick at that reach is not known.', '{loaders}: no se sabe si puede levantar un tubo a ese alcance.', { loaders: listOf(loaders.map(({ id }) => nameOf(site, id))) }),
      move: say('Read the plate at the reach used, on the slope it works on.', 'Lea la placa al alcance usado, en la pendiente donde trabaja.'),
    })]
    if (properties === null || stickLengthM === null) return unknown
    return [...unknown, ...loaders.flatMap((loader) => ofLoader(site, loader, properties.lineLoadNPerM * stickLengthM, limits))]
  },
})

function ofLoader(site: SiteModel, loader: LoaderRecord, stickN: number, limits: Limits): Finding[] {
  const plateN = loader.figures.plateLoadN.value
  const item = site.placed.get(loader.id)
  if (plateN === null || item === undefined) return []
  const limit = limits.limit('loader-share')
  const share = shareOfPlate(stickN, plateN)
  const level = levelFor(limit, share)
  const bound = boundFor(limit, level)
  const values = { loader: nameOf(site, loader.id), stick: q('force', stickN), plate: q('force', plateN), share: q('percent', share), most: q('percent', bound) }
  const common = { about: loader.id, level, items: [loader.id], where: atPoint(item.xM, item.yM), phases: ['offload', 'load'] as const, measured: q('force', stickN), limit: q('force', bound === null ? null : bound * plateN), source: level === 'FIX' ? { class: 'plate' as const, cite: 'rated load at that reach on the plate of the loader' } : sourceOf(limit) }
  if (level === 'met') return [finding(ID, { ...common, what: say('{loader}: a stick weighs {stick}, {share} of its plate.', '{loader}: un tubo pesa {stick}, {share} de su placa.', values) })]
  if (!(plateN > 0)) {
    return [finding(ID, {
      ...common,
      what: say('{loader}: its plate is given as {plate}, so it may lift nothing; a stick weighs {stick}.', '{loader}: su placa figura como {plate}, así que no puede levantar nada; un tubo pesa {stick}.', values),
      move: say('Read the plate again, at the reach used.', 'Lea otra vez la placa, al alcance usado.'),
    })]
  }
  return [finding(ID, {
    ...common,
    what: say('{loader}: a stick weighs {stick}, {share} of its plate {plate}; {most} is the most.', '{loader}: un tubo pesa {stick}, {share} de su placa {plate}; {most} es lo máximo.', values),
    move: level === 'FIX' ? say('Bring a larger loader, or lift with two.', 'Traiga un cargador mayor, o levante con dos.') : say('Carry low and slow on level ground, or bring a larger loader.', 'Cargue bajo y despacio en suelo nivelado, o traiga uno mayor.'),
  })]
}
