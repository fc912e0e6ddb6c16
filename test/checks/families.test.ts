import { describe, expect, it } from 'vitest'
import { AXIS_PRESETS, type AxisPreset, axisOf, PRESETS, reportAxis } from '../../sim/index.ts'

/** Facts of the trade, each "common practice, no source"; the data sets are generic. */
const families = (...names: string[]) => AXIS_PRESETS.filter(({ actuator }) => names.includes(actuator.family))
const DIRECT = AXIS_PRESETS.filter(({ actuator }) => actuator.kind === 'direct')
const SCREWS = AXIS_PRESETS.filter(({ actuator }) => actuator.kind === 'screw')
const peakForce = ({ actuator }: AxisPreset) => axisOf(actuator).forcePerAmpere * actuator.motor.peakCurrent
const acceleration = (axis: AxisPreset) => peakForce(axis) / axisOf(axis.actuator).mass
const least = (axes: AxisPreset[], figure: (axis: AxisPreset) => number) => Math.min(...axes.map(figure))
const most = (axes: AxisPreset[], figure: (axis: AxisPreset) => number) => Math.max(...axes.map(figure))

/** Rest-to-rest time over a short stroke at full current, plus the time the current takes to rise. */
const shortMove = (axis: AxisPreset) =>
  2 * Math.sqrt(0.001 / acceleration(axis)) + axis.actuator.motor.inductance / axis.actuator.motor.resistance

describe('generic axes', () => {
  it('stand for every family, at least two each', () => {
    const wanted = [
      'brush-screw',
      'brushless-screw',
      'step-screw',
      'geared-rack',
      'linear-magnets-moving',
      'linear-coils-moving',
      'tubular-rod-moving',
      'tubular-coils-moving',
      'moving-magnet',
      'voice-coil',
    ]
    for (const family of wanted) expect(families(family).length, family).toBeGreaterThanOrEqual(2)
  })

  it('a direct drive accelerates hardest', () => {
    const others = AXIS_PRESETS.filter((axis) => !DIRECT.includes(axis))
    expect(most(DIRECT, acceleration)).toBeGreaterThan(2 * most(others, acceleration))
  })

  it('a screw gives the most force', () => {
    expect(most(SCREWS, peakForce)).toBeGreaterThan(most(DIRECT, peakForce))
  })

  it('a voice coil is the quickest over a short stroke', () => {
    const coils = families('voice-coil')
    const others = AXIS_PRESETS.filter((axis) => !coils.includes(axis))
    expect(least(coils, shortMove)).toBeLessThan(least(others, shortMove))
  })

  it('a sliding screw hides the contact force and locks, a voice coil shows it and lets go', () => {
    const { scenario } = PRESETS[0]!
    const report = (id: string) => reportAxis(scenario, AXIS_PRESETS.find((axis) => axis.id === id)!.actuator)
    const screw = report('brush-trapezoidal-10x2')
    const coil = report('voice-coil-75')
    expect(screw.frictionBand).toBeGreaterThan(20 * coil.frictionBand)
    expect(screw.powerLoss).toBe('locks')
    expect(coil.powerLoss).toBe('lets go')
    expect(screw.impact!).toBeGreaterThan(5 * coil.impact!)
    expect(screw.strategies.find(({ strategy }) => strategy === 'current-clamp')!.honest).toBe(false)
    expect(screw.strategies.find(({ strategy }) => strategy === 'sensed-force')!.honest).toBe(true)
  })
})
