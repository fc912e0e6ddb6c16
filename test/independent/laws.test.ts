/** The independent integration must be right by itself before anything is held against it: laws and closed forms. */
import { type Derivative, Outcome, Solver } from 'odex'
import { describe, expect, it } from 'vitest'
import { Contact } from './contact.ts'
import { CurrentLoop, LimitedPi, rounded } from './drive.ts'
import { AxisFriction, bristleRate, frictionLevel } from './friction.ts'
import { integrateGrip } from './grip.ts'
import { HANG, HANGING, Hang, TURN } from './hang.ts'
import { readInput, screwFriction } from './input.ts'
import { Integrator } from './integrate.ts'
import { plain } from './plain.ts'
import { AT, Plant } from './plant.ts'
import { Profile } from './profile.ts'

/** Integrates tightly and returns the end; `see` gets each accepted step, none longer than `longest`. */
function integrate(
  f: Derivative,
  start: number[],
  end: number,
  see: (t: number, y: number[]) => unknown = () => {},
  longest = 0,
) {
  const solver = new Solver(start.length)
  solver.maxStepSize = longest
  solver.relativeTolerance = 1e-9
  solver.absoluteTolerance = 1e-13
  solver.maxSteps = 1e7
  const { outcome, y } = solver.solve(f, 0, start, end, (_n, _old, t, at) => see(t, at))
  if (outcome === Outcome.MaxStepsExceeded) throw new Error('odex: too many steps')
  return y
}

describe('bristle of the axis', () => {
  // Parameters of Canudas de Wit, Olsson, Åström and Lischinsky 1995, with the Stribeck curve of Hess and Soom 1990.
  const friction = {
    coulomb: 1,
    coulombBack: 1,
    breakaway: 1.5,
    stribeckSpeed: 0.001,
    viscous: 0.4,
    viscousBack: 0.4,
    bristleStiffness: 1e5,
  }
  const axis = { ...readInput(plain()).axis, mass: 1 }
  /** A mass of 1 kg on the bristle under a force. */
  const mass =
    (force: (t: number) => number): Derivative =>
    (t, [, v, z]) => {
      const bristle = new AxisFriction({ friction, axis })
      bristle.at(z!, v!)
      return [v!, force(t) - bristle.force, bristle.rate]
    }

  it.each([1e-4, 5e-4, 1e-3, 5e-3, 0.1, -0.02])('slides at %f m/s with g(v) + b v (closed form)', (v) => {
    const [z] = integrate((_t, [z]) => [bristleRate(z!, v, frictionLevel(friction, v) / 1e5)], [0], 1e-3 / Math.abs(v))
    const bristle = new AxisFriction({ friction, axis })
    bristle.at(z!, v)
    const ratio = v / 0.001
    expect(bristle.force).toBeCloseTo(Math.sign(v) * (1 + 0.5 / (1 + ratio * ratio)) + 0.4 * v, 6)
  })

  it('does not creep under a load that goes from 0.3 to 0.9 N and back, ten times (Dupont et al. 2002)', () => {
    const rest = integrate(
      mass((t) => Math.min(0.3, t)),
      [0, 0, 0],
      2,
    )
    const cycled = integrate(
      mass((t) => 0.6 - 0.3 * Math.cos(2 * Math.PI * t)),
      rest,
      10,
    )
    expect(rest[0]).toBeCloseTo(3e-6, 10)
    expect(Math.abs(cycled[0]! - rest[0]!)).toBeLessThan(1e-9)
  })

  it.each([1.2, 1.35, 1.4, 1.44, 1.47])(
    'keeps the shift of a slow load to %f N and back (quadrature of dx = dz/(1 − α z/zmax))',
    (most) => {
      const force = (t: number) => Math.min(t, 200 - t) * (most / 100)
      const [x] = integrate(mass(force), [0, 0, 0], 200)
      const zmax = 1.5e-5
      const steps = 20000
      let shift = 0
      for (let k = 0; k < steps; k++) {
        const z = ((k + 0.5) / steps) * (most / 1e5)
        const u = (z / zmax - 0.9) / 0.1
        const alpha = u > 0 ? 3 * u ** 2 - 2 * u ** 3 : 0
        shift += (1 / (1 - (alpha * z) / zmax) - 1) * (most / 1e5 / steps)
      }
      expect(Math.abs(x! - shift)).toBeLessThan(1e-9 + 0.01 * shift)
    },
  )

  it('may differ by direction', () => {
    const uneven = { ...friction, coulombBack: 3, viscousBack: 5 }
    expect(frictionLevel(uneven, -0.1)).toBeCloseTo(3, 3)
    const bristle = new AxisFriction({ friction: uneven, axis })
    bristle.at(-3e-5, -0.1)
    expect(bristle.force).toBeCloseTo(-3.5, 2)
  })
})

describe('power screw (Shigley, example 8-1; Tr 10 × 2)', () => {
  it.each([
    [{ lead: 0.008, diameter: 0.03, friction: 0.08, flankAngle: 0 }, 6400, 15.93695, -0.465572],
    [{ lead: 0.002, diameter: 0.009, friction: 0.15, flankAngle: Math.PI / 12 }, 500, 0.514209, 0.188184],
  ])('%o', (screw, load, raise, lower) => {
    const torque = screwFriction(screw)
    expect(torque.raise * load).toBeCloseTo(raise, 5)
    expect(torque.lower * load).toBeCloseTo(lower, 5)
    expect((load * screw.lead * (1 + torque.against)) / (2 * Math.PI)).toBeCloseTo(raise, 5)
  })
})

describe('contact', () => {
  const contactOf = (part: object) => new Contact(readInput(plain({ jaws: { padStiffness: 1e9 }, part })))

  /** A mass thrown at 1 m/s onto one contact with the stiffness of whole part K: force K (2s)ⁿ. */
  function thrown(part: { stiffness: number; exponent: number; damping: number }, mass: number, speed: number) {
    const contact = contactOf(part)
    let peak = 0
    let exit = 0
    // hit and return last about three times this
    const unit =
      (mass / part.stiffness) ** (1 / (part.exponent + 1)) / speed ** ((part.exponent - 1) / (part.exponent + 1))
    integrate(
      (_t, [s, v]) => {
        contact.at(s!, v!, 0)
        return [v!, -contact.force / mass]
      },
      [0, speed],
      10 * unit,
      (t, [s, v]) => {
        contact.at(s!, v!, 0)
        peak = Math.max(peak, contact.force)
        exit = v!
        return t === 0 || s! > 0
      },
      unit / 100,
    )
    return { peak, restitution: -exit / speed }
  }

  it.each([
    [0.05, 0.967739, 1.12218],
    [0.3, 0.83287, 1.0583],
    [0.75, 0.662962, 1.03274],
    [3, 0.306897, 1.18275],
  ])(
    'Hunt–Crossley at a·v %f: restitution and peak (phase-plane solution, Marhefka and Orin 1996)',
    (damping, restitution, peak) => {
      // 2λṡ = a ṡ; K (2s)^1.5 = 1e4 s^1.5, as soft against the pad as makes no difference
      const k = 1e4
      const stiffness = k / 2 ** 1.5
      const hit = thrown({ stiffness, exponent: 1.5, damping: damping / 2 }, k, 1)
      expect(hit.restitution).toBeCloseTo(restitution, 3)
      expect(hit.peak / k / peak).toBeCloseTo(1, 2)
    },
  )

  it('Hertz impact: F = 1.143263 m^0.6 k^0.4 v^1.2 (closed form)', () => {
    const k = 1e6
    const { peak } = thrown({ stiffness: k / 2 ** 1.5, exponent: 1.5, damping: 0 }, 0.05, 0.2)
    expect(peak / (1.143263 * 0.05 ** 0.6 * k ** 0.4 * 0.2 ** 1.2)).toBeCloseTo(1, 3)
  })

  it('pad and part in series carry the same force, for any exponent', () => {
    for (const exponent of [1, 1.2, 1.5, 1.8, 2]) {
      const input = readInput(plain({ jaws: { padStiffness: 3e4 }, part: { stiffness: 2e6, exponent } }))
      const contact = new Contact(input)
      contact.at(1e-3, 0, 0)
      const flattening = 2 * (1e-3 - contact.force / 3e4)
      expect((2e6 * flattening ** exponent) / contact.force).toBeCloseTo(1, 9)
    }
  })

  it('relaxes as the standard linear solid: step and creep (closed form)', () => {
    // k∞ = k1 = 10 N/mm, τ 0.5 s
    const contact = contactOf({ stiffness: 2e4, relaxation: { fraction: 0.5, time: 0.5 } })
    const force = (s: number, w: number) => {
      contact.at(s, 0, w)
      return contact
    }
    const half = 0.5e-3
    for (const [time, expected] of [
      [0.1, 18.1873],
      [0.5, 13.6788],
      [1, 11.3534],
      [2.5, 10.0674],
    ] as const) {
      const [w] = integrate((_t, [w]) => [force(half, w!).lossRate], [0], time)
      expect(force(half, w!).force / expected).toBeCloseTo(1, 3)
    }
    // at 10 N the flattening grows so that P − w stays
    for (const [time, expected] of [
      [0.1, 547.581e-6],
      [1, 816.06e-6],
      [5, 996.631e-6],
    ] as const) {
      const squeeze = (w: number) => (10 + w) / 2e4 / 2 + 10 / 1e9
      const [w] = integrate((_t, [w]) => [force(squeeze(w!), w!).lossRate], [0], time)
      expect((2 * squeeze(w!)) / expected).toBeCloseTo(1, 3)
    }
  })

  it('yields at its force and keeps the dent (statics)', () => {
    const contact = new Contact(
      readInput(plain({ jaws: { padStiffness: 1e5 }, part: { stiffness: 1e5, yieldForce: 20 } })),
    )
    contact.at(5e-4, 0, 0)
    expect(contact.force).toBeCloseTo(20, 9)
    // 20 N: 0.2 mm of pad, 0.2 mm of elastic flattening of the whole part; the dent takes the rest of 2·(0.5 − 0.2) mm
    expect(contact.dentNow).toBeCloseTo(4e-4, 12)
    contact.dent = contact.dentNow
    contact.at(4e-4, 0, 0)
    expect(contact.force).toBeCloseTo((4e-4 - 2e-4) / (1 / 1e5 + 0.5 / 1e5), 9)
  })
})

describe('part in the pads', () => {
  const NORMAL = 100
  const hanging = (changes: object = {}) => readInput(plain({ jaws: { padStiffness: 2e4 } }, changes as never))

  /** Shakes a hanging part under 2·50 N; returns the end and the most that friction was used. */
  function hang(
    changes: object,
    pull: (t: number) => { down: number; across: number },
    time: number,
    start?: number[],
  ) {
    const input = hanging(changes)
    const law = new Hang(input)
    let state = start ?? law.start({ along: 0, ...pull(0) }, NORMAL)
    let begin = 0
    let everSlid = law.slides
    while (begin < time) {
      const from = begin
      let reached = 0
      const rates = (t: number, y: number[]) => {
        const dy = new Array<number>(y.length).fill(0)
        law.rates(y, 0, { along: 0, ...pull(from + t) }, NORMAL, dy)
        return dy
      }
      state = integrate(rates, state, time - from, (t, y) => {
        reached = t
        rates(t, y)
        if (t === 0 || !law.settle()) return true
        everSlid ||= law.slides
        return t >= time - from
      })
      begin = from + reached
    }
    return { state, slid: state[HANG.slid]!, everSlid }
  }

  // µΣN = 30 N on 0.5 kg
  const shake = (angle: number) => (t: number) => {
    const a = 90 * Math.sin(2 * Math.PI * 15 * t)
    return { down: a * Math.cos(angle), across: a * Math.sin(angle) }
  }

  it('does not know directions: shaking turned by any angle slides as far', () => {
    const reference = hang({}, shake(0), 0.2)
    expect(reference.slid).toBeGreaterThan(1e-3)
    for (const angle of [0.4, Math.PI / 4, 1.2, 2.5]) {
      const turned = hang({}, shake(angle), 0.2)
      expect(turned.slid / reference.slid).toBeCloseTo(1, 6)
      expect(Math.hypot(turned.state[0]!, turned.state[1]!) / Math.abs(reference.state[0]!)).toBeCloseTo(1, 5)
    }
  })

  it('holds two pulls while their sum stays within one circle (closed form)', () => {
    const both = (across: number) => (t: number) => ({ down: 20, across: Math.min(1, t / 10) * across })
    // 20² + a² = 60²
    const limit = Math.sqrt(60 ** 2 - 20 ** 2)
    expect(hang({}, both(limit * 0.998), 10.2).everSlid).toBe(false)
    expect(hang({}, both(limit * 1.002), 10.2).everSlid).toBe(true)
  })

  it('pulled steadily beyond friction it moves along the pull: sinks with the ratio of the pulls', () => {
    const { state } = hang({}, () => ({ down: 24, across: 70 }), 0.2)
    expect(state[HANG.down]! / state[HANG.across]!).toBeCloseTo(24 / 70, 3)
    // and gains a − µΣN/m
    expect(Math.hypot(state[HANG.downSpeed]!, state[HANG.acrossSpeed]!) / 0.2).toBeCloseTo(74 - 60, 9)
  })

  it('shaken sideways it creeps as if friction were viscous: F/(µN) = (2/π) s K(√(1 − s²)), s = u/√(u² + V²)', () => {
    // Seen from pads that move to and fro at V, a heavy part that creeps at u/V = 0.141510 needs 0.3 µN (elliptic integral).
    const [V, u] = [0.5, 0.5 * 0.14151]
    const law = new Hang(hanging({ jaws: { padStiffness: 1e7 } }))
    law.slides = true
    const dy = new Array<number>(HANGING).fill(0)
    const rates: Derivative = (t, [down, across]) => {
      const y = [0, 0, u, V * Math.cos(2 * Math.PI * 20 * t), down!, across!, 0]
      law.rates(y, 0, { along: 0, down: 0, across: 0 }, NORMAL, dy)
      return [dy[HANG.stretchDown]!, dy[HANG.stretchAcross]!, -0.5 * dy[HANG.downSpeed]!]
    }
    const first = integrate(rates, [0, 0, 0], 0.05)
    const second = integrate(rates, [first[0]!, first[1]!, 0], 0.05)
    expect(second[2]! / 0.05 / (0.3 * NORMAL)).toBeCloseTo(0.3, 3)
  })

  it('slips off centre where (m a)² + (m a e/r)² = (µΣN)², r = 2/3 of the pad radius (limit surface)', () => {
    const part = { centre: { up: 0, across: 0.005 } }
    const limit = 60 / Math.sqrt(1 + (0.005 / (0.01 * (2 / 3))) ** 2)
    const slow = (a: number) => (t: number) => ({ down: Math.min(1, t) * a, across: 0 })
    expect(hang({ part }, slow(limit * 0.995), 1.2).everSlid).toBe(false)
    expect(hang({ part }, slow(limit * 1.005), 1.2).everSlid).toBe(true)
  })

  it('turns as a damped torsional swing about its middle (closed form), and its weight turns it down', () => {
    const part = { centre: { up: 1e-12, across: 0 }, gyration: 0.02 }
    const law = new Hang(hanging({ part }))
    const { stiffness: k, damping: c, radius: r } = law
    const inertia = 0.5 * 0.02 ** 2
    const start = [0, 0, 0, 0, 0, 0, 0, 1e-3, 0, 1e-3]
    const time = 0.05
    const { state } = hang({ part }, () => ({ down: 0, across: 0 }), time, start)
    const decay = (c * r * r) / (2 * inertia)
    const omega = Math.sqrt((k * r * r) / inertia - decay * decay)
    const swing = 1e-3 * Math.exp(-decay * time) * (Math.cos(omega * time) + (decay / omega) * Math.sin(omega * time))
    expect(state[TURN.angle]! / swing).toBeCloseTo(1, 4)
    // heavier on the side of `across`, gravity turns from across towards down: negative
    const heavy = hang({ part: { centre: { up: 0, across: 0.01 } } }, () => ({ down: 80, across: 0 }), 0.05)
    expect(heavy.state[TURN.angle]!).toBeLessThan(-0.01)
  })

  it('turning the pull together with the centre of mass changes nothing', () => {
    const run = (angle: number) => {
      const [down, across] = [0.006 * Math.cos(angle), 0.006 * Math.sin(angle)]
      // a shake at right angles to the offset turns it most
      return hang({ part: { centre: { up: -down, across } } }, shake(angle + Math.PI / 2), 0.15)
    }
    const reference = run(0)
    expect(reference.slid).toBeGreaterThan(1e-4)
    expect(run(0.9).slid / reference.slid).toBeCloseTo(1, 5)
    expect(run(0.9).state[TURN.angle]! / reference.state[TURN.angle]!).toBeCloseTo(1, 5)
  })
})

describe('plant', () => {
  it('keeps its energy where nothing damps: jaws thrown onto the part, through play and back', () => {
    const input = readInput(
      plain({
        actuator: { transmission: { damping: 0, backlash: 1e-4 } },
        part: { exponent: 1.5, stiffness: 1e6 },
        gauge: {},
      }),
    )
    const plant = new Plant(input)
    plant.winding = 'open'
    let state = plant.start()
    state[AT.jaw] = 0.0019
    state[AT.travel] = 0.0019
    state[AT.jawSpeed] = 0.1
    state[AT.speed] = 0.1
    state[AT.shift] = 2e-4
    const energy = plant.energy(0, state)
    const integrator = new Integrator(plant, 1e-8)
    let touched = false
    for (let k = 0; k < 400; k++) {
      state = integrator.run(state, k * 5e-5, (k + 1) * 5e-5, () => {})
      touched ||= plant.nearForce > 1
      expect(plant.energy(0, state) / energy).toBeCloseTo(1, 5)
    }
    expect(touched).toBe(true)
    expect(state[AT.speed]!).toBeLessThan(0)
  })

  it('warms to ΔT = P₀R/(1 − αP₀R) at constant current (closed form)', () => {
    // 2 A in 1 Ω: 4 W over 15 K/W; α 0.00393
    const plant = new Plant(readInput(plain()))
    const state = plant.start()
    state[AT.current] = 2
    state[AT.winding] = 25 + 78.51348
    state[AT.housing] = 25 + (78.51348 * 10) / 15
    const rates = plant.derivative(0, state)
    expect(rates[AT.winding]!).toBeCloseTo(0, 6)
    expect(rates[AT.housing]!).toBeCloseTo(0, 6)
  })
})

describe('drive', () => {
  it.each([
    [1 / 4, 0],
    [1 / 3, 1 / 27],
    [1 / 2, 1 / 4],
  ])('current loop at β = ωT = %f overshoots by %f (poles of z² − z + β, exact)', (beta, overshoot) => {
    const T = 5e-5
    const [R, L] = [1, 0.001]
    const input = readInput(plain({ drive: { currentRate: 1 / T, currentBandwidth: beta / T, busVoltage: 1000 } }))
    // Trapezoidal integral: its zero lies a trifle beside the pole, so the gains of the exact cancellation differ by T R/2L.
    const loop = new CurrentLoop(input)
    const decay = Math.exp((-R / L) * T)
    let current = 0
    let voltage = 0
    let highest = 0
    for (let k = 0; k < 200; k++) {
      const next = loop.take(1, current, 0)
      current = decay * current + ((1 - decay) / R) * voltage
      voltage = next
      highest = Math.max(highest, current)
    }
    expect(current).toBeCloseTo(1, 6)
    expect(Math.abs(highest - 1 - overshoot)).toBeLessThan(2e-3)
  })

  it('the integral rests at the limit: overshoot 2.984 % at 11.418 s (conditional integration on 1/s, K 1, Ti 1, |u| ≤ 0.1)', () => {
    const dt = 1e-4
    const pi = new LimitedPi(1, 1, dt)
    let y = 0
    let peak = { value: 0, time: 0 }
    for (let k = 0; k < 2e5; k++) {
      y += dt * pi.take(1 - y, 0.1)
      if (y > peak.value) peak = { value: y, time: (k + 1) * dt }
    }
    expect(peak.value - 1).toBeCloseTo(0.02984, 3)
    expect(peak.time / 11.418).toBeCloseTo(1, 2)
  })

  it('rounds to the nearest step, half up, and not at all without one', () => {
    expect([0.24, 0.25, -0.25, -0.26].map((value) => rounded(value, 0.5))).toEqual([0, 0.5, 0, -0.5])
    expect(rounded(0.123, 0)).toBe(0.123)
  })

  it.each([
    [0.05, 0.4, 0.2],
    [0.02, 0.256155, 0.156155],
    [0.01, 0.2, 0.1],
    [0.005, 0.15874, 0.0629961],
    [0.001, 0.0928318, 0.0215443],
  ])('S-curve over %f m: %f s, top speed %f m/s (closed form; v 0.2, a 2, j 40)', (way, duration, top) => {
    const profile = new Profile({ acceleration: 2, jerk: 40 }, [{ way, speed: 0.2, last: 0 }])
    expect(profile.duration).toBeCloseTo(duration, 5)
    expect(profile.at(duration / 2).speed).toBeCloseTo(top, 5)
    expect(profile.at(duration * 2)).toEqual({
      travel: expect.closeTo(way, 9),
      speed: expect.closeTo(0, 9),
      acceleration: 0,
    })
  })

  it('creeps from the opening on that the zone names', () => {
    const profile = new Profile({ acceleration: 2, jerk: 40 }, [
      { way: 0.05, speed: 0.2, last: 0.02 },
      { way: 0.01, speed: 0.02, last: 0 },
    ])
    let time = 0
    while (profile.at(time).travel < 0.05) time += 1e-5
    expect(profile.at(time).speed).toBeCloseTo(0.02, 5)
    expect(profile.at(profile.duration).travel).toBeCloseTo(0.06, 9)
  })
})

describe('whole grip', () => {
  it.each(['mirrored', 'anvil'])(
    'a clamp without friction presses with K I shared by the contacts (statics), %s',
    (layout) => {
      const { settledForce } = integrateGrip(
        plain({ jaws: { layout }, part: { damping: 1 }, run: { duration: 1.2 } }),
        'current-clamp',
      )
      expect(settledForce! / (layout === 'mirrored' ? 12.5 : 25)).toBeCloseTo(1, 3)
    },
  )

  it('the force loop reaches its target without friction', () => {
    const { settledForce, peakForce } = integrateGrip(
      plain({ part: { damping: 1 }, run: { duration: 1.3 } }),
      'sensed-force',
    )
    expect(settledForce! / 10).toBeCloseTo(1, 3)
    expect(peakForce).toBeLessThan(12)
  })

  it('a part gripped off its centre hangs turned by its weight on the twist of the pads (statics)', () => {
    const part = { mass: 0.3, centre: { up: 0, across: 0.004 }, damping: 1 }
    const scenario = plain({ part, arm: { gravity: 'across' } })
    const { turned, slipDistance } = integrateGrip(scenario, 'current-clamp')
    // k r² φ = m g e; shear of both pads 2/3 of their stiffness, at 2/3 of their radius
    const twist = (2 / 3) * 1e5 * ((2 / 3) * 0.01) ** 2
    expect(turned / ((-0.3 * 9.80665 * 0.004) / twist)).toBeCloseTo(1, 3)
    expect(slipDistance).toBeLessThan(1e-9)
  })

  it('reads both versions of the format', () => {
    const second = plain() as Record<string, Record<string, object>>
    const { sensors, ...rest } = second
    const { encoder, gauge } = sensors as unknown as { encoder: { resolution: number }; gauge: object }
    const first = {
      ...rest,
      servo: { ...second.servo, encoderResolution: encoder.resolution },
      strategies: { ...second.strategies, sensedForce: { ...second.strategies!.sensedForce, sensor: gauge } },
    }
    expect(readInput(first)).toEqual(readInput(second))
  })

  it('refuses what it leaves out', () => {
    expect(() => integrateGrip(plain({ drive: { currentNoise: 0.001 } }), 'current-clamp')).toThrow('Noise')
    expect(() => integrateGrip(plain({ run: { cycle: 2 } }), 'current-clamp')).toThrow('repeats')
    expect(() => integrateGrip(plain({ servo: { rate: 3000 } }), 'current-clamp')).toThrow('divide')
  })
})
