/** From an instant of a run to what the drawing of the drive needs. */
import type { Scenario } from '../../../sim/index.ts'
import type { Motion } from '../families/drawing.ts'
import type { GripFrame } from './frameAt.ts'
import type { Plan } from './plan.ts'

export function motionOf({ actuator }: Scenario, plan: Plan, frame: GripFrame): Motion {
  const output = outputAngle(actuator, frame.motorTravel)
  return {
    travel: frame.travel * plan.m,
    motorTravel: frame.motorTravel * plan.m,
    output,
    rotor: actuator.kind === 'rack' ? output * actuator.transmission.gearRatio : output,
    current: Math.max(-1, Math.min(1, frame.current / actuator.motor.peakCurrent)),
  }
}

/** Angle of screw or pinion [rad]; 0 for a linear motor. */
function outputAngle(actuator: Scenario['actuator'], travel: number): number {
  if (actuator.kind === 'screw') return (2 * Math.PI * travel) / actuator.transmission.lead
  if (actuator.kind === 'rack') return travel / actuator.transmission.pinionRadius
  return 0
}
