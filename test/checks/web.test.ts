/** A web against closed forms and published statements: the span, the draw, the roll, ramps, what is out of round. */
import { describe, expect, it } from 'vitest'
import { startInertia, webStiffness } from '../../sim/job/web/fill.ts'
import { drawFor, timeConstant } from '../../sim/job/web/window.ts'
import { IDEAL, meanBetween, pulled, Span, webOf } from '../job/web/support.ts'

/** Polyester, 12 µm × 1 m, E 4.4 GPa; radius of the roll in metres. */
const PET = { stiffness: 52_800, length: 5, radius: 0.1, damping: 0 }

const steady = (speed: number) => () => speed

describe('the span', () => {
  // Closed form; a converting trade’s column on draw zones (Walker) prints 1.5 %, the linear form.
  it('leaves with the strain that draw and entry make, (v₂/v₁)(1 + ε₁) − 1', () => {
    const span = new Span(100, { ...PET, entry: 0.005 })
    const tension = span.turn(2, steady(1010))
    expect(tension / PET.stiffness).toBeCloseTo(0.01505, 9)
    expect(Math.abs(tension / PET.stiffness - 0.015)).toBeLessThan(1e-4) // the printed, linear one
  })

  // E·A·δ and its answer within L/v, by the differential equation of Shelton 1986 (from memory) solved for small strain; integrated apart.
  it('answers a step of the draw in the time L/v: 20.779, 33.383, 45.662, 50.177 N at 0.5, 1, 2, 3 of it', () => {
    const span = new Span(2, PET)
    const at = [1.25, 2.5, 5, 7.5].map((time) => span.turn(time, steady(2.002 / 0.1)))
    for (const [n, expected] of [20.779, 33.383, 45.662, 50.177].entries())
      expect(Math.abs(at[n]! / expected - 1)).toBeLessThan(1e-3)
    expect(Math.abs(span.turn(60, steady(20.02)) / 52.8 - 1)).toBeLessThan(1e-4)
  })

  // Klassen, notes on span models: published statements.
  it('is longer without more tension, asks for a ratio of speeds and not for a difference', () => {
    const ratio = (length: number, speed: number, rim: number) =>
      new Span(speed, { ...PET, length }).turn(60 * (length / speed), steady(rim / 0.1))
    expect(ratio(2, 2, 2.002) / ratio(0.5, 2, 2.002)).toBeCloseTo(1, 9)
    expect(ratio(0.5, 1, 1.001) / ratio(0.5, 2, 2.002)).toBeCloseTo(1, 9)
    expect(ratio(0.5, 1, 1.002) / ratio(0.5, 2, 2.002)).toBeCloseTo(2, 2) // to first order in the strain
  })

  it('has a tension for each metre of width that does not know the width', () => {
    const tension = (width: number) => webStiffness(webOf({ web: { width } })) / width
    expect(tension(0.1)).toBeCloseTo(tension(1.7), 6)
    expect(webStiffness(webOf({ web: { width: 1, thickness: 70e-6, modulus: 4e9 } }))).toBeCloseTo(280_000, 6)
  })

  it('answers a swing of the draw with E·A/√(1 + (ωτ)²), late by atan ωτ (closed form)', () => {
    const omega = 0.4 // ωτ = 1
    const span = new Span(2, PET)
    const swing = (time: number) => 20 * (1 + 1e-3 + 2e-4 * Math.sin(omega * time))
    span.turn(40, swing)
    let [sine, cosine, count] = [0, 0, 0]
    const period = (2 * Math.PI) / omega
    span.turn(span.time + 2 * period, swing, (tension, time) => {
      sine += tension * Math.sin(omega * time)
      cosine += tension * Math.cos(omega * time)
      count++
    })
    const [inPhase, across] = [(2 * sine) / count, (2 * cosine) / count]
    expect(Math.abs(Math.hypot(inPhase, across) / (52_800 * 2e-4) - Math.SQRT1_2)).toBeLessThan(2e-3)
    expect(Math.abs(Math.atan2(across, inPhase) + Math.PI / 4)).toBeLessThan(3e-3)
  })

  it('lets an entry strain through in the time L/v', () => {
    const span = new Span(2, { ...PET, entry: 1e-3 })
    expect(Math.abs(span.turn(2.5, steady(20)) / (52.8 * (1 - Math.exp(-1))) - 1)).toBeLessThan(2e-3)
    expect(Math.abs(span.turn(40, steady(20)) / 52.8 - 1)).toBeLessThan(1e-3)
  })

  it('at standstill is a spring of E·A/L, and slack carries nothing', () => {
    const span = new Span(0, PET, -0.01)
    expect(span.turn(0.05, steady(1))).toBe(0) // 5 mm of 10 mm taken up
    const tension = span.turn(0.15, steady(1)) // 5 mm drawn
    expect(Math.abs(tension / ((52_800 * 0.005) / (5 - 0.005)) - 1)).toBeLessThan(1e-3)
    expect(span.turn(1, steady(0))).toBe(span.turn(2, steady(0)))
  })

  it('torn carries nothing ever after', () => {
    const span = new Span(0, { ...PET, tears: 30 })
    expect(span.turn(0.1, steady(1))).toBe(0)
    expect(span.load.state.tornAt).toBeGreaterThan(30)
    expect(span.turn(1, steady(-1))).toBe(0)
    expect(span.turn(3, steady(5))).toBe(0)
  })
})

/**
 * Two spans one behind the other, each the law of the load: the strain that leaves the first one comes into the second. Both begin with
 * 26.4 N. Tells the change of tension in either [N] at multiples of L/v.
 */
function transferred(middle: number, entry: number, times: readonly number[]) {
  const strain = 5e-4
  const drawn = (PET.length * strain) / (1 + strain)
  const first = new Span(2, { ...PET, entry: strain + entry }, drawn)
  const second = new Span(2 * middle, { ...PET, entry: strain }, drawn)
  const before = PET.stiffness * strain
  return times.map((time) => {
    const up = first.turn(2.5 * time, steady(20 * middle), (_, now) => {
      const out = first.load.state.drawn
      second.load.entry = out / (PET.length - out)
      second.load.settle()
      second.turn(now, steady(20))
    })
    return { up: up - before, down: second.load.state.tension - before }
  })
}

describe('two spans one behind the other', () => {
  // Closed form for small strain: +E·A·δ(1 − e^(−t/τ)) before the roll, −E·A·δ·(t/τ)·e^(−t/τ) behind it; a model in which spans know nothing
  // of each other has a lasting −E·A·δ there. Second orders of the strain are 2e-3.
  it('hand a change of the middle roll’s speed on: behind it the tension dips by E·A·δ/e and comes back', () => {
    const [half, one, two, late] = transferred(1.001, 0, [0.5, 1, 2, 12])
    for (const [at, t] of [
      [half!, 0.5],
      [one!, 1],
      [two!, 2],
    ] as const) {
      expect(Math.abs(at.up / (52.8 * (1 - Math.exp(-t))) - 1)).toBeLessThan(3e-3)
      expect(Math.abs(at.down / (-52.8 * t * Math.exp(-t)) - 1)).toBeLessThan(3e-3)
    }
    expect(Math.abs(one!.down / -19.424 - 1)).toBeLessThan(3e-3)
    expect(Math.abs(late!.down)).toBeLessThan(0.02)
  })

  it('let an entry strain through as 1 − (1 + t/τ)·e^(−t/τ): 0.264241, 0.593994, 0.800852 at 1, 2, 3 of L/v', () => {
    const shares = transferred(1, 2e-4, [1, 2, 3]).map(({ down }) => down / (52_800 * 2e-4))
    for (const [n, expected] of [0.264241, 0.593994, 0.800852].entries())
      expect(Math.abs(shares[n]! / expected - 1)).toBeLessThan(2e-3)
  })
})

describe('the roll', () => {
  const wound = webOf({
    web: { width: 1, thickness: 70e-6, density: 800 },
    roll: { kind: 'winds', radius: 0.5, coreRadius: 0.05, inertia: 1e-7 },
    idlers: { mass: 0.001 },
  })

  it('weighs on the axis with ½πρw(R⁴ − r⁴): 78.532 kg·m² (closed form)', () => {
    expect(Math.abs(startInertia(wound) / 78.532 - 1)).toBeLessThan(1e-5)
  })

  it('grows by h·v/(2πR) a second, and has π(R² − r²)/h on it (closed form)', () => {
    const growth = 70e-6 / Math.PI
    const span = new Span(5, { ...PET, radius: 0.5, growth, perRadius: 1256.637, inertia: 78.532 })
    const turned = (time: number) => 5 / Math.sqrt(0.25 + growth * 5 * time)
    span.turn(20, turned)
    const { radius, wound: length, inertia } = span.load.state
    expect(Math.abs((radius - 0.5) / 20 / 0.11141e-3 - 1)).toBeLessThan(3e-3) // 0.4 % smaller at the end, where R has grown
    expect((Math.PI * (radius ** 2 - 0.25)) / 70e-6).toBeCloseTo(length, 3)
    expect(inertia).toBeCloseTo(78.532 + 1256.637 * (radius ** 4 - 0.5 ** 4), 6)
    // From the core of 0.05 m on: 11 107.8 m, and half of it at a radius of 0.355317 m.
    expect((Math.PI * (0.5 ** 2 - 0.05 ** 2)) / 70e-6).toBeCloseTo(11107.8, 1)
    expect(Math.sqrt((0.5 ** 2 + 0.05 ** 2) / 2)).toBeCloseTo(0.355317, 6)
  })

  it('takes no torque for web that brings its own momentum: J·dω/dt = T·R − M (closed form)', () => {
    // A roll that winds at constant speed without web tension needs none: a law d(Jω)/dt would ask for ρ·w·h·v²·R = 0.7 N·m.
    const scenario = webOf(IDEAL, {
      web: { width: 1, thickness: 70e-6, density: 800, slack: 0.001, modulus: 4e9 },
      roll: { kind: 'winds', radius: 0.5, coreRadius: 0.05, inertia: 0.001 },
      span: { length: 1 },
      line: { ramps: [{ start: 1, speed: 5, acceleration: 10, jerk: 200 }] },
      follow: { inertia: 1, radius: 'wound' },
      servo: { currentLimit: 100, kp: 2000, kd: 500 },
      actuator: { motor: { torqueConstant: 40, inertia: 1 }, transmission: { stiffness: 5e6, damping: 5000 } },
      approach: { speed: 0.05 },
      drive: { busVoltage: 1900 },
      strategies: { currentClamp: { limit: 2.5 } },
      run: { duration: 4 },
    })
    const { traces, result } = pulled(scenario)
    expect(result.verdict).toBe('taut')
    const current = meanBetween(traces, 'current', 3, 4)
    const torque = 40 * current
    const pull = meanBetween(traces, 'tension', 3, 4)
    const radius = meanBetween(traces, 'radius', 3, 4)
    // In steady winding ω falls by dR/dt, which takes J·dω/dt = −J·v·dR/dt/R² out of the torque.
    const slowing = ((startInertia(scenario) + 1) * 5 * ((70e-6 * 5) / (2 * Math.PI * radius))) / radius ** 2
    expect(Math.abs(torque - (pull * radius - slowing))).toBeLessThan(0.07) // a tenth of the 0.7 N·m
  })
})

describe('held by torque', () => {
  const base = webOf(IDEAL)

  it('pulls at rest with K·I/R', () => {
    const { result } = pulled(base)
    expect(Math.abs(result.metrics.settledTension! / 50 - 1)).toBeLessThan(2e-3)
  })

  it('loses J·a/R² in a ramp where the inertia is not made up for, and nothing where it is (closed form)', () => {
    const line = { ramps: [{ start: 1.2, speed: 1, acceleration: 0.4, jerk: 4 }] }
    const run = { duration: 3.4 }
    const bare = pulled(webOf(IDEAL, { line, run, follow: { inertia: 0 } }))
    const made = pulled(webOf(IDEAL, { line, run, follow: { inertia: 1 } }))
    const inertia = startInertia(base) + 0.001
    const before = meanBetween(bare.traces, 'tension', 1, 1.19)
    const during = meanBetween(bare.traces, 'tension', 2.2, 2.8)
    expect(Math.abs((before - during) / ((inertia * 0.4) / 0.01) - 1)).toBeLessThan(0.01)
    expect(Math.abs(meanBetween(made.traces, 'tension', 2.2, 2.8) - before)).toBeLessThan(0.01 * (before - during))
    expect(made.result.verdict).toBe('taut')
  })

  it('keeps its tension whatever the line’s speed is, with the draw that it asks for', () => {
    const at = (speed: number) =>
      pulled(
        webOf(IDEAL, {
          line: { ramps: [{ start: 1, speed, acceleration: 4, jerk: 100 }] },
          span: { length: 0.5 },
          window: { from: 2.5 },
          run: { duration: 4 },
        }),
      ).result.metrics
    for (const speed of [0.5, 2]) {
      const { meanTension, draw, timeConstant: lag } = at(speed)
      expect(Math.abs(meanTension! / 50 - 1)).toBeLessThan(2e-3)
      expect(Math.abs(draw! / drawFor(base, meanTension!) - 1)).toBeLessThan(0.02) // what the ramp has left to draw
      expect(lag).toBe(0.5 / speed)
      expect(timeConstant(base, speed)).toBe(2 / speed)
    }
  })

  it('out of round swings by e/R where the roll turns slowly (closed form)', () => {
    const { traces } = pulled(
      webOf(IDEAL, {
        roll: { runout: 0.0002, inertia: 0.002 },
        line: { ramps: [{ start: 1, speed: 0.1, acceleration: 0.2, jerk: 4 }] },
        run: { duration: 9 },
      }),
    )
    const rows = [...traces.time.keys()].filter((n) => traces.time[n]! > 2)
    const tension = rows.map((n) => (traces as unknown as Record<string, Float64Array>).tension![n]!)
    const swing = (Math.max(...tension) - Math.min(...tension)) / 2
    expect(Math.abs(swing / 50 / 0.002 - 1)).toBeLessThan(0.05)
  })
})

describe('turned evenly, out of round', () => {
  // Closed form: ΔT = E·A·(e/R)/√(1 + (L/R)²), the same at every speed; leaves out the change of the span’s length.
  it.each([
    [0.5, 74.6705],
    [2, 25.6118],
    [5, 10.5076],
  ])('over a span of %f m swings by %f N, at 1 and at 5 m/s', (length, expected) => {
    for (const speed of [1, 5]) {
      const span = new Span(speed, { ...PET, length, radius: 0.5, runout: 1e-3 }, length * 3e-3)
      const omega = (speed * 1.003) / 0.5
      span.turn((8 * length) / speed, steady(omega))
      let [low, high] = [Number.POSITIVE_INFINITY, 0]
      span.turn(span.time + (2 * Math.PI) / omega, steady(omega), (tension) => {
        low = Math.min(low, tension)
        high = Math.max(high, tension)
      })
      expect(Math.abs((high - low) / 2 / expected - 1)).toBeLessThan(0.007) // 0.3 % of it by the strain of the draw
    }
  })
})

describe('usual tensions', () => {
  // A converting supplier’s tension table: 0.75 lbf/in for each mil of polyester; stress and strain recomputed.
  it('polyester at 0.75 lbf/in per mil stands at 5.171 MPa and 0.1175 %, where 0.01 % of speed is 8.5 % of it', () => {
    const stress = (0.75 * 4.4482216152605) / 0.0254 / 25.4e-6
    const film = webOf({ web: { width: 0.3, thickness: 12e-6, modulus: 4.4e9 } })
    const tension = stress * 0.3 * 12e-6
    expect(stress / 5.17107e6).toBeCloseTo(1, 5)
    expect(drawFor(film, tension) / 0.0011752).toBeCloseTo(1, 4)
    expect((webStiffness(film) * 1e-4) / tension).toBeCloseTo(0.0851, 4)
  })
})
