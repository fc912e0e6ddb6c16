/** The compiled core, as the command line runs it. */
import base64 from 'virtual:core'
import { runnerOn } from '../ask/runner.ts'
import { compiledCore } from '../run/core.ts'

export const core = compiledCore(
  new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports,
)

/** Runs the grips of a study. */
export const run = runnerOn(core)
