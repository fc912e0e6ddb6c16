/** Figures as a person reads them: the simulator's sentences and the page write them alike. */
export { formatFigure, formatPlain, NO_FIGURE, withUnit } from '../../sim/index.ts'
