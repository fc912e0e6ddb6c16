/** How long something that is under way will still take. */

/** Time after which an estimate is worth saying [s]. */
const SETTLED = 2

/**
 * "34 %, about 40 s left": of a thing of which the share `done` is done after `elapsed` seconds of real time; without the time left
 * where it is too early to tell.
 */
export function progressText(done: number, elapsed: number): string {
  const share = `${Math.floor(100 * done)} %`
  if (!(done > 0) || elapsed < SETTLED) return share
  return `${share}, about ${durationText((elapsed * (1 - done)) / done)} left`
}

/** A time as people say it: no finer than can be known. */
function durationText(seconds: number): string {
  if (seconds < 10) return `${Math.max(1, Math.round(seconds))} s`
  if (seconds < 95) return `${10 * Math.round(seconds / 10)} s`
  if (seconds < 5700) return `${Math.round(seconds / 60)} min`
  return `${Math.round(seconds / 3600)} h`
}
