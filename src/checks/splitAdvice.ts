/** What to do where a string is longer than the yard has room for: the fewest strings that fit, and what else would help. */
import type { SiteModel } from '../derive/types.ts'
import { bestSplit } from '../engine/pipe/stringSplit.ts'
import type { Remedy, Sentence } from './finding.ts'
import type { Limits } from './limits.ts'
import { q, say } from './make.ts'
import { stringRoomOf } from './roomNeed.ts'

export interface SplitAdvice {
  move: Sentence
  remedy: Remedy | null
}

/** Counts as people say them: 5 + 5 + 5 + 4; many strings by how many of each. */
export function countsText(counts: readonly number[]): string {
  if (counts.length <= 6) return counts.join(' + ')
  const sizes = [...new Set(counts)]
  return sizes.map((size) => `${counts.filter((one) => one === size).length} × ${size}`).join(' + ')
}

/** Best split of the whole job in this yard; null where inputs are missing, or not one stick fits. */
export function splitFor(site: SiteModel, limits: Limits): { counts: readonly number[]; mostSticks: number } | null {
  const room = stringRoomOf(site, limits)
  const { stickLengthM, jointLossM, plan, stickCount } = site.sticks
  if (room === null || stickLengthM === null || jointLossM === null || jointLossM >= stickLengthM) return null
  return bestSplit({ sticks: wholeOf(site) ?? plan?.sticks ?? stickCount, stickLengthM, jointLossM, roomM: room.longestM })
}

/** Sticks of all strings as they are written down; null without string records or while one has no count. */
function wholeOf(site: SiteModel): number | null {
  const counts = [...site.sticks.counts.values()]
  return counts.length === 0 || counts.some((count) => count === null) ? null : counts.reduce<number>((sum, count) => sum + count!, 0)
}

export function splitAdvice(site: SiteModel, limits: Limits): SplitAdvice {
  const split = splitFor(site, limits)
  const room = stringRoomOf(site, limits)
  const { stickLengthM, jointLossM, counts } = site.sticks
  if (split === null || room === null || stickLengthM === null || jointLossM === null || site.setUp === null || site.run === null) {
    return { move: say('Not one stick fits behind rack and pull lead: shorten the lead, or get more strip.', 'Ni un tubo cabe tras la mesa y el tiro: acorte el tiro o consiga más franja.'), remedy: null }
  }
  if (split.counts.length === 1 && counts.size < 2) {
    return { move: say('It fits with the winch nearer to the nose: bring it in, or get more strip.', 'Cabe con el malacate más cerca de la punta: acérquelo, o consiga más franja.'), remedy: null }
  }
  const whole = split.counts.reduce((sum, one) => sum + one, 0)
  const parts = Math.max(1, counts.size)
  const values = {
    most: split.mostSticks, strings: split.counts.length, counts: countsText(split.counts), sticks: whole,
    hold: parts * split.mostSticks, parts, lead: q('length', room.leadM(0)),
  }
  const move = parts > 1 && parts < split.counts.length
    ? say('{most} sticks fit at most: {parts} strings hold {hold} of {sticks}, so moving a stick from one to another does not help. Make {strings} strings, {counts} sticks; or shorten the pull lead of {lead} with a redirect block.', 'Caben {most} tubos como máximo: {parts} sartas llevan {hold} de {sticks}, así que pasar un tubo de una a otra no ayuda. Haga {strings} sartas, de {counts} tubos; o acorte el tiro de {lead} con una polea de desvío.', values)
    : say('{most} sticks fit at most: make {strings} strings, {counts} sticks; or shorten the pull lead of {lead} with a redirect block, angle the rack, or get more strip.', 'Caben {most} tubos como máximo: haga {strings} sartas, de {counts} tubos; o acorte el tiro de {lead} con una polea de desvío, gire la mesa o consiga más franja.', values)
  return {
    move,
    remedy: { command: 'splitStrings', args: { setUpId: site.setUp.id, counts: [...split.counts] }, label: say('Make {strings} strings: {counts} sticks', 'Hacer {strings} sartas: {counts} tubos', values) },
  }
}
