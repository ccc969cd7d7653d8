import { describe, expect, it } from 'vitest'
import { beyondRun } from '../../../src/checks/list/beyondRun.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { changed, fusionYard, runOne, textOf } from '../../helpers/fusionYard.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'

const withPath = (lengthM: number, ...more: YardRecord[]): YardDocument => changed(fusionYard({ more }), 'run:1', (record) => ({ ...record, vertices: [{ xM: lengthM, yM: 0, radiusM: null }] }) as YardRecord)

describe('gear beyond the pull path', () => {
  it('a path that became shorter leaves its rollers where they were and says so', () => {
    const [one] = runOne(beyondRun, withPath(30, item('roller', 'roller:1', onRun(25)), item('roller', 'roller:2', onRun(40))))
    expect([one!.level, one!.itemIds, textOf(one!)]).toEqual(['CHECK', ['roller:2'], 'G2: beyond the end of the pull path, which is carried on straight there.'])
  })
  it('a path that reaches them is silent, and so is one without an end', () => {
    expect(runOne(beyondRun, withPath(50, item('roller', 'roller:1', onRun(40))))).toEqual([])
    expect(runOne(beyondRun, fusionYard({ more: [item('roller', 'roller:1', onRun(400))] }))).toEqual([])
  })
})
