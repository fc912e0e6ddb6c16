import type { GripResult, Scenario, Traces } from '../../../../sim/index.ts'
import { CHANNELS, checkScenario } from '../../../../sim/index.ts'

export function scenarioOf(changes: object = {}): Scenario {
  const checked = checkScenario({ format: 'jawbench-scenario', version: 2, ...changes })
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

/** Traces with the given columns, all others 0. */
export function tracesOf(columns: Partial<Record<keyof Traces, number[]>>): Traces {
  const rows = columns.time!.length
  return Object.fromEntries(
    CHANNELS.map(({ id }) => [id, Float64Array.from(columns[id] ?? new Array<number>(rows).fill(0))]),
  ) as Traces
}

export function resultOf(events: Partial<GripResult['events']>): GripResult {
  const none = { lift: null, engaged: null, crack: null, slip: null, drop: null, unstable: null }
  return { events: { ...none, ...events } } as GripResult
}
