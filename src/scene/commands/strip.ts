import { z } from 'zod'
import { add, along, subtract, dotM2, type Vec } from '../../geometry/vector.ts'
import { jobOf, recordsOf, runsOf, setUpsOf, type YardDocument, type YardRecord } from '../document.ts'
import { mergeEdits, type Edit, type Env } from '../edit.ts'
import { boundary } from '../kinds/boundary.ts'
import { machine } from '../kinds/machine.ts'
import { rounded } from '../rounding.ts'
import { angleRad, oneId, stepM } from './args.ts'
import { defineCommand, refuse } from './command.ts'
import { newRun, newSetUp } from './frames.ts'
import { displacement, frameEdit } from './placing.ts'
import { stepOf } from './wording.ts'

/** Length of a stick until the job says one: the usual 40 ft. Common practice, no source. */
export const USUAL_STICK_M = 12.192
/** Room behind the loaded stick on the infeed side: 10 ft. Common practice, no source. */
const INFEED_SPARE_M = 3.048

/** Where the datum lies from the infeed end of a strip: room for one stick and 10 ft, never beyond the middle. */
export const infeedRoomM = (stickLengthM: number | null, stripLengthM: number): number => Math.min((stickLengthM ?? USUAL_STICK_M) + INFEED_SPARE_M, stripLengthM / 2)

export interface Strip {
  /** Middle of the infeed end, site frame. */
  end: Vec
  headingRad: number
  lengthM: number
  widthM: number
}

/** The four corners of a strip, counter-clockwise from the infeed end's right corner. */
export const stripCorners = ({ end, headingRad, lengthM, widthM }: Strip): { xM: number; yM: number }[] =>
  [[0, widthM / 2], [lengthM, widthM / 2], [lengthM, -widthM / 2], [0, -widthM / 2]].map(([alongM, rightM]) => {
    const p = add(end, displacement(headingRad, alongM ?? 0, rightM ?? 0))
    return { xM: rounded(p.xM), yM: rounded(p.yM) }
  })

/** Set-up, run and machine at a datum. */
export function lineAt(env: Env, datum: Vec, headingRad: number, fallRatio: number | null = null): YardRecord[] {
  const setUp = newSetUp(env, { datum: { xM: rounded(datum.xM), yM: rounded(datum.yM) }, headingRad: rounded(headingRad), fallRatio })
  const run = newRun(env, setUp.id)
  const place = { at: 'onRun', runId: run.id, runningM: 0, offsetM: 0, turnRad: 0 } as const
  return [setUp, run, machine.create(env.newId('machine'), { place, setUpId: setUp.id, runId: run.id })]
}

/**
 * Draws the strip of ground the yard has: a boundary round `lengthM` × `widthM` from the middle of its infeed end
 * (`xM`, `yM`) along `headingRad`. In a layout without a set-up it brings datum, axis, run and machine, so that one stick
 * and 10 ft fit on the infeed; a set-up that is there is moved into the strip unless a boundary was drawn before.
 */
export const drawStrip = defineCommand({
  name: 'drawStrip',
  args: z.strictObject({ xM: stepM, yM: stepM, headingRad: angleRad, lengthM: z.number().min(1).max(1e5), widthM: z.number().min(0.5).max(1e5) }),
  run: (document, { xM, yM, headingRad, lengthM, widthM }, env): Edit => {
    const strip = { end: { xM, yM }, headingRad, lengthM, widthM }
    const ring = boundary.create(env.newId('boundary'), { place: { at: 'free', xM, yM, headingRad }, points: stripCorners(strip), setUpId: '', runId: '' })
    const datum = add(strip.end, along(headingRad, infeedRoomM(jobOf(document).stickLengthM, lengthM)))
    const [setUp] = setUpsOf(document)
    if (setUp === undefined) return { put: [ring, ...lineAt(env, datum, headingRad)], remove: [] }
    const isFirst = recordsOf(document, 'boundary').length === 0
    return mergeEdits({ put: [ring], remove: [] }, isFirst ? frameEdit(document, setUp, { datum, headingRad }) : { put: [], remove: [] })
  },
  label: () => ({ text: { en: 'draw the strip', es: 'dibujar la franja' } }),
})

/** Distances along a line at which it crosses a ring, in order. */
function crossingsM(origin: Vec, headingRad: number, ring: readonly Vec[]): number[] {
  const right = displacement(headingRad, 0, 1)
  const ahead = along(headingRad, 1)
  const at = ring.map((p) => ({ alongM: dotM2(subtract(p, origin), ahead), rightM: dotM2(subtract(p, origin), right) }))
  return at.flatMap((a, i) => {
    const b = at[(i + 1) % at.length] ?? a
    if (a.rightM > 0 === b.rightM > 0) return []
    return [a.alongM + ((b.alongM - a.alongM) * a.rightM) / (a.rightM - b.rightM)]
  }).sort((one, two) => one - two)
}

/**
 * Middle of the stretch of the axis inside the boundary the datum lies in, from the datum; 0 where there is none.
 */
function middleOfStripM(document: YardDocument, datum: Vec, headingRad: number): number {
  for (const { points } of recordsOf(document, 'boundary')) {
    const crossings = crossingsM(datum, headingRad, points)
    const ahead = crossings.find((alongM) => alongM > 0)
    const behind = crossings.findLast((alongM) => alongM <= 0)
    if (ahead !== undefined && behind !== undefined) return (ahead + behind) / 2
  }
  return 0
}

/**
 * Swaps infeed and exit: the line is turned half round about the middle of the strip it lies in (about the datum where
 * there is no boundary round it). What is attached turns with it and keeps its distances; bends of the path are turned
 * too; free items and the site stay.
 */
export const reverse = defineCommand({
  name: 'reverse',
  args: z.strictObject({ setUpId: oneId }),
  run: (document, { setUpId }): Edit => {
    const setUp = document.records[setUpId]
    if (setUp?.kind !== 'setUp') return refuse('reverse', 'setUpId', `names ${setUpId}, which is not a set-up here`, `nombra ${setUpId}, que no es un montaje aquí`)
    const pivot = add(setUp.datum, along(setUp.headingRad, middleOfStripM(document, setUp.datum, setUp.headingRad)))
    const across = (p: Vec): Vec => ({ xM: rounded(2 * pivot.xM - p.xM), yM: rounded(2 * pivot.yM - p.yM) })
    const frame = frameEdit(document, setUp, { datum: across(setUp.datum), headingRad: setUp.headingRad + Math.PI })
    const put = frame.put.map((record): YardRecord => {
      if (record.kind !== 'run') {
        // The fall is a property of the ground: down-string is now the other way.
        return record.kind === 'setUp' ? { ...record, fallRatio: turned(record.fallRatio), crossFallRatio: turned(record.crossFallRatio), pitchRad: turned(record.pitchRad) } : record
      }
      const before = runsOf(document).find(({ id }) => id === record.id) ?? record
      return { ...record, vertices: before.vertices.map((v) => ({ ...v, ...across(v) })) }
    })
    return { put, remove: [] }
  },
  label: () => stepOf({ en: 'swap', es: 'intercambiar' }, { en: 'infeed and exit', es: 'entrada y salida' }),
})

const turned = (value: number | null): number | null => (value === null ? null : 0 - value)
