import { enter, when } from './mayEnter.ts'
import { stackRows } from '../../engine/pipe/stackRows.ts'
import type { StackRecord } from '../../scene/kinds/stack.ts'
import { fallMissing, fallToward, rollingResistance } from '../rollOff.ts'
import type { MissingInput, PlacedItem, SiteModel } from '../types.ts'
import { itemsOf } from '../itemsOf.ts'
import { rollOffM } from './rackRollOff.ts'
import { boxAt, figuresOr, lacking, odOf } from './shapes.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'

/** A stack that nothing retains is no higher than this (6 ft, house rule): the largest where the rows are not known. */
const LARGEST_HEIGHT_M = 1.8288
const HEIGHTS = 1.5
const NEST = Math.sqrt(3) / 2

/** Z-14. Beside stored pipe: one and a half times its height, and as far as a pipe rolls where no chock holds it. */
export const stackSide: ZoneDefinition = {
  id: 'Z-14',
  name: { en: 'beside the pipe stack', es: 'junto a la pila de tubos' },
  sentence: { en: 'Don’t sit, lean or eat by the pile. Take from the top, chock what’s left.', es: 'No se siente, ni se recargue, ni coma junto a la pila. Saque de arriba y acuñe lo que queda.' },
  classes: { setUp: 'AMBER', offload: 'RED', load: 'AMBER', fuse: 'AMBER', pull: 'AMBER', move: 'AMBER', rest: 'AMBER', tieIn: 'AMBER' },
  mayEnter: [enter('loaderOperator', when.inCab), enter('infeedHand', { en: 'at the ends of the stack only', es: 'solo en los extremos de la pila' })],
  source: { class: 'houseRule', cite: 'roll-off from mechanics; 1.5 times the height common practice, no published source; rows: PPI Handbook, chapter 2, from memory' },
  size: { en: '1.5 times the height of the stack, farther where nothing chocks it', es: '1.5 veces la altura de la pila, más donde nada la acuña' },
  shapes: (site) => itemsOf(site, 'stack').flatMap((item) => ofStack(site, item)),
}

/** Height of rows that lie in each other's hollows: D (1 + (n − 1) √3/2). */
export const stackHeightM = (rows: number, odM: number): number => odM * (1 + (rows - 1) * NEST)

/** Height of a stack and what of it nobody has said; then the most rows the table allows, or 6 ft, whichever is higher. */
export function heightOfStack(site: SiteModel, item: PlacedItem): { heightM: number; missing: MissingInput[] } {
  const { rowCount } = (item.record as StackRecord).figures
  const missing: MissingInput[] = [...(rowCount.value === null ? [lacking(item, 'figures.rowCount.value')] : []), ...(site.pipe.odM === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : [])]
  if (missing.length === 0) return { heightM: stackHeightM(rowCount.value!, odOf(site)), missing }
  const most = stackRows({ odM: site.pipe.odM, dr: site.job.pipe?.dr ?? null })
  const rows = rowCount.value ?? (most.status === 'ok' ? most.value : 1)
  return { heightM: Math.max(LARGEST_HEIGHT_M, stackHeightM(rows, odOf(site))), missing }
}

/** What is certain beside the stack, and apart from it how far a pipe may roll while somebody has to say so first. */
function ofStack(site: SiteModel, item: PlacedItem): ZoneShape[] {
  const { chocked } = item.record as StackRecord
  const size = figuresOr(item, { lengthM: 15.24, widthM: 4.8 })
  const { heightM, missing: heightMissing } = heightOfStack(site, item)
  const resistance = rollingResistance(site, item.runningM ?? 0)
  const leastM = HEIGHTS * heightM
  const rollsM = (sign: 1 | -1): number => Math.max(leastM, rollOffM({ heightM, fallRatio: fallToward(site, item, item.headingRad - (sign * Math.PI) / 2), resistanceRatio: resistance.ratio }).reachM)
  const ring = (rightM: number, leftM: number) => boxAt(item, { fromM: -size.lengthM / 2, toM: size.lengthM / 2, rightM: size.widthM / 2 + rightM, leftM: size.widthM / 2 + leftM })
  const sizeUnknown = [...size.missing, ...heightMissing]
  const still: ZoneShape = { ownerId: item.id, rings: [ring(leastM, leastM)], itemIds: [item.id], missing: sizeUnknown }
  if (chocked === true) return [still]
  const rollUnknown = [...(chocked === null ? [lacking(item, 'chocked')] : []), ...fallMissing(site), ...resistance.missing]
  const rolling: ZoneShape = { ownerId: `${item.id}/rolls`, rings: [ring(rollsM(1), rollsM(-1))], itemIds: [item.id], missing: [...sizeUnknown, ...rollUnknown] }
  return chocked === false && rolling.missing!.length === 0 ? [{ ...rolling, ownerId: item.id }] : [still, rolling]
}
