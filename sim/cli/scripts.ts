/** The simulator for scripts and notebooks, as the package hands it out: its public face, and grips on the compiled core. */
import '../others.ts'

export * from '../index.ts'
export { core, run as grip } from './core.ts'
