/** What the words after `yard` ask for. */
import type { UnitSystem } from '../units/format.ts'
import { paperNames, type Orientation, type PaperName } from '../sheet/crew/paper.ts'
import type { SheetLanguage } from '../sheet/crew/types.ts'

export const SHEET_FORMS = ['pdf', 'svg', 'csv', 'dxf', 'geojson'] as const

export interface SheetRequest {
  readonly file: string
  readonly outputs: readonly { readonly as: (typeof SHEET_FORMS)[number]; readonly out: string }[]
  readonly paper: PaperName
  readonly orientation: Orientation
  readonly language: SheetLanguage
  /** null: those of the layout. */
  readonly units: UnitSystem | null
}

export type SolveKind = 'beam' | 'pull' | 'clearance'

export type Request =
  | { readonly kind: 'help' }
  | { readonly kind: 'solve'; readonly solve: SolveKind; readonly files: readonly string[] }
  | { readonly kind: 'check'; readonly files: readonly string[]; readonly isJson: boolean }
  | ({ readonly kind: 'sheet' } & SheetRequest)
  | { readonly kind: 'wrong'; readonly message: string }

export const HELP = `yard: the planner's engine without a browser

  yard check FILE.yard.json … [--json]      findings, quantities and profile of layouts
  yard sheet FILE.yard.json --pdf OUT …     the crew sheet; also --svg OUT, and --csv, --dxf, --geojson OUT
       [--paper letter|tabloid|a4|a3] [--portrait] [--language en|es|both] [--units feet|metric]
                                            PNG is drawn by a browser: use the app
  yard solve beam|pull|clearance FILE …     raw cases in SI units, one JSON line each, in the order of the files

Exit codes
  check   0 no STOP and no FIX · 1 some · 2 unusable input
  sheet   0 everything was written · 2 unusable input, or a file cannot be written
  solve   0 every file was read (a case may still say "status":"rejected" with its reason)
          2 a file cannot be read, or the command is not understood

The planner advises on layout. Local law, the owner's rules, the equipment maker's manual and the qualified person
on site come first.`

const SOLVE_KINDS: readonly SolveKind[] = ['beam', 'pull', 'clearance']

/** Reads the arguments. A word that is not understood is named; `--` ends the options. */
export function parseArgs(argv: readonly string[]): Request {
  if (argv[0] === 'sheet') return parseSheet(argv.slice(1))
  const end = argv.indexOf('--')
  const options = argv.slice(0, end < 0 ? argv.length : end).filter((word) => word.startsWith('-') && word !== '--')
  const words = argv.filter((word, i) => i !== end && ((end >= 0 && i > end) || !word.startsWith('-')))
  if (options.includes('--help') || options.includes('-h')) return { kind: 'help' }
  const [command, ...rest] = words
  if (command === undefined) return wrong('say what to do: check, sheet or solve (see --help)')
  if (command === 'help') return { kind: 'help' }
  if (command === 'check') return parseCheck(rest, options)
  if (command === 'solve') return parseSolve(rest, options)
  return wrong(`"${command}" is not a command: check, sheet or solve (see --help)`)
}

const wrong = (message: string): Request => ({ kind: 'wrong', message })

function parseCheck(files: readonly string[], options: readonly string[]): Request {
  const unknown = options.find((option) => option !== '--json')
  if (unknown !== undefined) return wrong(`"${unknown}" is not an option of check: --json`)
  if (files.length === 0) return wrong('check needs at least one file')
  return { kind: 'check', files, isJson: options.length > 0 }
}

/** Options of `sheet` take the word after them, so it is read in order; `--` ends them. */
function parseSheet(words: readonly string[]): Request {
  const outputs: { as: (typeof SHEET_FORMS)[number]; out: string }[] = []
  const files: string[] = []
  let [paper, orientation, language, units]: [PaperName, Orientation, SheetLanguage, UnitSystem | null] = ['letter', 'landscape', 'en', null]
  let isRead = false
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!
    if (isRead || !word.startsWith('-')) {
      files.push(word)
      continue
    }
    if (word === '--help' || word === '-h') return { kind: 'help' }
    if (word === '--') isRead = true
    else if (word === '--portrait') orientation = 'portrait'
    else if (word === '--landscape') orientation = 'landscape'
    else {
      const form = SHEET_FORMS.find((one) => word === `--${one}`)
      if (word === '--png') return wrong('--png needs a browser to draw: use the app, or --pdf or --svg')
      if (form === undefined && word !== '--paper' && word !== '--language' && word !== '--units') return wrong(`"${word}" is not an option of sheet (see --help)`)
      const value = words[i + 1]
      if (value === undefined || value.startsWith('--')) return wrong(`${word} needs a word after it`)
      i += 1
      if (form !== undefined) outputs.push({ as: form, out: value })
      else if (word === '--paper') {
        const name = paperNames.find((one) => one === value.toLowerCase())
        if (name === undefined) return wrong(`"${value}" is not a paper: ${paperNames.join(', ')}`)
        paper = name
      } else if (word === '--language') {
        if (value !== 'en' && value !== 'es' && value !== 'both') return wrong(`"${value}" is not a language of the sheet: en, es, both`)
        language = value
      } else {
        if (value !== 'feet' && value !== 'metric') return wrong(`"${value}" are no units of the sheet: feet, metric`)
        units = value === 'feet' ? 'feetInches' : 'metric'
      }
    }
  }
  const [file, ...more] = files
  if (file === undefined) return wrong('sheet needs a file')
  if (more.length > 0) return wrong(`sheet takes one file; "${more[0]}" is one too many`)
  if (outputs.length === 0) return wrong(`sheet needs to know what to write: ${SHEET_FORMS.map((form) => `--${form} OUT`).join(', ')}`)
  return { kind: 'sheet', file, outputs, paper, orientation, language, units }
}

function parseSolve([what, ...files]: readonly string[], options: readonly string[]): Request {
  if (options[0] !== undefined) return wrong(`"${options[0]}" is not an option of solve`)
  const solve = SOLVE_KINDS.find((kind) => kind === what)
  if (solve === undefined) return wrong(`solve ${what === undefined ? 'needs' : `does not know "${what}":`} beam, pull or clearance`)
  if (files.length === 0) return wrong(`solve ${solve} needs at least one file`)
  return { kind: 'solve', solve, files }
}
