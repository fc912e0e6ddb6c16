import { startKeeping } from './keep.ts'
import { startRunner } from './runner.ts'

/** Brings back what was there, and runs it. Call once. */
export function startBench() {
  startKeeping()
  startRunner()
}
