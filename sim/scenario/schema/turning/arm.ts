/** A head that turns stands still: what would shake it along a straight line does nothing to its angle, so nothing of it can be given. */
import Type from 'typebox'
import { choice, group } from '../../quantity.ts'
import { move } from '../arm.ts'

export const standingArm = group('Arm', {
  gravity: choice('Gravity', ['none'], ['None'], 'None: weight neither turns a spindle on nor holds it back.'),
  lift: Type.Null({ title: 'Lift', default: null }),
  moves: Type.Array(move, { title: 'Moves', default: [], maxItems: 0 }),
})
