import { describe, expect, it } from 'vitest'
import { findColumns, unitInHead } from '../../src/read/levelBook/columns.ts'
import { openChoices, readLevels, type BookChoices } from '../../src/read/levelBook/levels.ts'
import { readTable, type Table } from '../../src/read/levelBook/table.ts'

const tableOf = (text: string): Table => {
  const read = readTable(text)
  if (!read.ok) throw new Error(read.reason.en)
  return read.table
}
const choices = (over: Partial<BookChoices> = {}): BookChoices => ({
  unit: 'ft', columns: { station: 0, offset: 1, level: 2 }, datumStationM: 0, datumLevelM: 0, stationsRise: 'exit', plusOffset: 'right', ...over,
})
const levelsOf = (text: string, over: Partial<BookChoices> = {}) => {
  const read = readLevels(tableOf(text).rows, choices(over))
  if (!read.ok) throw new Error(read.reason.en)
  return read
}

describe('the table of a level book', () => {
  it('finds station, offset and level by their English and Spanish heads', () => {
    expect(findColumns(tableOf('Point,Sta.,Offset (ft),Elevation [ft]\n1,0,0,100')).columns).toEqual({ station: 1, offset: 2, level: 3 })
    expect(findColumns(tableOf('Estación;Desplazamiento;Cota\n0;0;100')).columns).toEqual({ station: 0, offset: 1, level: 2 })
    expect(unitInHead('Elevation [ft]')).toBe('ft')
  })

  it('leaves a column open that no head names, that two heads name, or where there is no header', () => {
    expect(findColumns(tableOf('Station,Level\n0,100')).columns).toEqual({ station: 0, offset: null, level: 1 })
    expect(findColumns(tableOf('Station,Level,Elev\n0,1,2')).columns.level).toBeNull()
    expect(findColumns(tableOf('0,0,100\n25,0,99.5'))).toMatchObject({ hasHeader: false, columns: { station: null, offset: null, level: null } })
  })

  it('counts lines as the text has them, empty ones and breaks in quoted cells included', () => {
    expect(tableOf('a,b\n\n"x\ny",2\n3,4').rows.map(({ line }) => line)).toEqual([1, 3, 5])
  })

  it('refuses too many characters, rows, columns, an endless cell, zero bytes and an open quotation mark, saying where', () => {
    const reason = (text: string): string => {
      const read = readTable(text)
      return read.ok ? 'read' : read.reason.en
    }
    expect(reason('1,2,3\n'.repeat(400_000))).toMatch(/2400000 characters/)
    expect(reason('1,2,3\n'.repeat(10_002))).toMatch(/more than 10000 rows/)
    expect(reason(`a,b\n${'1,'.repeat(40)}`)).toMatch(/line 2 has 41 columns/)
    expect(reason(`a,b\n${'x'.repeat(201)},1`)).toMatch(/line 2 has a cell/)
    expect(reason('a,b\u0000')).toMatch(/zero bytes/)
    expect(reason('a,b\n1,"2\n3,4')).toMatch(/line 2: a quotation mark/)
    expect(reason(' \n\n')).toMatch(/empty/)
  })
})

describe('levels of a book', () => {
  it('reads decimal feet, feet and inches, metres and stations with a plus', () => {
    // 25 ft = 7.62 m; 99.5 − 100 ft = −0.1524 m.
    expect(levelsOf('25,0,99.5', { datumLevelM: 30.48 }).levels[0]).toMatchObject({ runningM: 7.62, offsetM: 0, aboveDatumM: expect.closeTo(-0.1524, 9) as number })
    // 12 ft 6 in = 3.81 m, 0 ft 3 in = 0.0762 m.
    expect(levelsOf("12'-6\",0,0-3", { unit: 'feetInches' }).levels[0]).toMatchObject({ runningM: expect.closeTo(3.81, 9) as number, aboveDatumM: expect.closeTo(0.0762, 9) as number })
    // 1+25.5 in feet is 125.5 ft = 38.2524 m; 0+038.25 in metres is 38.25 m.
    expect(levelsOf('1+25.5,0,0').levels[0]!.runningM).toBeCloseTo(38.2524, 9)
    expect(levelsOf('0+038.25,0,0', { unit: 'm' }).levels[0]!.runningM).toBeCloseTo(38.25, 9)
    expect(levelsOf('7,62;0;-0,15', { unit: 'm' }).levels[0]).toMatchObject({ runningM: 7.62, aboveDatumM: -0.15 })
  })

  it('counts stations from the datum the way they rise, and a side word before what plus means', () => {
    const read = levelsOf('10,2,0\n20,L 2,0\n30,-2,0', { unit: 'm', datumStationM: 15, stationsRise: 'infeed', plusOffset: 'left' })
    expect(read.levels.map(({ runningM, offsetM }) => [runningM, offsetM])).toEqual([[5, -2], [-5, -2], [-15, 2]])
  })

  it('names line and column of each fault and keeps the sound rows', () => {
    const { levels, faults } = levelsOf('0,0,100\n10,0,=A1+1\n20,,100\n30,x,100\n0,0,100\n1+250,0,100', { datumLevelM: 30.48 })
    expect(levels.map(({ line }) => line)).toEqual([1])
    expect(faults.map(({ line, role, message }) => [line, role, message.en])).toEqual([
      [2, 'level', '"=A1+1" is a formula, not a number'],
      [3, 'offset', 'is empty'],
      [4, 'offset', expect.stringContaining('"x"') as string],
      [5, 'station', 'is the same point as line 1'],
      [6, 'station', expect.stringContaining('two digits after the plus') as string],
    ])
    expect(faults.every(({ message }) => message.es !== '')).toBe(true)
  })

  it('takes no bare number in a book of feet and inches, and no level far from the datum', () => {
    expect(levelsOf('10,0,0', { unit: 'feetInches' }).faults[0]!.message.en).toMatch(/can be read as 10 ft or 10 in/)
    expect(levelsOf('10,0,1012').faults[0]).toMatchObject({ role: 'level', message: { en: expect.stringContaining('more than 100 m above or below') as string } })
    expect(levelsOf('1000000,0,0').faults[0]!.message.en).toMatch(/10 km|100 km/)
  })

  it('refuses while a choice is open and says which', () => {
    const open = choices({ unit: null, columns: { station: 0, offset: null, level: 0 }, datumLevelM: null })
    expect(openChoices(open)).toEqual(['unit', 'offset', 'sameColumn', 'datumLevel'])
    expect(readLevels([], open).ok).toBe(false)
  })

  it('reads 10,000 rows, each at its own station', () => {
    const text = `station,offset,level\n${Array.from({ length: 10_000 }, (_, i) => `${i % 100},${Math.floor(i / 100)},${(i % 7) / 10}`).join('\n')}`
    const table = tableOf(text)
    const read = readLevels(table.rows.slice(1), choices({ unit: 'm' }))
    expect(read.ok && read.levels.length).toBe(10_000)
    expect(read.ok && read.levels.at(-1)).toMatchObject({ line: 10_001, runningM: 99, offsetM: 99, aboveDatumM: expect.closeTo(0.3, 12) as number })
  })
})
