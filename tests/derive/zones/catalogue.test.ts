import { describe, expect, it } from 'vitest'
import { zoneCatalogue } from '../../../src/derive/zones/catalogue.ts'
import { zonesAt } from '../../../src/derive/zones.ts'
import { zoneInputs } from '../../../src/checks/list/zoneInputs.ts'
import { checks } from '../../../src/checks/registry.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import { crewInZone } from '../../../src/checks/list/crewInZone.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { kinds, kindOf, type PlacedKind } from '../../../src/scene/kinds/index.ts'
import { phases } from '../../../src/scene/parts.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { boxM, findingsOf, machineAt0, rackAtInfeed, rollersAt, siteOf } from '../../checks/yardCase.ts'

const unknown = { value: null, basis: 'typical' as const }

/** The record with nothing of what may be unknown said. */
function emptied(record: YardRecord): YardRecord {
  const definition = kindOf(record.kind as PlacedKind)!
  const figures = 'figures' in record ? { figures: Object.fromEntries(Object.keys(record.figures as object).map((name) => [name, unknown])) } : {}
  const unsaid = Object.fromEntries(definition.fields.flatMap(({ path, input }) => (!path.includes('.') && 'nullable' in input && input.nullable === true ? [[path, null]] : [])))
  const height = 'height' in record ? { height: { rule: 'unknown' } } : {}
  return { ...record, ...figures, ...unsaid, ...height } as YardRecord
}

/** One of every kind of gear, far enough from each other to be told apart. */
const gear = (): YardRecord[] => kinds.filter(({ kind }) => kind !== 'crew' && kind !== 'level' && kind !== 'zone' && kind !== 'machine' && kind !== 'rack' && kind !== 'puller').map(({ kind, placing, idPrefix }, i) =>
  item(kind, `${idPrefix}:1`, placing === 'item' ? onRun(10 + 3 * i, { offsetM: -20 }) : boxM(10 * i, 10 * i + 8, -60, -50)))
const frame = (): YardRecord[] => [machineAt0(), rackAtInfeed(), item('puller', 'puller:1', onRun(120)), ...rollersAt(5, 95, 5)]
const bend = { vertices: [{ xM: 60, yM: 0, radiusM: 30 }, { xM: 60, yM: 200, radiusM: null }], surfaces: [null] }
const said = siteOf({ job: { noseHold: 'slung', test: 'water' }, setUp: { fallRatio: 0.02 }, run: bend }, ...frame(), ...gear())
const unsaid: SiteModel = siteOf({ job: { noseHold: 'slung', test: null, pipe: null, stickLengthM: 12, neededLengthM: 85 }, setUp: { fallRatio: null, crossFallRatio: null }, run: bend }, ...[...frame(), ...gear()].map((record) => (kindOf(record.kind as PlacedKind) === undefined ? record : emptied(record))))

describe('the catalogue of zones', () => {
  it('has the numbers 1 to 28, each with a name, a sentence and its source in both languages', () => {
    expect(zoneCatalogue.map(({ id }) => id)).toEqual(Array.from({ length: 28 }, (_, i) => `Z-${String(i + 1).padStart(2, '0')}`))
    for (const { id, name, sentence, size, source, classes } of zoneCatalogue) {
      for (const text of [name, sentence, size]) {
        expect(text.en, id).not.toBe('')
        expect(text.es, id).not.toBe('')
        expect(text.en, id).not.toBe(text.es)
      }
      expect(source.cite.length, id).toBeGreaterThan(10)
      expect(Object.keys(classes).length, id).toBeGreaterThan(0)
    }
  })

  it('lives in the phases of the job map, with their class', () => {
    // Job map of the trade, zone by stage: R red, A amber, B public and vehicles out, - not live. Set-up, offload, load, fuse, pull, move, rest, tie-in.
    const table: Record<string, string> = {
      'Z-01': '-R------', 'Z-02': 'AARAAAAA', 'Z-03': '--AAA---', 'Z-04': 'A-ARA---', 'Z-05': '---AA---', 'Z-06': '---R----', 'Z-07': 'RRR--R-R', 'Z-08': 'RRR-AR-R', 'Z-09': '---ARR--', 'Z-10': '----RR--',
      'Z-11': '---ARRAA', 'Z-12': '---AAR--', 'Z-13': '---ARRAA', 'Z-14': 'ARAAAAAA', 'Z-15': 'AAAAAAAA', 'Z-16': 'RRRRRRRR', 'Z-17': 'BBBBBBBB', 'Z-18': 'BBBBBBBB', 'Z-19': 'BBBBBBBB', 'Z-20': 'AAAAAAAA',
      'Z-21': '---A--AA', 'Z-22': '-------A', 'Z-23': '-------R', 'Z-24': 'A--A--A-', 'Z-25': 'RRRRRRRR', 'Z-26': 'AAAAAAAA', 'Z-27': '--R-----', 'Z-28': '----R---',
    }
    for (const { id, classes } of zoneCatalogue) expect(phases.map((phase) => classes[phase]?.slice(0, 1) ?? '-').join(''), id).toBe(table[id])
  })

  it('draws every one of them from gear on the plan', () => {
    const drawn = new Set(phases.flatMap((phase) => zonesAt(said, { phase, joint: 1 })).concat(phases.flatMap((phase) => zonesAt(said, { phase, joint: 99 }))).map(({ id }) => id))
    expect(zoneCatalogue.map(({ id }) => id).filter((id) => !drawn.has(id))).toEqual([])
  })

  it('is never silent where its inputs are missing: drawn, the input named, and asked for by exactly one check', () => {
    const asking = new Map(checks.map((check) => [check.id, check]))
    const byZones = new Set(findingsOf(zoneInputs, unsaid).flatMap(({ missing }) => missing.map(({ recordId, path }) => `${recordId} ${path}`)))
    const all = phases.flatMap((phase) => [1, 99].flatMap((joint) => zonesAt(unsaid, { phase, joint })))
    const silent = new Set(zoneCatalogue.map(({ id }) => id))
    for (const zone of all) {
      silent.delete(zone.id)
      expect(zone.rings.flat().every(({ xM, yM }) => Number.isFinite(xM) && Number.isFinite(yM)), zone.key).toBe(true)
      if (zone.askedBy !== null) expect(asking.has(zone.askedBy), zone.key).toBe(true)
      else for (const { recordId, path } of zone.missing) expect(byZones.has(`${recordId} ${path}`), `${zone.key} ${path}`).toBe(true)
    }
    expect([...silent]).toEqual([])
    // Water has nothing that could be missing. The fixed 3 ft past the near beam and the rest have.
    const unasked = zoneCatalogue.map(({ id }) => id).filter((id) => all.filter((zone) => zone.id === id).every(({ missing }) => missing.length === 0))
    expect(unasked).toEqual(['Z-26'])
  })

  it('asks once a kind of gear, and raises no STOP and no FIX from what it does not know', () => {
    const asked = findingsOf(zoneInputs, unsaid)
    expect(new Set(asked.map(({ key }) => key)).size).toBe(asked.length)
    expect(asked.every(({ level, isUnknown }) => level === 'CHECK' && isUnknown)).toBe(true)
    const crew = siteOf({ setUp: { fallRatio: null } }, emptied(item('trailer', 'trailer:1', onRun(40, { offsetM: -9 }))), item('crew', 'crew:1', onRun(40, { offsetM: -13 }), { role: 'spotter', phases: ['offload'] }))
    expect(findingsOf(crewInZone, crew).map(({ level }) => level)).toEqual(['met'])
    expect(runChecks(crew).findings.filter(({ checkId, level }) => (checkId === 'crew-in-zone' || checkId === 'public-way') && (level === 'STOP' || level === 'FIX'))).toEqual([])
  })
})
