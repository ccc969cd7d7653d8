import { describe, expect, it } from 'vitest'
import { changedIds, signatureOf } from '../../../src/canvas/plan/picture.ts'
import { handlesOf, framePx, pickablesOf } from '../../../src/canvas/plan/pickables.ts'
import { jointPlaces, runPoints } from '../../../src/canvas/plan/pipeShapes.ts'
import { barScale, zoneWord } from '../../../src/canvas/plan/paintNotes.ts'
import { spanDimension } from '../../../src/canvas/plan/guides.ts'
import { reachOf } from '../../../src/canvas/plan/sprites.ts'
import { markedFindings } from '../../../src/canvas/plan/findings.ts'
import type { Finding } from '../../../src/checks/finding.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { free, item, onRun, run, setUp, testEnv, yard } from '../../helpers/documents.ts'

const moved = (document: ReturnType<typeof yard>, ids: string[], dxM: number): ReturnType<typeof yard> => applyEdit(document, commandOf('moveBy')!.run(document, { ids, dxM, dyM: 0 }, testEnv()))

describe('what a gesture has to draw again', () => {
  const document = yard(item('machine', 'machine:m', onRun(0)), item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(9)), item('tree', 'tree:t', free(0, 9)))
  const before = deriveSite(document).placed

  it('only what is dragged, even where labels change places', () => {
    // a goes past b: E1 and E2 change, b itself does not move
    expect([...changedIds(before, deriveSite(moved(document, ['stand:a'], 6)).placed)]).toEqual(['stand:a'])
  })

  it('all that hangs on the axis when the machine is dragged, and nothing else', () => {
    expect([...changedIds(before, deriveSite(moved(document, ['machine:m'], 2)).placed)].sort()).toEqual(['machine:m', 'stand:a', 'stand:b'])
  })

  it('what comes and what goes', () => {
    const without = deriveSite(applyEdit(document, { put: [item('stand', 'stand:c', onRun(20))], remove: ['tree:t'] })).placed
    expect([...changedIds(before, without)].sort()).toEqual(['stand:c', 'tree:t'])
  })

  it('equal gear shares one picture, other gear does not', () => {
    expect(signatureOf(item('stand', 'stand:x', onRun(1)))).toBe(signatureOf(item('stand', 'stand:y', onRun(7))))
    expect(signatureOf(item('stand', 'stand:x', onRun(1)))).not.toBe(signatureOf(item('stand', 'stand:y', onRun(1), { roller: 'V' })))
  })

  it('a symbol with a pipe in it is never stamped, others reach as far as their farthest point', () => {
    expect(reachOf([{ t: 'pipe', points: [0, 0, 12, 0], outerDiameterM: 0.3 }], 10)).toBeNull()
    // corner (3, 4) m at 10 px/m is 50 px out, and 3 px for the stroke
    expect(reachOf([{ t: 'rect', xM: -1, yM: -1, widthM: 4, heightM: 5 }], 10)).toBeCloseTo(53, 9)
    expect(reachOf([{ t: 'mark', xM: 0, yM: 0, parts: [{ t: 'circle', xM: 0, yM: 2, radiusM: 7 }] }], 10)).toBeCloseTo(12, 9)
  })
})

describe('pipe and path', () => {
  it('joints lie a stick apart from the nose; the one being made under the jaws is none', () => {
    // three sticks of 12 m from 0 to 36
    expect(jointPlaces(0, 36, 12)).toEqual([24, 12])
    expect(jointPlaces(0, 36, 0)).toEqual([])
  })

  it('a straight stretch has two points, a bend enough to look round', () => {
    expect(runPoints(deriveSite(yard()), -3, 20)).toEqual([-3, 0, 20, 0])
    const bent = deriveSite({ records: { ...yard().records, 'run:1': run({ vertices: [{ xM: 40, yM: 0, radiusM: 15 }, { xM: 60, yM: 30, radiusM: null }] }), 'setUp:1': setUp() } })
    expect(runPoints(bent, 0, 60).length).toBeGreaterThan(20)
  })
})

describe('frames and handles', () => {
  const matrix = { a: 20, b: 0, c: 0, d: -20, e: 500, f: 250 }
  const of = (document: ReturnType<typeof yard>, id: string): ReturnType<typeof pickablesOf>[number] => pickablesOf(deriveSite(document), []).find((p) => p.id === id)!

  it('a frame stands 6 px round the outline, and is never under 16 px', () => {
    const corners = framePx(of(yard(item('loader', 'loader:l', free(0, 0))), 'loader:l'), matrix, 6)
    // the outline is 3.6 m along x: 72 px, and 6 px on either side
    const xs = corners.map(({ xPx }) => xPx)
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThanOrEqual(72 + 12 - 1e-9)
    const small = framePx(of(yard(item('level', 'level:l', free(0, 0))), 'level:l'), { ...matrix, a: 1, d: -1 }, 2)
    expect(Math.max(...small.map(({ xPx }) => xPx)) - Math.min(...small.map(({ xPx }) => xPx))).toBeCloseTo(16, 9)
  })

  it('one chosen item has handles, several, locked ones and none have not', () => {
    const document = yard(item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(9), { locked: true }), item('fence', 'fence:f', [{ xM: 0, yM: 5 }, { xM: 10, yM: 5 }]))
    const [a, b, f] = ['stand:a', 'stand:b', 'fence:f'].map((id) => of(document, id))
    expect(handlesOf([a!], matrix).map(({ kind }) => kind)).toEqual(['rotate'])
    expect(handlesOf([f!], matrix).map(({ kind, index }) => `${kind}${index}`)).toEqual(['vertex0', 'middle1', 'vertex1'])
    expect(handlesOf([b!], matrix)).toEqual([])
    expect(handlesOf([a!, f!], matrix)).toEqual([])
  })

  it('sides too short for two targets have no middle handle', () => {
    const fence = of(yard(item('fence', 'fence:f', [{ xM: 0, yM: 5 }, { xM: 2, yM: 5 }])), 'fence:f')
    expect(handlesOf([fence], matrix).map(({ kind }) => kind)).toEqual(['vertex', 'vertex'])
  })

  it('the pull path can be chosen and reshaped once it has corners', () => {
    expect(pickablesOf(deriveSite(yard()), []).map(({ kind }) => kind)).toEqual([])
    const bent = { records: { ...yard().records, 'run:1': run({ vertices: [{ xM: 40, yM: 0, radiusM: 15 }] }) } }
    expect(pickablesOf(deriveSite(bent), []).map(({ kind }) => kind)).toEqual(['run'])
  })
})

describe('words and scale', () => {
  it.each([[5, true, 50, 76.2], [20, true, 10, 60.96], [5, false, 20, 100], [0.5, true, 500, 76.2]] as const)('at %d px/m the bar (feet: %s) is %d long', (pxPerM, isFeet, count, lengthPx) => {
    const bar = barScale(pxPerM, isFeet)
    expect(bar.count).toBe(count)
    expect(bar.lengthPx).toBeCloseTo(lengthPx, 6)
  })

  it('RED says who may be in it, BLUE keeps the public out, AMBER is named', () => {
    const name = { en: 'tight rope', es: 'cuerda tensa' }
    expect(zoneWord({ zoneClass: 'RED', name, mayEnter: [] }, 'en')).toBe('tight rope: nobody')
    expect(zoneWord({ zoneClass: 'RED', name, mayEnter: ['infeedHand'] }, 'en')).toBe('tight rope: only infeed hand')
    expect(zoneWord({ zoneClass: 'BLUE', name, mayEnter: [] }, 'es')).toBe('cuerda tensa: público fuera')
    expect(zoneWord({ zoneClass: 'AMBER', name, mayEnter: [] }, 'en')).toBe('tight rope')
  })

  it('a dimension of no length draws nothing', () => {
    expect(spanDimension({ xPx: 5, yPx: 5 }, { xPx: 5, yPx: 5 }, '0')).toEqual([])
  })

  it('findings keep their number from the margin, placed or not', () => {
    const site = deriveSite(yard(item('stand', 'stand:a', onRun(5))))
    const finding = (key: string, over: Partial<Finding>): Finding => ({ checkId: 'c', key, level: 'FIX', isUnknown: false, missing: [], itemIds: [], where: null, what: { text: { en: '', es: '' } }, measured: null, limit: null, margin: null, source: { class: 'mechanics', cite: '' }, phases: [], move: null, remedy: null, ...over })
    const run = { findings: [finding('no place', {}), finding('on the run', { where: { at: 'run', runningM: 7, levelM: null, offsetM: 1 } }), finding('at its item', { level: 'STOP', itemIds: ['stand:a'] }), finding('met', { level: 'met', itemIds: ['stand:a'] })], counts: { STOP: 1, FIX: 2, CHECK: 0, NOTE: 0, met: 1, toConfirm: 0 } }
    expect(markedFindings(run, site)).toEqual([
      { key: 'at its item', number: 1, level: 'STOP', xM: 5, yM: 0 },
      { key: 'on the run', number: 3, level: 'FIX', xM: 7, yM: -1 },
    ])
  })
})
