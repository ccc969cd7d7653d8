import { describe, expect, it } from 'vitest'
import { crewInZone } from '../../src/checks/list/crewInZone.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { setOnRun } from '../../src/scene/commands/move.ts'
import { item, onRun, testEnv } from '../helpers/documents.ts'
import { boxM, findingsOf, ftM, levelsOf, machineAt0, siteOf, withFigures } from './yardCase.ts'

const crew = (role: string, runningM: number, offsetM: number, phases: string[], id = 'crew:1') => item('crew', id, onRun(runningM, { offsetM }), { role, phases })
/** RED by hand in pull: 10 m along and 4 m to either side of the axis from 20 m on. */
const redBox = (over: Record<string, unknown> = {}) => item('zone', 'zone:1', boxM(20, 30, -4, 4), { phases: ['fuse'], zoneClass: 'RED', name: 'hot', ...over })

describe('crew spots and zones', () => {
  it('stop a person inside a live RED zone, and say that the width is a house rule', () => {
    // 3 m from the axis: 1 m inside.
    const [inside] = findingsOf(crewInZone, siteOf({}, redBox(), crew('exitHand', 25, 3, ['fuse'])))
    expect([inside!.level, inside!.measured!.value, inside!.phases]).toEqual(['STOP', expect.closeTo(1, 9), ['fuse']])
    expect(inside!.what.text.en).toContain('house rule')
    expect(inside!.what.text.es).toContain('regla de la casa')
  })

  it('leave a person on the edge or while the zone is not live', () => {
    expect(levelsOf(crewInZone, siteOf({}, redBox(), crew('exitHand', 25, 4, ['fuse'])))).toEqual(['met'])
    expect(levelsOf(crewInZone, siteOf({}, redBox(), crew('exitHand', 25, 3, ['rest'])))).toEqual(['met'])
  })

  it('send the person to the nearest clear place, which is clear', () => {
    const site = siteOf({}, redBox(), crew('exitHand', 25, 3, ['fuse']))
    const [inside] = findingsOf(crewInZone, site)
    // 1 m straight away from the pipe is the edge: offset 4 m.
    expect(inside!.remedy).toEqual(expect.objectContaining({ command: 'setOnRun', args: { id: 'crew:1', runningM: 25, offsetM: 4 } }))
    expect(inside!.move!.values).toMatchObject({ at: { runningM: 25 }, offset: { offsetM: 4 } })
    const after = deriveSite(applyEdit(site.document, setOnRun.run(site.document, inside!.remedy!.args, testEnv())))
    expect(levelsOf(crewInZone, after)).toEqual(['met'])
  })

  it('leave a locked spot where it is', () => {
    const [inside] = findingsOf(crewInZone, siteOf({}, redBox(), item('crew', 'crew:1', onRun(25, { offsetM: 3 }), { role: 'exitHand', phases: ['fuse'], locked: true })))
    expect(inside!.remedy).toBeNull()
  })

  it('let the role in that belongs there, and no other', () => {
    // Carriage and jaws: RED while fusing, the operator may; machine 1.9 m wide and 3 ft: to 1.864 m; 2 m down-string no facer reaches.
    const at = (role: string, offsetM: number) => levelsOf(crewInZone, siteOf({}, machineAt0(), crew(role, 2, offsetM, ['fuse'])))
    expect(at('operator', 1.5)).toEqual(['met'])
    expect(at('exitHand', 1.5)).toEqual(['STOP'])
    expect(at('exitHand', 1.87)).toEqual(['met'])
  })

  it('check a person in an AMBER zone and name who may be there', () => {
    // While loading the same zone is AMBER.
    const [amber] = findingsOf(crewInZone, siteOf({}, machineAt0(), crew('exitHand', 0, 1.5, ['load'])))
    expect([amber!.level, (amber!.what.values as Record<string, { en: string }>).allowed!.en]).toEqual(['CHECK', 'operator'])
    expect(amber!.remedy).toBeNull()
  })

  it('look at the first, a middle and the last joint', () => {
    // Ahead of the nose in the last of seven pulls: 97.4 m and 15 ft; half width 3.05 m.
    expect(levelsOf(crewInZone, siteOf({}, crew('noseSpotter', 99, 2, ['pull'])))).toEqual(['STOP'])
    expect(levelsOf(crewInZone, siteOf({}, crew('noseSpotter', 20, 2, ['pull'])))).toEqual(['STOP'])
    expect(levelsOf(crewInZone, siteOf({}, crew('noseSpotter', 99, 6, ['pull'])))).toEqual(['met'])
  })

  it('keep the puller operator out of the rope’s line unless the cab is guarded', () => {
    const at = (guardedCab: boolean | null) => levelsOf(crewInZone, siteOf({}, withFigures('puller', 'puller:1', onRun(106), { ropeLengthM: 30 * ftM }, { guardedCab }), crew('pullerOperator', 106, 0, ['pull'])))
    expect(at(true)).toEqual(['met'])
    expect(at(false)).toEqual(['STOP'])
  })

  it('judge nothing by a zone whose input is missing', () => {
    // The loader’s reach is unknown: its swing is drawn at the largest and only asks.
    const loader = withFigures('loader', 'loader:1', onRun(30, { offsetM: 12 }), { reachM: null })
    expect(levelsOf(crewInZone, siteOf({}, loader, crew('infeedHand', 30, 10, ['load'])))).toEqual(['met'])
    const known = withFigures('loader', 'loader:1', onRun(30, { offsetM: 12 }), { reachM: 1.2 })
    expect(levelsOf(crewInZone, siteOf({}, known, crew('infeedHand', 30, 10, ['load'])))).toEqual(['STOP'])
  })

  it('want one place a person and one person a lone task', () => {
    const two = (role: string, second: string, apartM: number) => levelsOf(crewInZone, siteOf({}, crew(role, 60, 20, ['load']), crew(second, 60, 20 + apartM, ['load'], 'crew:2')))
    expect(two('exitHand', 'spotter', 0.29)).toEqual(['CHECK'])
    expect(two('exitHand', 'spotter', 0.3)).toEqual(['met'])
    expect(two('operator', 'operator', 5)).toEqual(['CHECK'])
    expect(two('spotter', 'spotter', 5)).toEqual(['met'])
  })
})
