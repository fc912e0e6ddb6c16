/**
 * Processor time of this process [s] that a call takes. Unlike the clock on the wall it does not count the time in which
 * somebody else has the processor.
 */
export function processorTime(call: () => unknown): number {
  const before = process.cpuUsage()
  call()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1e6
}
