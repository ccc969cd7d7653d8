import { describe, expect, it, vi } from 'vitest'
import { replay, sealed, type Head } from '../../../src/app/storage/journal.ts'
import { memoryTables } from '../../../src/app/storage/tables.ts'
import type { WindowPort } from '../../../src/app/storage/windows.ts'
import { keeperOn, keeperParts, note, plainDocument, put, storeOf, testTables } from '../../helpers/keeperBench.ts'
import { makeKeeper } from '../../../src/app/storage/keeper.ts'
import { runKillSoak } from '../../helpers/killSoak.ts'
import { settle } from '../../helpers/settle.ts'

describe('keeping work', () => {
  it('opens again with every edit and its undo history', async () => {
    const disk = memoryTables()
    const documents = storeOf()
    await keeperOn(disk).attach(documents, 'yard:1', null)
    for (let i = 0; i < 120; i++) put(documents, `n${i}`, 'x')
    documents.getState().undo()
    documents.getState().undo()
    documents.getState().redo()
    await settle()
    await settle()
    const back = await keeperOn(disk).load('yard:1')
    expect(back?.document).toEqual(documents.getState().document)
    expect(back?.past).toEqual(documents.getState().past)
    expect(back?.future).toEqual(documents.getState().future)
    expect(back?.past).toHaveLength(119)
    expect(back?.recovered).toBeNull()
  })

  it('keeps typing in one field as the one step it is', async () => {
    const disk = memoryTables()
    const documents = storeOf()
    await keeperOn(disk).attach(documents, 'yard:1', null)
    put(documents, 'a', '1', 'field')
    put(documents, 'a', '12', 'field')
    put(documents, 'a', '123', 'field')
    await settle()
    const back = await keeperOn(disk).load('yard:1')
    expect(back?.past).toHaveLength(1)
    expect(back?.document.records['note:a']).toMatchObject({ text: '123' })
  })

  it('survives a kill at any write without a broken layout', async () => {
    const report = await runKillSoak({ seed: 4000, count: 10 })
    expect(report).toMatchObject({ kills: 10, broken: [] })
  })

  it('drops a torn end of the journal and says how many edits it was', () => {
    const document = plainDocument()
    const head: Head = { layoutId: 'yard:1', title: '', changedAt: '', exampleName: null, seq: 4, document, past: [], future: [] }
    const label = { text: { en: 'a', es: 'a' } }
    const entry = (seq: number) => {
      const diff = { added: { [`note:${seq}`]: note(String(seq), 'x') }, removed: {}, updated: {} }
      return sealed({ layoutId: 'yard:1', seq, diff, past: { drop: 0, keep: seq - 5, add: [{ label, diff }] }, future: { drop: 0, keep: 0, add: [] }, title: '', at: '' })
    }
    const torn = { ...entry(7), at: 'other' }
    expect(replay(head, [entry(5), entry(6), torn, entry(8)])).toMatchObject({ seq: 6, dropped: 2 })
    // A gap is an end too: what follows cannot be trusted.
    expect(replay(head, [entry(5), entry(7)])).toMatchObject({ seq: 5, dropped: 1 })
    // Entries already folded into the head are passed over.
    expect(replay(head, [{ ...entry(5) }, entry(6)].map((e) => e))).toMatchObject({ seq: 6, dropped: 0 })
  })

  it('tries a failed write again without a further edit: by the clock, each time later, and when somebody looks', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    try {
      const disk = memoryTables()
      const tables = testTables(disk)
      const keeper = keeperOn(tables)
      const documents = storeOf()
      await keeper.attach(documents, 'yard:1', null)
      tables.failing = { count: 2, error: new Error('full') }
      put(documents, 'a', '1')
      await settle()
      expect(keeper.state.getState().saved).toBe('unsaved')
      // First after 4 s, which fails too, then after 8 s more.
      await vi.advanceTimersByTimeAsync(4000)
      await settle()
      expect([keeper.state.getState().saved, tables.failing.count]).toEqual(['unsaved', 0])
      await vi.advanceTimersByTimeAsync(7999)
      await settle()
      expect(keeper.state.getState().saved).toBe('unsaved')
      await vi.advanceTimersByTimeAsync(1)
      await settle()
      await settle()
      expect(keeper.state.getState()).toMatchObject({ saved: 'saved', reason: null })
      expect((await keeperOn(disk).load('yard:1'))?.document).toEqual(documents.getState().document)
      tables.failing = { count: 1, error: new Error('full') }
      put(documents, 'b', '1')
      await settle()
      expect(keeper.state.getState().saved).toBe('unsaved')
      await keeper.retry()
      expect(keeper.state.getState().saved).toBe('saved')
    } finally {
      vi.useRealTimers()
    }
  })

  it('keeps everything in order while the clock runs backwards', async () => {
    const disk = memoryTables()
    let hour = 20
    const keeper = makeKeeper({ ...keeperParts(disk), now: () => `2026-11-24T${String((hour -= 1)).padStart(2, '0')}:00:00.000Z` })
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    for (const name of ['1', '2', '3']) {
      put(documents, 'a', name)
      await settle()
      await keeper.keepPoint('yard:1', name, documents.getState().document)
    }
    expect((await keeperOn(disk).load('yard:1'))?.document.records['note:a']).toMatchObject({ text: '3' })
    expect((await keeper.points('yard:1')).map(({ name }) => name)).toEqual(['3', '2', '1'])
  })

  it('counts the edits since a file was saved, over visits, and no visit as an edit', async () => {
    const disk = memoryTables()
    const keeper = keeperOn(disk)
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    expect(keeper.state.getState().editsSinceFile).toBe(0)
    put(documents, 'a', '1')
    put(documents, 'b', '1')
    await settle()
    await keeper.leave()
    const next = keeperOn(disk)
    await next.attach(documents, 'yard:1', null)
    expect(next.state.getState().editsSinceFile).toBe(2)
    put(documents, 'c', '1')
    await settle()
    expect(next.state.getState().editsSinceFile).toBe(3)
    await next.fileSaved()
    expect(next.state.getState().editsSinceFile).toBe(0)
    put(documents, 'd', '1')
    await settle()
    await next.leave()
    const third = keeperOn(disk)
    await third.attach(documents, 'yard:1', null)
    expect(third.state.getState().editsSinceFile).toBe(1)
  })

  it('says at once that a write failed, and writes everything with the next edit that can be written', async () => {
    const disk = memoryTables()
    const tables = testTables(disk)
    const keeper = keeperOn(tables)
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    tables.failing = { count: 2, error: Object.assign(new Error('full'), { name: 'QuotaExceededError' }) }
    put(documents, 'a', '1')
    put(documents, 'b', '1')
    await settle()
    expect(keeper.state.getState()).toMatchObject({ saved: 'unsaved' })
    expect(keeper.state.getState().reason?.en).toContain('no room left')
    put(documents, 'c', '1')
    await settle()
    expect(keeper.state.getState()).toMatchObject({ saved: 'saved', reason: null })
    expect((await keeperOn(disk).load('yard:1'))?.document).toEqual(documents.getState().document)
  })

  it('writes once more on leaving what could not be written before', async () => {
    const disk = memoryTables()
    const tables = testTables(disk)
    const keeper = keeperOn(tables)
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    tables.failing = { count: 1, error: new Error('busy') }
    put(documents, 'a', 'last words')
    await keeper.leave()
    expect((await keeperOn(disk).load('yard:1'))?.document).toEqual(documents.getState().document)
  })

  it('does not write what is opened next into the layout that was open', async () => {
    const disk = memoryTables()
    const keeper = keeperOn(disk)
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    put(documents, 'a', 'mine')
    await keeper.leave()
    documents.getState().load(plainDocument('another'))
    await settle()
    expect((await keeper.load('yard:1'))?.document.records['note:a']).toBeDefined()
  })

  it('goes by the number of an entry, not by the clock', async () => {
    const disk = memoryTables()
    let hour = 23
    const keeper = makeKeeper({ ...keeperParts(disk), now: () => `2026-11-24T${String(hour--).padStart(2, '0')}:00:00.000Z` })
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', null)
    for (let i = 0; i < 5; i++) put(documents, 'a', String(i))
    await settle()
    expect((await keeperOn(disk).load('yard:1'))?.document.records['note:a']).toMatchObject({ text: '4' })
  })

  it('lets one window write; another reads, follows, and may take over', async () => {
    const disk = memoryTables()
    let holder: symbol | null = null
    const ears = new Set<(message: string, from: symbol) => void>()
    const windowOf = (): WindowPort => {
      const me = Symbol('window')
      return {
        tryLock: () => {
          if (holder !== null) return Promise.resolve(false)
          holder = me
          return Promise.resolve(true)
        },
        steal: () => Promise.resolve(false),
        release: () => { if (holder === me) holder = null },
        say: (_layoutId, message) => ears.forEach((ear) => ear(message, me)),
        listen: (_layoutId, hear) => {
          const ear = (message: string, from: symbol): void => { if (from !== me) hear(message) }
          ears.add(ear)
          return () => ears.delete(ear)
        },
      }
    }
    const [first, second] = [keeperOn(disk, windowOf()), keeperOn(disk, windowOf())]
    const [a, b] = [storeOf(), storeOf()]
    await first.attach(a, 'yard:1', null)
    await second.attach(b, 'yard:1', null)
    expect(second.state.getState()).toMatchObject({ heldElsewhere: true, saved: 'readOnly' })
    expect(put(b, 'x', 'no')).toBe(false)
    put(a, 'a', 'from the writer')
    await settle()
    await settle()
    expect(b.getState().document.records['note:a']).toMatchObject({ text: 'from the writer' })
    expect(await second.takeOver()).toBe(true)
    expect(first.state.getState()).toMatchObject({ heldElsewhere: true })
    expect(put(a, 'y', 'no')).toBe(false)
    expect(put(b, 'y', 'yes')).toBe(true)
  })

  it('lists, renames, removes and keeps points in time', async () => {
    const keeper = keeperOn(memoryTables())
    const documents = storeOf()
    await keeper.attach(documents, 'yard:1', 'maple-fork-good')
    expect(await keeper.layouts()).toMatchObject([{ layoutId: 'yard:1', title: 'Otter Bend', isExample: true }])
    await keeper.keepPoint('yard:1', 'before lunch', documents.getState().document)
    const [point] = await keeper.points('yard:1')
    expect(point).toMatchObject({ name: 'before lunch' })
    expect(await keeper.loadPoint(point!.pointId)).toEqual(documents.getState().document)
    await keeper.leave()
    await keeper.rename('yard:1', 'Otter Bend, north')
    expect((await keeper.load('yard:1'))?.document.records['layout:this']).toMatchObject({ title: 'Otter Bend, north' })
    await keeper.remove('yard:1')
    expect(await keeper.layouts()).toEqual([])
    expect(await keeper.points('yard:1')).toEqual([])
  })
})
