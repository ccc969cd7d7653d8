import { describe, expect, it } from 'vitest'
import { readGear, writeGear, withGear } from '../../src/scene/gear.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { after, recordOf } from '../helpers/commands.ts'
import { item, onRun, yard } from '../helpers/documents.ts'
import { gearItem } from '../helpers/gear.ts'

const file = (over: object): string => JSON.stringify({ format: 'stringyard-gear', fileVersion: 1, gear: [{ ...gearItem(), ...over }] })
const first = (text: string): string => {
  const result = readGear(text)
  return result.ok ? 'ok' : `${result.issues[0]?.path} ${result.issues[0]?.message.en}`
}

describe('a gear list', () => {
  it('is read as it was written', () => {
    const gear = [gearItem(), gearItem({ id: 'gear:r', kind: 'roller', choices: {}, figures: {}, count: null })]
    expect(readGear(writeGear(gear))).toEqual({ ok: true, gear })
  })
  it.each([
    ['a kind that is not gear', file({ kind: 'fence' }), 'gear[0].kind fence is not gear a crew owns'],
    ['a figure the kind does not have', file({ figures: { wingspanM: { value: 2, basis: 'plate' } } }), 'gear[0].figures.wingspanM is not a field known here'],
    ['a figure that is no number', file({ figures: { ratedLoadN: { value: '900 lb', basis: 'plate' } } }), 'gear[0].figures.ratedLoadN.value must be a number, is "900 lb"'],
    ['a choice that does not exist', file({ choices: { roller: 'oval' } }), 'gear[0].choices.roller "oval" is not known here; must be one of: flat, V, cradle'],
    ['a choice that is not one', file({ choices: { place: null } }), 'gear[0].choices.place is not a choice of gear'],
    ['half a stand', file({ count: 1.5 }), 'gear[0].count must be a whole number, is 1.5'],
    ['an unknown field', file({ colour: 'blue' }), 'gear[0].colour is not a field known here'],
    ['another file', '{"format":"stringyard"}', 'format "stringyard" is not known here; must be one of: stringyard-gear'],
    ['no JSON', 'stands: 6', ' the file is not JSON text'],
    ['one id twice', JSON.stringify({ format: 'stringyard-gear', fileVersion: 1, gear: [gearItem(), gearItem()] }), 'gear[1].id gear:v1 is there twice'],
  ])('with %s is refused by field', (_what, text, message) => expect(first(text)).toBe(message))
})

describe('own gear on the plan', () => {
  it('copies choices and figures with their basis and keeps the id as a hint', () => {
    const stand = withGear(item('stand', 'stand:1', onRun(6)), gearItem())
    expect(stand).toMatchObject({ gearId: 'gear:v1', roller: 'V', figures: { ratedLoadN: { value: 11_120, basis: 'plate' }, highestSaddleM: { value: 1.1, basis: 'measured' }, lowestSaddleM: { basis: 'typical' } } })
  })
  it('is given to items of its kind by a command, and refused where none is', () => {
    const document = yard(item('stand', 'stand:1', onRun(6)), item('roller', 'roller:1', onRun(20)))
    const now = after(document, 'useGear', { ids: ['stand:1', 'roller:1'], gear: gearItem() })
    expect([recordOf(now, 'stand:1')['gearId'], recordOf(now, 'roller:1')['gearId']]).toEqual(['gear:v1', null])
    expect(documentIssues(now)).toEqual([])
    expect(() => after(document, 'useGear', { ids: ['roller:1'], gear: gearItem() })).toThrow('gear.kind is stand, which none of them is')
  })
})
