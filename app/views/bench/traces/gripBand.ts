/** What grips the parts of a band. */
export { runBand } from '../../../../sim/index.ts'
export { crew } from '../../../worker/crew.ts'
