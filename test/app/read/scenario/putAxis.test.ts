/** Another axis brings its own data and leaves nothing of the old one behind. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { axisOfFamily, putAxis } from '../../../../app/read/scenario/putAxis.ts'
import { useResults } from '../../../../app/store/results.ts'
import { useScenario } from '../../../../app/store/scenario.ts'
import { AXIS_PRESETS, fitAxis, PRESETS, SCHEMAS, STRATEGIES, wantedEffort } from '../../../../sim/index.ts'

const bench = () => useScenario.getState()

const [untouched, said] = [bench(), useResults.getState()]
beforeEach(() => bench().load(PRESETS[0]!.scenario))
afterEach(() => {
  useScenario.setState(untouched, true)
  useResults.setState(said, true)
})

describe('putting an axis on the bench', () => {
  it('every family of the format has an axis that stands for it', () => {
    for (const [kind, schema] of Object.entries(SCHEMAS)) {
      const { enum: families } = schema.properties.actuator.properties.family as unknown as { enum: string[] }
      for (const family of families) expect(axisOfFamily(kind, family)?.actuator).toMatchObject({ kind, family })
    }
  })

  it('takes all of its data, and is what the comparison of axes fits', () => {
    for (const preset of PRESETS) {
      for (const axis of AXIS_PRESETS) {
        bench().load(preset.scenario)
        const fitted = fitAxis(preset.scenario, axis.actuator)
        expect(putAxis(axis), `${preset.id} on ${axis.id}`).toBe(fitted.ok)
        if (!fitted.ok) continue
        const { scenario } = bench()
        expect(scenario.actuator).toEqual(axis.actuator)
        expect({ ...scenario, name: '' }).toEqual({ ...fitted.scenario, name: '' })
        expect(scenario.part).toEqual(preset.scenario.part)
      }
    }
  })

  it('keeps the wanted newtons, unless the axis cannot give them', () => {
    const { scenario: before } = bench()
    const force = wantedEffort(before)
    putAxis(axisOfFamily('screw', 'brush-screw')!)
    // Settings are rounded to four digits for the drive.
    for (const strategy of STRATEGIES) {
      const { expected } = strategy.forceOf(bench().scenario)
      expect(expected / force, strategy.id).toBeCloseTo(1, 2)
    }
  })

  it('does not lose the wanted newtons on an axis that cannot give them, and says what it gives', () => {
    const { scenario: before } = bench()
    const weak = AXIS_PRESETS.find(({ id }) => id === 'brush-lead-10x10')!
    const force = wantedEffort(before)
    putAxis(weak)
    expect(useResults.getState().notice).toMatch(/at its current limit this axis gives [\d.]+\sN of them/)
    expect(wantedEffort(bench().scenario) / force).toBeCloseTo(1, 2)
    putAxis({ title: 'As before', actuator: before.actuator })
    for (const { forceOf } of STRATEGIES) expect(forceOf(bench().scenario).expected / force).toBeCloseTo(1, 2)
  })

  it('says what changed, names the axis, and one undo takes all of it back', () => {
    const before = bench().scenario
    putAxis(axisOfFamily('screw', 'brush-screw')!)
    putAxis(axisOfFamily('direct', 'voice-coil')!)
    const { notice, details } = useResults.getState()
    expect(notice).toContain('Voice coil')
    expect(details.some((line) => /^Motor, Force constant: [\d.]+\sN\/A$/.test(line))).toBe(true)
    expect(details.some((line) => /^Servo, .*: .* → .*/.test(line))).toBe(true)
    expect(details.join()).not.toMatch(/lead|thread/i)
    expect(bench().scenario.name).toMatch(/^Teapot on a ball screw, axis: Voice coil[^:]*$/)
    bench().undo()
    bench().undo()
    expect(bench().scenario).toEqual(before)
  })

  it('"reset" goes back to the data of the axis and to the part as it came', () => {
    bench().edit('part.mass', 0.5)
    putAxis(axisOfFamily('rack', 'geared-rack')!)
    const { scenario, base } = bench()
    expect(base.actuator).toEqual(scenario.actuator)
    expect(base.part.mass).toBe(PRESETS[0]!.scenario.part.mass)
  })

  it('refuses in words an axis that does not go with the rest', () => {
    const { scenario } = bench()
    const axis = axisOfFamily('direct', 'voice-coil')!
    const { motor } = axis.actuator
    const odd = {
      ...axis,
      actuator: { ...axis.actuator, motor: { ...motor, peakCurrent: motor.continuousCurrent / 2 } },
    }
    expect(putAxis(odd as typeof axis)).toBe(false)
    expect(useResults.getState().notice).toMatch(/does not go on the bench: Motor, Peak current would be/)
    expect(bench().scenario).toBe(scenario)
  })
})
