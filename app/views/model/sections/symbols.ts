/** Symbols of the drive that several sections use. */
import type { Scenario } from '../../../../sim/index.ts'
import type { OwnSymbol } from '../section.ts'

export const perSecond = (rate: (scenario: Scenario) => number) => (scenario: Scenario) => 1 / rate(scenario)

export const INTEGRAL = (unit: string): OwnSymbol => ({ symbol: 'S', title: 'Integral', unit })
export const SERVO_PERIOD: OwnSymbol = {
  symbol: 'T_s',
  title: 'Period of the servo',
  unit: 's',
  shown: 'ms',
  value: perSecond(({ servo }) => servo.rate),
}
export const SPEED: OwnSymbol = { symbol: 'v_m', title: 'Measured speed', unit: 'm/s' }
export const COMMAND: OwnSymbol = { symbol: 'i*', title: 'Current command', unit: 'A' }
