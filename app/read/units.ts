/** Units on the page: those of the simulator's sentences. */
export {
  knowsUnit,
  type Quantity,
  quantityUnit,
  type ShownUnit,
  shownUnit,
  type UnitSystem,
} from '../../sim/index.ts'
