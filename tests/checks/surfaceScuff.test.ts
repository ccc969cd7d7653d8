import { describe, expect, it } from 'vitest'
import { surfaceScuff } from '../../src/checks/list/surfaceScuff.ts'
import { ftM, levelsOf, machineAt0, rollersAt, siteOf } from './yardCase.ts'

describe('string dragged on the ground', () => {
  it('is a check on gravel without rollers, nothing on grass or on rollers', () => {
    const on = (surface: 'gravel' | 'grass', ...records: Parameters<typeof siteOf>[1][]) => levelsOf(surfaceScuff, siteOf({ run: { surfaces: [surface] } }, machineAt0(), ...records))
    expect(on('gravel')).toEqual(['CHECK'])
    expect(on('grass')).toEqual(['met'])
    expect(on('gravel', ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM))).toEqual(['met'])
  })

  it('asks for the surface where nobody has named it', () => {
    expect(levelsOf(surfaceScuff, siteOf({ run: { surfaces: [null] } }, machineAt0()))).toEqual(['CHECK?'])
  })
})
