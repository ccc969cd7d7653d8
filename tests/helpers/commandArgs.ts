import fc from 'fast-check'
import { copyOf } from '../../src/scene/commands/index.ts'
import { recordsOf, runsOf, setUpsOf, type YardDocument } from '../../src/scene/document.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { gearItem } from './gear.ts'

const metres = fc.double({ min: -200, max: 200, noNaN: true })
const small = fc.double({ min: -5, max: 5, noNaN: true })
const angle = fc.double({ min: -7, max: 7, noNaN: true })
const point = fc.record({ xM: metres, yM: metres })
const text = fc.string({ maxLength: 20 })

/** Arguments for any command, sensible and odd ones mixed, made for the document they will run on. */
export function argsArbitrary(name: string, document: YardDocument): fc.Arbitrary<unknown> {
  const ids = Object.keys(document.records)
  const id = fc.constantFrom(...ids, 'stand:gone')
  const some = fc.uniqueArray(id, { minLength: 1, maxLength: 5 })
  const setUpId = fc.constantFrom('setUp:gone', ...setUpsOf(document).map((one) => one.id))
  const runId = fc.constantFrom('run:gone', ...runsOf(document).map((one) => one.id))
  const stringId = fc.constantFrom('string:gone', ...recordsOf(document, 'string').map((one) => one.id))
  const place = fc.oneof(
    fc.record({ at: fc.constant('free'), xM: metres, yM: metres, headingRad: angle }),
    fc.record({ at: fc.constant('onRun'), runId, runningM: metres, offsetM: small, turnRad: angle }),
    fc.record({ at: fc.constant('onItem'), itemId: id, dxM: small, dyM: small, turnRad: angle }),
  )
  const height = fc.oneof(fc.constant({ rule: 'onAxis' }), fc.constant({ rule: 'unknown' }), fc.record({ rule: fc.constant('belowAxis'), dropM: small }), fc.record({ rule: fc.constant('aboveGround'), saddleM: small }))
  const opt = { requiredKeys: [] }
  const kind = fc.constantFrom(...kinds.map((one) => one.kind as string))
  const table: Record<string, fc.Arbitrary<unknown>> = {
    place: kind.chain((of): fc.Arbitrary<unknown> => (kinds.find((one) => one.kind === of)?.placing === 'item' ? fc.record({ kind: fc.constant(of), place }) : fc.record({ kind: fc.constant(of), points: fc.array(point, { minLength: 2, maxLength: 5 }) }))),
    bringIn: fc.record({
      records: fc.array(fc.oneof(fc.record({ kind: fc.constantFrom('level', 'tree'), place }), fc.record({ kind: fc.constantFrom('boundary', 'fence'), points: fc.array(point, { minLength: 3, maxLength: 5 }) })), { minLength: 1, maxLength: 4 }),
      mapOrigin: fc.option(fc.record({ eastM: metres, northM: metres })),
    }),
    placeRow: fc.record({ kind: fc.constantFrom('stand', 'roller'), fromRunningM: metres, spacingM: small, count: fc.integer({ min: 1, max: 4 }) }),
    moveBy: fc.record({ ids: some, dxM: metres, dyM: metres }),
    slideBy: fc.record({ ids: some, dRunningM: metres, dOffsetM: small }),
    setOnRun: fc.record({ id, runningM: metres, offsetM: small, turnRad: angle }, { requiredKeys: ['id'] }),
    rotateBy: fc.record({ ids: some, turnRad: angle }),
    setHeight: fc.record({ ids: some, height }),
    dropBy: fc.record({ ids: some, dLevelM: small }),
    setField: fc.oneof(
      fc.record({ ids: some, path: fc.constant('note'), value: fc.option(text) }),
      fc.record({ ids: some, path: fc.constantFrom('figures.ratedLoadN.value', 'figures.widthM.value', 'stickCount', 'setUpId', 'place'), value: fc.oneof(fc.option(small), fc.constant('setUp:gone')) }),
    ),
    setJob: fc.oneof(fc.record({ path: fc.constant('stickLengthM'), value: fc.constantFrom(12.192, 15.24, null) }), fc.record({ path: fc.constant('jointLossM.value'), value: fc.option(small) })),
    setLayout: fc.record({ path: fc.constant('title'), value: text }),
    setSetUp: fc.oneof(fc.record({ setUpId, path: fc.constant('headingRad'), value: angle }), fc.record({ setUpId, path: fc.constant('datum'), value: point })),
    setRun: fc.record({ runId, path: fc.constant('vertices'), value: fc.array(fc.record({ xM: metres, yM: metres, radiusM: fc.option(fc.double({ min: 1, max: 60, noNaN: true })) }), { maxLength: 3 }) }),
    setStickCount: fc.oneof(fc.record({ stickCount: fc.option(fc.integer({ min: 1, max: 40 })) }), fc.record({ stickCount: fc.option(fc.integer({ min: 1, max: 40 })), setUpId })),
    splitStrings: fc.record({ setUpId, counts: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 5 }) }),
    addString: fc.record({ setUpId }), parkStrings: fc.record({ setUpId, side: fc.constantFrom('left', 'right') }, { requiredKeys: ['setUpId'] }),
    splitString: fc.record({ id: stringId, sticks: fc.integer({ min: 1, max: 9 }), first: fc.integer({ min: 1, max: 9 }) }), joinString: fc.record({ id: stringId }),
    setString: fc.record({ id: stringId, stickCount: fc.option(fc.integer({ min: 1, max: 40 })), parkingRow: fc.option(fc.integer({ min: 0, max: 9 })) }, { requiredKeys: ['id'] }),
    moveVertex: fc.record({ id, index: fc.nat(3), xM: metres, yM: metres }),
    addVertex: fc.record({ id, index: fc.nat(3), xM: metres, yM: metres }),
    removeVertex: fc.record({ id, index: fc.nat(3) }),
    remove: fc.record({ ids: some }),
    duplicate: fc.record({ ids: some, dxM: small, dyM: small }),
    paste: fc.record({ records: some.map((chosen) => copyOf(document, chosen)), xM: metres, yM: metres }),
    spreadEvenly: fc.record({ ids: some }),
    spaceAt: fc.record({ ids: some, spacingM: fc.double({ min: 0.5, max: 20, noNaN: true }) }),
    reverse: fc.record({ setUpId }),
    lock: fc.record({ ids: some, locked: fc.boolean() }),
    lockStaked: fc.constant({}),
    attach: fc.record({ ids: some, runId, itemId: id }, opt).map((args) => ({ ids: [], ...args })),
    detach: fc.record({ ids: some }),
    drawStrip: fc.record({ xM: metres, yM: metres, headingRad: angle, lengthM: fc.double({ min: 5, max: 200, noNaN: true }), widthM: fc.double({ min: 3, max: 40, noNaN: true }) }),
    usualSetUp: fc.record({ setUpId }),
    crewDefaults: fc.record({ setUpId }),
    setHoldBack: fc.record({ setUpId }),
    setLimit: fc.record({ limitId: fc.constantFrom('jaw-effort', 'face-gap'), bound: fc.constantFrom('check', 'fix'), value: small, reason: text, who: text }),
    clearLimit: fc.record({ limitId: fc.constantFrom('jaw-effort', 'face-gap') }),
    setAsSet: fc.record({ itemId: id, saddleM: fc.option(small), isTicked: fc.boolean(), isFarTicked: fc.boolean() }, { requiredKeys: ['itemId'] }),
    changeZone: fc.record({ zoneKey: id.map((one) => `Z-02@${one}`), marginM: fc.option(small) }),
    clearZoneChange: fc.record({ zoneKey: fc.constantFrom('Z-02@rack:gone', ...recordsOf(document, 'zoneChange').map(({ zoneKey }) => zoneKey)) }),
    useGear: fc.record({ ids: some, gear: fc.constant(gearItem()) }),
  }
  if (name === 'sequence') return argsArbitrary('remove', document).map((args) => ({ commands: [{ command: 'remove', args }], label: { en: 'one', es: 'uno' } }))
  return table[name] ?? fc.constant(null)
}

const firstId = (document: YardDocument): string => recordsOf(document, 'stand')[0]?.id ?? 'stand:gone'

/** One valid set of arguments for a command, for a document with a machine, a rack, a stand and a fence of three points. */
export function argsFor(name: string, document: YardDocument): unknown {
  const ids = [firstId(document)]
  const setUpId = setUpsOf(document)[0]?.id
  const runId = runsOf(document)[0]?.id
  const fence = recordsOf(document, 'fence')[0]?.id
  const stringId = recordsOf(document, 'string').toSorted((a, b) => a.order - b.order)[0]?.id
  const table: Record<string, unknown> = {
    place: { kind: 'stand', place: { at: 'free', xM: 1, yM: 2, headingRad: 0 } },
    placeRow: { kind: 'roller', fromRunningM: 20, spacingM: 3, count: 4 },
    moveBy: { ids, dxM: 1, dyM: 0 }, slideBy: { ids, dRunningM: 1, dOffsetM: 0 }, setOnRun: { id: ids[0], runningM: 7 }, rotateBy: { ids, turnRad: 0.1 },
    setHeight: { ids, height: { rule: 'aboveGround', saddleM: 0.7 } }, dropBy: { ids, dLevelM: -0.1 }, setField: { ids, path: 'roller', value: 'V' },
    setJob: { path: 'stickLengthM', value: 12.192 }, setLayout: { path: 'title', value: 'lot' }, setSetUp: { setUpId, path: 'fallRatio', value: 0.01 }, setRun: { runId, path: 'name', value: 'out' }, setStickCount: { stickCount: 7 },
    splitStrings: { setUpId, counts: [4, 3] }, addString: { setUpId }, splitString: { id: stringId, sticks: 7, first: 4 }, joinString: { id: stringId }, setString: { id: stringId, parkingRow: 2 }, parkStrings: { setUpId, side: 'left' },
    bringIn: { records: [{ kind: 'level', place: { at: 'free', xM: 1, yM: 2, headingRad: 0 } }, { kind: 'fence', points: [{ xM: 0, yM: 0 }, { xM: 4, yM: 0 }] }], mapOrigin: null },
    moveVertex: { id: fence, index: 0, xM: 1, yM: 1 }, addVertex: { id: fence, index: 1, xM: 1, yM: 1 }, removeVertex: { id: fence, index: 0 },
    remove: { ids }, duplicate: { ids, dxM: 1, dyM: 1 }, paste: { records: copyOf(document, ids), xM: 3, yM: 3 }, spreadEvenly: { ids }, spaceAt: { ids, spacingM: 3 },
    reverse: { setUpId }, lock: { ids, locked: true }, lockStaked: {}, attach: { ids }, detach: { ids }, drawStrip: { xM: 0, yM: 0, headingRad: 0, lengthM: 100, widthM: 20 },
    usualSetUp: { setUpId }, crewDefaults: { setUpId }, setHoldBack: { setUpId },
    setLimit: { limitId: 'jaw-effort', bound: 'check', value: 0.8, reason: '', who: '' }, clearLimit: { limitId: 'jaw-effort' }, setAsSet: { itemId: ids[0], saddleM: 0.7 },
    changeZone: { zoneKey: 'Z-02@rack:1', marginM: 1 }, clearZoneChange: { zoneKey: 'Z-02@rack:1' }, useGear: { ids, gear: gearItem() },
    sequence: { commands: [{ command: 'detach', args: { ids } }], label: { en: 'one', es: 'uno' } },
  }
  if (!Object.hasOwn(table, name)) throw new Error(`no arguments for ${name} in tests/helpers/commandArgs.ts`)
  return table[name]
}
