import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Bench } from '../../sim/cycle/bench.ts'
import { strategyOf, travelToContact } from '../../sim/index.ts'
import type { GripLoad } from '../../sim/job/grip/load.ts'
import { modelOf } from '../../sim/model/model.ts'
import { FRICTIONLESS, IDEAL, scenarioOf } from './support.ts'

/**
 * Without drive, arm and gravity the mechanical energy of motor side, jaws, part, springs and bristles never grows (law of
 * mechanics; semi-implicit Euler keeps a nearby energy, so the bound allows the step's share of it).
 */
const SHARE = 0.03
const REFINE = 8

const log = (from: number, to: number) =>
  fc.double({ min: Math.log(from), max: Math.log(to), noNaN: true }).map((value) => Math.exp(value))

const plants = fc.record({
  layout: fc.constantFrom('mirrored', 'anvil'),
  exponent: fc.constantFrom(1, 1.5),
  movingMass: log(0.05, 20),
  jaw: log(0.02, 1),
  part: log(0.01, 2),
  transmission: log(1e5, 1e7),
  damping: log(1, 1000),
  pad: log(1e4, 1e6),
  stiffness: log(1e4, 1e6),
  lambda: fc.double({ min: 0, max: 3, noNaN: true }),
  coulomb: fc.double({ min: 0, max: 10, noNaN: true }),
  backlash: fc.constantFrom(0, 2e-5, 1e-4),
  speed: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
})

it('energy never grows in 500 random plants without drive', () => {
  fc.assert(
    fc.property(plants, (p) => {
      const stiffness = p.exponent === 1 ? p.stiffness : p.stiffness * 30
      const scenario = scenarioOf(IDEAL, {
        actuator: {
          kind: 'direct',
          motor: { movingMass: p.movingMass },
          transmission: {
            ...FRICTIONLESS,
            carriageMass: 0,
            coulomb: p.coulomb,
            breakaway: 1.3 * p.coulomb,
            viscous: 2,
            bristleStiffness: 1e5,
            stiffness: p.transmission,
            damping: p.damping,
            backlash: p.backlash,
          },
        },
        jaws: { layout: p.layout, mass: p.jaw, padStiffness: p.pad, opening: 0.0722 },
        part: { mass: p.part, stiffness, exponent: p.exponent, damping: p.lambda },
      })
      const { bench } = modelOf(scenario, strategyOf('current-clamp'))
      bench.axis.setStep(5e-5 / (5 * REFINE), 5 * REFINE)
      bench.load.setStep(5e-5 / (5 * REFINE))
      bench.settle()
      bench.axis.state.motorSpeed = p.speed
      bench.axis.state.speed = p.speed
      const energy = energyOf(bench, p, stiffness, travelToContact(scenario))
      const start = energy()
      let highest = 0
      for (let n = 0; n < 600; n++) {
        bench.load.begin(n * 5e-5, bench.arm, true)
        bench.axis.advance(bench.load, n * 5e-5, 0, false, 0, 0)
        highest = Math.max(highest, energy())
      }
      expect(highest).toBeLessThanOrEqual(start * (1 + SHARE))
      expect(energy()).toBeLessThan(start)
    }),
    { numRuns: 500, seed: 20261125 },
  )
})

type Parameters = typeof plants extends fc.Arbitrary<infer T> ? T : never

/** All that is stored and moves [J]; springs from the geometry, so that no inner state is asked but the bristle. */
function energyOf({ axis, load }: Bench, p: Parameters, stiffness: number, gap: number) {
  const { near, far, state: part } = load as GripLoad
  const jaws = (p.layout === 'mirrored' ? 2 : 1) * p.jaw
  // A linear part and its pad are one spring; the flattening of a rounded part has no closed form and is asked for.
  const flattening = (squeeze: number, { state: { flattening: e } }: GripLoad['near']) =>
    p.exponent === 1 ? Math.max(0, (p.pad * squeeze) / (stiffness + p.pad / 2)) : e
  const side = (e: number) => {
    const force = stiffness * (p.exponent === 1 ? e : e * Math.sqrt(e))
    const part = p.exponent === 1 ? (stiffness * e * e) / 4 : (stiffness * e * e * Math.sqrt(e)) / 5
    return part + (force * force) / (2 * p.pad)
  }
  return () => {
    const { motorTravel, motorSpeed, travel, speed } = axis.state
    const stretch = Math.max(0, Math.abs(motorTravel - travel) - p.backlash / 2)
    return (
      0.5 * p.movingMass * motorSpeed ** 2 +
      0.5 * jaws * speed ** 2 +
      0.5 * p.part * part.shiftSpeed ** 2 +
      0.5 * p.transmission * stretch ** 2 +
      0.5 * 1e5 * axis.friction.state.bristle ** 2 +
      side(flattening(travel - gap - part.shift, near)) +
      side(flattening(p.layout === 'mirrored' ? travel - gap + part.shift : part.shift, far))
    )
  }
}
