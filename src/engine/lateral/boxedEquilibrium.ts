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
  /** False where rounding kept the search from ending; forces then stay within their bounds, targets may be missed. */
  isSettled: boolean
}

/** Turns of many at once without fewer wrong ones before single turns take over. */
const PATIENCE = 4
/** Shares of the largest force and move under which nothing is wrong. */
const SLACK_RATIO = 1e-9
/** Rounds a place; the search ends in a few, or goes in circles by rounding. */
const MOST_ROUNDS = 40

/**
 * Positions y and forces f = K·y + loads with |f| ≤ bound, y = target where |f| < bound, and f toward the target where it is full.
 *
 * Method: block principal pivoting; after some turns without gain the wrong place of least index alone is turned, which
 *         ends for every positive definite K. The answer is unique.
 * Source: Júdice and Pires 1994 (block pivoting), Murty 1974 (least index); from memory.
 */
export function boxedEquilibrium({ stiffness: K, loads, targets, bounds }: BoxedInput): BoxedResult {
  const n = targets.length
  /** 0 held at its target, ±1 full with a force of that sign. */
  const state = new Array<number>(n).fill(0)
  let fewest = n + 1
  let patience = PATIENCE
  for (let round = 0; ; round += 1) {
    const { positions, forces } = positionsFor(state, { stiffness: K, loads, targets, bounds })
    const slackN = SLACK_RATIO * Math.max(1e-300, ...forces.map(Math.abs))
    const slackM = SLACK_RATIO * Math.max(1e-300, ...positions.map(Math.abs), ...targets.map(Math.abs))
    const wrong = state.flatMap((s, i) => (s === 0 ? Math.abs(forces[i]!) > bounds[i]! + slackN : s * (targets[i]! - positions[i]!) < -slackM) ? [i] : [])
    const isSettled = wrong.length === 0
    if (isSettled || round > MOST_ROUNDS * n) return { positions, forces, isFull: state.map((s) => s !== 0), isSettled }
    const isFewer = wrong.length < fewest
    if (isFewer) [fewest, patience] = [wrong.length, PATIENCE]
    else patience -= 1
    for (const i of patience > 0 ? wrong : wrong.slice(0, 1)) state[i] = state[i] === 0 ? Math.sign(forces[i]!) : 0
  }
}

function positionsFor(state: readonly number[], { stiffness: K, loads, targets, bounds }: BoxedInput): { positions: number[]; forces: number[] } {
  const full = state.flatMap((s, i) => (s === 0 ? [] : [i]))
  const positions = targets.map((target, i) => (state[i] === 0 ? target : 0))
  const right = full.map((i) => state[i]! * bounds[i]! - loads[i]! - positions.reduce((sum, y, j) => sum + K[i]![j]! * y, 0))
  const moved = solveDense(full.map((i) => full.map((j) => K[i]![j]!)), right)
  full.forEach((i, k) => (positions[i] = moved[k]!))
  return { positions, forces: loads.map((load, i) => (state[i] === 0 ? load + positions.reduce((sum, y, j) => sum + K[i]![j]! * y, 0) : state[i]! * bounds[i]!)) }
}
