/** Places of the jobs in the registry of the compiled core (`loads.ts`); a file of its own, as what is said of a job carries no core. */
export enum LoadId {
  grip,
  free,
  press,
  cap,
  web,
}
