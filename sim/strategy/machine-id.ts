/** Places of the strategies in the registry of the compiled core (`machines.ts`); a file of its own, as what is said of one carries no core. */
export enum MachineId {
  thresholdStop,
  currentClamp,
  sensedForce,
  replay,
}
