import { expect, it } from 'vitest'
import { stakedIds } from '../../../src/scene/commands/index.ts'
import { after, recordOf, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp, testEnv, yard } from '../../helpers/documents.ts'

const near = (x: number): unknown => expect.closeTo(x, 9)

it('attaching to the run keeps point and heading', () => {
  const turned = documentOf(layout(), job(), setUp({ headingRad: 0.3 }), run(), item('stand', 'stand:1', free(5, 3, 0.5)))
  const before = whereIs(turned, 'stand:1')
  const attached = after(turned, 'attach', { ids: ['stand:1'] })
  expect(recordOf(attached, 'stand:1')['place']).toMatchObject({ at: 'onRun', runId: 'run:1', turnRad: near(0.2) })
  expect(whereIs(attached, 'stand:1')).toMatchObject({ xM: near(before.xM), yM: near(before.yM), headingRad: near(0.5) })
})
it('attaching to an item keeps point and heading, and it then follows that item', () => {
  const document = yard(item('puller', 'puller:1', free(10, 0, 1)), item('crew', 'crew:1', free(12, 1, 0.25)))
  const attached = after(document, 'attach', { ids: ['crew:1'], itemId: 'puller:1' })
  expect(whereIs(attached, 'crew:1')).toMatchObject({ xM: near(12), yM: near(1), headingRad: near(0.25) })
  expect(whereIs(after(attached, 'moveBy', { ids: ['puller:1'], dxM: 5, dyM: 0 }), 'crew:1')).toMatchObject({ xM: near(17), yM: near(1) })
})
it('attaching in a circle is refused by name', () => {
  const document = yard(item('puller', 'puller:1', free(10, 0)), item('crew', 'crew:1', onItem('puller:1')))
  expect(() => after(document, 'attach', { ids: ['puller:1'], itemId: 'crew:1' })).toThrow('crew:1, which itself hangs on puller:1')
})
it('attaching to what is not there is refused by name', () => {
  expect(() => after(yard(item('crew', 'crew:1', free(1, 1))), 'attach', { ids: ['crew:1'], itemId: 'puller:9' })).toThrow('puller:9, which is not an item here')
})
it('detaching keeps point and heading', () => {
  const document = yard(item('stand', 'stand:1', onRun(5, { offsetM: 1, turnRad: 0.1 })))
  expect(recordOf(after(document, 'detach', { ids: ['stand:1'] }), 'stand:1')['place']).toEqual(free(5, -1, 0.1))
})
it('a lock holds against moving, turning, attaching, height and deleting, and comes off', () => {
  const locked = after(yard(item('stand', 'stand:1', onRun(5))), 'lock', { ids: ['stand:1'], locked: true })
  for (const [name, args] of [['moveBy', { ids: ['stand:1'], dxM: 1, dyM: 0 }], ['rotateBy', { ids: ['stand:1'], turnRad: 1 }], ['detach', { ids: ['stand:1'] }], ['dropBy', { ids: ['stand:1'], dLevelM: 1 }], ['remove', { ids: ['stand:1'] }]] as const) {
    expect(after(locked, name, args), name).toBe(locked)
  }
  expect(recordOf(after(locked, 'lock', { ids: ['stand:1'], locked: false }), 'stand:1')['locked']).toBe(false)
})
it('what was measured or ticked is locked in one step, the rest stays free', () => {
  const open = yard(item('stand', 'stand:1', onRun(5)), item('stand', 'stand:2', onRun(9)), item('stand', 'stand:3', onRun(13)))
  const env = testEnv()
  const staked = after(after(open, 'setAsSet', { itemId: 'stand:1', saddleM: 0.7 }, env), 'setAsSet', { itemId: 'stand:2', isTicked: true }, env)
  expect(stakedIds(staked)).toEqual(['stand:1', 'stand:2'])
  const locked = after(staked, 'lockStaked', {})
  expect(['stand:1', 'stand:2', 'stand:3'].map((id) => recordOf(locked, id)['locked'])).toEqual([true, true, false])
  expect(stakedIds(locked)).toEqual([])
  expect(after(locked, 'lockStaked', {})).toBe(locked)
})
