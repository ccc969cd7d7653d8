import { describe, expect, it } from 'vitest'
import { crewCommands } from '../../src/derive/crewDefaults.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { zonesAt } from '../../src/derive/zones.ts'
import { depthIn, judging } from '../../src/derive/zoneStages.ts'
import type { CrewRecord } from '../../src/scene/kinds/crew.ts'
import { newDocument } from '../../src/scene/newYard.ts'
import { after } from '../helpers/commands.ts'
import { testEnv } from '../helpers/documents.ts'

describe('usual crew spots of a new yard', () => {
  it.each([[0.01, 85, 21], [0.01, 200, 21], [0.02, 200, 9], [0.04, 200, null]] as const)('on a fall of %s with %s m of pipe stand in no RED zone at any joint, first and between', (fallRatio, neededLengthM, stripWidthM) => {
    const env = testEnv()
    const empty = newDocument({ pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, neededLengthM, stickLengthM: 12.192, stripLengthM: 300, stripWidthM, fallRatio }, env, 'feetInches')
    const crew = crewCommands(deriveSite(empty)).reduce((before, { command, args }) => after(before, command, args, env), empty)
    const site = deriveSite(crew)
    const spots = [...site.placed.values()].filter(({ kind }) => kind === 'crew')
    expect(spots.length).toBeGreaterThan(1)
    const inside = (['load', 'fuse', 'pull'] as const).flatMap((phase) => Array.from({ length: site.sticks.stickCount - 1 }, (_, i) => i + 1).flatMap((joint) => zonesAt(site, { phase, joint }).flatMap((zone) => spots.flatMap((spot) => {
      const { role, phases } = spot.record as CrewRecord
      return phases.includes(phase) && zone.zoneClass === 'RED' && judging(zone) && !zone.mayEnter.includes(role) && depthIn(zone, spot) > 0.001 ? [`${phase} ${joint} ${role} ${zone.key}`] : []
    }))))
    expect(inside).toEqual([])
  })
})
