import { fetchKept, startKeeping } from './keep.ts'
import { startRunner } from './runner.ts'

/** Brings back what was there, and runs it. Call once. */
export async function startBench(): Promise<void> {
  await fetchKept()
  startKeeping()
  startRunner()
}
