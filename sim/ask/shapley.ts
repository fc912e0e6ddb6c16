/**
 * Shares of a total among players that act together, by no order of theirs: each gets the mean, over the orders in which they may be
 * taken away, of what its going changes (Shapley, A value for n-person games, 1953). Every order's changes add up to the total, and so do the means.
 */

import type { Noise } from '../core/noise.ts'
import { seeded } from '../core/noise.ts'

/** What is there with the players of a bit mask taken away; null: then there is nothing that could be told. */
export type Value = (taken: number) => number | null

export interface Shares {
  shares: number[]
  /** Standard error of each where orders were drawn; null: every order was taken. */
  errors: number[] | null
  /** Orders that were counted. */
  orders: number
}

/** Up to so many players every order is taken, which needs 2^n values. */
export const FEW = 6
/** Orders are drawn in pairs, one and its reverse: what two players make together cancels from a pair's error. */
const PAIRS = 6
/** Pairs that may be drawn until so many are of use. */
const DRAWN = 10 * PAIRS

/** Of `count` players, 1 to 30; null where no order gives a value at each of its steps. */
export function shapley(count: number, value: Value, seed = 1): Shares | null {
  return count <= FEW ? allOrders(count, value) : drawnOrders(count, value, seeded(seed))
}

function allOrders(count: number, value: Value): Shares | null {
  const sums = new Array<number>(count).fill(0)
  let orders = 0
  for (const order of permutations(Array.from({ length: count }, (_, player) => player))) {
    const changes = walk(order, value)
    if (!changes) continue
    orders++
    for (let player = 0; player < count; player++) sums[player]! += changes[player]!
  }
  return orders > 0 ? { shares: sums.map((sum) => sum / orders), errors: null, orders } : null
}

function drawnOrders(count: number, value: Value, noise: Noise): Shares | null {
  const pairs: number[][] = []
  for (let n = 0; n < DRAWN && pairs.length < PAIRS; n++) {
    const order = shuffled(count, noise)
    const there = walk(order, value)
    const back = there && walk([...order].reverse(), value)
    if (there && back) pairs.push(there.map((change, player) => (change + back[player]!) / 2))
  }
  const orders = 2 * pairs.length
  if (orders === 0) return null
  const shares = Array.from({ length: count }, (_, player) => meanOf(pairs.map((pair) => pair[player]!)))
  const errors = shares.map((share, player) =>
    pairs.length > 1
      ? Math.sqrt(meanOf(pairs.map((pair) => (pair[player]! - share) ** 2)) / (pairs.length - 1))
      : Number.POSITIVE_INFINITY,
  )
  return { shares, errors, orders }
}

/**
 * What each player's going changes in one order. One whose going would leave nothing to tell waits, and goes as soon as it can; null
 * where one never can.
 */
export function walk(order: readonly number[], value: Value): number[] | null {
  const changes = new Array<number>(order.length).fill(0)
  const waiting = [...order]
  let taken = 0
  let before = value(0)
  while (before !== null && waiting.length > 0) {
    const next = waiting.findIndex((player) => value(taken | (1 << player)) !== null)
    if (next < 0) return null
    const [player] = waiting.splice(next, 1) as [number]
    taken |= 1 << player
    const after = value(taken)!
    changes[player] = before - after
    before = after
  }
  return before === null ? null : changes
}

function* permutations(players: number[], from = 0): Generator<readonly number[]> {
  if (from >= players.length - 1) {
    yield players
    return
  }
  for (let k = from; k < players.length; k++) {
    swap(players, from, k)
    yield* permutations(players, from + 1)
    swap(players, from, k)
  }
}

function shuffled(count: number, noise: Noise): number[] {
  const order = Array.from({ length: count }, (_, player) => player)
  for (let k = count - 1; k > 0; k--) swap(order, k, Math.floor(noise.uniform() * (k + 1)))
  return order
}

function swap(list: number[], a: number, b: number): void {
  const held = list[a]!
  list[a] = list[b]!
  list[b] = held
}

const meanOf = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
