/** Elastic places that are held where they should be, each by no more than its own force. */
import { solveDense } from './solveDense.ts'

export interface BoxedInput {
  /** Force needed at place i for a unit move of place j; symmetric, positive definite. */
  stiffness: readonly (readonly number[])[]
  /** Force needed at each place with all of them at 0. */
  loads: readonly number[]
  /** Where each holder wants its place. */
  targets: readonly number[]
  /** Largest force of each holder either way, > 0. */
  bounds: readonly number[]
}

export interface BoxedResult {
  positions: number[]
  forces: number[]
  isFull: boolean[]
  /** False where ties kept the search from ending; forces then stay within their bounds, targets may be missed. */
  isSettled: boolean
}

/** Changes a place; rows of guides take one or two. */
const MOST_CHANGES = 20
/** Shares of the largest force and move under which nothing is wrong. */
const SLACK_RATIO = 1e-8

/** Where a change is due is read off a straight line; steps shorter than this are the change just made. */
const SAME_SHARE = 1e-12

/**
 * Positions y and forces f = K·y + loads with |f| ≤ bound, y = target where |f| < bound, and f toward the target where it is full.
 *
 * Method: targets and loads grow from nothing to all. On the way everything is linear in their share until a holder is full, or one
 *         that was full gets its place back; that one changes sides and the way goes on. For a positive definite K the way
 *         is the only one, and so is its end: path dependence there is none.
 * Cost:   two dense solves a change, one or two changes a place that ends up full.
 * Source: parametric principal pivoting of a bounded linear complementarity problem; derived.
 */
export function boxedEquilibrium(input: BoxedInput): BoxedResult {
  const { targets, bounds } = input
  const n = targets.length
  /** 0 held at its target, ±1 full with a force of that sign. */
  const state = new Array<number>(n).fill(0)
  let share = 0
  for (let change = 0; change <= MOST_CHANGES * n; change += 1) {
    const line = lineOf(state, input)
    const due = firstDue(line, state, input, share)
    if (due === null) break
    share = due.share
    state[due.index] = state[due.index] === 0 ? Math.sign(line.force(due.index, share)) : 0
  }
  const end = lineOf(state, input)
  const positions = targets.map((_, i) => end.position(i, 1))
  const forces = targets.map((_, i) => end.force(i, 1))
  const slackN = SLACK_RATIO * Math.max(...forces.map(Math.abs), 0)
  const slackM = SLACK_RATIO * Math.max(...positions.map(Math.abs), ...targets.map(Math.abs), 0)
  const isSettled = state.every((s, i) => (s === 0 ? Math.abs(forces[i]!) <= bounds[i]! + slackN : s * (targets[i]! - positions[i]!) >= -slackM))
  return { positions, forces, isFull: state.map((s) => s !== 0), isSettled }
}

/** Positions and forces as straight lines of the share of targets and loads, for one choice of who is full. */
interface Line {
  position: (index: number, share: number) => number
  force: (index: number, share: number) => number
  positionRate: (index: number) => number
  forceRate: (index: number) => number
}

function lineOf(state: readonly number[], { stiffness: K, loads, targets, bounds }: BoxedInput): Line {
  const full = state.flatMap((s, i) => (s === 0 ? [] : [i]))
  const matrix = full.map((i) => full.map((j) => K[i]![j]!))
  const held = targets.map((target, i) => (state[i] === 0 ? target : 0))
  const times = (i: number, y: readonly number[]): number => y.reduce((sum, one, j) => sum + K[i]![j]! * one, 0)
  const spread = (from: readonly number[], solved: readonly number[]): number[] => {
    const all = [...from]
    full.forEach((i, k) => (all[i] = solved[k]!))
    return all
  }
  const rate = spread(held, solveDense(matrix, full.map((i) => 0 - loads[i]! - times(i, held))))
  const start = spread(targets.map(() => 0), solveDense(matrix, full.map((i) => state[i]! * bounds[i]!)))
  const forceRates = targets.map((_, i) => (state[i] === 0 ? loads[i]! + times(i, rate) : 0))
  const forceStarts = targets.map((_, i) => (state[i] === 0 ? times(i, start) : state[i]! * bounds[i]!))
  return {
    position: (i, share) => start[i]! + share * rate[i]!,
    force: (i, share) => forceStarts[i]! + share * forceRates[i]!,
    positionRate: (i) => rate[i]!,
    forceRate: (i) => forceRates[i]!,
  }
}

/** The holder whose turn comes next on the way to the whole, and at what share; null where none does. */
function firstDue(line: Line, state: readonly number[], { targets, bounds }: BoxedInput, from: number): { index: number; share: number } | null {
  let first: { index: number; share: number } | null = null
  state.forEach((s, index) => {
    // What is left before it changes, and how fast that goes.
    const sign = s === 0 ? Math.sign(line.forceRate(index)) : s
    const left = s === 0 ? bounds[index]! - sign * line.force(index, from) : sign * (from * targets[index]! - line.position(index, from))
    const loss = s === 0 ? sign * line.forceRate(index) : sign * (line.positionRate(index) - targets[index]!)
    if (!(loss > 0)) return
    const share = from + Math.max(0, left) / loss
    if (share < 1 - SAME_SHARE && (first === null || share < first.share)) first = { index, share }
  })
  return first
}
