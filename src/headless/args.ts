/** What the words after `yard` ask for. */

export type SolveKind = 'beam' | 'pull' | 'clearance'

export type Request =
  | { readonly kind: 'help' }
  | { readonly kind: 'solve'; readonly solve: SolveKind; readonly files: readonly string[] }
  | { readonly kind: 'check'; readonly files: readonly string[]; readonly isJson: boolean }
  | { readonly kind: 'wrong'; readonly message: string }

export const HELP = `yard: the planner's engine without a browser

  yard check FILE.yard.json … [--json]      findings, quantities and profile of layouts
  yard solve beam|pull|clearance FILE …     raw cases in SI units, one JSON line each, in the order of the files

Exit codes
  check   0 no STOP and no FIX · 1 some · 2 unusable input
  solve   0 every file was read (a case may still say "status":"rejected" with its reason)
          2 a file cannot be read, or the command is not understood

The planner advises on layout. Local law, the owner's rules, the equipment maker's manual and the qualified person
on site come first.`

const SOLVE_KINDS: readonly SolveKind[] = ['beam', 'pull', 'clearance']

/** Reads the arguments. A word that is not understood is named; `--` ends the options. */
export function parseArgs(argv: readonly string[]): Request {
  const end = argv.indexOf('--')
  const options = argv.slice(0, end < 0 ? argv.length : end).filter((word) => word.startsWith('-') && word !== '--')
  const words = argv.filter((word, i) => i !== end && ((end >= 0 && i > end) || !word.startsWith('-')))
  if (options.includes('--help') || options.includes('-h')) return { kind: 'help' }
  const [command, ...rest] = words
  if (command === undefined) return wrong('say what to do: check or solve (see --help)')
  if (command === 'help') return { kind: 'help' }
  if (command === 'check') return parseCheck(rest, options)
  if (command === 'solve') return parseSolve(rest, options)
  return wrong(`"${command}" is not a command: check or solve (see --help)`)
}

const wrong = (message: string): Request => ({ kind: 'wrong', message })

function parseCheck(files: readonly string[], options: readonly string[]): Request {
  const unknown = options.find((option) => option !== '--json')
  if (unknown !== undefined) return wrong(`"${unknown}" is not an option of check: --json`)
  if (files.length === 0) return wrong('check needs at least one file')
  return { kind: 'check', files, isJson: options.length > 0 }
}

function parseSolve([what, ...files]: readonly string[], options: readonly string[]): Request {
  if (options[0] !== undefined) return wrong(`"${options[0]}" is not an option of solve`)
  const solve = SOLVE_KINDS.find((kind) => kind === what)
  if (solve === undefined) return wrong(`solve ${what === undefined ? 'needs' : `does not know "${what}":`} beam, pull or clearance`)
  if (files.length === 0) return wrong(`solve ${solve} needs at least one file`)
  return { kind: 'solve', solve, files }
}
