import type { SolveKind } from './args.ts'
import { InputRefused } from './fields.ts'
import { readJson } from './readJson.ts'

/** A raw case in, its result object out. */
export type CaseSolver = (json: unknown) => unknown

/** Each engine is loaded only when asked for: the command starts quickly. */
export async function loadSolver(kind: SolveKind): Promise<CaseSolver> {
  if (kind === 'beam') return (await import('./solveBeam.ts')).solveBeamCase
  if (kind === 'pull') return (await import('./solvePull.ts')).solvePullCase
  return (await import('./solveClearance.ts')).solveClearanceCase
}

/**
 * Solves the files one by one and writes one JSON line for each, in their order.
 * Returns the exit code: 0, or 2 when a file could not be read (or the program failed); a refused case is a line and no error.
 */
export async function solveFiles(solve: CaseSolver, files: readonly string[], write: (line: string) => void): Promise<0 | 2> {
  let exitCode: 0 | 2 = 0
  for (const file of files) {
    const read = await readJson(file)
    if (!read.ok) {
      exitCode = 2
      write(JSON.stringify({ file, status: 'rejected', reason: read.reason }))
      continue
    }
    const { answer, isOurFault } = solveOrReject(solve, read.value)
    if (isOurFault) exitCode = 2
    write(JSON.stringify(answer))
  }
  return exitCode
}

/** The solver's result, or a rejection with the reason and what names the case. A fault of the program itself is told apart. */
export function solveOrReject(solve: CaseSolver, json: unknown): { answer: unknown; isOurFault: boolean } {
  try {
    return { answer: solve(json), isOurFault: false }
  } catch (error) {
    const isOurFault = !(error instanceof InputRefused || error instanceof RangeError)
    const message = error instanceof Error ? error.message : 'unknown'
    const reason = isOurFault ? `internal error: ${message.split('\n')[0]}` : message
    return { answer: { ...nameOf(json), status: 'rejected', reason }, isOurFault }
  }
}

function nameOf(json: unknown): { id?: string; name?: string } {
  if (typeof json !== 'object' || json === null) return {}
  const named: { id?: string; name?: string } = {}
  if ('id' in json && typeof json.id === 'string') named.id = json.id.slice(0, 1000)
  if ('name' in json && typeof json.name === 'string') named.name = json.name.slice(0, 1000)
  return named
}
