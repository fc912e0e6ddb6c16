/** What a closure has to be: torque and preload in closed form, and the window that it is held against. */
import type { Scenario } from '../../scenario/index.ts'
import { perNewton } from './fill.ts'
import { capIn } from './scenario.ts'

export interface TorqueWindow {
  /** Least application torque [N·m]; most of it, torque at which the thread strips [N·m], least turns [rad], null: none. */
  least: number
  most: number | null
  strip: number | null
  turns: number | null
}

export function torqueWindow(scenario: Scenario): TorqueWindow {
  const { closure, window } = capIn(scenario)
  return {
    least: window.torque.least,
    most: window.torque.most ?? null,
    strip: closure.stripTorque ?? null,
    turns: window.leastTurns ?? null,
  }
}

/** Torque that turns a closure on against a preload [N·m], without top load. */
export function torqueOn(scenario: Scenario, preload: number): number {
  const { climb, on, face } = perNewton(capIn(scenario).closure)
  return capIn(scenario).closure.runDown + preload * (climb + on + face)
}

/** Torque that breaks a closure loose that stands under a preload [N·m], the head gone; 0 where it would come off by itself. */
export function torqueOff(scenario: Scenario, preload: number): number {
  const { closure } = capIn(scenario)
  const { climb, off, face } = perNewton(closure)
  return Math.max(0, closure.restFriction * (closure.runDown + preload * (off + face)) - preload * climb)
}

/** Torque for each radian on the liner, turning on [N·m/rad]. */
export function seatRate(scenario: Scenario): number {
  const { closure, liner } = capIn(scenario)
  const { climb, on, face } = perNewton(closure)
  return (climb + on + face) * liner.stiffness * climb
}

/** Preload once the liner has crept as far as it does at the squeeze that it has [N]. */
export const restingPreload = (scenario: Scenario, squeeze: number): number => {
  const { stiffness, relaxing } = capIn(scenario).liner
  return (1 - relaxing) * stiffness * squeeze
}

/** Most torque that is allowed [N·m]; Infinity: any. */
export function allowedTorque(scenario: Scenario): number {
  const { most, strip } = torqueWindow(scenario)
  return Math.min(most ?? Number.POSITIVE_INFINITY, strip ?? Number.POSITIVE_INFINITY)
}
