/** What has become of the part in a plant that runs on. */
import type { Plant } from '../plant/plant.ts'
import type { Scenario } from '../scenario/index.ts'

export class Fate {
  /** When the part left the jaws, or stayed behind [s]; null: it did not. */
  lost: number | null = null
  /** The contact at which it broke. */
  crack: 'near' | 'far' | null = null
  /** Contacts whose force has exceeded the mark limit. */
  marked = { near: false, far: false }

  /** Once a period of the current loop, after it; a part that has slid past the pads is lost. */
  see(time: number, plant: Plant, { part, jaws }: Scenario): void {
    if (plant.hanging && !plant.out && plant.slip.distance > jaws.padLength) plant.lose()
    if (plant.out && this.lost === null) this.lost = time
    if (part.markForce !== undefined) {
      if (plant.nearMost > part.markForce) this.marked.near = true
      if (plant.farMost > part.markForce) this.marked.far = true
    }
    if (this.crack === null && !Number.isNaN(plant.crackTime))
      this.crack = plant.farMost > plant.nearMost ? 'far' : 'near'
  }
}
