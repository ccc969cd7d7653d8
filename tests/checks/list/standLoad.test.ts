import { describe, expect, it } from 'vitest'
import { standLoad } from '../../../src/checks/list/standLoad.ts'
import { poundForceN } from '../../../src/units/factors.ts'
import { changed, fusionYard, mechanicsOf, runOne, textOf, withFigure } from '../../helpers/fusionYard.ts'

const rated = (pounds: number): ReturnType<typeof fusionYard> => changed(fusionYard(), 'stand:e1', (record) => withFigure(record, 'ratedLoadN', pounds * poundForceN))

describe('load on stands against their plates', () => {
  it.each([[1000, 'met'], [300, 'CHECK'], [150, 'FIX']] as const)('217 lb on a plate of %s lb is %s', (pounds, level) => {
    expect(mechanicsOf(rated(pounds)).loads().get('stand:e1')!.loadN / poundForceN).toBeCloseTo(217, 0)
    expect(runOne(standLoad, rated(pounds)).map((one) => one.level)).toEqual([level])
  })
  it('says when, and what the plate says', () => expect(textOf(runOne(standLoad, rated(150))[0]!)).toBe('E1 carries 217 lb at fuse 1; its plate says 150 lb.'))
  it('a stand without a plate is not judged here', () => expect(runOne(standLoad, fusionYard())).toEqual([]))
})
