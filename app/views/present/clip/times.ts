/** When the frames of a clip were: the play along the time lens at constant speed, standing at its end. */
import type { TimeLens } from '../../../ui/timeLens.ts'

/** Frames a second. */
export const RATE = 30
/** How long a clip shows the start and the end [s]. */
const START = 0.5
const END = 2.5

/** Simulated time of every frame [s]. */
export function clipTimes({ seconds, toTime }: Pick<TimeLens, 'seconds' | 'toTime'>, rate = RATE): number[] {
  const moving = Math.max(1, Math.round(seconds * rate))
  return [
    ...new Array<number>(Math.round(START * rate)).fill(0),
    ...Array.from({ length: moving }, (_, i) => toTime(i / moving)),
    ...new Array<number>(Math.round(END * rate)).fill(toTime(1)),
  ]
}
