/**
 * The linear loops of press, cap and web against the time simulation: steps of every loop at every working point with a balance, the gain
 * at which a simulated loop begins to swing, and what an output feels that passes in motion, where the work slides. A web that runs is
 * held against whole runs in `test/job/web/loops.test.ts`. Linearisations are the project's own; stiffnesses are held against closed forms.
 */
import { describe, expect, it } from 'vitest'
import { tryLoop } from '../../sim/ask/loop-trial.ts'
import { simulatedSteps } from '../../sim/ask/simulated-step.ts'
import type { Load } from '../../sim/axis/load.ts'
import { LineFollower } from '../../sim/control/line-follower.ts'
import { ALL_PRESETS, LOOPS, type Scenario, workingPointsOf } from '../../sim/index.ts'
import { jobOf } from '../../sim/job/index.ts'
import { loadOf } from '../../sim/job/loads.ts'
import { analyseLoops } from '../../sim/loops/analyse.ts'
import { loopsOf } from '../../sim/loops/jobs/index.ts'
import type { WorkingPointId } from '../../sim/loops/jobs/job.ts'
import { plantModel } from '../../sim/loops/plant.ts'
import { type WorkingPoint, workingPoint } from '../../sim/loops/working-point.ts'
import { capOf, EIGHT_PER_INCH, IDEAL } from '../job/cap/support.ts'
import { run50 } from '../job/press/support.ts'
import { boundless, CYCLES, growth } from './calm-axes.ts'
import { bin, ratio } from './signals.ts'

/** Without noise, steps of measurement, dead band, backlash and cogging, which no linear loop has. */
function fine(id: string): Scenario {
  const { scenario } = ALL_PRESETS.find((each) => each.id === id)!
  const { actuator, sensors, strategies } = scenario
  const { motor, transmission } = actuator
  return {
    ...scenario,
    actuator: {
      ...actuator,
      motor: { ...motor, cogging: { ...motor.cogging, amplitude: 0 } },
      transmission: { ...transmission, backlash: 0 },
    } as Scenario['actuator'],
    drive: { ...scenario.drive, currentResolution: 0, currentNoise: 0 },
    sensors: { encoder: { ...sensors.encoder, resolution: 0 }, gauge: { ...sensors.gauge, noise: 0, resolution: 0 } },
    strategies: { ...strategies, sensedForce: { ...strategies.sensedForce, deadband: 0 } },
  }
}

/** Of a step: integration of first order at ω·dt ≤ 0.1, and curved laws; as for grips. */
const NEAR = 0.02

describe('a simulated step lies within 2 % of the linear one at every working point with a balance', () => {
  it.each(['cast-arm', 'lid-hinge', 'jar-lid', 'small-lid', 'paper-roll', 'tray-film'])('%s', (id) => {
    const scenario = fine(id)
    const points = workingPointsOf(scenario).filter((each) => each !== 'sliding')
    for (const loop of LOOPS) {
      const { steps } = simulatedSteps(scenario, loop, { friction: false })
      const expected = loop === 'force' ? points.filter((each) => each !== 'free') : points
      expect(steps.map(({ workingPoint: at }) => at)).toEqual(expected)
      for (const { workingPoint: at, deviation, bounds, step } of steps) {
        expect(bounds, `${loop} ${at}`).toEqual([])
        // A stiff seat lets a position follow by a few per cent only: its own answer is the measure.
        const highest = Math.max(...step.value)
        expect(highest).toBeGreaterThan(0.01)
        expect(deviation / highest, `${loop} ${at}`).toBeLessThan(NEAR)
      }
    }
  })
})

describe('the gain margin is where the simulated loop starts to swing, within 2 %', () => {
  const cases: [string, WorkingPointId, 'velocity' | 'force'][] = [
    ['cast-arm', 'nominal', 'force'],
    ['cast-arm', 'resting', 'velocity'],
    ['jar-lid', 'stiffest', 'force'],
    ['jar-lid', 'nominal', 'velocity'],
    ['paper-roll', 'nominal', 'force'],
    ['paper-roll', 'running', 'force'],
  ]
  it.each(cases)('%s, %s, %s loop', (id, at, loop) => {
    const scenario = fine(id)
    const point = workingPoint(scenario, at)
    const [analysis] = analyseLoops(scenario, { loops: [loop], workingPoints: [at] }).loops
    const { gainMargin, gainMarginFrequency } = analysis!.margins!
    const calm = loopsOf(scenario).calm(boundless(quiet(scenario)))
    const kick = (time: number) => (time < 0.002 ? 1e-6 : 0)
    const swing = (factor: number) =>
      growth(
        tryLoop(calm, {
          loop,
          point,
          duration: (4 * CYCLES) / gainMarginFrequency!,
          gain: 10 ** (gainMargin! / 20) * factor,
          disturbance: kick,
        }).given,
      )
    expect(swing(0.98)).toBeLessThan(0.9)
    expect(swing(1.02)).toBeGreaterThan(1.1)
  })
})

/** Without the axis' own dry friction. */
function quiet(scenario: Scenario): Scenario {
  const { transmission } = scenario.actuator
  const none = { coulomb: 0, breakaway: 0 }
  const load =
    'threadFriction' in transmission ? { threadFriction: 0 } : 'efficiency' in transmission ? { efficiency: 1 } : {}
  return {
    ...scenario,
    actuator: { ...scenario.actuator, transmission: { ...transmission, ...none, ...load } } as Scenario['actuator'],
  }
}

describe('an output that is shaken on the work, standing or sliding at a steady speed', () => {
  /** Shakes the output by a sine of so many cycles a second; what the gauge feels for each metre of that sine. */
  function shaken(
    scenario: Scenario,
    hertz: number,
    point: WorkingPoint,
    bring: (load: Load, step: number, move: (travel: number, speed: number) => void) => number,
  ) {
    const step = 2e-6
    const { speed, room, contact } = point
    const load = loadOf(jobOf(scenario).load)
    jobOf(scenario).fill(load, scenario)
    load.setStep(step)
    load.settle()
    let time = 0
    const move = (travel: number, at: number) => {
      load.press(travel, at)
      load.follow(travel, at, time)
      time += step
    }
    const from = bring(load, step, move)
    const cycles = 6
    const samples = Math.round(cycles / hertz / step)
    const size = speed > 0 ? (0.02 * speed) / (2 * Math.PI * hertz) : (0.05 * room) / contact!.stiffness
    const felt: number[] = []
    const way: number[] = []
    for (let k = 0; k < samples; k++) {
      const angle = 2 * Math.PI * hertz * k * step
      const shake = size * Math.sin(angle)
      move(from + speed * k * step + shake, speed + 2 * Math.PI * hertz * size * Math.cos(angle))
      felt.push(load.felt())
      way.push(shake)
    }
    // What grows with the way itself is a straight line.
    const whole = Math.round(4 / hertz / step)
    const last = felt.slice(-whole)
    const drift = (last.at(-1)! - felt.at(-1 - whole)!) / whole
    return ratio(
      bin(
        last.map((value, k) => value - drift * k),
        whole,
        4,
      ),
      bin(way, whole, 4),
    )
  }

  /** The same of the linear plant, its output held: force over travel at s = jω. */
  function predicted(scenario: Scenario, hertz: number, point: WorkingPoint) {
    const { names, a, nearForce } = plantModel(scenario, point)
    const own = ['part', 'partSpeed', 'fade', 'bristle'].filter((name) => names.includes(name as never))
    const at = own.map((name) => names.indexOf(name as never))
    const [jaw, jawSpeed] = [names.indexOf('jaw'), names.indexOf('jawSpeed')]
    const omega = 2 * Math.PI * hertz
    // (jω − A)·x = (A_jaw + jω·A_jawSpeed)·1, as real numbers twice as many.
    const n = own.length
    const rows = Array.from({ length: 2 * n }, () => new Float64Array(2 * n + 1))
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        rows[i]![j] = -a.at(at[i]!, at[j]!)
        rows[n + i]![n + j] = -a.at(at[i]!, at[j]!)
      }
      rows[i]![n + i]! -= omega
      rows[n + i]![i]! += omega
      rows[i]![2 * n] = a.at(at[i]!, jaw)
      rows[n + i]![2 * n] = omega * a.at(at[i]!, jawSpeed)
    }
    const x = solved(rows)
    const weight = (name: string) => nearForce[name as keyof typeof nearForce] ?? 0
    const re = own.reduce((sum, name, i) => sum + weight(name) * x[i]!, weight('jaw'))
    const im = own.reduce((sum, name, i) => sum + weight(name) * x[n + i]!, omega * weight('jawSpeed'))
    return ratio({ re, im }, { re: 1, im: 0 })
  }

  /** Gauss and Jordan with the largest pivot. */
  function solved(rows: Float64Array[]): number[] {
    const n = rows.length
    for (let i = 0; i < n; i++) {
      const pivot = rows.reduce(
        (best, row, k) => (k >= i && Math.abs(row[i]!) > Math.abs(rows[best]![i]!) ? k : best),
        i,
      )
      ;[rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!]
      for (const row of rows) {
        if (row === rows[i]) continue
        const factor = row[i]! / rows[i]![i]!
        for (let j = i; j <= n; j++) row[j]! -= factor * rows[i]![j]!
      }
    }
    return rows.map((row, i) => row[n]! / row[i]!)
  }

  const JOINT = run50({ joint: { friction: { static: 0.18 }, stiffness: 2e9 }, window: { depth: { least: 0.04 } } })
  const LINER = capOf(IDEAL, EIGHT_PER_INCH(0.2), {
    closure: { stiffness: 200, inertia: 1e-5, restFriction: 1.2 },
    chuck: { stiffness: 100, damping: 0.02 },
    liner: { stiffness: 3e5 },
    approach: { speed: 4, creepFrom: 0 },
    strategies: { sensedForce: { target: 1.5 } },
  })

  // Of a straight-line part by 2 %: step of 2 µs against the bristles' own rate, and a level that grows while it is looked at.
  it.each([20, 200])('a bushing in its joint, shaken at %i Hz, answers as its linear plant does', (hertz) => {
    const { ram } = JOINT as unknown as { ram: { gap: number; stiffness: number } }
    const point = workingPoint(JOINT, 'sliding')
    const { travel, speed } = point
    const measured = shaken(JOINT, hertz, point, (_, step, move) => {
      const end = travel - speed * (3 / hertz)
      let at = ram.gap
      while (at < end) {
        move(at, speed)
        at += speed * step
      }
      return at
    })
    const linear = predicted(JOINT, hertz, point)
    expect(Math.abs(measured.decibels - linear.decibels)).toBeLessThan(0.17)
    expect(Math.abs(measured.degrees - linear.degrees)).toBeLessThan(2)
  })

  it.each([20, 200])('a closure that turns on its liner, shaken at %i Hz, likewise', (hertz) => {
    const point = workingPoint(LINER, 'sliding')
    const { travel, speed } = point
    const measured = shaken(LINER, hertz, point, (_, step, move) => {
      const end = travel - speed * (3 / hertz)
      let at = 0
      while (at < end) {
        move(at, speed)
        at += speed * step
      }
      return at
    })
    const linear = predicted(LINER, hertz, point)
    expect(Math.abs(measured.decibels - linear.decibels)).toBeLessThan(0.17)
    expect(Math.abs(measured.degrees - linear.degrees)).toBeLessThan(2)
  })

  // Near what bushing or closure swings with on its springs, where damping tells most.
  it.each([
    ['cast-arm', 'resting', 4000],
    ['cast-arm', 'nominal', 4000],
    ['jar-lid', 'nominal', 1200],
  ] as const)('%s, %s, shaken at %i Hz, likewise at rest', (id, at, hertz) => {
    const scenario = fine(id)
    const point = workingPoint(scenario, at)
    const measured = shaken(scenario, hertz, point, (load) => {
      loopsOf(scenario).setDown(load, scenario, point, new LineFollower())
      return point.travel
    })
    const linear = predicted(scenario, hertz, point)
    expect(Math.abs(measured.decibels - linear.decibels)).toBeLessThan(0.17)
    expect(Math.abs(measured.degrees - linear.degrees)).toBeLessThan(2)
  })

  it('meets frame and joint in series: 1122.85 N/mm of a joint of 1148.64 N/mm behind 50 kN/mm (CV-209, CV-216, closed form)', () => {
    const joint = run50({ joint: { friction: { pressing: 0.15, static: 0.15 } }, ram: { stiffness: 5e7 } })
    expect(workingPoint(joint, 'sliding').contact!.stiffness / 1_122_850).toBeCloseTo(1, 4)
  })

  it('of a closure meets torque and preload of a thread with collar over the lead: 1.677219 N·m at 300 N (CV-221, closed form)', () => {
    // T = 1.677219/300·F and F = k·x·lead/2π, the chuck in series; run-down and top load are none.
    const rate = (1.677219 / 300) * 3e5 * (0.003175 / (2 * Math.PI))
    expect(workingPoint(LINER, 'sliding').contact!.stiffness / ((rate * 100) / (rate + 100))).toBeCloseTo(1, 4)
  })
})

it('a shoulder is met in series with frame and ram, and what friction holds beside it (closed form)', () => {
  const scenario = fine('cast-arm')
  const { stiffness } = workingPoint(scenario, 'nominal').contact!
  // Frame 30 N/µm; shoulder 200 N/µm and bristles 300 N/µm side by side.
  expect(stiffness / ((3e7 * 5e8) / (3e7 + 5e8))).toBeCloseTo(1, 9)
})

it('a point is set down in balance: nothing moves by itself', () => {
  for (const id of ['cast-arm', 'lid-hinge', 'jar-lid', 'paper-roll']) {
    const scenario = fine(id)
    for (const at of workingPointsOf(scenario)) {
      const point = workingPoint(scenario, at)
      if (!point.contact || at === 'sliding') continue
      const job = jobOf(scenario)
      const load = loadOf(job.load)
      const work = loopsOf(scenario).stiffened(scenario, point.factor)
      job.fill(load, work)
      load.setStep(1e-6)
      load.settle()
      loopsOf(scenario).setDown(load, work, point, new LineFollower())
      const felt = () => {
        load.press(point.travel, point.speed)
        return load.felt()
      }
      expect(felt() / point.force, `${id} ${at}`).toBeCloseTo(1, 6)
      if (at === 'running') continue
      for (let n = 0; n < 2000; n++) {
        load.press(point.travel, 0)
        load.follow(point.travel, 0, n * 1e-6)
      }
      expect(felt() / point.force, `${id} ${at} after 2 ms`).toBeCloseTo(1, 3)
    }
  }
})
