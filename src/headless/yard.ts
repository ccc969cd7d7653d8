/** The `yard` command: the engine without a browser and without a build. */
import { HELP, parseArgs } from './args.ts'

async function main(argv: readonly string[]): Promise<number> {
  const request = parseArgs(argv)
  if (request.kind === 'help') {
    process.stdout.write(`${HELP}\n`)
    return 0
  }
  if (request.kind === 'wrong') {
    process.stderr.write(`yard: ${request.message}\n`)
    return 2
  }
  if (request.kind === 'check') {
    const { runCheck } = await import('./check.ts')
    return runCheck([...request.files], request.isJson)
  }
  if (request.kind === 'sheet') {
    const { runSheet } = await import('./sheet.ts')
    return runSheet(request, new Date())
  }
  const { loadSolver, solveFiles } = await import('./solve.ts')
  return solveFiles(await loadSolver(request.solve), request.files, (line) => process.stdout.write(`${line}\n`))
}

// A reader that has seen enough closes the pipe; that is no error of ours.
process.stdout.on('error', () => process.exit(0))

main(process.argv.slice(2)).then(
  (exitCode) => {
    process.exitCode = exitCode
  },
  (error: unknown) => {
    process.stderr.write(`yard: ${error instanceof Error ? error.message.split('\n')[0] : 'failed'}\n`)
    process.exitCode = 2
  },
)
