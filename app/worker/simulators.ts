/** Simulator workers: some are started before anything else is loaded, so that they stand ready when the first grip is asked for. */

/** How many the machine can run beside the page. */
export const simulatorCount = () => Math.min(6, Math.max(2, (navigator.hardwareConcurrency || 2) - 1))

const idle: Worker[] = []

export const newSimulator = () => new Worker(new URL('./simulator.worker.ts', import.meta.url), { type: 'module' })

/** Starts as many as `count`. Call once, first of all. */
export function startEarly(count: number) {
  for (let n = 0; n < count; n++) idle.push(newSimulator())
}

/** A worker that was started early or is left over, or a new one. What one has said before it was taken is lost. */
export const takeSimulator = (): Worker => idle.pop() ?? newSimulator()

/** Keeps a worker that nobody has given a job. */
export function keepSimulator(worker: Worker) {
  idle.push(worker)
}
