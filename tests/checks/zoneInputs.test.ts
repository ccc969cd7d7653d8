import { describe, expect, it } from 'vitest'
import { zoneInputs } from '../../src/checks/list/zoneInputs.ts'
import { free, item, onRun } from '../helpers/documents.ts'
import { findingsOf, machineAt0, siteOf, withFigures } from './yardCase.ts'

/** The job says what its own zones need. */
const asked = { job: { temperatureSwingC: { value: 30, basis: 'measured' as const } } }

describe('what zones need to know', () => {
  it('is asked once a kind of gear, naming record and field', () => {
    const racks = [item('rack', 'rack:1', onRun(-6), { stopsLeft: true }), withFigures('loader', 'loader:1', free(0, 20), { reachM: null, topHeightM: 4 }), withFigures('loader', 'loader:2', free(0, 60), { reachM: null, topHeightM: 4 })]
    const found = findingsOf(zoneInputs, siteOf(asked, machineAt0(), ...racks))
    expect(found.map(({ key, level, isUnknown }) => [key, level, isUnknown])).toEqual([['zone-inputs@rack', 'CHECK', true], ['zone-inputs@loader', 'CHECK', true]])
    expect(found[1]!.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['loader:1 figures.reachM.value', 'loader:2 figures.reachM.value'])
  })

  it('asks for the guard of the cab without taking the rope’s zone away', () => {
    const [found] = findingsOf(zoneInputs, siteOf(asked, item('puller', 'puller:1', onRun(60))))
    expect(found!.missing.map(({ path }) => path)).toEqual(['guardedCab'])
    expect(findingsOf(zoneInputs, siteOf(asked, item('puller', 'puller:1', onRun(60), { guardedCab: true })))).toEqual([])
  })

  it('leaves overhead lines to their own check', () => {
    expect(findingsOf(zoneInputs, siteOf(asked, item('overheadLine', 'overheadLine:1', [{ xM: 0, yM: 9 }, { xM: 9, yM: 9 }])))).toEqual([])
  })
})
