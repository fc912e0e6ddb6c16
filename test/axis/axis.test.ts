import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lowerTorque, raiseTorque } from '../../sim/axis/kinds/screw.ts'
import { axisOf } from '../../sim/axis/reflect.ts'
import { contactsOf, jawMassOf, travelToContact } from '../../sim/job/grip/geometry.ts'
import { make } from '../scenario/make.ts'

const thread = { lead: 0.005, pitchDiameter: 0.0105, threadFriction: 0.15, flankAngle: Math.PI / 12 }
const lead = fc.double({ min: 0.001, max: 0.02, noNaN: true })
const friction = fc.double({ min: 0, max: 0.3, noNaN: true })

describe('screw axis', () => {
  it('reflects inertia, torque and cogging by the lead', () => {
    const { actuator } = make({ actuator: { transmission: { lead: 0.01 }, motor: { cogging: { amplitude: 0.002 } } } })
    const c = 0.01 / (2 * Math.PI)
    const axis = axisOf(actuator)
    expect(axis.mass).toBeCloseTo(3e-6 / c ** 2 + 0.15, 12)
    expect(axis.linearMass).toBe(0.15)
    expect(axis.forcePerAmpere).toBeCloseTo(0.045 / c, 9)
    expect(axis.coggingForce).toBeCloseTo(0.002 / c, 9)
    expect(axis.coggingPeriod).toBeCloseTo((Math.PI / 6) * c, 15)
  })

  it('without thread friction loses nothing either way', () => {
    const { actuator } = make({ actuator: { transmission: { threadFriction: 0, flankAngle: 0.3 } } })
    expect(axisOf(actuator).raise).toBeCloseTo(0, 12)
    expect(axisOf(actuator).lower).toBeCloseTo(0, 12)
    expect(raiseTorque({ ...thread, threadFriction: 0 })).toBeCloseTo(0.005 / (2 * Math.PI), 15)
  })

  it('is the inclined plane: tan(φ ± λ) with the friction angle of the flanks', () => {
    fc.assert(
      fc.property(lead, friction, fc.double({ min: 0, max: 0.6, noNaN: true }), (l, f, flank) => {
        const t = { ...thread, lead: l, threadFriction: f, flankAngle: flank }
        const climb = Math.atan(l / (Math.PI * t.pitchDiameter))
        const angle = Math.atan(f / Math.cos(flank))
        expect(raiseTorque(t)).toBeCloseTo((t.pitchDiameter / 2) * Math.tan(angle + climb), 12)
        expect(lowerTorque(t)).toBeCloseTo((t.pitchDiameter / 2) * Math.tan(angle - climb), 12)
      }),
    )
  })

  it('locks itself exactly where friction exceeds the climb: the share of friction passes the load', () => {
    fc.assert(
      fc.property(lead, friction, (l, f) => {
        const { actuator } = make({ actuator: { transmission: { lead: l, threadFriction: f, flankAngle: 0 } } })
        const climb = l / (Math.PI * 0.0105)
        fc.pre(Math.abs(f - climb) > 1e-9)
        expect(axisOf(actuator).lower > 1).toBe(f > climb)
      }),
    )
  })

  it('needs more to raise and holds more back, the more friction', () => {
    fc.assert(
      fc.property(lead, friction, friction, (l, f, g) => {
        fc.pre(Math.abs(f - g) > 1e-6)
        const at = (threadFriction: number) => ({ ...thread, lead: l, threadFriction })
        expect(raiseTorque(at(Math.max(f, g)))).toBeGreaterThan(raiseTorque(at(Math.min(f, g))))
        expect(lowerTorque(at(Math.max(f, g)))).toBeGreaterThan(lowerTorque(at(Math.min(f, g))))
      }),
    )
  })
})

describe('rack axis', () => {
  it('reflects by pinion radius over gear ratio and loses what its efficiency says', () => {
    const { actuator } = make({ actuator: { kind: 'rack', transmission: { efficiency: 0.8 } } })
    const c = 0.008 / 5
    const axis = axisOf(actuator)
    expect(axis.mass).toBeCloseTo(3e-6 / c ** 2 + 0.15, 12)
    expect(axis.forcePerAmpere).toBeCloseTo(0.045 / c, 9)
    expect(1 / (1 + axis.raise)).toBeCloseTo(0.8, 12)
    expect(1 - axis.lower).toBeCloseTo(2 - 1 / 0.8, 12)
  })

  it('locks itself below an efficiency of one half', () => {
    const lower = (efficiency: number) =>
      axisOf(make({ actuator: { kind: 'rack', transmission: { efficiency } } }).actuator).lower
    expect(lower(0.49)).toBeGreaterThan(1)
    expect(lower(0.51)).toBeLessThan(1)
  })
})

describe('direct axis', () => {
  it('takes motor force and mass as they are, all of it moving in a straight line', () => {
    const { actuator } = make({ actuator: { kind: 'direct', motor: { movingMass: 0.5, cogging: { amplitude: 2 } } } })
    expect(axisOf(actuator)).toMatchObject({
      mass: 0.65,
      linearMass: 0.65,
      forcePerAmpere: 12,
      raise: 0,
      lower: 0,
      coggingForce: 2,
      coggingPeriod: 0.012,
    })
  })
})

describe('jaws', () => {
  it('mirrored: two contacts, two jaws, half the gap each', () => {
    const scenario = make({ jaws: { layout: 'mirrored' } })
    expect(contactsOf(scenario)).toBe(2)
    expect(jawMassOf(scenario)).toBeCloseTo(0.24, 12)
    expect(travelToContact(scenario)).toBeCloseTo(0.01, 12)
  })

  it('anvil: one contact, one jaw, the whole gap', () => {
    const scenario = make({ jaws: { layout: 'anvil' } })
    expect(contactsOf(scenario)).toBe(1)
    expect(jawMassOf(scenario)).toBeCloseTo(0.12, 12)
    expect(travelToContact(scenario)).toBeCloseTo(0.02, 12)
  })
})
