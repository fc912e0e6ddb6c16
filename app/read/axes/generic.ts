/** The generic axes, in a file that is fetched when somebody wants to choose one. */
export { axesFor } from '../../../sim/index.ts'
