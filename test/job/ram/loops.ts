/** The ram to the loops: before its spring, and on it. */
import { axisPlant } from '../../../sim/loops/axis-plant.ts'
import type { JobLoops } from '../../../sim/loops/jobs/job.ts'
import { ramIn } from './groups.ts'
import { RamLoad } from './load.ts'

export const ramLoops: JobLoops = {
  points: () => ['free', 'softest', 'nominal', 'stiffest'],
  stiffened(scenario, factor) {
    const ram = ramIn(scenario)
    const more = { ram: { ...ram, stiffness: ram.stiffness * factor } }
    return { ...scenario, ...more }
  },
  point(scenario, id, force) {
    const { gap, stiffness, damping } = ramIn(scenario)
    const label = id === 'free' ? 'Before the spring' : `On the ${id} spring`
    if (id === 'free') return { label, force: 0, travel: gap / 2, speed: 0, room: 0, contact: null }
    const contact = { stiffness, damping, slow: stiffness, against: stiffness }
    return { label, force, travel: gap + force / stiffness, speed: 0, room: force / 2, contact }
  },
  plant(scenario, { travel, contact }) {
    const { mass, stroke } = ramIn(scenario)
    const { model, add } = axisPlant(scenario.actuator, { mass, stroke, reach: stroke }, travel)
    if (!contact) return model
    const force = { jaw: contact.stiffness, jawSpeed: contact.damping }
    add('jawSpeed', force, -1 / mass)
    return { ...model, nearForce: force }
  },
  limit: () => null,
  pull: (_, { force }) => force,
  setDown() {},
  met: (load, { contact }) => (contact && load instanceof RamLoad && load.state.force === 0 ? ['contact'] : []),
  calm: (scenario) => scenario,
}
