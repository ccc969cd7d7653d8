import type { Json, Migration } from './migration.ts'

type Group = { readonly [key: string]: Json }

const unknownFigure: Json = { value: null, basis: 'typical' }

/**
 * What version 2 says that version 1 did not, by section or kind and path, with the value that a file of version 1
 * meant by saying nothing: not known, or the only way there was.
 */
const added: { readonly [name: string]: { readonly [path: string]: Json } } = {
  job: {
    method: 'stationary',
    stickBowM: unknownFigure,
    stickBowTurnRad: null,
    slingHeightM: unknownFigure,
    pullEdition: 'F1804',
    pullDurationH: unknownFigure,
    arch: null,
    clock: { startMin: null, endMin: null, breaks: [] },
    procedure: null,
    dispatch: { address: null, muster: null, caller: null },
    test: null,
    testStandOffM: unknownFigure,
  },
  machine: {
    'figures.pistonAreaM2': unknownFigure,
    'figures.fusionForceLimitN': unknownFigure,
    'figures.holdLoadN': unknownFigure,
  },
  strings: { parkingSide: 'right' },
  trench: { isPit: false },
  asSet: { farSaddleM: null, isTicked: false, isFarTicked: false },
  releases: { stageId: null, language: null, people: [] },
  crew: { language: null },
  walkway: { closedPhases: [], isCrossing: null },
  stand: { 'figures.massKg': unknownFigure },
}

function withPath(group: Group, path: readonly string[], value: Json): Group {
  const [key, ...rest] = path as [string, ...string[]]
  const there = group[key]
  if (rest.length === 0) return there === undefined ? { ...group, [key]: value } : group
  return isGroup(there) ? { ...group, [key]: withPath(there, rest, value) } : group
}

const isGroup = (value: Json | undefined): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value)

const filled = (record: Json, name: string): Json =>
  isGroup(record) ? Object.entries(added[name] ?? {}).reduce((group, [path, value]) => withPath(group, path.split('.'), value), record) : record

/** Version 1 to 2: fields that were not there get the value their absence meant. A field already there is left alone. */
export const toVersion2: Migration = {
  to: 2,
  up: (file) =>
    Object.fromEntries(Object.entries(file).map(([name, value]): [string, Json] => {
      if (!Array.isArray(value)) return [name, filled(value, name)]
      return [name, value.map((record: Json) => filled(record, isGroup(record) && typeof record['kind'] === 'string' ? record['kind'] : name))]
    })),
}
