/** The wall between axis and job: a small second one, a ram against a spring, goes through the same cycle and strategies. */
import { describe, expect, it } from 'vitest'
import type { Arm } from '../../sim/axis/arm.ts'
import { Load } from '../../sim/axis/load.ts'
import { State } from '../../sim/core/block.ts'
import { Bench } from '../../sim/cycle/bench.ts'
import { STRATEGIES, strategyOf } from '../../sim/index.ts'
import type { Job, RunEnd } from '../../sim/job/job.ts'
import { LoadId } from '../../sim/job/loads.ts'
import { modelOf } from '../../sim/model/model.ts'
import { endOf } from '../../sim/run/end.ts'
import { runCycle } from '../../sim/run/run.ts'
import { machineOf } from '../../sim/strategy/machines.ts'
import { FRICTIONLESS, IDEAL, scenarioOf } from '../checks/support.ts'

class RamState extends State {
  force: f64 = 0
  highest: f64 = 0
  touch: f64 = NaN
  peak: f64 = 0
}

class RamLoad extends Load {
  /** Where the spring begins [m], and its stiffness [N/m]. */
  gap: f64 = 0.01
  stiffness: f64 = 5e4
  readonly state = new RamState()

  fastest = (mass: f64) => Math.sqrt(this.stiffness / mass)
  setStep(): void {}
  pull = (arm: Arm) => arm.state.along
  begin(): void {
    this.state.highest = 0
  }
  press(travel: f64): f64 {
    this.state.force = Math.max(0, this.stiffness * (travel - this.gap))
    return this.state.force
  }
  follow(_travel: f64, _speed: f64, time: f64): void {
    const s = this.state
    if (s.force > 0 && Number.isNaN(s.touch)) s.touch = time
    s.highest = Math.max(s.highest, s.force)
    s.peak = Math.max(s.peak, s.force)
  }
  end(): void {}
  effort = () => this.state.force
  most = () => this.state.highest
  felt = () => this.state.force
  touched = () => this.state.touch
  release(): void {}
  isLost = () => false
  observe(): void {}
  channels = () => 1
  show(now: Float64Array, from: number): void {
    now[from] = this.state.force
  }
  settle(): void {}
}

const ram: Job<{ verdict: 'pressed' | 'short'; metrics: { peak: number; settled: number }; events: object }> = {
  id: 'ram',
  label: 'Ram',
  load: LoadId.grip,
  output: { travel: 'm', effort: 'N' },
  channels: [{ id: 'force', label: 'force', unit: 'N' }],
  outputOf: () => ({ mass: 0.5, stroke: 0.05, reach: 0.05 }),
  workOf: () => ({ perEffort: 1, touch: 0.01, stroke: 0.05, creepFrom: Infinity, clampFrom: 0, reach: 0.5 }),
  fill(load) {
    if (!(load instanceof RamLoad)) throw new TypeError('not a ram')
  },
  judge(_scenario, { load, sums }: RunEnd) {
    const { peak } = (load as RamLoad).state
    return { verdict: peak > 0 ? 'pressed' : 'short', metrics: { peak, settled: sums.force }, events: {} }
  },
}

const scenario = scenarioOf(IDEAL, {
  actuator: { transmission: { ...FRICTIONLESS, viscous: 400, threadFriction: 0 } },
  approach: { overtravel: 0.02, speed: 0.02 },
  strategies: { sensedForce: { target: 60 } },
  run: { duration: 1.5 },
})

const runRam = (strategy: (typeof STRATEGIES)[number]) => {
  const make = () => new Bench(new RamLoad(), machineOf(strategy.machine))
  const cycle = runCycle(modelOf(scenario, strategy, { job: ram, make }), { record: true })
  return { cycle, told: ram.judge(scenario, endOf(cycle.bench, cycle.hash)), axis: cycle.bench.axis }
}

describe('A ram against a spring', () => {
  it.each(STRATEGIES.map((strategy) => [strategy.id, strategy] as const))('is pressed by %s', (_, strategy) => {
    const { told, cycle } = runRam(strategy)
    expect(told.verdict).toBe('pressed')
    expect(told.metrics.settled).toBeGreaterThan(10)
    expect(cycle.hash).toMatch(/^[0-9a-f]{16}$/)
    expect(cycle.columns).toHaveLength(12)
  })

  it('carries the clamp current as K·I without friction (closed form)', () => {
    const { told, axis } = runRam(strategyOf('current-clamp'))
    expect(told.metrics.settled / (axis.forcePerAmpere * scenario.strategies.currentClamp.limit)).toBeCloseTo(1, 2)
  })

  it('comes to the target of the gauge', () => {
    const { told } = runRam(strategyOf('sensed-force'))
    expect(Math.abs(told.metrics.settled - 60)).toBeLessThan(0.02 * 60)
  })
})
