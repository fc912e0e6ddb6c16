/** Loaded flanks of thread, gear or guide before they slide, where they move an output in a straight line; common practice, no source. */

/** Travel until then [m]. */
export const LOAD_REACH: f64 = 2e-6
/** Damping of that stretch as a time [s], of an output that turns as well. */
export const LOAD_DAMPING: f64 = 2e-4
