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

/** What the case calls itself, so that a rejection can be told to belong to it. */
function nameOf(json: unknown): Record<string, unknown> {
  if (typeof json !== 'object' || json === null) return {}
  const isName = (value: unknown): boolean => (typeof value === 'string' && value.length <= 1000) || Number.isFinite(value)
  return Object.fromEntries(Object.entries(json).filter(([key, value]) => (key === 'id' || key === 'name') && isName(value)))
}
