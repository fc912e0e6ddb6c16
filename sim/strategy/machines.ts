/** The compiled half of the registry of strategies: `index.ts` lists what is said of each. */
import { CurrentClamp } from './current-clamp/machine.ts'
import type { Machine } from './machine.ts'
import { MachineId } from './machine-id.ts'
import { Replay } from './replay.ts'
import { SensedForce } from './sensed-force/machine.ts'
import { ThresholdStop } from './threshold-stop/machine.ts'

export function machineOf(id: MachineId): Machine {
  switch (id) {
    case MachineId.thresholdStop:
      return new ThresholdStop()
    case MachineId.currentClamp:
      return new CurrentClamp()
    case MachineId.replay:
      return new Replay()
    default:
      return new SensedForce()
  }
}
