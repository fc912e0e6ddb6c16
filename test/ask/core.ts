/** The compiled core, as workers and command line run studies on it. */
import base64 from 'virtual:core'
import { compiledCore, runnerOn } from '../../sim/index.ts'

export const run = runnerOn(
  compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports),
)
