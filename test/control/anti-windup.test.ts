import { describe, expect, it } from 'vitest'
import { currentLoop, forcePid, positionPid, velocityPi } from './support.ts'

/*
 * Plant 1/s, PI with K = 1 and Ti = 1, |u| ≤ 0.1, unit step of the target: a much used trial of anti-windup schemes, after
 * Åström and Wittenmark, Computer-Controlled Systems. Without a scheme the overshoot is 90.018 % (recomputed), with
 * conditional integration 2.984 % at 11.418 s, settled within 2 % at 12.399 s; without a limit 29.844 %.
 */
const period = 1e-4
const gains = { kp: 1, ki: 1, period }

interface Trial {
  block: { state: { integral: number; saturated: number } }
  tick(measured: number): number
}

const blocks: Record<string, (limit: number) => Trial> = {
  'current loop': (voltageLimit) => {
    const block = currentLoop({ ...gains, voltageLimit, backEmf: 0 })
    return { block, tick: (measured) => block.tick(1, measured, 0) }
  },
  'position PID': (limit) => {
    const rest = { kd: 0, speedFilter: 0, velocityFeedforward: 0, accelerationFeedforward: 0 }
    const block = positionPid({ ...gains, ...rest, limit })
    return { block, tick: (measured) => block.tick(1, 0, 0, measured) }
  },
  'velocity PI': (limit) => {
    const block = velocityPi({ ...gains, limit })
    return { block, tick: (measured) => block.tick(1, measured) }
  },
  'force PID': (limit) => {
    const block = forcePid({ ...gains, kd: 0, derivativeFilter: 0, limit })
    return { block, tick: (measured) => block.tick(1, measured) }
  },
}

function step({ tick }: Trial) {
  let [y, peak, peakTime, settled] = [0, 0, 0, 0]
  for (let n = 0; n < 400_000; n++) {
    y += period * tick(y)
    if (y > peak) [peak, peakTime] = [y, (n + 1) * period]
    if (Math.abs(y - 1) > 0.02) settled = (n + 1) * period
  }
  return { overshoot: (peak - 1) * 100, peakTime, settled }
}

describe.each(Object.entries(blocks))('%s on an integrator', (_name, make) => {
  it('overshoots by 29.844 % while nothing is limited', () => {
    expect(Math.abs(step(make(Infinity)).overshoot / 29.844 - 1)).toBeLessThan(0.01)
  })

  it('overshoots by 2.984 % at 11.418 s and is settled at 12.399 s when limited to 0.1', () => {
    const { overshoot, peakTime, settled } = step(make(0.1))
    expect(Math.abs(overshoot / 2.984 - 1)).toBeLessThan(0.01)
    expect(Math.abs(peakTime / 11.418 - 1)).toBeLessThan(0.01)
    expect(Math.abs(settled / 12.399 - 1)).toBeLessThan(0.01)
  })

  it('holds the integral while limited and pushed further, and lets it go back', () => {
    const { block, tick } = make(0.1)
    block.state.integral = 0.3
    tick(0.5)
    expect([block.state.saturated, block.state.integral]).toEqual([1, 0.3])
    tick(1.05)
    expect(block.state.saturated).toBe(1)
    expect(block.state.integral).toBeCloseTo(0.3 - 0.05 * period, 12)
  })

  it('counts half of the newest error, as the trapezoidal rule does', () => {
    const { tick } = make(Infinity)
    expect(tick(0.5)).toBeCloseTo(0.5 + (0.5 * period) / 2, 12)
    expect(tick(0.5)).toBeCloseTo(0.5 + (3 * 0.5 * period) / 2, 12)
  })
})
