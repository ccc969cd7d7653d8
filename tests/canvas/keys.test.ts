import { describe, expect, it } from 'vitest'
import { actionOfKey, chordOf, chordText, keyGroups, keyRows, keyTable, type KeyPress } from '../../src/canvas/keys.ts'

const press = (key: string, over: Partial<KeyPress> = {}): KeyPress => ({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...over })

describe('the key table', () => {
  it('binds no chord twice and names every action once', () => {
    const chords = keyTable.flatMap(({ keys }) => keys)
    expect(chords.filter((chord, i) => chords.indexOf(chord) !== i)).toEqual([])
    const actions = keyTable.map(({ action }) => action)
    expect(actions.filter((action, i) => actions.indexOf(action) !== i)).toEqual([])
  })

  it('every chord is one a press can make: what the help shows is what binds', () => {
    for (const { keys, action } of keyTable) {
      for (const chord of keys) {
        const parts = chord.split(/\+(?=.)/)
        const key = parts.at(-1)!
        expect(actionOfKey(press(key, { ctrlKey: parts.includes('Mod'), altKey: parts.includes('Alt'), shiftKey: parts.includes('Shift') })), chord).toBe(action)
      }
    }
  })

  it('leaves digits and the distance keys to distances', () => {
    for (const key of ['0', '1', '9', "'", '"', '/']) expect(actionOfKey(press(key))).toBeNull()
  })

  it('takes Cmd for Ctrl, capitals with Shift, signs as they come', () => {
    expect(chordOf(press('Z', { metaKey: true, shiftKey: true }))).toBe('Mod+Shift+z')
    expect(chordOf(press('?', { shiftKey: true }))).toBe('?')
    expect(chordOf(press('+', { shiftKey: true }))).toBe('+')
    expect(actionOfKey(press('?', { shiftKey: true }))).toBe('help')
  })

  it('writes every row in both languages', () => {
    for (const language of ['en', 'es'] as const) {
      const rows = keyRows(language)
      expect(rows).toHaveLength(keyTable.length)
      for (const { keys, does, group } of rows) for (const text of [keys, does[language], group[language]]) expect(text).not.toBe('')
    }
    expect(chordText('Mod+Shift+z', 'en')).toBe('Ctrl + Shift + Z')
    expect(chordText('+', 'en')).toBe('+')
    expect(chordText('Shift+ArrowLeft', 'es')).toBe('Mayús + ←')
  })

  it('every group has rows', () => {
    for (const group of Object.keys(keyGroups)) expect(keyTable.some((row) => row.group === group)).toBe(true)
  })
})
