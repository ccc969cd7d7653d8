import type { JobStage, StageArrival, StageResult } from '../../derive/stages/types.ts'
import type { Localized } from '../../messages/localized.ts'
import type { TextValue } from '../../messages/render.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { arrivalNoseM, needsHand } from '../../state/runThroughView.ts'

/** A text with its values, to be written in the reader's language and units. */
export interface Said {
  text: Localized
  values: Readonly<Record<string, TextValue>>
}
const said = (words: Localized, values: Said['values'] = {}): Said => ({ text: words, values })

/** What happens in a stage, without full stop. */
export function happens({ phase, joint, noseM }: JobStage): Said {
  const k = joint ?? 0
  switch (phase) {
    case 'setUp': return said(text.nowSetUp)
    case 'offload': return said(text.nowOffload)
    case 'load': return said(text.nowLoad, { stick: k + 1 })
    case 'fuse': return said(text.nowFuse, { joint: k, stick: k + 1 })
    case 'pull': return said(text.nowPull, { to: { runningM: noseM?.to ?? null } })
    case 'move': return said(text.nowMove)
    case 'rest': return said(text.nowRest)
    case 'tieIn': return said(text.nowTieIn)
  }
}

const force = (value: number | null): TextValue => ({ kind: 'force', value })
const short = (value: number): TextValue => ({ kind: 'shortLength', value })

/** What has to be done where the nose comes to a support; null where it rides on by itself. */
export function atArrival({ outcome, label, liftM, liftN, droopM }: StageArrival): Said | null {
  switch (outcome) {
    case 'ridesOn': return null
    case 'ridesUp': return said(text.doRidesUp, { label, droop: short(droopM) })
    case 'lifted': return liftN === null ? said(text.doLiftUnknown, { label, lift: short(liftM) }) : said(text.doLift, { label, force: force(liftN) })
    case 'held': return liftN === null ? said(text.doHeldUnknown, { label }) : said(text.doHeld, { label, force: force(liftN) })
    case 'hits': return liftN === null || liftN === 0 ? said(text.doHits, { label, droop: short(droopM) }) : said(text.doHitsLift, { label, droop: short(droopM), force: force(liftN) })
  }
}

/** How the nose comes to a support, for the list. */
export function arrivalWords({ outcome, liftM, liftN, droopM }: StageArrival): Said {
  switch (outcome) {
    case 'ridesOn': return said(text.ridesOn)
    case 'ridesUp': return said(text.ridesUp, { droop: short(droopM) })
    case 'lifted': return liftN === null ? said(text.liftedUnknown, { lift: short(liftM) }) : said(text.lifted, { lift: short(liftM), force: force(liftN) })
    case 'held': return liftN === null ? said(text.heldUnknown) : liftN === 0 ? said(text.heldLight) : said(text.held, { force: force(liftN) })
    case 'hits': return said(text.hits, { droop: short(droopM) })
  }
}

/** What the front end of a fed stick comes to (derive/feed.ts). */
const feedPlaces: Readonly<Record<string, Localized>> = {
  support: { en: 'the support', es: 'el apoyo' }, lift: { en: 'the pipe lift', es: 'el levantatubo' }, outerJaw: { en: 'the outer jaw', es: 'la mordaza exterior' }, innerJaw: { en: 'the inner jaw', es: 'la mordaza interior' },
}

/** A spring of less than this nobody notices. */
const SPRING_M = 0.003
/** A gauge shows no less. */
const DRAG_N = 1

/**
 * What the crew has to do in a stage, first things first: hold the string before the jaws open, open slowly, the arrivals from
 * where the nose is on (all of them with the nose at the end), what a fed stick asks for, drag on the gauge.
 */
export function toDo({ stage, opening, arrivals, feed, drag, pull }: StageResult, noseM: number | null): Said[] {
  const list: Said[] = []
  for (const end of opening?.holdFirst ?? []) list.push(said(text.doHold, { end: text[end], force: force(pull?.runAway[end === 'exit' ? 'exitN' : 'infeedN'] ?? null) }))
  if (opening !== null) {
    const side = opening.springsByM.exit >= opening.springsByM.infeed ? 'exit' : 'infeed'
    if (opening.springsByM[side] > SPRING_M) list.push(said(text.doSprings, { by: short(opening.springsByM[side]), end: text[side] }))
  }
  const ahead = arrivals.filter(needsHand).filter((arrival) => noseM === null || stage.phase !== 'pull' || arrivalNoseM(arrival) >= noseM - 0.002)
  for (const arrival of ahead) {
    const words = atArrival(arrival)
    if (words !== null) list.push(words)
  }
  if (feed !== null && feed.tipsAtM !== null) list.push(said(text.doTips))
  for (const { place, droopM, leadInM } of feed?.meets ?? []) if (droopM > leadInM) list.push(said(text.doMeets, { place: feedPlaces[place] ?? feedPlaces['support']!, droop: short(droopM) }))
  if (drag !== null && drag.movingN > DRAG_N) list.push(drag.pressurePa === null ? said(text.doDrag, { force: force(drag.movingN) }) : said(text.doGauge, { force: force(drag.movingN), pressure: { kind: 'pressure', value: drag.pressurePa } }))
  return list
}

/** What leads the sentence of the stage: of arrivals the one that needs most, else the first thing. */
export function firstToDo(result: StageResult, noseM: number | null): Said | null {
  const [first] = toDo(result, noseM)
  const hard = result.arrivals.filter((arrival) => (noseM === null || arrivalNoseM(arrival) >= noseM - 0.002) && (arrival.outcome === 'hits' || arrival.outcome === 'lifted'))
  const isHeldFirst = (result.opening?.holdFirst.length ?? 0) > 0 && noseM === null
  const [worst] = hard.toSorted((a, b) => Number(b.outcome === 'hits') - Number(a.outcome === 'hits') || b.droopM - a.droopM)
  // With the nose on its way what comes next leads, not what is worst.
  const leading = noseM === null ? worst : hard[0]
  return (isHeldFirst ? first : leading === undefined ? first : atArrival(leading)) ?? null
}
