/** Where the rolls of a web stand in its picture: rolls to one scale, the span between them drawn shortened. */
import { type Scenario, webIn } from '../../../sim/index.ts'
import type { Disc } from './belt.ts'

export interface Sizes {
  /** [px/m] of rolls. */
  scale: number
  line: Disc
  nip: Disc
  gauge: Disc
  idler: Disc
  roll: Disc & { core: number }
}

/** Largest share of the height that the roll takes, and the least radius that still can be seen turning [px]. */
const LARGEST = 0.3
const LEAST = 9
/** Share of the height down to the web, and room under the line's roll for its name [px]. */
const LEVEL = 0.46
const NAMES = 20

export function sizesOf(scenario: Scenario, radius: number, width: number, height: number): Sizes {
  const { roll, line } = webIn(scenario)
  const room = 1.08 * Math.max(roll.radius, radius)
  const scale = Math.min(
    (LARGEST * height) / room,
    (0.17 * width) / Math.max(room, 1.08 * line.radius),
    ((1 - LEVEL) * height - NAMES) / (2 * line.radius),
  )
  const px = (length: number) => Math.max(LEAST, length * scale)
  const [own, first, small] = [px(radius), px(line.radius), Math.max(LEAST, 0.055 * height)]
  const level = LEVEL * height
  const left = 0.06 * width + first
  const right = width - 0.05 * width - own
  const between = (share: number) => left + first + share * (right - own - left - first)
  const rollCore = roll.kind === 'winds' ? roll.coreRadius : 0.35 * roll.radius
  return {
    scale,
    line: { x: left, y: level + first, r: first, side: 1 },
    nip: { x: left, y: level - 0.6 * first, r: 0.6 * first, side: -1 },
    gauge: { x: between(0.34), y: level - 0.07 * height + small, r: small, side: 1 },
    idler: { x: between(0.78), y: level - 0.02 * height - small, r: small, side: -1 },
    roll: { x: right, y: level + own - 0.08 * height, r: own, side: 1, core: Math.min(0.85 * own, px(rollCore)) },
  }
}
