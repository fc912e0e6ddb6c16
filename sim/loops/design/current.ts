/** Gains of the current loop. The drive takes a bandwidth: kp = L·ω and ki = R·ω. */
import type { Scenario } from '../../scenario/index.ts'
import { type GainDesign, tidy, type Wanted } from './design.ts'
import { magnitudeOptimum } from './rules.ts'

/** Mean delay of a sampled loop that computes for one sample and holds for one more, in samples; common practice, no source. */
export const DELAY_SAMPLES = 1.5

export function currentDesigns(
  scenario: Scenario,
  { bandwidth = scenario.drive.currentBandwidth }: Wanted,
): GainDesign[] {
  const { resistance, inductance } = scenario.actuator.motor
  const small = DELAY_SAMPLES / scenario.drive.currentRate
  const optimum = magnitudeOptimum(1 / resistance, inductance / resistance, small)
  const inputs = [
    { label: 'Resistance', value: resistance, unit: 'Ω' },
    { label: 'Inductance', value: inductance, unit: 'H' },
  ]
  return [
    {
      loop: 'current',
      method: 'pole-zero-cancellation',
      label: 'Pole-zero cancellation',
      formula:
        'k_p = L·ω, k_i = R·ω: the zero of the controller lies on the pole of the winding, closed loop 1/(1 + s/ω)',
      source: 'Closed form; Leonhard, Control of Electrical Drives, 3rd ed. (from memory)',
      figures: [...inputs, { label: 'Wanted bandwidth', value: bandwidth, unit: 'rad/s' }],
      edits: [{ path: 'drive.currentBandwidth', value: bandwidth }],
      note: '',
      short: null,
    },
    {
      loop: 'current',
      method: 'magnitude-optimum',
      label: 'Magnitude optimum',
      formula:
        'k_p = L/(2·T_Σ), k_i = R/(2·T_Σ) with T_Σ = 1.5 samples: phase margin 65.5°, overshoot 4.3 % for a lag T_Σ',
      source: 'Kessler, Regelungstechnik 3, 1955 (from memory); 1.5 samples: common practice, no source',
      figures: [...inputs, { label: 'Sum of small lags', value: small, unit: 's' }],
      edits: [{ path: 'drive.currentBandwidth', value: tidy(optimum.gain / inductance) }],
      note: '',
      short: null,
    },
  ]
}
