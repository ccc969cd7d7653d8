import { describe, expect, it } from 'vitest'
import { finding, houseRule, say, type Draft } from '../../src/checks/make.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { levelsByStage } from '../../src/checks/stageLevels.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { stagesOf } from '../../src/derive/stages/stagesOf.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const yard = (over: Parameters<typeof fusionYard>[0] = {}) => fusionYard({ size: '10', neededFt: 280, exits: [[12.5, 0], [25, 1.5], [35.67, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: Array.from({ length: 13 }, (_, i) => 77 + 20 * i), ...over })
const stages = stagesOf(deriveSite(yard()))
const one = (draft: Partial<Draft>) => finding('test', { level: 'FIX', what: say('x', 'x'), source: houseRule, ...draft })
const where = (draft: Partial<Draft>): string[] => [...levelsByStage(stages, [one(draft)])].filter(([, { worst }]) => worst !== null).map(([id]) => id)

describe('findings by stage', () => {
  it('hold in every stage of their phases, or in those of their joints', () => {
    expect(where({ phases: ['pull'] })).toEqual(['pull:1', 'pull:2', 'pull:3', 'pull:4', 'pull:5', 'pull:6', 'pull:7'])
    expect(where({ phases: ['pull', 'fuse'], joints: [3] })).toEqual(['fuse:3', 'pull:3'])
    expect(where({ phases: ['fuse', 'rest'], joints: [3] })).toEqual(['fuse:3', 'rest'])
  })
  it('about stick 1 fed through belong to the set-up', () => expect(where({ phases: ['pull'], joints: [0] })).toEqual(['setUp']))
  it('without a phase are about the plan and mark no stage', () => expect(where({})).toEqual([]))
  it('mark a stage with the worst of them', () => {
    const both = levelsByStage(stages, [one({ phases: ['rest'], level: 'NOTE' }), one({ phases: ['rest'], level: 'STOP' })]).get('rest')!
    expect(both.worst).toBe('STOP')
    expect(both.findings).toHaveLength(2)
  })
  it('show the nose of a sketch at the pulls in which it hits, and nowhere else', () => {
    // Rollers 20 ft apart and a free nose: each of the row is met low. The string ends at 319 ft 6 in, the row at 317 ft; pull 1 passes E4, E5 and G1.
    const document = yard({ job: { noseHold: 'free' } })
    const site = deriveSite(document)
    const found = levelsByStage(stagesOf(site), runChecks(site).findings)
    const nose = [...found].filter(([, { findings }]) => findings.some(({ checkId, level }) => checkId === 'nose-landing' && level === 'FIX')).map(([id]) => id)
    expect(nose).toEqual(['pull:1', 'pull:2', 'pull:3', 'pull:4', 'pull:5', 'pull:6', 'pull:7'])
    const short = yard({ job: { noseHold: 'free' }, rollers: [77, 97, ...Array.from({ length: 20 }, (_, i) => 108 + 11 * i)] })
    const shortSite = deriveSite(short)
    const fixed = [...levelsByStage(stagesOf(shortSite), runChecks(shortSite).findings)].filter(([, { findings }]) => findings.some(({ checkId, level }) => checkId === 'nose-landing' && level === 'FIX')).map(([id]) => id)
    expect(fixed.length).toBeLessThan(4)
    expect(fixed).toContain('pull:1')
  })
})
