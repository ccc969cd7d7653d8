import type { Table } from './table.ts'

export type Role = 'station' | 'offset' | 'level'

/** Which column holds what; null: nobody has said. `none` for the offset: every point lies on the line. */
export interface Columns {
  station: number | null
  offset: number | 'none' | null
  level: number | null
}

/** Words of a column's head, English and Spanish, without accents, points and brackets (common practice, no source). */
const names: Readonly<Record<Role, readonly string[]>> = {
  station: ['station', 'sta', 'stn', 'chainage', 'ch', 'distance', 'dist', 'running', 'running distance', 'estacion', 'est', 'cadenamiento', 'progresiva', 'distancia', 'kilometraje', 'abscisa'],
  offset: ['offset', 'off', 'o/s', 'lateral', 'left/right', 'desplazamiento', 'separacion', 'desvio', 'distancia lateral', 'izq/der'],
  level: ['level', 'elevation', 'elev', 'el', 'rl', 'reduced level', 'ground', 'ground level', 'height', 'z', 'nivel', 'cota', 'elevacion', 'altura', 'cota terreno', 'nivel del terreno'],
}

/** Accents, what stands in brackets (a unit) and points are no part of the name. */
const plainName = (cell: string): string =>
  cell.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[([].*$/, '').replace(/[.:#_]/g, ' ').replace(/\s+/g, ' ').trim()

const roleOf = (cell: string): Role | null => (Object.keys(names) as Role[]).find((role) => names[role].includes(plainName(cell))) ?? null

/** Unit written in a head's brackets: 'level (ft)'. Shown, never used: the unit is chosen. */
export const unitInHead = (cell: string): string | null => /[([]\s*([^)\]]{1,12})\s*[)\]]/.exec(cell)?.[1]?.trim() ?? null

export interface FoundColumns {
  hasHeader: boolean
  heads: readonly string[]
  columns: Columns
}

/**
 * Columns by the words in the first row. Without a header, or where a name is there twice, that column stays unknown and
 * somebody has to choose it. A header that names station and level and no offset leaves the offset open too.
 */
export function findColumns(table: Table): FoundColumns {
  const first = table.rows[0]?.cells ?? []
  const roles = first.map(roleOf)
  const hasHeader = roles.some((role) => role !== null) || first.every((cell) => cell === '' || !/\d/.test(cell))
  const only = (role: Role): number | null => {
    const at = roles.flatMap((one, i) => (one === role ? [i] : []))
    return at.length === 1 ? at[0]! : null
  }
  return { hasHeader, heads: hasHeader ? first : [], columns: { station: only('station'), offset: only('offset'), level: only('level') } }
}
