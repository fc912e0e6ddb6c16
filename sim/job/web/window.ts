/** The window that the tension is held against, and closed forms of the span. */
import type { Scenario } from '../../scenario/index.ts'
import { webStiffness } from './fill.ts'
import { webIn } from './scenario.ts'

export interface TensionWindow {
  /** Least and most tension [N], and from when on the least counts [s]. */
  least: number
  most: number
  from: number
  /** Where the web tears [N]; null: it does not. */
  tears: number | null
}

export function tensionWindow(scenario: Scenario): TensionWindow {
  const { window, web } = webIn(scenario)
  return { ...window, tears: web.breakTension ?? null }
}

/** Time in which tension follows speed [s], L/v at a speed of the line [m/s]; Infinity at standstill. */
export const timeConstant = (scenario: Scenario, speed: number): number => webIn(scenario).span.length / speed

/** Draw v₂/v₁ − 1 that holds a tension [N] in a running web: (1 + ε)/(1 + ε₁) − 1. */
export function drawFor(scenario: Scenario, tension: number): number {
  const stiffness = webStiffness(scenario)
  const { entryTension } = webIn(scenario).span
  return (1 + tension / stiffness) / (1 + entryTension / stiffness) - 1
}
