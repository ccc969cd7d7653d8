/** When each joint is done, with breaks and the end of the working day. */
import { requireNumber } from '../outcome.ts'
import { cycleS, type StepTime } from './jointTimes.ts'

export interface JobClockInput {
  joints: number
  steps: readonly StepTime[]
  which: 'lowS' | 'likelyS' | 'highS'
  /** Minutes after midnight at which the first stick is taken up. */
  startMin: number
  /** Daylight or curfew: by then the last joint of the day has cooled; null: the day has no end. */
  endMin: number | null
  breaks: readonly { atMin: number; lengthMin: number }[]
}

/** Times in minutes after midnight of `day` (0 = the first). */
export interface JointOnClock {
  joint: number
  day: number
  loadMin: number
  /** Clamping and facing begin. */
  fuseMin: number
  cooledMin: number
  pulledMin: number
}

export interface JobClock {
  rows: readonly JointOnClock[]
  days: number
  /** Latest time a stick may be taken up so that its joint cools before the end of the day; null where the day has no end. */
  lastStartMin: number | null
  /** True: not even one joint fits into the day; `rows` is empty. */
  isTooLong: boolean
}

const MINUTE_S = 60
/** Guards a job of thousands of joints on a day into which one fits. */
const MOST_DAYS = 2000

/**
 * The clock of a job.
 *
 * Model:  one joint after the other. From taking up the stick to cooled a joint is not interrupted; a break is taken at
 *         its time, or as soon as the joint in hand has cooled and been pulled. No stick is taken up whose joint would
 *         not have cooled by the end of the day; work goes on at the start of the next. A break that lies before the
 *         start, or was not reached on a day, is not taken that day.
 * Errors: RangeError for a count or time that is not a number, or an end that is not after the start.
 */
export function jobClock({ joints, steps, which, startMin, endMin, breaks }: JobClockInput): JobClock {
  requireNumber('joints', joints, { atLeast: 0 })
  requireNumber('startMin', startMin, { atLeast: 0 })
  if (endMin !== null && endMin <= startMin) throw new RangeError(`endMin is ${endMin}, must be after startMin ${startMin}`)
  const minutes = (...names: readonly StepTime['step'][]): number => cycleS(steps.filter(({ step }) => names.includes(step)), which) / MINUTE_S
  const [loadMin, fuseMin, afterMin] = [minutes('load'), minutes('clampFace', 'soak', 'heaterOut', 'cool'), minutes('hold', 'pull')]
  const lastStartMin = endMin === null ? null : endMin - loadMin - fuseMin
  if (lastStartMin !== null && lastStartMin < startMin) return { rows: [], days: 0, lastStartMin, isTooLong: joints > 0 }
  const ofDay = breaks.filter(({ atMin }) => atMin >= startMin).toSorted((a, b) => a.atMin - b.atMin)
  const rows: JointOnClock[] = []
  let day = 0
  let nowMin = startMin
  let left = [...ofDay]
  for (let joint = 1; joint <= joints && day < MOST_DAYS; joint += 1) {
    while (left[0] !== undefined && left[0].atMin <= nowMin) nowMin = Math.max(nowMin, left[0].atMin) + left.shift()!.lengthMin
    if (lastStartMin !== null && nowMin > lastStartMin + 1e-9) {
      day += 1
      nowMin = startMin
      left = [...ofDay]
      while (left[0] !== undefined && left[0].atMin <= nowMin) nowMin += left.shift()!.lengthMin
      if (nowMin > lastStartMin + 1e-9) return { rows, days: day, lastStartMin, isTooLong: true }
    }
    const cooledMin = nowMin + loadMin + fuseMin
    rows.push({ joint, day, loadMin: nowMin, fuseMin: nowMin + loadMin, cooledMin, pulledMin: cooledMin + afterMin })
    nowMin = cooledMin + afterMin
  }
  return { rows, days: rows.length === 0 ? 0 : day + 1, lastStartMin, isTooLong: false }
}
