import { describe, expect, it } from 'vitest'
import { missingInputs } from '../../../src/checks/list/missingInputs.ts'
import { documentOf, item, job, layout, onRun } from '../../helpers/documents.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('inputs nobody has given', () => {
  it('are one CHECK for each kind, whatever the number of items, counted as unknown', () => {
    const found = runOne(missingInputs, fusionYard({ exits: [[20, 0], [30, 0], [35, 0]] }))
    const stands = found.filter(({ key }) => key === 'missing-inputs@stand')
    expect(stands).toHaveLength(1)
    expect(stands[0]!.isUnknown).toBe(true)
    expect(stands[0]!.missing.map(({ recordId, path }) => `${recordId} ${path}`)).toEqual(['stand:e1 figures.ratedLoadN.value', 'stand:e2 figures.ratedLoadN.value', 'stand:e3 figures.ratedLoadN.value'])
    expect(textOf(stands[0]!)).toBe('Not given for the pipe stand: rated load (plate).')
  })
  it('name the job’s fields', () => {
    const [one] = runOne(missingInputs, documentOf(layout(), job()))
    expect(textOf(one!)).toBe('Not given for the job: pipe: size, DR and material, temperature of the pipe wall, stick length and length needed.')
  })
  it('name the fall of the ground, and the cross-fall where a rack stands', () => {
    expect(levelsOf(missingInputs, fusionYard({ fallRatio: null }))['ground']).toBe('CHECK?')
    expect(levelsOf(missingInputs, fusionYard())['ground']).toBeUndefined()
  })
  it('a height rule nobody chose is a missing height', () => {
    const found = runOne(missingInputs, fusionYard({ exits: [], more: [item('stand', 'stand:x', onRun(6), { height: { rule: 'unknown' } })] }))
    expect(found.find(({ key }) => key === 'missing-inputs@stand')!.missing.map(({ path }) => path)).toContain('height')
  })
  it('the loader’s highest point is asked for only under wires', () => {
    const loader = item('loader', 'loader:1', onRun(-6, { offsetM: 6 }))
    const paths = (more: Parameters<typeof fusionYard>[0]): string[] => runOne(missingInputs, fusionYard(more)).filter(({ key }) => key === 'missing-inputs@loader').flatMap(({ missing }) => missing.map(({ path }) => path))
    expect(paths({ more: [loader] })).toEqual(['figures.plateLoadN.value'])
    expect(paths({ more: [loader, item('overheadLine', 'overheadLine:1', [{ xM: 0, yM: 50 }, { xM: 50, yM: 50 }])] })).toContain('figures.topHeightM.value')
  })
})
