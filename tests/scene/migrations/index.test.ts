import { describe, expect, it } from 'vitest'
import { FILE_VERSION } from '../../../src/scene/document.ts'
import { migrate, migrations, type Json, type Migration } from '../../../src/scene/migrations/index.ts'
import { readForm } from '../../../src/scene/readFile.ts'
import { fileFormOf } from '../../../src/scene/writeFile.ts'
import { yard } from '../../helpers/documents.ts'

type File = { readonly [key: string]: Json }
const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen)
  return value
}

/** A made-up past: version −1 said 'name' for the title, version 0 had no revision. Shifted by two so that today is 3. */
const past: readonly Migration[] = [
  { to: 2, up: (file) => { const { name, ...layout } = file['layout'] as File; return { ...file, layout: { ...layout, title: name ?? '' } } } },
  { to: 3, up: (file) => ({ ...file, layout: { ...(file['layout'] as File), revision: 'A' } }) },
]
const old = (): File => {
  const { title, revision: _revision, ...layout } = fileFormOf(yard())['layout'] as { title: string; revision: string }
  return frozen({ ...fileFormOf(yard()), fileVersion: 1, layout: { ...layout, name: title } } as unknown as File)
}

describe('migrations', () => {
  it('are a list without gaps up to the version of today', () => {
    expect(migrations.map(({ to }) => to)).toEqual(Array.from({ length: FILE_VERSION - 1 }, (_, i) => i + 2))
  })
  it('run one after another and never change what they are given', () => {
    expect(migrate(old(), 3, past)).toMatchObject({ fileVersion: 3, layout: { title: 'Test yard', revision: 'A' } })
  })
  it('start from the version the file says', () => {
    expect(migrate({ fileVersion: 2, layout: { title: 'x' } }, 3, past)).toEqual({ fileVersion: 3, layout: { title: 'x', revision: 'A' } })
  })
  it('that are missing are named', () => {
    expect(() => migrate({ fileVersion: 1 }, 3, past.slice(1))).toThrow('no migration leads to version 2')
  })
  it('let the reader open the old file as one of today and say so', () => {
    const result = readForm(old(), { currentVersion: 3, migrations: past })
    expect(result.ok && result.document).toEqual(yard())
    expect(result.ok && result.notes[0]?.en).toBe('Brought up from file version 1 to 3.')
  })
  it('that fail on a damaged file refuse it instead of throwing', () => {
    const result = readForm({ format: 'stringyard', fileVersion: 1 }, { currentVersion: 3, migrations: past })
    expect(result).toMatchObject({ ok: false, issues: [{ path: 'fileVersion' }] })
  })
})
