import { describe, expect, it } from 'vitest'
import { typicalFigures } from '../../../src/checks/list/typicalFigures.ts'
import { changed, fusionYard, runOne, textOf, withFigure } from '../../helpers/fusionYard.ts'

describe('typical figures', () => {
  it('are one CHECK for each kind, counted as to confirm', () => {
    const found = runOne(typicalFigures, fusionYard())
    expect(found.map(({ key, isUnknown }) => [key, isUnknown])).toEqual([['typical-figures@machine', true], ['typical-figures@rack', true], ['typical-figures@stand', true]])
    expect(textOf(found[2]!)).toBe('Typical figures, not yours, for the pipe stand: lowest saddle and highest saddle.')
  })
  it('a figure typed from the plate goes away', () => {
    const typed = ['e1', 'e2'].reduce((document, id) => changed(changed(document, `stand:${id}`, (record) => withFigure(record, 'lowestSaddleM', 0.5)), `stand:${id}`, (record) => withFigure(record, 'highestSaddleM', 1)), fusionYard())
    expect(runOne(typicalFigures, typed).map(({ key }) => key)).not.toContain('typical-figures@stand')
  })
})
