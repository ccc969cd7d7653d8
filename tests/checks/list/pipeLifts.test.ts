import { describe, expect, it } from 'vitest'
import { pipeLifts } from '../../../src/checks/list/pipeLifts.ts'
import { changed, fusionYard, inch, runOne, withFigure } from '../../helpers/fusionYard.ts'

const travel = (travelM: number | null, exits: [number, number][] = [[25, 0], [35, 0]]): string[] => runOne(pipeLifts, changed(fusionYard({ exits }), 'machine:1', (record) => withFigure(record, 'liftTravelM', travelM))).map(({ level }) => level)

describe('pipe lifts over the jaws', () => {
  it('two inches of travel clear them', () => expect(travel(inch(2))).toEqual(['met']))
  it('a quarter of an inch is under half an inch: CHECK', () => expect(travel(inch(0.25))).toEqual(['CHECK']))
  it('stands that let the pipe down between lifts and jaws make it drag: FIX', () => expect(runOne(pipeLifts, changed(changed(fusionYard({ infeed: [-30], exits: [[30, 20]] }), 'machine:1', (record) => withFigure(record, 'liftTravelM', inch(0.05))), 'machine:1', (record) => withFigure(record, 'liftAtM', 0.3))).map(({ level }) => level)).toEqual(['FIX']))
  it('no lifts at all is CHECK', () => expect(travel(0)).toEqual(['CHECK']))
  it('an unknown travel is asked for elsewhere', () => expect(travel(null)).toEqual([]))
})
