/** Figures of a plant that runs on: over the last half second, and the highest force since the jaws set out. */
import type { Plant } from '../plant/plant.ts'
import { STANDING } from './figures.ts'

/** The span is made of blocks, of which the oldest is forgotten when a new one begins [s]. */
const BLOCK = 0.05
const BLOCKS = 10

export interface LiveFigures {
  /** Mean force of the contacts and its rms about the mean [N], mean current [A], sign changes of the motor side's speed [1/s]. */
  force: number
  ripple: number
  current: number
  reversals: number
  /** Highest force at either contact since the jaws last set out [N]. */
  peak: number
}

/** So many changes of direction a second, with so much ripple on the force, are a hunting loop; common practice, no source. */
const HUNTING = { reversals: 8, ripple: 0.02 }

export const hunts = ({ force, ripple, reversals }: LiveFigures) =>
  reversals >= HUNTING.reversals && ripple >= HUNTING.ripple * force && force > 0

class Block {
  count = 0
  force = 0
  squares = 0
  current = 0
  reversals = 0
}

export class SlidingFigures {
  private readonly perBlock: number
  private readonly period: number
  private readonly blocks: Block[] = [new Block()]
  private direction = 0
  private peak = 0

  /** `period` [s] between two samples. */
  constructor(period: number) {
    this.period = period
    this.perBlock = Math.max(1, Math.round(BLOCK / period))
  }

  sample(plant: Plant): void {
    let block = this.blocks[this.blocks.length - 1]!
    if (block.count >= this.perBlock) {
      block = new Block()
      this.blocks.push(block)
      if (this.blocks.length > BLOCKS) this.blocks.shift()
    }
    const force = 0.5 * (plant.nearForce + plant.farForce)
    block.count++
    block.force += force
    block.squares += force * force
    block.current += plant.winding.current
    const most = plant.nearMost > plant.farMost ? plant.nearMost : plant.farMost
    if (most > this.peak) this.peak = most
    const direction = plant.v > STANDING ? 1 : plant.v < -STANDING ? -1 : 0
    if (direction === 0) return
    if (direction === -this.direction) block.reversals++
    this.direction = direction
  }

  /** The jaws set out: the highest force is counted anew. */
  setOut(): void {
    this.peak = 0
  }

  get now(): LiveFigures {
    const sum = new Block()
    for (const block of this.blocks) {
      sum.count += block.count
      sum.force += block.force
      sum.squares += block.squares
      sum.current += block.current
      sum.reversals += block.reversals
    }
    const count = Math.max(1, sum.count)
    const mean = sum.force / count
    return {
      force: mean,
      ripple: Math.sqrt(Math.max(0, sum.squares / count - mean * mean)),
      current: sum.current / count,
      reversals: sum.reversals / (count * this.period),
      peak: this.peak,
    }
  }
}
