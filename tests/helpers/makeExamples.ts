/**
 * Writes the example layouts and, beside each, what it must raise: `npx tsx tests/helpers/makeExamples.ts`.
 * Everything goes through the commands of the app, so that the files stay what the app itself would save.
 * Our own drawings of four yards; names are invented.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import { newDocument, type NewYardForm } from '../../src/scene/newYard.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import { fahrenheitToC, footM, inchM, poundForceN } from '../../src/units/factors.ts'
import type { Env } from '../../src/scene/edit.ts'
import { defaultCrew } from '../../src/derive/crewDefaults.ts'
import { deriveSite } from '../../src/derive/site.ts'

const ft = (feet: number): number => feet * footM
const inch = (inches: number): number => inches * inchM
const lb = (pounds: number): number => pounds * poundForceN
const plate = (value: number): { value: number; basis: 'plate' } => ({ value, basis: 'plate' })

/** A layout under construction: one named command after the other. */
class Drawing {
  document: YardDocument
  readonly env: Env
  constructor(name: string, form: NewYardForm, units: 'feetInches' | 'metric') {
    let count = 0
    this.env = { newId: (prefix) => `${prefix}:${name}${(count += 1).toString(36)}`, now: () => '2025-06-03T14:00:00.000Z' }
    this.document = newDocument(form, this.env, units)
    // A layout id names the stored work for life; that of an example is its own.
    const layout = this.document.records['layout:this']!
    this.put({ ...layout, layoutId: `example-${name}` } as YardRecord)
  }
  put(...records: YardRecord[]): this {
    this.document = applyEdit(this.document, { put: records, remove: [] })
    return this
  }
  run(name: string, args: unknown): this {
    const command = commandOf(name)
    if (command === undefined) throw new Error(`no command ${name}`)
    this.document = applyEdit(this.document, command.run(this.document, args, this.env))
    return this
  }
  one(kind: YardRecord['kind']): string {
    const found = Object.values(this.document.records).find((record) => record.kind === kind)
    if (found === undefined) throw new Error(`no ${kind} yet`)
    return found.id
  }
  onRun(runningM: number, offsetM = 0, turnRad = 0): Record<string, unknown> {
    return { at: 'onRun', runId: this.one('run'), runningM, offsetM, turnRad }
  }
  item(kind: string, runningM: number, offsetM = 0, patch: Record<string, unknown> = {}, turnRad = 0): this {
    return this.run('place', { kind, place: this.onRun(runningM, offsetM, turnRad), patch })
  }
  feature(kind: string, points: readonly (readonly [number, number])[], patch: Record<string, unknown> = {}): this {
    return this.run('place', { kind, points: points.map(([xM, yM]) => ({ xM, yM })), patch })
  }
  job(fields: Record<string, unknown>): this {
    return Object.entries(fields).reduce<this>((drawing, [path, value]) => drawing.run('setJob', { path, value }), this)
  }
  figures(id: string, values: Record<string, number>): this {
    return Object.entries(values).reduce<this>((drawing, [name, value]) => drawing.run('setField', { ids: [id], path: `figures.${name}.value`, value, basis: 'plate' }), this)
  }
  /** The usual spots of the crew, each then moved to where the zones of this yard leave room. */
  crew(): this {
    this.run('crewDefaults', { setUpId: this.one('setUp') })
    for (const { role, runningM, offsetM } of defaultCrew(deriveSite(this.document))) {
      const spot = Object.values(this.document.records).find((record) => record.kind === 'crew' && record.role === role)
      const at = spot === undefined ? undefined : deriveSite(this.document).placed.get(spot.id)
      const isThere = at !== undefined && Math.hypot((at.runningM ?? 0) - runningM, (at.offsetM ?? 0) - offsetM) < 0.001
      if (at !== undefined && !isThere) this.run('setOnRun', { id: at.id, runningM, offsetM })
    }
    return this
  }
  /** Ground levels along the line and to both sides, the fall given and a few millimetres of real ground on it. */
  levels(fromM: number, toM: number, stepM: number, fallRatio: number, sideM: number): this {
    let count = 0
    for (let at = fromM; at <= toM + 1e-6; at += stepM) {
      for (const offsetM of count % 4 === 0 ? [0, -sideM, sideM] : [0]) {
        const bumpM = Math.abs(at) < 1e-6 ? 0 : (((count * 7 + (offsetM === 0 ? 0 : offsetM > 0 ? 3 : 5)) % 5) - 2) * 0.002
        this.item('level', at, offsetM, { source: 'rotary laser', figures: { levelM: { value: Math.round((0 - fallRatio * at + bumpM) * 1000) / 1000, basis: 'measured' } } })
      }
      count += 1
    }
    return this
  }
}

/** Carriage: piston area in square inches and the most it pushes; invented, as all figures of gear here. */
const machineFigures = (bopM: number, odM: number, pistonIn2: number, pushN: number): Record<string, number> => ({
  jawHeightM: bopM + odM / 2, jawsFittedOdM: odM, innerClampM: inch(4), outerClampM: inch(28), liftTravelM: inch(2), liftAtM: 1.2, pistonAreaM2: pistonIn2 * inchM ** 2, fusionForceLimitN: pushN,
})
/** Muster points, one a side of the string, and kit and extinguisher by the machine on the side of the operator. */
const safety = (yard: Drawing, musters: readonly (readonly [number, number])[], kitOffsetM: number): void => {
  for (const [xM, yM] of musters) yard.run('place', { kind: 'muster', place: { at: 'free', xM, yM, headingRad: 0 } })
  yard.item('burnKit', 5, kitOffsetM)
  yard.item('extinguisher', 6, kitOffsetM, { rating: '10B' })
}
const standPatch = (saddleM: number, ratedN: number, over: Record<string, unknown> = {}): Record<string, unknown> => ({
  height: { rule: 'aboveGround', saddleM },
  figures: { lowestSaddleM: plate(inch(5)), highestSaddleM: plate(inch(44)), ratedLoadN: plate(ratedN) }, ...over,
})
const rollerPatch = (ratedN: number): Record<string, unknown> => ({ figures: { ratedLoadN: plate(ratedN) } })

// ---------------------------------------------------------------- feet: a simple bypass on a gravel lot

const mapleForm: NewYardForm = { title: 'Maple Fork pump house', pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, neededLengthM: ft(280), stickLengthM: ft(40), stripLengthM: ft(420), stripWidthM: ft(70), fallRatio: 0.01 }
const mapleOdM = inch(10.75)

function mapleBase(name: string): Drawing {
  const yard = new Drawing(name, mapleForm, 'feetInches')
  yard.job({ test: 'none', 'jointLossM.value': inch(0.875), 'wallTemperatureC.value': Math.round(fahrenheitToC(73.4)), 'temperatureSwingC.value': 60 / 1.8 })
  yard.run('setRun', { runId: yard.one('run'), path: 'surfaces.0', value: 'gravel' })
  yard.figures(yard.one('machine'), machineFigures(inch(30), mapleOdM, 4.7, lb(7000)))
  // The line lies left of the middle of the 70 ft lot: the rack and the loader take the wider side.
  yard.run('remove', { ids: [yard.one('boundary')] })
  yard.feature('boundary', [[ft(-50), -14.6], [ft(370), -14.6], [ft(370), 6.736], [ft(-50), 6.736]], { name: 'gravel lot' })
  yard.feature('building', [[60, 4.4], [72, 4.4], [72, 6.6], [60, 6.6]], { name: 'pump house' })
  yard.feature('fence', [[ft(-50), -14.6], [ft(370), -14.6]], { name: 'lot fence' })
  yard.feature('walkway', [[ft(-50), -18], [ft(370), -18]], { name: 'footway', access: 'open' })
  return yard
}

export function mapleFirstSketch(): YardDocument {
  const yard = mapleBase('maple-first-sketch')
  yard.job({ noseHold: 'free' })
  yard.put({ id: 'string:first', kind: 'string', setUpId: yard.one('setUp'), runId: yard.one('run'), name: '', stickCount: 7, parkingRow: null, parkingSide: 'right', order: 0, joinedToId: null, note: null } as YardRecord)
  yard.item('rack', ft(-20), 0, { figures: { beamSpacingM: plate(ft(70 / 3)) } })
  yard.item('stand', ft(20))
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(100), spacingM: ft(20), count: 10 })
  yard.item('puller', ft(300), 0, { pullerKind: 'loader', guardedCab: true, figures: { ropeLengthM: plate(ft(20)), towRatingN: plate(lb(4000)), ropeRatingN: plate(lb(6000)), massKg: plate(3400) } })
  yard.item('loader', ft(-20), 7.6, { figures: { plateLoadN: plate(lb(1800)), topHeightM: plate(ft(12)), reachM: plate(1.2) } }, Math.PI / 2)
  yard.item('crew', ft(265), ft(3), { role: 'noseSpotter', phases: ['pull'] })
  yard.item('crew', 0, -2.2, { role: 'operator', phases: ['load', 'fuse', 'pull'] })
  return yard.document
}

export function mapleGood(): YardDocument {
  const yard = mapleBase('maple-good')
  yard.job({ noseHold: 'slung' })
  yard.levels(ft(-50), ft(350), ft(25), 0.01, 7)
  yard.item('rack', ft(-20), 0, {
    openSide: 'R', stopsLeft: true, stopsRight: true, stickCount: 6,
    figures: { beamSpacingM: plate(ft(70 / 3)), beamLengthM: plate(ft(10)), ratedLoadN: plate(lb(4000)), capacityCount: plate(6), tiltRatio: plate(0), lowestSaddleM: plate(inch(20)), highestSaddleM: plate(inch(44)) },
  })
  // Two level stands with a soft start, the lay-down at its quarter points, rollers at 11 ft.
  yard.item('stand', ft(12.5), 0, { ...standPatch(0, lb(800)), height: { rule: 'onAxis' } })
  yard.item('stand', ft(25), 0, { ...standPatch(0, lb(800)), height: { rule: 'belowAxis', dropM: inch(1.5) } })
  for (const [atFt, saddleIn] of [[35 + 8 / 12, 21.5], [46 + 5 / 12, 12.5], [57 + 1 / 12, 7.25]] as const) yard.item('stand', ft(atFt), 0, standPatch(inch(saddleIn), lb(800), { roller: 'V' }))
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(67 + 10 / 12), spacingM: ft(11), count: 23, patch: rollerPatch(lb(500)) })
  yard.item('puller', ft(340), 0, { pullerKind: 'loader', guardedCab: true, figures: { ropeLengthM: plate(ft(18)), towRatingN: plate(lb(4000)), ropeRatingN: plate(lb(6000)), massKg: plate(3400), lengthM: plate(ft(12)) } })
  yard.item('loader', ft(-20), 7.6, { figures: { plateLoadN: plate(lb(1800)), topHeightM: plate(ft(12)), reachM: plate(1.2) } }, Math.PI / 2)
  yard.item('anchor', ft(-10), -2.5, { figures: { ratedHoldN: plate(lb(500)), tetherLengthM: plate(6) } })
  safety(yard, [[-13, 4.5], [20, -12]], -4)
  yard.crew()
  return yard.document
}

// ---------------------------------------------------------------- feet: one 500 ft length of 36 in beside a trench, under a 138 kV line

const redstemForm: NewYardForm = { title: 'Redstem Flat, one length', pipe: { system: 'IPS', size: '36', dr: 17, material: 'PE4710' }, neededLengthM: ft(498), stickLengthM: ft(50), stripLengthM: ft(660), stripWidthM: ft(60), fallRatio: 0.002 }
const redstemOdM = inch(36)

function redstemBase(name: string): Drawing {
  const yard = new Drawing(name, redstemForm, 'feetInches')
  yard.job({ test: 'none', 'jointLossM.value': inch(2), 'wallTemperatureC.value': Math.round(fahrenheitToC(73.4)), 'temperatureSwingC.value': 50 / 1.8, noseHold: 'slung' })
  yard.run('setRun', { runId: yard.one('run'), path: 'surfaces.0', value: 'grass' })
  yard.figures(yard.one('machine'), { ...machineFigures(inch(42), redstemOdM, 29.4, lb(44_000)), lengthM: ft(16), widthM: ft(9) })
  // The trench runs along the right edge of the right-of-way, 9 ft deep, its near edge 19 ft off the line.
  yard.feature('trench', [[-15, -ft(21.5)], [180, -ft(21.5)]], { name: 'trench', figures: { widthM: { value: ft(5), basis: 'measured' }, depthM: { value: ft(9), basis: 'measured' } } })
  yard.feature('overheadLine', [[ft(-72), -30], [ft(-72), 30]], { name: '138 kV line', figures: { voltageV: { value: 138_000, basis: 'measured' }, lowestHeightM: { value: ft(31), basis: 'measured' } } })
  return yard
}

const redstemLoader = (topFt: number): Record<string, unknown> => ({ figures: { plateLoadN: plate(lb(8000)), topHeightM: plate(ft(topFt)), reachM: plate(ft(14)), lengthM: plate(ft(22)), widthM: plate(ft(9)) } })

export function redstemFirstSketch(): YardDocument {
  const yard = redstemBase('redstem-first-sketch')
  yard.item('rack', ft(-25), 0, { openSide: 'L', figures: { beamSpacingM: plate(ft(29)) } })
  yard.item('stand', ft(20))
  yard.item('stand', ft(40))
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(80), spacingM: ft(20), count: 21 })
  yard.item('puller', ft(540), 0, { figures: { ropeLengthM: plate(ft(30)), lengthM: plate(ft(20)) } })
  // Sticks lie under the wires and are lifted there; the lane runs along the trench.
  yard.item('loader', ft(-75), 0, redstemLoader(24))
  yard.feature('lane', [[-15, -ft(10)], [ft(400), -ft(10)]], { name: 'loader lane', use: 'loader', figures: { widthM: { value: ft(9), basis: 'measured' } } })
  return yard.document
}

export function redstemGood(): YardDocument {
  const yard = redstemBase('redstem-good')
  yard.levels(ft(-75), ft(600), ft(25), 0.002, 6)
  yard.item('rack', ft(-25), 0, {
    openSide: 'L', stopsLeft: true, stopsRight: true, stickCount: 2,
    figures: { beamSpacingM: plate(ft(29)), beamLengthM: plate(ft(12)), ratedLoadN: plate(lb(16_000)), capacityCount: plate(2), tiltRatio: plate(0), lowestSaddleM: plate(inch(24)), highestSaddleM: plate(inch(60)) },
  })
  const patch = (saddleM: number): Record<string, unknown> => standPatch(saddleM, lb(16_000), { roller: 'V', figures: { lowestSaddleM: plate(inch(5)), highestSaddleM: plate(inch(60)), ratedLoadN: plate(lb(16_000)), baseLengthM: plate(0.9), baseWidthM: plate(1.2), massKg: plate(140) } })
  yard.item('stand', ft(20), 0, { ...patch(0), height: { rule: 'onAxis' } })
  yard.item('stand', ft(40), 0, { ...patch(0), height: { rule: 'belowAxis', dropM: inch(1) } })
  // Let down by 30 in over some 75 ft: 74, 31 and 5 % of it at the quarter points.
  for (const [atFt, saddleIn] of [[59, 34.2], [78, 21.3], [97, 13.5]] as const) yard.item('stand', ft(atFt), 0, patch(inch(saddleIn)))
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(116), spacingM: ft(20), count: 20, patch: { height: { rule: 'aboveGround', saddleM: inch(12) }, ...rollerPatch(lb(12_000)) } })
  yard.item('puller', ft(540), 0, { pullerKind: 'tractor', guardedCab: true, figures: { ropeLengthM: plate(ft(30)), towRatingN: plate(lb(30_000)), ropeRatingN: plate(lb(40_000)), massKg: plate(22_000), lengthM: plate(ft(20)), widthM: plate(ft(9)), topHeightM: plate(ft(11)) } })
  // A stick carried crosswise does not turn within 60 ft: the loader turns in the bay behind the wires and carries end-on
  // and low, 13 ft at the top, to the rack, on the side away from the trench.
  yard.run('remove', { ids: [yard.one('boundary')] })
  yard.feature('boundary', [[ft(-170), -ft(60)], [ft(-75), -ft(60)], [ft(-75), -ft(30)], [ft(600), -ft(30)], [ft(600), ft(30)], [ft(-75), ft(30)], [ft(-75), ft(60)], [ft(-170), ft(60)]], { name: 'right-of-way with a bay' })
  yard.item('loader', ft(-120), 0, redstemLoader(13))
  yard.feature('lane', [[ft(-110), ft(21)], [ft(-25), ft(21)]], { name: 'carry lane, end-on', use: 'loader', figures: { widthM: { value: ft(12), basis: 'measured' } } })
  safety(yard, [[ft(100), ft(25)], [ft(60), -ft(12)]], 4.5)
  yard.crew()
  return yard.document
}

// ---------------------------------------------------------------- metric: hot thin pipe on sand

const arenalForm: NewYardForm = { title: 'Campo Arenal, lateral de riego', pipe: { system: 'metric', size: '450', dr: 26, material: 'PE100' }, neededLengthM: 640, stickLengthM: 12, stripLengthM: 700, stripWidthM: 40, fallRatio: 0 }
const arenalOdM = 0.45

function arenalBase(name: string, wallC: number): Drawing {
  const yard = new Drawing(name, arenalForm, 'metric')
  yard.job({ test: 'none', 'jointLossM.value': 0.03, 'wallTemperatureC.value': wallC, 'temperatureSwingC.value': 40 })
  yard.run('setRun', { runId: yard.one('run'), path: 'surfaces.0', value: 'sand' })
  yard.figures(yard.one('machine'), machineFigures(0.8, arenalOdM, 9.4, 62_000))
  yard.feature('overheadLine', [[-60, 16], [60, 16]], { name: '33 kV line', figures: { voltageV: { value: 33_000, basis: 'measured' }, lowestHeightM: { value: 6.5, basis: 'measured' } } })
  return yard
}

const arenalLoader: Record<string, unknown> = { figures: { plateLoadN: plate(6000), topHeightM: plate(4.6), reachM: plate(1.4) } }

export function arenalFirstSketch(): YardDocument {
  const yard = arenalBase('arenal-first-sketch', 60)
  yard.job({ noseHold: 'free' })
  // The pivot track: a quarter turn of 15 m radius after 200 m.
  const boundaryId = yard.one('boundary')
  yard.run('remove', { ids: [boundaryId] })
  yard.feature('boundary', [[-30, -20], [230, -20], [230, 480], [180, 480], [180, 20], [-30, 20]], { name: 'field' })
  yard.put({ ...yard.document.records[yard.one('run')]!, vertices: [{ xM: 205, yM: 0, radiusM: 15 }, { xM: 205, yM: 440, radiusM: null }] } as YardRecord)
  yard.item('rack', -6)
  yard.item('stand', 6)
  yard.item('stand', 10.5)
  yard.run('placeRow', { kind: 'roller', fromRunningM: 18, spacingM: 4.5, count: 38 })
  yard.item('puller', 220, 0, { figures: { ropeLengthM: plate(10) } })
  yard.item('loader', -6, -8, arenalLoader, -Math.PI / 2)
  yard.run('place', { kind: 'offload', place: { at: 'free', xM: -5, yM: 15, headingRad: 0 } })
  return yard.document
}

export function arenalGood(): YardDocument {
  // Fused from five in the morning, done by eleven: the wall at 35 °C, not 60.
  const yard = arenalBase('arenal-good', 35)
  yard.job({ noseHold: 'slung' })
  yard.run('setSetUp', { setUpId: yard.one('setUp'), path: 'crossFallRatio', value: 0 })
  yard.levels(-24, 680, 8, 0, 6)
  yard.item('rack', -6, 0, {
    openSide: 'R', stopsLeft: true, stopsRight: true, stickCount: 6,
    figures: { beamSpacingM: plate(7), beamLengthM: plate(3), ratedLoadN: plate(30_000), capacityCount: plate(6), tiltRatio: plate(0), lowestSaddleM: plate(0.5), highestSaddleM: plate(1.2) },
  })
  const patch = (saddleM: number): Record<string, unknown> => standPatch(saddleM, 6000, { figures: { lowestSaddleM: plate(0.12), highestSaddleM: plate(1.2), ratedLoadN: plate(6000) } })
  yard.item('stand', 4, 0, { ...patch(0), height: { rule: 'onAxis' } })
  yard.item('stand', 8, 0, { ...patch(0), height: { rule: 'belowAxis', dropM: 0.035 } })
  for (const [atM, saddleM] of [[11.6, 0.63], [15.2, 0.36], [18.8, 0.19]] as const) yard.item('stand', atM, 0, patch(saddleM))
  yard.run('placeRow', { kind: 'roller', fromRunningM: 22.4, spacingM: 3.6, count: 172, patch: { height: { rule: 'aboveGround', saddleM: 0.15 }, ...rollerPatch(4000) } })
  yard.item('puller', 660, 0, { pullerKind: 'tractor', guardedCab: true, figures: { ropeLengthM: plate(9), towRatingN: plate(60_000), ropeRatingN: plate(60_000), massKg: plate(16_000), lengthM: plate(4.5), widthM: plate(2.4), topHeightM: plate(3.1) } })
  yard.item('loader', -6, 9.5, arenalLoader, Math.PI / 2)
  // Unloaded 30 m from the wires.
  yard.run('place', { kind: 'offload', place: { at: 'free', xM: 24, yM: -16, headingRad: 0 } })
  safety(yard, [[100, 15], [100, -15]], -4)
  yard.crew()
  return yard.document
}

// ---------------------------------------------------------------- feet: one of two strings for a bore, a farm road across

const otterForm: NewYardForm = { title: 'Otter Bend, string A', pipe: { system: 'IPS', size: '16', dr: 11, material: 'PE4710' }, neededLengthM: ft(1230), stickLengthM: ft(50), stripLengthM: ft(1330), stripWidthM: ft(40), fallRatio: 0.03 }
const otterOdM = inch(16)

function otterBase(name: string): Drawing {
  const yard = new Drawing(name, otterForm, 'feetInches')
  yard.job({ test: 'none', 'jointLossM.value': inch(1.25), 'wallTemperatureC.value': Math.round(fahrenheitToC(73.4)), 'temperatureSwingC.value': 40 / 1.8 })
  yard.run('setRun', { runId: yard.one('run'), path: 'surfaces.0', value: 'grass' })
  yard.figures(yard.one('machine'), machineFigures(inch(34), otterOdM, 9.4, lb(14_000)))
  yard.run('remove', { ids: [yard.one('boundary')] })
  return yard
}

/** Rope, vehicle and 10 ft of over-run: 40 ft of lead on the first sketch, 32 ft with a shorter rope. */
export function otterFirstSketch(): YardDocument {
  const yard = otterBase('otter-first-sketch')
  yard.job({ noseHold: 'free' })
  yard.feature('boundary', [[ft(-50), -ft(20)], [ft(1280), -ft(20)], [ft(1280), ft(20)], [ft(-50), ft(20)]], { name: 'strip' })
  yard.feature('road', [[ft(640), -20], [ft(640), 20]], { name: 'farm road', traffic: 'open', figures: { widthM: { value: ft(12), basis: 'measured' } } })
  yard.item('rack', ft(-25), 0, { openSide: 'L', figures: { beamSpacingM: plate(ft(29)) } })
  yard.item('stand', ft(25))
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(70), spacingM: ft(14), count: 84 })
  yard.item('puller', ft(1265.5), 0, { pullerKind: 'loader', guardedCab: true, figures: { ropeLengthM: plate(ft(18)), towRatingN: plate(lb(9000)), ropeRatingN: plate(lb(12_000)), massKg: plate(7000), lengthM: plate(ft(12)) } })
  yard.item('loader', ft(-25), -ft(14), { figures: { plateLoadN: plate(lb(4000)), topHeightM: plate(ft(12)), reachM: plate(ft(6)) } }, Math.PI / 2)
  return yard.document
}

export function otterGood(): YardDocument {
  const yard = otterBase('otter-good')
  yard.job({ noseHold: 'slung' })
  // A pad beside the infeed, on which a 50 ft stick turns; the road is closed for the pulls between two milk rounds.
  yard.feature('boundary', [[ft(-50), -ft(20)], [ft(1280), -ft(20)], [ft(1280), ft(20)], [ft(30), ft(20)], [ft(30), ft(85)], [ft(-80), ft(85)], [ft(-80), ft(20)], [ft(-50), ft(20)]], { name: 'strip with a pad' })
  yard.feature('road', [[ft(640), -20], [ft(640), 20]], { name: 'farm road', traffic: 'closed', figures: { widthM: { value: ft(12), basis: 'measured' } } })
  yard.levels(ft(-50), ft(1275), ft(25), 0.03, 5)
  yard.item('rack', ft(-25), 0, {
    openSide: 'L', stopsLeft: true, stopsRight: true, stickCount: 3,
    figures: { beamSpacingM: plate(ft(29)), beamLengthM: plate(ft(10)), ratedLoadN: plate(lb(8000)), capacityCount: plate(3), tiltRatio: plate(0), lowestSaddleM: plate(inch(20)), highestSaddleM: plate(inch(48)) },
  })
  const patch = (saddleM: number): Record<string, unknown> => standPatch(saddleM, lb(2500), { roller: 'V', figures: { lowestSaddleM: plate(inch(5)), highestSaddleM: plate(inch(48)), ratedLoadN: plate(lb(2500)) } })
  yard.item('stand', ft(16), 0, { ...patch(0), height: { rule: 'onAxis' } })
  yard.item('stand', ft(32), 0, { ...patch(0), height: { rule: 'belowAxis', dropM: inch(1.5) } })
  for (const [atFt, saddleIn] of [[45, 25.5], [58, 14.25], [71, 7.25]] as const) yard.item('stand', ft(atFt), 0, patch(inch(saddleIn)))
  // 13 ft 6 in apart with the road between two of them.
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(79.75), spacingM: ft(13.5), count: 42, patch: rollerPatch(lb(2000)) })
  yard.run('placeRow', { kind: 'roller', fromRunningM: ft(646.75), spacingM: ft(13.5), count: 45, patch: rollerPatch(lb(2000)) })
  yard.item('puller', ft(1257.5), 0, { pullerKind: 'loader', guardedCab: true, figures: { ropeLengthM: plate(ft(10)), towRatingN: plate(lb(10_000)), ropeRatingN: plate(lb(12_000)), massKg: plate(9000), lengthM: plate(ft(12)) } })
  yard.item('loader', ft(-25), ft(-48), { figures: { plateLoadN: plate(lb(4000)), topHeightM: plate(ft(12)), reachM: plate(ft(6)) } }, Math.PI / 2)
  yard.item('anchor', ft(-12), ft(8), { figures: { ratedHoldN: plate(lb(2500)), tetherLengthM: plate(8) } })
  safety(yard, [[ft(20), ft(78)], [ft(100), -ft(15)]], 4)
  yard.crew()
  return yard.document
}

export const examples: Readonly<Record<string, () => YardDocument>> = {
  'maple-fork-first-sketch': mapleFirstSketch,
  'maple-fork-good': mapleGood,
  'redstem-flat-first-sketch': redstemFirstSketch,
  'redstem-flat-good': redstemGood,
  'campo-arenal-first-sketch': arenalFirstSketch,
  'campo-arenal-good': arenalGood,
  'otter-bend-first-sketch': otterFirstSketch,
  'otter-bend-good': otterGood,
}

export interface Expected {
  about: string
  /** Each of these must be among the findings: check, level, and labels or names of items it is about. Others may be there too. */
  mustRaise: readonly { check: string; level: 'STOP' | 'FIX' | 'CHECK' | 'NOTE'; items: readonly string[] }[]
  /** True for the good plans: no STOP and no FIX, and nothing left to confirm. */
  isGood: boolean
}

const raise = (level: Expected['mustRaise'][number]['level'], check: string, ...items: string[]): Expected['mustRaise'][number] => ({ check, level, items })

/** Written by hand from what a crew lead must be told of these yards, not from what the checks happen to say. */
export const expected: Readonly<Record<string, Expected>> = {
  'maple-fork-first-sketch': {
    about: 'A simple bypass on a gravel lot, as first sketched: seven sticks, rollers 20 ft apart, a free nose, nothing against the fall, the nose spotter in the line of the rope.',
    isGood: false,
    mustRaise: [
      raise('STOP', 'crew-in-zone', 'N', 'P'), raise('FIX', 'sticks-length'), raise('FIX', 'nose-landing', 'G1', 'G2'), raise('CHECK', 'surface-scuff'), raise('CHECK', 'hold-back'), raise('CHECK', 'machine-held'),
      raise('CHECK', 'wind-chock'), raise('CHECK', 'way-out'), raise('CHECK', 'burn-kit-reach'), raise('CHECK', 'balance', 'E1'), raise('CHECK', 'ground-guessed', 'G1'), raise('NOTE', 'exit-stands'), raise('NOTE', 'growth-gap'),
    ],
  },
  'maple-fork-good': {
    about: 'The same bypass: eight sticks, two level stands with a soft start, rollers at 11 ft, the nose slung, a tether, levels every 25 ft.',
    isGood: true,
    mustRaise: [raise('NOTE', 'sticks-length'), raise('NOTE', 'nose-landing', 'G1'), raise('NOTE', 'end-room'), raise('NOTE', 'growth-gap'), raise('CHECK', 'wind-chock')],
  },
  'redstem-flat-first-sketch': {
    about: 'One 500 ft length of 36 in pipe beside a 9 ft trench: sticks lifted under a 138 kV line, the loader lane within the depth of the trench.',
    isGood: false,
    mustRaise: [
      raise('STOP', 'overhead-line', 'L', '138 kV line'), raise('FIX', 'trench-edge', 'loader lane', 'trench'), raise('FIX', 'clearance', 'L'), raise('CHECK', 'set-out-tolerance', 'E1'),
      raise('CHECK', 'ground-guessed', 'G1'), raise('NOTE', 'growth-gap'), raise('NOTE', 'sticks-length'),
    ],
  },
  'redstem-flat-good': {
    about: 'The same length: carried low and end-on from a bay behind the line, two level stands and a lay-down, rollers 20 ft apart.',
    isGood: true,
    mustRaise: [raise('CHECK', 'set-out-tolerance', 'E1'), raise('NOTE', 'nose-landing'), raise('NOTE', 'growth-gap')],
  },
  'campo-arenal-first-sketch': {
    about: 'Hot thin pipe on sand, metric: unloaded under a 33 kV line, rollers at 4.5 m for a 60 °C wall, a 15 m bend.',
    isGood: false,
    mustRaise: [
      raise('STOP', 'overhead-line', 'T', '33 kV line'), raise('STOP', 'overhead-line', 'L'), raise('FIX', 'bend-radius'), raise('FIX', 'nose-landing', 'G1'), raise('CHECK', 'puller-pull'),
      raise('CHECK', 'wind-chock'), raise('CHECK', 'ground-guessed'), raise('NOTE', 'growth-gap'),
    ],
  },
  'campo-arenal-good': {
    about: 'The same lateral fused from five in the morning: wall at 35 °C, rollers at 3.6 m, unloaded 30 m from the line, straight.',
    isGood: true,
    mustRaise: [raise('CHECK', 'wind-chock'), raise('NOTE', 'growth-gap'), raise('NOTE', 'sticks-length')],
  },
  'otter-bend-first-sketch': {
    about: 'One of two 1,247 ft strings for a bore on a strip 1,330 ft long that falls 3 % to the exit: 8 ft too short, nothing against the fall, a farm road open across it, rollers at 14 ft under a free nose.',
    isGood: false,
    mustRaise: [
      raise('STOP', 'hold-back'), raise('STOP', 'negative-drag'), raise('CHECK', 'machine-held'), raise('FIX', 'end-room'), raise('FIX', 'nose-landing', 'G1'), raise('STOP', 'public-way', 'farm road'), raise('CHECK', 'clearance', 'farm road'),
      raise('CHECK', 'ground-guessed'), raise('NOTE', 'growth-gap'),
    ],
  },
  'otter-bend-good': {
    about: 'The same string: tethered, 8 ft less rope, two level stands with a soft start, rollers at 13 ft 6 in with the closed farm road between two of them.',
    isGood: true,
    mustRaise: [raise('NOTE', 'nose-landing', 'G1'), raise('NOTE', 'growth-gap'), raise('NOTE', 'end-room')],
  },
}

if (process.argv[1]?.endsWith('makeExamples.ts') === true) {
  mkdirSync('shared/examples', { recursive: true })
  for (const [name, make] of Object.entries(examples)) {
    writeFileSync(`shared/examples/${name}.yard.json`, writeFile(make()))
    writeFileSync(`shared/examples/${name}.expected.json`, `${JSON.stringify(expected[name], null, 2)}\n`)
  }
}
