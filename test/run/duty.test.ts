import { describe, expect, it } from 'vitest'
import { cooled, RUNAWAY, type Temperatures } from '../../sim/axis/cooling.ts'
import { core } from '../../sim/cli/core.ts'
import { ALL_PRESETS, editScenario, type Scenario, type StrategyId } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import type { Core } from '../../sim/run/core.ts'
import { runDuty } from '../../sim/run/duty.ts'
import { runCycle } from '../../sim/run/run.ts'
import { strategyOf } from '../../sim/strategy/index.ts'

const presetOf = (id: string) => ALL_PRESETS.find((preset) => preset.id === id)!.scenario
const edited = (scenario: Scenario, path: string, value: unknown): Scenario => {
  const checked = editScenario(scenario, [{ path, value }])
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}
const modelled = (scenario: Scenario, strategy: StrategyId = 'current-clamp') => modelOf(scenario, strategyOf(strategy))

/** Temperatures at which the runs of a duty started, the last one being that of the answer. */
function startsOf(scenario: Scenario, strategy?: StrategyId): Temperatures[] {
  const starts: Temperatures[] = []
  const watched: Core = {
    lay(model) {
      starts.push({ ...model.bench.axis.heat.state })
      return core.lay(model)
    },
  }
  runDuty(modelled(scenario, strategy), { core: watched })
  return starts
}

describe('a duty that has gone on for ever', () => {
  it.each([
    ['teapot', edited(presetOf('teapot'), 'run.cycle', 3)],
    ['bauble', edited(presetOf('bauble'), 'run.cycle', 1.6)],
    ['cast-arm', presetOf('cast-arm')],
    ['jar-lid', presetOf('jar-lid')],
    // Its losses change most with temperature, and its friction sticks now here, now there: cycles differ by some hundredths.
    ['lid-hinge', presetOf('lid-hinge'), 'sensed-force' as const, 0.15],
  ])(
    'stays where it starts: cycle after cycle of %s, one run behind the other',
    (_, scenario, strategy?, off = 0.05) => {
      const starts = startsOf(scenario, strategy)
      const { cycle, duration } = scenario.run
      const model = modelled(scenario, strategy)
      let at = starts.at(-1)!
      for (let n = 0; n < 20; n++) {
        const { winding, housing } = runCycle(model, { core, start: at }).bench.axis.heat.state
        at = cooled(scenario.actuator.motor.thermal, { winding, housing }, cycle! - duration)
      }
      // Twenty cycles of seconds are little beside the housing, so the winding is what would drift off.
      expect(Math.abs(at.winding - starts.at(-1)!.winding)).toBeLessThan(off)
      expect(Math.abs(at.housing - starts.at(-1)!.housing)).toBeLessThan(off)
      expect(starts.length).toBeLessThanOrEqual(4)
    },
  )

  it('starts a motor that runs away at the end of the scale', () => {
    const hot = edited(presetOf('bushing'), 'run.cycle', 1.5)
    const { ambient, housingResistance } = hot.actuator.motor.thermal
    const starts = startsOf(edited(hot, 'actuator.motor.thermal.housingResistance', 5 * housingResistance))
    expect(starts.at(-1)!.winding).toBe(ambient + RUNAWAY)
  })

  it('ends where it is asked to stop, in whichever round that is', () => {
    for (const most of [0.1, 0.3, 0.9]) {
      const told: number[] = []
      const { cancelled } = runDuty(modelled(presetOf('jar-lid')), {
        core,
        onProgress(done) {
          told.push(done)
          return done < most
        },
      })
      expect(cancelled).toBe(true)
      expect(told).toEqual([...told].sort((a, b) => a - b))
    }
  })
})
