/** Units on the page: those of the simulator's sentences. */
export {
  knowsUnit,
  type Quantity,
  quantityUnit,
  shownUnit,
  type UnitSystem,
} from '../../sim/index.ts'
