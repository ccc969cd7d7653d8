import { stringPullOf } from '../../derive/stringPull.ts'
import type { Finding } from '../finding.ts'
import { isUnder } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, houseRule, nameOf, plate, q, say } from '../make.ts'
import { itemsOf } from '../../derive/itemsOf.ts'

const ID = 'redirect-block'
/** Rope led straight back: both its parts pull on the block. No block takes more. */
const PULLS = 2

export const redirectBlockHolds = defineCheck({
  id: ID,
  title: { en: 'Redirect block and its anchor', es: 'Polea de desvío y su ancla' },
  cost: 'slow',
  run: (site) => {
    const blocks = itemsOf(site, 'redirectBlock')
    const { joints, missing } = stringPullOf(site)
    if (blocks.length === 0 || missing.length > 0 || joints.length === 0) return []
    const needN = PULLS * Math.max(...joints.map((one) => one.needN))
    const over = (holdsN: number): number[] => joints.filter((one) => PULLS * one.needN > holdsN).map(({ joint }) => joint)
    return blocks.flatMap((block): Finding[] => {
      const { ratedLoadN, anchorHoldN } = block.record.figures
      const unknown = [
        ...(ratedLoadN.value === null ? [{ recordId: block.id, path: 'figures.ratedLoadN.value', label: { en: 'rated load of the block (plate)', es: 'carga nominal de la polea (placa)' } }] : []),
        ...(anchorHoldN.value === null ? [{ recordId: block.id, path: 'figures.anchorHoldN.value', label: { en: 'what its anchor holds', es: 'lo que aguanta su ancla' } }] : []),
      ]
      const common = { items: [block.id], where: atPoint(block.xM, block.yM), phases: ['pull'] as const, measured: q('force', needN) }
      const values = { block: nameOf(site, block.id), need: q('force', needN), rated: q('force', ratedLoadN.value), holds: q('force', anchorHoldN.value) }
      const found: Finding[] = unknown.length === 0 ? [] : [finding(ID, {
        ...common, level: 'CHECK', about: `${block.id}:unknown`, missing: unknown, source: houseRule,
        what: say('Whether the {block} takes twice the pull, {need}, is not known.', 'No se sabe si {block} aguanta dos veces el tiro, {need}.', values), move: say('Read the plate of the block; test or calculate its anchor.', 'Lea la placa de la polea; pruebe o calcule su ancla.'),
      })]
      if (ratedLoadN.value !== null && isUnder(ratedLoadN.value, needN)) found.push(finding(ID, {
        ...common, level: 'FIX', about: `${block.id}:plate`, limit: q('force', ratedLoadN.value), joints: over(ratedLoadN.value), source: plate('rated load on the plate of the block; two parts of one rope: mechanics'),
        what: say('The {block} is rated for {rated}; rope in and rope out pull on it with up to {need}.', '{block} tiene {rated} nominales; la cuerda que entra y la que sale la jalan con hasta {need}.', values), move: say('Use a block rated for {need}.', 'Use una polea para {need}.', values),
      }))
      if (anchorHoldN.value !== null && isUnder(anchorHoldN.value, needN)) found.push(finding(ID, {
        ...common, level: 'FIX', about: `${block.id}:anchor`, limit: q('force', anchorHoldN.value), joints: over(anchorHoldN.value), source: plate('what the anchor of the block holds; two parts of one rope: mechanics'),
        what: say('The anchor of the {block} holds {holds}; rope in and rope out pull on it with up to {need}.', 'El ancla de {block} aguanta {holds}; la cuerda que entra y la que sale la jalan con hasta {need}.', values), move: say('Anchor it for {need}.', 'Ánclela para {need}.', values),
      }))
      if (found.length > 0) return found
      return [finding(ID, { ...common, level: 'met', about: block.id, source: plate('plate of the block, hold of its anchor'), what: say('The {block} and its anchor take twice the pull, {need}.', '{block} y su ancla aguantan dos veces el tiro, {need}.', values) })]
    })
  },
})
