/** A long run of layouts in slices over several processes; a log of finished slices lets it be broken off and taken up again. */
import { spawn } from 'node:child_process'
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { nothingSoaked, runLayoutSoak, soakLines, together, type LayoutSoakResult } from './layoutSoak.ts'

export interface SliceOptions {
  seed: number
  count: number
  /** Processes at a time. */
  workers: number
  /** File with one finished slice a line; null: none is kept. Start another after a change of the code. */
  log: string | null
}

interface Slice {
  seed: number
  count: number
}

const SLICE = 1000

/** Layouts `seed` to `seed + count − 1`. Slices the log holds already are not run again. Prints a line a slice, then the whole. */
export async function soakInSlices({ seed, count, workers, log }: SliceOptions): Promise<LayoutSoakResult> {
  const all: Slice[] = []
  for (let at = seed; at < seed + count; at += SLICE) all.push({ seed: at, count: Math.min(SLICE, seed + count - at) })
  const done = readLog(log)
  const open = all.filter((slice) => !done.has(nameOf(slice)))
  const work = async (): Promise<void> => {
    for (let slice = open.shift(); slice !== undefined; slice = open.shift()) {
      const result = workers <= 1 ? runLayoutSoak(slice) : await inChild(slice)
      done.set(nameOf(slice), result)
      if (log !== null) appendFileSync(log, `${JSON.stringify({ slice: nameOf(slice), result })}\n`)
      console.log(`${nameOf(slice)}: failures ${result.failureCount}, longest ${result.longestMs.value.toFixed(0)} ms (seed ${result.longestMs.seed})`)
    }
  }
  if (log !== null) mkdirSync(dirname(log), { recursive: true })
  await Promise.all(Array.from({ length: Math.max(1, workers) }, work))
  const result = all.map((slice) => done.get(nameOf(slice))!).reduce(together, nothingSoaked(seed))
  console.log(soakLines(result).join('\n'))
  return result
}

const nameOf = ({ seed, count }: Slice): string => `seeds ${seed} to ${seed + count - 1}`

function readLog(log: string | null): Map<string, LayoutSoakResult> {
  if (log === null || !existsSync(log)) return new Map()
  // A line cut off by a broken run is a slice to be run again.
  return new Map(readFileSync(log, 'utf8').split('\n').flatMap((line): [string, LayoutSoakResult][] => {
    try {
      const { slice, result } = JSON.parse(line) as { slice: string; result: LayoutSoakResult }
      return [[slice, result]]
    } catch {
      return []
    }
  }))
}

/** One slice in a process of its own, started as this one was. */
function inChild({ seed, count }: Slice): Promise<LayoutSoakResult> {
  const child = spawn(process.execPath, [...process.execArgv, process.argv[1]!, 'layouts', '--seed', `${seed}`, '--count', `${count}`, '--json'], { stdio: ['ignore', 'pipe', 'inherit'] })
  let text = ''
  child.stdout.on('data', (part: Buffer) => (text += part.toString()))
  return new Promise((resolve, reject) => {
    child.on('error', reject)
    child.on('close', (code) => (code === 0 ? resolve(JSON.parse(text) as LayoutSoakResult) : reject(new Error(`seeds from ${seed}: ended with ${code}`))))
  })
}
