import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import type { Finding } from '../../src/checks/finding.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { testEnv } from '../helpers/documents.ts'
import { examples } from '../helpers/makeExamples.ts'
import { ftM } from './yardCase.ts'

const yard = (name: string): YardDocument => examples[name]!()
const edited = (document: YardDocument, ...commands: readonly (readonly [name: string, args: unknown])[]): YardDocument =>
  commands.reduce((before, [name, args]) => applyEdit(before, commandOf(name)!.run(before, args, testEnv())), document)
const of = (document: YardDocument, checkId: string): readonly Finding[] => runChecks(document).findings.filter((one) => one.checkId === checkId)
const run = (document: YardDocument): string => Object.values(document.records).find(({ kind }) => kind === 'run')!.id

describe('what a crew lead must be told about bends', () => {
  it('a street closure with 24 in DR 17 into a pit 8 ft deep: a pit drawn 30 ft long is too short, 41 ft is enough', () => {
    const street = (lengthFt: number): YardDocument => edited(yard('maple-fork-good'),
      ['setJob', { path: 'pipe', value: { system: 'IPS', size: '24', dr: 17, material: 'PE4710' } }],
      ['place', { kind: 'trench', points: [{ xM: 0, yM: 30 }, { xM: lengthFt * ftM, yM: 30 }], patch: { isPit: true, figures: { widthM: { value: 2, basis: 'measured' }, depthM: { value: 8 * ftM, basis: 'measured' } } } }])
    // √(8 × (4 × 54 − 8)) = 40.8 ft at R 54 ft.
    const [short] = of(street(30), 'pit-length')
    expect([short!.level, short!.limit!.value! / ftM]).toEqual(['FIX', expect.closeTo(40.8, 1)])
    expect(of(street(41), 'pit-length').map(({ level }) => level)).toEqual(['met'])
  })

  it('a bore entered at 12° by 16 in DR 11: 100 ft is a rise of 2.2 ft; 30 ft breaks the handbook, 50 ft the owner’s 40 OD', () => {
    const arch = (radiusFt: number, ownerTimesOd: number | null = null): YardDocument => edited(yard('otter-bend-good'),
      ['setJob', { path: 'arch', value: { entryAngleRad: (12 * Math.PI) / 180, radiusM: radiusFt * ftM, ownerTimesOd, rollerHeightM: 0, supportSpacingM: null } }])
    const [note] = of(arch(100), 'break-over')
    expect([note!.level, note!.measured!.value! / ftM]).toEqual(['NOTE', expect.closeTo(2.2, 1)])
    expect(of(arch(30), 'break-over').map(({ level }) => level)).toEqual(['FIX', 'NOTE'])
    expect(of(arch(50, 40), 'break-over')[0]!.source.class).toBe('jobRule')
    expect(of(arch(53.4, 40), 'break-over').map(({ level }) => level)).toEqual(['NOTE'])
  })

  it('a centre-pivot track with 15 m of radius and 450 SDR 26 at 60 °C: FIX under 15.3 m, CHECK under half as much again, stakes to hold it', () => {
    const sketch = yard('campo-arenal-first-sketch')
    const [tight] = of(sketch, 'bend-radius')
    expect([tight!.level, tight!.limit!.value]).toEqual(['FIX', expect.closeTo(15.3, 6)])
    const wider = (radiusM: number): string[] => of(edited(sketch, ['setRun', { runId: run(sketch), path: 'vertices.0.radiusM', value: radiusM }]), 'bend-radius').map(({ level }) => level)
    expect([wider(19), wider(22.9), wider(23)]).toEqual([['CHECK'], ['CHECK'], ['met']])
    expect(of(sketch, 'bend-hold').map(({ level }) => level)).toEqual(['CHECK', 'NOTE'])
  })

  it('a good plan hears no STOP and no FIX from any of them', () => {
    const mine = ['bend-radius', 'bend-hold', 'tail-sweep', 'vertical-bend', 'break-over', 'pit-length', 'side-hill']
    for (const name of Object.keys(examples).filter((one) => one.endsWith('-good'))) {
      expect(runChecks(yard(name)).findings.filter(({ checkId, level, isUnknown }) => mine.includes(checkId) && (level === 'STOP' || level === 'FIX' || isUnknown)).map(({ key }) => key), name).toEqual([])
    }
  })
})
