import { State } from '../core/block.ts'

/** Length of the window in which a run counts as settled [s]. */
export const SETTLED: f64 = 0.05
/** Speed below which something counts as standing [m/s]; common practice, no source. */
export const STANDING: f64 = 1e-4

/** What the cycle gathers for the figures of any job. */
export class Sums extends State {
  samples: f64 = 0
  /** Mean and sum of squares about it, in the settled window: of the force [N] and of the current [A]. */
  count: f64 = 0
  force: f64 = 0
  forceSquares: f64 = 0
  current: f64 = 0
  /** There also: squares of the current [A²], and winding and housing at its end [°C]. */
  heating: f64 = 0
  winding: f64 = NaN
  housing: f64 = NaN
  /** Over the whole run: squares of the current [A²], its largest size [A], hottest winding [°C]. */
  squares: f64 = 0
  peakCurrent: f64 = 0
  hottest: f64 = -Infinity
  /** Power that the winding takes from the bus, as its supply feels it, and the highest of it [W]; the latest current [A]. */
  power: f64 = 0
  peakPower: f64 = 0
  latest: f64 = 0
  /** Changes of direction in the window, and the present one. */
  reversals: f64 = 0
  direction: f64 = 0
  /** Travel of the output [m], and cycles by which an open loop's rotor lags its field, at the end of the window. */
  travel: f64 = NaN
  lag: f64 = NaN
  /** From first touch until the force stays within the band about its settled value [s]; NaN: it does not. */
  gripTime: f64 = NaN
}
