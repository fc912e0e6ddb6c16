/** How a quantity that varies is called where many stand in one list. */
import { quantityAt, type Scenario } from '../../../sim/index.ts'
import { fieldAt } from '../scenario/walk.ts'

const titleOf = (scenario: Scenario, path: string) => quantityAt(scenario, path)?.title ?? path

/** "Part · Mass": where a quantity stands, and its name. */
export function nameOf(scenario: Scenario, path: string): string {
  const group = fieldAt(scenario.actuator.kind, path.split(/[.[]/).slice(0, -1).join('.'), scenario.job)
  const where = group && group.kind !== 'quantity' ? group.title : ''
  return where ? `${where} · ${titleOf(scenario, path)}` : titleOf(scenario, path)
}
