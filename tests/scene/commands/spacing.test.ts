import { expect, it } from 'vitest'
import { after, whereIs } from '../../helpers/commands.ts'
import { free, item, onRun, yard } from '../../helpers/documents.ts'

const row = (...at: number[]) => yard(...at.map((runningM, i) => item('roller', `roller:${i}`, onRun(runningM))))
const ids = (count: number): string[] => Array.from({ length: count }, (_, i) => `roller:${i}`)
const runnings = (document: ReturnType<typeof row>, count: number): (number | null)[] => ids(count).map((id) => whereIs(document, id).runningM)

it('spread evenly keeps the two ends, whatever the order they were chosen in', () => {
  // Ends 10 and 40; three gaps of 10.
  expect(runnings(after(row(12, 40, 10, 31), 'spreadEvenly', { ids: ids(4) }), 4)).toEqual([20, 40, 10, 30])
})
it('spread evenly needs three', () => {
  const document = row(1, 5)
  expect(after(document, 'spreadEvenly', { ids: ids(2) })).toBe(document)
})
it('a spacing starts from the one nearest the datum, or where it is told', () => {
  expect(runnings(after(row(30, 10, 21), 'spaceAt', { ids: ids(3), spacingM: 3.3528 }), 3)).toEqual([16.7056, 10, 13.3528])
  expect(runnings(after(row(30, 10, 21), 'spaceAt', { ids: ids(3), spacingM: 5, fromRunningM: 12 }), 3)).toEqual([22, 12, 17])
})
it('a spacing on the infeed goes outward from the datum', () => {
  expect(runnings(after(row(-30, -10, -21), 'spaceAt', { ids: ids(3), spacingM: 5 }), 3)).toEqual([-20, -10, -15])
})
it('a locked or free item: the locked one is left out, the free one stays free and is spaced with the others', () => {
  const document = yard(item('roller', 'roller:0', onRun(0)), item('roller', 'roller:1', free(3, 1)), item('roller', 'roller:2', onRun(9)), item('roller', 'roller:3', onRun(4), { locked: true }))
  const spaced = after(document, 'spreadEvenly', { ids: ids(4) })
  expect(whereIs(spaced, 'roller:1')).toMatchObject({ xM: 4.5, yM: 1 })
  expect(whereIs(spaced, 'roller:3').runningM).toBe(4)
})
