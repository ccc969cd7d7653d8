import { refused, type Reading } from '../refusal.ts'
import { readDxf } from './dxf.ts'
import { readGeoJson } from './geoJson.ts'
import type { ForeignPlan } from './types.ts'

/** A plan of another program by what its text is: JSON begins with a bracket, DXF with a group code. Never throws. */
export function readPlan(text: string): Reading<{ plan: ForeignPlan }> {
  const start = text.slice(0, 2000).replace(/^\uFEFF/, '').trimStart()
  if (start === '') return refused('the file is empty', 'el archivo está vacío')
  return start.startsWith('{') || start.startsWith('[') ? readGeoJson(text) : readDxf(text)
}
