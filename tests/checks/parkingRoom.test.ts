import { describe, expect, it } from 'vitest'
import { parkingRoom } from '../../src/checks/list/parkingRoom.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { parkedStringsOf, parkingRowsOf } from '../../src/derive/strings.ts'
import { recordsOf } from '../../src/scene/document.ts'
import { item, stringAt } from '../helpers/documents.ts'
import { textOf } from '../helpers/fusionYard.ts'
import { after, calder, findings, inStrings } from './streetCase.ts'
import { findingsOf, ftM } from './yardCase.ts'

describe('strings parked in a short street', () => {
  it('parks rows 5 ft centre to centre and leaves less than an emergency lane', () => {
    const site = deriveSite(inStrings([5, 5, 5, 4]))
    // OD 2 ft and 3 ft to walk; no stands drawn, so row 1 lies 5 ft from the line too. String A is shown, so B and C lie in rows 2 and 3.
    expect(parkingRowsOf(site)!.spacingM / ftM).toBeCloseTo(5, 9)
    expect(parkedStringsOf(site).map(({ offsetM }) => offsetM / ftM)).toEqual([expect.closeTo(-10, 9), expect.closeTo(-15, 9)])
    // Shown last, all three lie beside it: from 1 ft (pipe) or half the machine right of the line to 16 ft left of it.
    const document = inStrings([5, 5, 5, 4])
    const last = deriveSite(document, { stringId: recordsOf(document, 'string')[3]!.id })
    const left = findingsOf(parkingRoom, last).find(({ key }) => key.endsWith('@left'))!
    // 27 ft of street left of the line, 16 of them taken: 11 ft are left, 20 asked for.
    expect(left.level).toBe('CHECK')
    expect(left.measured!.value! / ftM).toBeCloseTo(11, 6)
    expect(left.source.class).toBe('published')
  })

  it('says which string cuts the emergency lane, and that a planned gap is to be tried', () => {
    // A lane of 20 ft along the left kerb, 7 to 27 ft from the line: string B in row 2 lies 9 to 11 ft out; A (4 to 6 ft) is clear of it.
    const lane = (gapPlan: boolean) => item('emergencyLane', 'emergencyLane:1', [{ xM: -70 * ftM, yM: 17 * ftM }, { xM: 285 * ftM, yM: 17 * ftM }], { gapPlan })
    const shown = (gapPlan: boolean) => {
      const document = inStrings([5, 5, 5, 4], lane(gapPlan))
      return findingsOf(parkingRoom, deriveSite(document, { stringId: recordsOf(document, 'string')[3]!.id })).find(({ key }) => key.includes('lane:'))!
    }
    expect([shown(false).level, shown(true).level]).toEqual(['FIX', 'CHECK'])
    expect(textOf(shown(false))).toContain('from string B on')
  })

  it('asks for a row, and for one row each', () => {
    const rowless = calder(stringAt(1, { stickCount: 10 }), stringAt(2, { stickCount: 9, joinedToId: 'string:1' }))
    const asked = findings(parkingRoom, rowless).find(({ isUnknown }) => isUnknown)!
    expect(asked.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['string:1 parkingRow'])
    expect(findings(parkingRoom, after(rowless, asked.remedy!.command, asked.remedy!.args)).some(({ isUnknown }) => isUnknown)).toBe(false)
    const same = calder(stringAt(1, { stickCount: 5, parkingRow: 1 }), stringAt(2, { stickCount: 5, parkingRow: 1 }), stringAt(3, { stickCount: 9 }))
    expect(findings(parkingRoom, same).find(({ key }) => key.includes('row:'))!.level).toBe('FIX')
  })
})
