import { describe, expect, it } from 'vitest'
import { broughtUp, stampOfToday } from '../../../src/app/storage/versions.ts'
import type { Migration } from '../../../src/scene/migrations/index.ts'
import { FILE_VERSION } from '../../../src/scene/document.ts'
import { memoryTables } from '../../../src/app/storage/tables.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'
import { keeperOn, put, storeOf } from '../../helpers/keeperBench.ts'
import { settle } from '../../helpers/settle.ts'

const document = yard(item('fence', 'fence:1', [{ xM: 0, yM: 5 }, { xM: 9, yM: 5 }]), item('stand', 'stand:1', onRun(6)))
/** A made-up next version, which calls the first list of items by another name and gives the layout a title. */
const next: Migration = { to: FILE_VERSION + 1, up: (file) => ({ ...file, layout: { ...(file['layout'] as object), title: 'brought up' } }) as typeof file }

describe('stored work', () => {
  it('of today is taken as it is', () => {
    const up = broughtUp(document, stampOfToday)
    expect(up).toMatchObject({ ok: true, isSame: true })
    expect(up.ok && up.document).toBe(document)
  })
  it('of an older version goes through the migrations and keeps its order, its undo steps end', () => {
    const up = broughtUp(document, stampOfToday, { currentVersion: FILE_VERSION + 1, migrations: [next] })
    expect(up).toMatchObject({ ok: true, isSame: false, document: { records: { 'layout:this': { title: 'brought up' }, 'stand:1': { place: { runningM: 6 } } } } })
    expect(up.ok && Object.keys(up.document.records)).toEqual(Object.keys(document.records))
  })
  it('is put into the lists of the version it was written under, not those of today', () => {
    const old = { fileVersion: 1, sections: [...stampOfToday.sections.filter(({ name }) => name !== 'features'), { name: 'walls', kinds: ['fence'] }] }
    const renamed: Migration = { to: 2, up: (file) => { const { walls, ...rest } = file; return { ...rest, features: (walls as { kind?: string }[]).map((wall) => ({ ...wall, kind: 'fence' })) } as typeof file } }
    const up = broughtUp(document, old, { currentVersion: 2, migrations: [renamed] })
    expect(up.ok && up.document.records['fence:1']).toEqual(document.records['fence:1'])
  })
  it('of a newer version is refused by that version, and still named in the list', async () => {
    const disk = memoryTables()
    const documents = storeOf()
    const keeper = keeperOn(disk)
    await keeper.attach(documents, 'yard:1', null)
    put(documents, 'a', '1')
    await settle()
    await keeper.leave()
    const head = (await disk.get('layouts', 'yard:1')) as object
    const newer = { ...head, stamp: { ...stampOfToday, fileVersion: 99 } }
    await disk.write([{ table: 'layouts', key: 'yard:1', value: newer }])
    await expect(keeper.load('yard:1')).rejects.toMatchObject({ reason: { en: expect.stringContaining('file version 99') } })
    expect(await keeper.layouts()).toMatchObject([{ layoutId: 'yard:1', title: 'Otter Bend' }])
    expect(await disk.get('layouts', 'yard:1')).toEqual(newer)
  })
})
