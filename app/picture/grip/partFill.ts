import type { Fill } from '../paint.ts'
import type { ShapeKind } from './shape.ts'

/** Hatching of each kind of part. */
export const PART_FILL: Record<ShapeKind, Fill> = {
  cup: 'part',
  globe: 'part',
  ball: 'part',
  softBall: 'soft',
  ring: 'iron',
  block: 'soft',
}
