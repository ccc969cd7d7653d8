import { describe, expect, it } from 'vitest'
import { linerStakes } from '../../../src/checks/list/linerStakes.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { levelsOf, siteOf } from '../yardCase.ts'

describe('a liner', () => {
  const on = (surface: 'liner' | 'grass', kind: 'guide' | 'anchor') => levelsOf(linerStakes, siteOf({ run: { surfaces: [surface] } }, item(kind, `${kind}:1`, onRun(30, { offsetM: 1 }))))
  it('takes no stake; an anchor on it is worth a look', () => expect([on('liner', 'guide'), on('liner', 'anchor'), on('grass', 'guide')]).toEqual([['FIX'], ['CHECK'], []]))
})
