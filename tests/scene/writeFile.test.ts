import { describe, expect, it } from 'vitest'
import { readFile } from '../../src/scene/readFile.ts'
import { documentHash, fileFormOf, writeFile } from '../../src/scene/writeFile.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp, yard } from '../helpers/documents.ts'

const stand = item('stand', 'stand:1', onRun(6.096))
const fence = item('fence', 'fence:1', [{ xM: 0, yM: 5 }, { xM: 10, yM: 5 }])

describe('the file', () => {
  it('has its parts in the order of the design, empty lists too', () => {
    expect(Object.keys(fileFormOf(yard(fence, stand)))).toEqual(['format', 'fileVersion', 'layout', 'job', 'setUps', 'runs', 'strings', 'items', 'features', 'zones', 'zoneChanges', 'crew', 'limits', 'asSet', 'releases', 'assets'])
  })
  it('is the same text whatever the order keys and kinds came in', () => {
    const shuffled = { ...Object.fromEntries(Object.entries(stand).toReversed()) } as typeof stand
    expect(writeFile(yard(fence, shuffled))).toBe(writeFile(yard(stand, fence)))
  })
  it('keeps short groups on one line and puts the name and kind first', () => {
    const text = writeFile(yard(stand))
    expect(text).toContain('\n      "id": "stand:1",\n      "kind": "stand",\n      "place": { "at": "onRun", "runId": "run:1", "runningM": 6.096, "offsetM": 0, "turnRad": 0 },\n')
    expect(text.endsWith('}\n')).toBe(true)
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(118)
  })
  it('rounds to 1e-9 and writes no minus zero; the exact form keeps every digit', () => {
    const noisy = yard(item('tree', 'tree:1', free(21.000000000000004, -0, 1 / 3)))
    expect(writeFile(noisy)).toContain('{ "at": "free", "xM": 21, "yM": 0, "headingRad": 0.333333333 }')
    expect((fileFormOf(noisy, { exact: true })['items'] as { place: { xM: number } }[])[0]?.place.xM).toBe(21.000000000000004)
  })
  it('loses nothing of a record that no longer fits its schema, and reading it again names the field', () => {
    const text = writeFile(yard({ ...stand, roller: 'oval' } as unknown as typeof stand))
    expect(text).toContain('"roller": "oval"')
    const result = readFile(text)
    expect(result.ok ? '' : result.issues[0]?.path).toBe('items[0].roller')
  })
})

describe('the hash of a document', () => {
  it('is the same for the same content in another order, with digits below 1e-9, or as a copy', () => {
    const hash = documentHash(yard(stand, fence))
    expect(documentHash(yard(fence, stand))).toBe(hash)
    expect(documentHash(yard({ ...stand, place: onRun(6.096 + 1e-12) } as typeof stand, fence))).toBe(hash)
    expect(documentHash(documentOf(layout({ layoutId: 'layout:other' }), job(), setUp(), run(), stand, fence))).toBe(hash)
  })
  it('differs when anything a person decided differs', () => {
    const hash = documentHash(yard(stand))
    expect(documentHash(yard({ ...stand, place: onRun(6.0961) } as typeof stand))).not.toBe(hash)
    expect(documentHash(yard())).not.toBe(hash)
  })
})
