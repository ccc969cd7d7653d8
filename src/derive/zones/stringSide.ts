import { enter, when } from './mayEnter.ts'
import type { ZoneDefinition } from './zone.ts'
import { noseAt, odOf, pipeMissing, stripAlong } from './shapes.ts'

const SIDE_M = 0.9144
/** Rollers pull in what they catch: 6 ft aside, 3 ft before and behind. */
const ROLLER_SIDE_M = 1.8288
const ROLLER_ALONG_M = 0.9144

/** Z-12. Beside the string while it may move: 3 ft, at rollers 6 ft. */
export const stringSide: ZoneDefinition = {
  id: 'Z-12',
  name: { en: 'beside the string', es: 'junto a la sarta' },
  sentence: { en: 'Rollers grab gloves and laces. Keep one big step from a moving string, and never step over it.', es: 'Los rodillos atrapan guantes y agujetas. Manténgase a un paso largo del tubo en movimiento y nunca pase por encima.' },
  follows: 'nose',
  classes: { fuse: 'AMBER', pull: 'AMBER', move: 'RED' },
  mayEnter: [enter('exitHand', when.eyeContact), enter('operator'), enter('noseSpotter', when.eyeContact)],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: 'string and 3 ft each side, 6 ft at rollers', es: 'tubo y 3 pies a cada lado, 6 pies en los rodillos' },
  shapes: (site, stage) => {
    const { toM } = noseAt(site, stage)
    const fromM = site.jaws.outerClampM + 1
    if (toM <= fromM) return []
    const [narrowM, wideM] = [odOf(site) / 2 + SIDE_M, odOf(site) / 2 + ROLLER_SIDE_M]
    const rollers = site.supports.filter(({ kind, runningM }) => kind === 'roller' && runningM + ROLLER_ALONG_M > fromM && runningM - ROLLER_ALONG_M < toM)
    return [{ ownerId: site.run?.id ?? 'run:none', rings: [stripAlong(site, stations(fromM, toM, { narrowM, wideM }, rollers.map(({ runningM }) => runningM)))], itemIds: [], missing: pipeMissing(site) }]
  },
}

/** Narrow from end to end, wide about each roller; a step in width is two stations at one place. */
function stations(fromM: number, toM: number, { narrowM, wideM }: { narrowM: number; wideM: number }, rollersM: readonly number[]): { runningM: number; halfWidthM: number }[] {
  const made: { runningM: number; halfWidthM: number }[] = []
  let doneM = fromM
  const narrow = (untilM: number): void => {
    if (untilM > doneM) made.push({ runningM: doneM, halfWidthM: narrowM }, { runningM: untilM, halfWidthM: narrowM })
  }
  for (const atM of rollersM.toSorted((a, b) => a - b)) {
    const [startM, endM] = [Math.max(doneM, atM - ROLLER_ALONG_M), Math.min(toM, atM + ROLLER_ALONG_M)]
    if (endM <= startM) continue
    const last = made.at(-1)
    if (startM === doneM && last !== undefined && last.halfWidthM === wideM) last.runningM = endM
    else {
      narrow(startM)
      made.push({ runningM: startM, halfWidthM: wideM }, { runningM: endM, halfWidthM: wideM })
    }
    doneM = endM
  }
  narrow(toM)
  return made
}
