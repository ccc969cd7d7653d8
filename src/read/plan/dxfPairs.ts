import { refused, type Reading } from '../refusal.ts'

/** Entities that are read; what else the section holds is counted by name. */
const readTypes = new Set(['LINE', 'LWPOLYLINE', 'POLYLINE', 'VERTEX', 'SEQEND', 'CIRCLE', 'ARC', 'POINT'])
/** Group codes of these entities that place or name them, all numbers save 8. */
const keptCodes = new Set([8, 10, 20, 11, 21, 40, 42, 50, 51, 67, 70, 210, 220, 230])

interface Entity {
  type: string
  pairs: [code: number, value: string][]
}

/**
 * The entities of a DXF text, rebuilt from its pairs of group code and value with nothing in them but what is read. The parser behind
 * runs for ever on a polyline that does not end and trusts the count of corners a file claims; it never sees either.
 */
export function cleanDxf(text: string): Reading<{ dxf: string; unitCode: number | null; passed: readonly string[] }> {
  const lines = text.split(/\r\n|\r|\n/)
  const entities: Entity[] = []
  let unitCode: number | null = null
  let section = ''
  let hasEnd = false
  for (let i = 0; i + 1 < lines.length && !hasEnd; i += 2) {
    const [codeText, value] = [lines[i]!.trim(), lines[i + 1]!.trim()]
    if (!/^-?\d{1,4}$/.test(codeText)) return refused(`the DXF is damaged: line ${i + 1} is no group code`, `el DXF está dañado: la línea ${i + 1} no es un código de grupo`)
    const code = Number(codeText)
    if (code === 0 && value === 'EOF') hasEnd = true
    else if (code === 0 && (value === 'SECTION' || value === 'ENDSEC')) section = value === 'SECTION' ? '?' : ''
    else if (section === '?' && code === 2) section = value
    else if (section === 'HEADER' && code === 9 && value === '$INSUNITS') unitCode = Number(lines[i + 3])
    else if (section === 'ENTITIES' && code === 0) entities.push({ type: value, pairs: [] })
    else if (section === 'ENTITIES' && keptCodes.has(code)) {
      if (code !== 8 && !Number.isFinite(Number(value === '' ? 'x' : value))) return refused(`the DXF is damaged: line ${i + 2} is no number`, `el DXF está dañado: la línea ${i + 2} no es un número`)
      entities.at(-1)?.pairs.push([code, value])
    }
  }
  if (!hasEnd) return refused('the DXF is cut off: its end is missing', 'el DXF está cortado: falta su final')
  const out: string[] = ['0', 'SECTION', '2', 'ENTITIES']
  let isInPolyline = false
  for (const { type, pairs } of entities) {
    if (!readTypes.has(type)) continue
    const isPart = type === 'VERTEX' || type === 'SEQEND'
    if (isPart !== isInPolyline) return refused(`the DXF is damaged: a POLYLINE ${isPart ? 'does not begin' : 'does not end'}`, `el DXF está dañado: una POLYLINE ${isPart ? 'no empieza' : 'no termina'}`)
    isInPolyline = type === 'POLYLINE' || type === 'VERTEX'
    const corners = pairs.filter(([code]) => code === 10).length
    if (type === 'LWPOLYLINE' && corners === 0) continue
    out.push('0', type, ...(type === 'LWPOLYLINE' ? ['90', String(corners)] : []), ...pairs.flatMap(([code, value]) => [String(code), value]))
  }
  if (isInPolyline) return refused('the DXF is damaged: a POLYLINE does not end', 'el DXF está dañado: una POLYLINE no termina')
  return { ok: true, dxf: [...out, '0', 'ENDSEC', '0', 'EOF', ''].join('\n'), unitCode, passed: entities.flatMap(({ type }) => (readTypes.has(type) ? [] : [type])) }
}
