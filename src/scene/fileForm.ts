import { kinds } from './kinds/index.ts'

export const FILE_FORMAT = 'stringyard'

/**
 * The lists of a file in their order, and which kinds of record each holds. A list of one kind leaves the kind out of its
 * records; layout and job stand alone, without id and kind.
 */
export interface Section {
  name: string
  kinds: readonly string[]
}

const drawnApart = ['crew', 'zone']
const items = kinds.filter(({ placing, kind }) => placing === 'item' && !drawnApart.includes(kind)).map(({ kind }) => kind as string)
const features = kinds.filter(({ placing, kind }) => placing !== 'item' && !drawnApart.includes(kind)).map(({ kind }) => kind as string)

export const sections: readonly Section[] = [
  { name: 'setUps', kinds: ['setUp'] },
  { name: 'runs', kinds: ['run'] },
  { name: 'strings', kinds: ['string'] },
  { name: 'items', kinds: items },
  { name: 'features', kinds: features },
  { name: 'zones', kinds: ['zone'] },
  { name: 'zoneChanges', kinds: ['zoneChange'] },
  { name: 'crew', kinds: ['crew'] },
  { name: 'limits', kinds: ['limitChange'] },
  { name: 'asSet', kinds: ['asSet'] },
  { name: 'releases', kinds: ['release'] },
  { name: 'assets', kinds: ['asset'] },
]

const sectionByKind = new Map(sections.flatMap((section) => section.kinds.map((kind) => [kind, section] as const)))
export const sectionOf = (kind: string): Section | undefined => sectionByKind.get(kind)

export type FileForm = { format: string; fileVersion: number } & Record<string, unknown>
