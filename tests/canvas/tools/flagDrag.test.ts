import { describe, expect, it } from 'vitest'
import { flagIdle, heightStepM, stepFlag, type FlagContext, type FlagEffect, type FlagEvent, type FlagState, type FlagTarget } from '../../../src/canvas/tools/flagDrag.ts'

const ft = 0.3048
const target = (key: string, runningM: number, over: Partial<FlagTarget> = {}): FlagTarget => ({ key, itemId: `stand:${key}`, label: key, runningM, canSlide: true, saddleM: 0.7, jawLineSaddleM: 0.75, isLocked: false, ...over })
const context = (over: Partial<FlagContext> = {}): FlagContext => ({
  flags: [target('E1', 12 * ft), target('E2', 25 * ft), target('E3', 35 * ft), target('nose', 80 * ft, { itemId: null, canSlide: false, saddleM: null })],
  selection: [], frozen: false, snapping: true, system: 'feetInches', pxPerM: 15.4, pxPerLevelM: 77, alongSign: 1, toRunning: (px) => px / 15.4, allows: 'both', placesOnTap: true, ...over,
})

type Pointer = 'mouse' | 'touch'
const at = (alongPx: number, acrossPx = 0, pointer: Pointer = 'mouse') => ({ pointerId: 1, pointer, alongPx, acrossPx })
/** Runs events; answers the last state and every effect. */
const play = (events: readonly FlagEvent[], over: Partial<FlagContext> = {}) => {
  let state: FlagState = flagIdle
  const effects: FlagEffect[] = []
  for (const event of events) {
    const step = stepFlag(state, event, context(over))
    state = step.state
    effects.push(...step.effects)
  }
  return { state, effects, does: effects.map(({ do: what }) => what) }
}
const down = (key: string | null, alongPx = 0, acrossPx = 0, pointer: Pointer = 'mouse'): FlagEvent => ({ type: 'down', key, alt: false, ...at(alongPx, acrossPx, pointer) })
const move = (alongPx: number, acrossPx = 0, pointer: Pointer = 'mouse', alt = false): FlagEvent => ({ type: 'move', alt, ...at(alongPx, acrossPx, pointer) })
const up = (alongPx = 0, acrossPx = 0, pointer: Pointer = 'mouse'): FlagEvent => ({ type: 'up', ...at(alongPx, acrossPx, pointer) })

describe('a mouse on a flag', () => {
  it('chooses at the press and drags at once, as one step', () => {
    const { does, effects } = play([down('E2', 100), move(112), move(124), up(124)])
    expect(does[0]).toBe('select')
    expect(does.filter((what) => what === 'begin' || what === 'commit')).toEqual(['begin', 'commit'])
    expect(effects.find((effect) => effect.do === 'begin')).toMatchObject({ label: { text: { en: 'slide E2' } } })
  })

  it('slides to round tape distances at this scale, exit growing to the right', () => {
    const { effects } = play([down('E2', 100), move(124), up(124)])
    // 24 px are 1.558 m or 5.11 ft: from 25 ft to 30 ft, a round foot.
    const preview = effects.findLast((effect) => effect.do === 'preview')
    expect(preview).toMatchObject({ command: 'slideBy', args: { ids: ['stand:E2'], dOffsetM: 0 } })
    expect((preview as { args: { dRunningM: number } }).args.dRunningM / ft).toBeCloseTo(5)
  })

  it('slides the other way on a sheet turned round', () => {
    const { effects } = play([down('E2', 100), move(124), up(124)], { alongSign: -1 })
    expect((effects.findLast((effect) => effect.do === 'preview') as { args: { dRunningM: number } }).args.dRunningM / ft).toBeCloseTo(-5)
  })

  it('stays free of round distances while the key that suspends snapping is held', () => {
    const { effects } = play([down('E2', 100), move(124, 0, 'mouse', true), up(124)])
    // 24 / 15.4 m.
    expect((effects.findLast((effect) => effect.do === 'preview') as { args: { dRunningM: number } }).args.dRunningM).toBeCloseTo(24 / 15.4)
  })

  it('repeats the spacing of its neighbours where it comes near', () => {
    // E1 at 12 ft, E2 at 25 ft; E3 dragged to near 38 ft, the 13 ft again.
    const { state } = play([down('E3', 0), move(3.2 * ft * 15.4)])
    expect(state).toMatchObject({ name: 'sliding', snap: 'equal' })
    expect((state as { runningM: number }).runningM / ft).toBeCloseTo(38)
  })

  it('sinks the saddle when pulled down first, by the scale of the side view', () => {
    const { effects, does } = play([down('E2', 100, 20), move(101, 30), move(103, 43), up(103, 43)])
    expect(effects.find((effect) => effect.do === 'begin')).toMatchObject({ label: { text: { en: 'saddle of E2' } } })
    const last = effects.findLast((effect) => effect.do === 'preview') as { command: string; args: { dLevelM: number } }
    expect(last.command).toBe('dropBy')
    // 23 px down are 0.2987 m: from 0.7 to 0.4013 m, rounded to ½ in: 0.4064 m (32 half inches).
    expect(0.7 + last.args.dLevelM).toBeCloseTo(0.4064)
    expect(does.at(-1)).toBe('commit')
  })

  it('finds the jaw line when the saddle comes within 5 px of it', () => {
    const { state } = play([down('E2', 0, 20), move(0, 10), move(0, 17.5)])
    // 2.5 px up of 0.7 m is 0.732 m, 1.4 px short of 0.75 m.
    expect(state).toMatchObject({ name: 'dropping', saddleM: 0.75, onJawLine: true })
  })

  it('never puts a saddle under the ground', () => {
    const { state } = play([down('E2', 0, 0), move(0, 500)])
    expect(state).toMatchObject({ name: 'dropping', saddleM: 0 })
  })

  it('drags all that is chosen with it', () => {
    const { effects } = play([down('E2', 100), move(130)], { selection: ['stand:E2', 'stand:E3'] })
    expect(effects.find((effect) => effect.do === 'preview')).toMatchObject({ args: { ids: ['stand:E2', 'stand:E3'] } })
    expect(effects.some((effect) => effect.do === 'select')).toBe(false)
  })

  it('leaves no step behind when it comes back to where it was', () => {
    const { does } = play([down('E2', 100), move(124), move(100), up(100)])
    expect(does.at(-1)).toBe('cancelPreview')
  })
})

describe('a finger on the tape', () => {
  it('first chooses by a tap', () => {
    const { does, effects } = play([down('E2', 0, 0, 'touch'), up(0, 0, 'touch')])
    expect(does).toEqual(['select'])
    expect(effects[0]).toEqual({ do: 'select', ids: ['stand:E2'] })
  })

  it('scrolls when it drags a flag that is not chosen', () => {
    expect(play([down('E2', 100, 0, 'touch'), move(130, 0, 'touch'), up(130, 0, 'touch')]).does).toEqual(['scroll'])
  })

  it('drags what is chosen, its first clear direction deciding', () => {
    const chosen = { selection: ['stand:E2'] }
    expect(play([down('E2', 100, 0, 'touch'), move(115, 4, 'touch')], chosen).state.name).toBe('sliding')
    expect(play([down('E2', 100, 0, 'touch'), move(104, 15, 'touch')], chosen).state.name).toBe('dropping')
    // Within 10 px nothing is clear yet.
    expect(play([down('E2', 100, 0, 'touch'), move(107, 6, 'touch')], chosen).state.name).toBe('pressed')
  })

  it('offers UNDO after a move', () => {
    expect(play([down('E2', 100, 0, 'touch'), move(130, 0, 'touch'), up(130, 0, 'touch')], { selection: ['stand:E2'] }).effects.at(-1)).toMatchObject({ do: 'notice', undo: true })
  })

  it('is cancelled cleanly by a second finger', () => {
    const second: FlagEvent = { ...down('E3', 200, 0, 'touch'), pointerId: 2 } as FlagEvent
    const { state, does } = play([down('E2', 100, 0, 'touch'), move(130, 0, 'touch'), second], { selection: ['stand:E2'] })
    expect(state.name).toBe('idle')
    expect(does.at(-1)).toBe('cancelPreview')
  })
})

describe('what else happens on the tape', () => {
  it('asks what goes to an empty place that is tapped, at a round foot', () => {
    // 206 px are 13.377 m or 43.9 ft.
    const { effects } = play([down(null, 206), up(206)])
    expect(effects).toEqual([{ do: 'placeAt', runningM: expect.closeTo(44 * ft) }])
  })
  it('rounds to half a metre on a metric tape', () => {
    expect(play([down(null, 206), up(206)], { system: 'metric' }).effects).toEqual([{ do: 'placeAt', runningM: 13.5 }])
  })
  it('scrolls by what the pointer moved', () => {
    const { effects } = play([down(null, 100), move(90), move(70), up(70)])
    expect(effects).toEqual([{ do: 'scroll', alongPx: -10 }, { do: 'scroll', alongPx: -20 }])
  })
  it('cannot drag the nose: it scrolls instead', () => {
    expect(play([down('nose', 100), move(130)]).does).toEqual(['scroll'])
  })
  it('says so when a flag is locked or the view is held still, and moves nothing', () => {
    const locked = play([down('E1', 0), move(40), up(40)], { flags: [target('E1', 0, { isLocked: true })] })
    expect(locked.effects.at(-1)).toMatchObject({ do: 'notice', text: { en: 'E1 is locked.' } })
    const frozen = play([down('E2', 0), move(40), up(40)], { frozen: true })
    expect(frozen.does).toEqual(['select', 'notice'])
  })
  it('takes the preview back on Esc, blur or a pointer taken away', () => {
    const { state, does } = play([down('E2', 100), move(140), { type: 'cancel' }])
    expect(state).toBe(flagIdle)
    expect(does.at(-1)).toBe('cancelPreview')
  })
  it('drags only heights in the side view', () => {
    expect(play([down('E2', 100), move(140)], { allows: 'height' }).does).toEqual(['select', 'scroll'])
    expect(play([down('E2', 100), move(102, 20)], { allows: 'height' }).state.name).toBe('dropping')
  })
  it('steps heights by what a hand can aim at', () => {
    // 77 px/m: ¼ in is 0.49 px, ½ in is 0.98 px; 200 px/m: ¼ in is 1.27 px.
    expect(heightStepM('feetInches', 77)).toBeCloseTo(0.0127)
    expect(heightStepM('feetInches', 200)).toBeCloseTo(0.00635)
    expect(heightStepM('metric', 77)).toBeCloseTo(0.02)
  })
})
