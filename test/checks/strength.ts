/** A grip whose share of failures is the closed form of strength against stress. */
import { FRICTIONLESS, IDEAL, scenarioOf } from './support.ts'

/** Force of the clamp at one contact [N]: 12 N/A · 2.5 A on two of them. */
export const FORCE = 15
export const G = 9.80665
export const MU = { mean: 0.3, sd: 0.03 }
const MASS = { sd: 0.03 }

/** What holds the part up, 2·µ·F, is normal, and so is its weight. */
const SPREAD = Math.sqrt((2 * FORCE * MU.sd) ** 2 + (G * MASS.sd) ** 2)
/** A current clamp on an axis without friction; the part hangs still from 0.3 s on, and Φ(−beta) of them slide. */
export const clampFor = (beta: number) =>
  scenarioOf(
    IDEAL,
    {
      actuator: { kind: 'direct', motor: { forceConstant: 12, movingMass: 0.2 } },
      jaws: { layout: 'mirrored', opening: 0.074, stroke: 0.05, friction: { static: MU.mean, sliding: 0.2 } },
      part: { stiffness: 5e4, damping: 2, mass: (2 * MU.mean * FORCE - beta * SPREAD) / G },
      approach: { speed: 0.05, overtravel: 0.01 },
      arm: { gravity: 'across', lift: 0.3, moves: [] },
      servo: { kp: 2000, ki: 0, kd: 60 },
      strategies: { currentClamp: { limit: 2.5 } },
      run: { duration: 0.5 },
      spread: {
        varies: [
          { path: 'jaws.friction.static', law: 'normal', sd: MU.sd },
          { path: 'part.mass', law: 'normal', sd: MASS.sd },
        ],
      },
    },
    { actuator: { transmission: FRICTIONLESS } },
  )
