/** One loop of a cascade, looked at: poles, stability, response and margins. */

import { searchAngles } from './angles.ts'
import type { Cascade } from './cascade.ts'
import { type Complex, magnitude, rootOf } from './complex.ts'
import { type Margins, marginsOf } from './margins.ts'
import { type LoopId, ownPoles, type ServoLoopId } from './model.ts'
import { gainBorder, MultirateResponse, multiratePoles } from './multirate.ts'
import { type FrequencyResponse, LoopResponse } from './response.ts'
import { type Stability, stabilityOf, withoutIdle } from './stability.ts'

export interface Examined {
  /** Sample period of the loop, and that in whose z plane the poles are [s]. */
  period: number
  polePeriod: number
  /** Closed poles, the largest first, and open ones, without modes that the loop neither sees nor moves. */
  closed: Complex[]
  open: Complex[]
  /** How many such modes there are; they keep what they have. */
  idle: number
  stability: Stability
  /** Of the current loop, where it is not stable with the servo around it: what it is with the servo's command held. */
  byItself: Stability | null
  response: FrequencyResponse
  /** Of the loop gain, whether the loop is stable or not. */
  margins: Margins
}

export const examine = (cascade: Cascade, loop: LoopId): Examined =>
  loop === 'current' ? examineCurrent(cascade) : examineServo(cascade, loop)

const sorted = (poles: readonly Complex[]) => [...poles].sort((p, q) => magnitude(q) - magnitude(p))

function examineServo(cascade: Cascade, loop: ServoLoopId): Examined {
  const model = cascade.loop(loop)
  const own = withoutIdle(ownPoles(cascade.closedPoles(loop), model), ownPoles(model.openPoles, model))
  const response = new LoopResponse(own.closed, own.open)
  const angles = searchAngles(response, [...own.closed, ...own.open])
  return {
    period: model.period,
    polePeriod: model.period,
    closed: sorted(own.closed),
    open: own.open,
    idle: own.idle,
    stability: stabilityOf(own.closed, model.period),
    byItself: null,
    response,
    margins: marginsOf(response, angles, model.period),
  }
}

/** The gain margins are those of the whole: the range of gains over which no pole of one servo period leaves the unit circle. */
function examineCurrent(cascade: Cascade): Examined {
  const model = cascade.currentLoop()
  const polePeriod = model.period * model.count
  const own = withoutIdle(multiratePoles(model), multiratePoles(model, 0))
  const response = new MultirateResponse(model)
  const corners = [...own.closed, ...own.open]
    .filter((pole) => magnitude(pole) > DEAD)
    .map((pole) => rootOf(pole, model.count))
  const margins = marginsOf(response, searchAngles(response, corners), model.period)
  const [upper, lower] = [gainBorder(model, 'up'), gainBorder(model, 'down')]
  const stability = stabilityOf(own.closed, polePeriod)
  return {
    period: model.period,
    polePeriod,
    closed: sorted(own.closed),
    open: own.open,
    idle: own.idle,
    stability,
    byItself: stability === 'stable' ? null : stabilityOf(multiratePoles(cascade.currentLoop(false)), polePeriod),
    response,
    margins: {
      ...margins,
      gainMargin: upper && decibels(upper.factor),
      gainMarginFrequency: upper && (margins.gainMarginFrequency ?? upper.frequency),
      lowerGainMargin: lower && decibels(lower.factor),
    },
  }
}

/** A pole so near z = 0 is gone within a sample. */
const DEAD = 1e-9

const decibels = (factor: number) => 20 * Math.log10(factor)
