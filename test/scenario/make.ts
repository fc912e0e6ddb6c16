import { checkScenario, type Edit, editScenario, faultLine, type Scenario } from '../../sim/index.ts'

/** The scenario of an input that leaves keys out, and of edits by path; throws with every fault. */
export function make(input: object = {}, edits: Record<string, unknown> = {}): Scenario {
  const list: Edit[] = Object.entries(edits).map(([path, value]) => ({ path, value }))
  const checked = list.length > 0 ? editScenario(input, list) : checkScenario(input)
  if (!checked.ok) throw new Error(checked.faults.map(faultLine).join('\n'))
  return checked.scenario
}
