import { describe, expect, it } from 'vitest'
import { HELP, parseArgs } from '../../src/headless/args.ts'

describe('arguments of yard', () => {
  it.each<[string, string[], ReturnType<typeof parseArgs>]>([
    ['solve with files, in order', ['solve', 'pull', 'b.json', 'a.json'], { kind: 'solve', solve: 'pull', files: ['b.json', 'a.json'] }],
    ['check', ['check', 'a.yard.json'], { kind: 'check', files: ['a.yard.json'], isJson: false }],
    ['check --json anywhere', ['--json', 'check', 'a', 'b'], { kind: 'check', files: ['a', 'b'], isJson: true }],
    ['help', ['--help'], { kind: 'help' }],
    ['help after a command', ['solve', '-h'], { kind: 'help' }],
    ['a file that looks like an option, after --', ['solve', 'beam', '--', '-odd.json'], { kind: 'solve', solve: 'beam', files: ['-odd.json'] }],
  ])('%s', (_name, argv, expected) => expect(parseArgs(argv)).toEqual(expected))

  it.each<[string, string[], string]>([
    ['nothing', [], 'say what to do'],
    ['an unknown command', ['weld'], '"weld" is not a command'],
    ['solve without a kind', ['solve'], 'solve needs'],
    ['solve of an unknown kind', ['solve', 'truss', 'a.json'], 'solve does not know "truss"'],
    ['solve without files', ['solve', 'beam'], 'solve beam needs at least one file'],
    ['check without files', ['check', '--json'], 'check needs at least one file'],
    ['an option solve does not have', ['solve', 'pull', 'a.json', '--json'], '"--json" is not an option of solve'],
    ['an option check does not have', ['check', 'a', '--pdf'], '"--pdf" is not an option of check'],
  ])('names what is wrong: %s', (_name, argv, message) => {
    const request = parseArgs(argv)
    expect(request.kind).toBe('wrong')
    expect(request.kind === 'wrong' && request.message).toContain(message)
    expect(request.kind === 'wrong' && request.message).not.toContain('\n')
  })

  it('the help names every command and exit code', () => {
    for (const word of ['check', 'solve', 'beam', 'pull', 'clearance', '--json', '0', '1', '2']) expect(HELP).toContain(word)
  })
})
