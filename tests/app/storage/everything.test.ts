import { describe, expect, it } from 'vitest'
import { everythingOf, readEverything } from '../../../src/app/storage/everything.ts'
import { memoryTables } from '../../../src/app/storage/tables.ts'
import { documentOf, item, job, layout, onRun, run, setUp, yard } from '../../helpers/documents.ts'
import { gearItem } from '../../helpers/gear.ts'
import { keeperOn, storeOf } from '../../helpers/keeperBench.ts'

const first = yard(item('stand', 'stand:1', onRun(6)))
const second = documentOf(layout({ layoutId: 'layout-two', title: 'Second' }), job(), setUp(), run())
const point = { layoutId: 'layout-two', name: 'before the rain', at: '2026-01-01T08:00:00.000Z', document: second }
const settings = { theme: 'sun', language: 'es', leftHanded: true } as const
const text = everythingOf({ at: '', documents: [first, second], points: [point], gear: [gearItem()], settings })

describe('everything of a device', () => {
  it('is read back as it was written', () => {
    expect(readEverything(text)).toEqual({ documents: [first, second], points: [point], gear: [gearItem()], settings, refused: [] })
  })
  it('with one broken layout gives back the others and says which and why', () => {
    const broken = text.replace('"displayUnits": "feetInches"', '"displayUnits": "rods"')
    expect(readEverything(broken)).toMatchObject({ documents: [{ records: { 'layout:this': { layoutId: 'layout-two' } } }], refused: [{ en: expect.stringContaining('layout 1: layout.displayUnits "rods" is not known here') }] })
  })
  it('is nothing else: another file, another text', () => {
    expect([readEverything('{"format":"stringyard"}'), readEverything('no'), readEverything('null')]).toEqual([null, null, null])
  })
  it('comes back on to an empty device with its own ids, and beside what is there as copies', async () => {
    const keeper = keeperOn(memoryTables())
    expect(await keeper.restore(text)).toEqual({ layouts: 2, points: 1, gear: 1, settings, refused: [] })
    expect((await keeper.load('layout-two'))?.document).toEqual(second)
    expect(await keeper.gear()).toEqual([gearItem()])
    expect(await keeper.points('layout-two')).toMatchObject([{ name: 'before the rain', at: '2026-01-01T08:00:00.000Z' }])
    expect(await keeper.restore(text)).toEqual({ layouts: 2, points: 1, gear: 0, settings, refused: [] })
    expect(await keeper.points('layout-two')).toHaveLength(1)
    const ids = (await keeper.layouts()).map(({ layoutId }) => layoutId)
    expect([ids.length, new Set(ids).size]).toEqual([4, 4])
    expect((await keeper.load('layout-two'))?.document).toEqual(second)
  })
  it('is what the keeper hands out', async () => {
    const keeper = keeperOn(memoryTables())
    const documents = storeOf(second)
    await keeper.attach(documents, 'layout-two', null)
    await keeper.putGear([gearItem()])
    await keeper.keepPoint('layout-two', 'before the rain', second)
    await keeper.putSettings({ theme: 'sun', panel: 'job' })
    const { text: handed, refused } = await keeper.everything()
    expect(refused).toEqual([])
    expect(readEverything(handed)).toEqual({ documents: [second], points: [{ ...point, at: '2026-11-24T08:00:00.000Z' }], gear: [gearItem()], settings: { theme: 'sun' }, refused: [] })
  })
  it('says which layouts and points are not in it', async () => {
    const disk = memoryTables()
    const keeper = keeperOn(disk)
    await keeper.attach(storeOf(second), 'layout-two', null)
    await keeper.keepPoint('layout-two', 'good', second)
    const newer = { fileVersion: 99, sections: [] }
    await disk.write([
      { table: 'layouts', key: 'from-tomorrow', value: { layoutId: 'from-tomorrow', title: 'From tomorrow', changedAt: '', exampleName: null, seq: 1, document: first, past: [], future: [], stamp: newer } },
      { table: 'layouts', key: 'torn', value: { layoutId: 'torn', title: 'Torn' } },
      { table: 'points', key: 'layout-two/000009-x', value: { layoutId: 'layout-two', name: 'bad', at: '', document: second, stamp: newer } },
    ])
    const { text: handed, refused } = await keeper.everything()
    expect(refused.map(({ en }) => en)).toEqual([expect.stringContaining('"From tomorrow" on this device cannot be opened'), expect.stringContaining('point in time "bad" of'), expect.stringContaining('"torn": its record is damaged')])
    expect(readEverything(handed)).toMatchObject({ documents: [second], points: [{ name: 'good' }] })
  })
  it('brings no setting that a hand could not have chosen', () => {
    const bad = everythingOf({ at: '', documents: [], points: [], gear: [], settings: { theme: 'chrome', language: 'es', panel: 'job', pxPerM: 9, turned: 'yes', constructor: 1 } as never })
    expect(readEverything(bad)?.settings).toEqual({ language: 'es' })
  })
  it('leaves a point without its layout out, and a broken one by name', () => {
    const lost = everythingOf({ at: '', documents: [second], points: [{ ...point, layoutId: 'nowhere' }, point], gear: [], settings: {} })
    expect(readEverything(lost)?.points).toEqual([point])
    const json = JSON.parse(lost) as { points: { file: { job: unknown } }[] }
    json.points[1]!.file.job = 7
    expect(readEverything(JSON.stringify(json))).toMatchObject({ points: [], refused: [{ en: expect.stringContaining('point in time 2: job') }] })
  })
})
