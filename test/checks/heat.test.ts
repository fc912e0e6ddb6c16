import { describe, expect, it } from 'vitest'
import { heatOf } from '../blocks.ts'
import { bareJaws, held, runOpenLoop, scenarioOf } from './support.ts'

const thermal = {
  windingResistance: 5,
  windingTime: 20,
  housingResistance: 10,
  housingTime: 600,
  ambient: 20,
  magnetCoefficient: -0.0011,
}

describe('6 W into 4 J/K winding and 60 J/K housing, 5 and 10 K/W (closed form of the two-node network)', () => {
  // τ 18.71235 and 641.2876 s: Tw = 90 − 63.79291 e^(−t/641.29) − 26.20709 e^(−t/18.712), Th = 60 − 61.80338 … + 1.80338 …
  const winding = (t: number) => 90 - 63.79291 * Math.exp(-t / 641.2876) - 26.20709 * Math.exp(-t / 18.71235)
  const housing = (t: number) => 60 - 61.80338 * Math.exp(-t / 641.2876) + 1.80338 * Math.exp(-t / 18.71235)

  it.each([
    [20, 19.16598, 0.71366],
    [60, 30.84356, 3.78982],
    [300, 50.04182, 21.28801],
    [1800, 86.14724, 56.2674],
  ])('after %f s the winding is %f K and the housing %f K over the ambient', (end, tw, th) => {
    expect(winding(end)).toBeCloseTo(tw, 4)
    expect(housing(end)).toBeCloseTo(th, 4)
    const heat = heatOf(thermal)
    const step = 1e-3
    for (let n = 0; n < end / step; n++) heat.step(6, step)
    expect((heat.state.winding - 20) / tw).toBeCloseTo(1, 3)
    expect((heat.state.housing - 20) / th).toBeCloseTo(1, 3)
  })
})

describe('copper and magnets', () => {
  const at = (ambient: number) => heatOf({ ...thermal, ambient })

  it('copper gains 0.00393 of its resistance for each kelvin (annealed copper, IEC 60028)', () => {
    expect(at(25).resistance).toBeCloseTo(1, 12)
    expect(at(105).resistance).toBeCloseTo(1 + 0.00393 * 80, 12)
  })

  it('the coefficient stands at 20 °C in IEC 60028; used from 25 °C on it is 0.6 % high at 130 °C', () => {
    const standard = (celsius: number) => (1 + 0.00393 * (celsius - 20)) / (1 + 0.00393 * (25 - 20))
    for (const celsius of [-20, 20, 60, 100, 130])
      expect(Math.abs(at(celsius).resistance / standard(celsius) - 1)).toBeLessThan(0.006)
  })

  it('neodymium magnets lose 0.11 % of their flux for each kelvin (common practice, no source)', () => {
    expect(at(25).flux).toBeCloseTo(1, 12)
    expect(at(125).flux).toBeCloseTo(0.89, 12)
  })
})

describe('a whole grip heats its motor', () => {
  const grip = {
    actuator: {
      motor: {
        resistance: 2,
        movingMass: 0.2,
        continuousCurrent: 10,
        thermal: { windingResistance: 4, windingTime: 1, housingResistance: 6, housingTime: 5, ambient: 25 },
      },
      transmission: { viscous: 30, stiffness: 1e4 },
    },
    jaws: { padStiffness: 1e5 },
    run: { duration: 2 },
  }

  it('pressing with 5 A: two nodes with I² R (1 + 0.00393 ΔT), exact by matrix exponential', () => {
    const { metrics } = runOpenLoop(scenarioOf(bareJaws(0.2), grip), () => 5)
    const [cw, ch, rw, rh] = [1 / 4, 5 / 6, 4, 6]
    const cold = 25 * 2
    const rise = held(
      [
        [(cold * 0.00393 - 1 / rw) / cw, 1 / rw / cw],
        [1 / rw / ch, -(1 / rw + 1 / rh) / ch],
      ],
      [cold / cw, 0],
      2,
    ).next([0, 0], 1)[0]!
    expect((metrics.windingTemperature! - 25) / rise).toBeCloseTo(1, 2)
  })

  it('with magnets at 85 °C the same current presses with 6.6 % less', () => {
    const settled = (ambient: number) =>
      runOpenLoop(
        scenarioOf(bareJaws(0.2), grip, { actuator: { motor: { thermal: { ambient, housingTime: 1e6 } } } }),
        () => 5,
      ).metrics.settledForce!
    expect(settled(85) / settled(25)).toBeCloseTo(1 - 60 * 0.0011, 3)
  })
})
