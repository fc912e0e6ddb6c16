/** Gain of the force loop for a wanted margin at every working point, on the exact sampled loop. Nothing where there is nothing to press on. */
import { jobOf } from '../../job/index.ts'
import type { Scenario } from '../../scenario/index.ts'
import { analyseLoops } from '../analyse.ts'
import type { WorkingPointOptions } from '../working-point.ts'
import { forceSlopes } from './axis-figures.ts'
import { type GainDesign, tidy, type Wanted } from './design.ts'

/** Peak sensitivity of the SIMC rule on a pure delay with integrator (Skogestad 2003, table 3: 1.59), rounded. */
export const PEAK_SENSITIVITY = 1.6
const FORCE = 'strategies.sensedForce'
const SYMBOLS = { N: 'F', N·m: 'T' }

export function forceDesigns(scenario: Scenario, wanted: Wanted, options: WorkingPointOptions): GainDesign[] {
  const most = wanted.peakSensitivity ?? PEAK_SENSITIVITY
  if (!(most > 1)) throw new RangeError(`peak sensitivity: given ${most}, allowed above 1`)
  const integral = wanted.integral ?? scenario.strategies.sensedForce.ki > 0
  const slopes = forceSlopes(scenario, options)
  if (!slopes) return []
  const gainsFor = (kp: number) => ({ kp, ki: integral ? (slopes.least * kp * kp) / 4 : 0, kd: 0 })
  const fits = (kp: number) => worstPeak(withGains(scenario, gainsFor(kp)), options) <= most
  const kp = largestFitting(fits, 1 / slopes.stiffest)
  const { effort, travel } = jobOf(scenario).output
  const [symbol, unit] = [`d${SYMBOLS[effort]}/d${travel === 'rad' ? 'φ' : 'x'}`, `${effort}/${travel}`]
  const least = slopes.least < slopes.softest ? [{ label: `${symbol}, least`, value: slopes.least, unit }] : []
  const design: GainDesign = {
    loop: 'force',
    method: 'stiffness-range',
    label: 'Margin over the stiffness range',
    formula: integral
      ? `Largest k_p with peak sensitivity M_s within the wanted one at every working point, k_i = k′·k_p²/4 with the least k′ = ${symbol} of any`
      : 'Largest k_p with peak sensitivity M_s within the wanted one at every working point',
    source: integral
      ? 'Search on the sampled loop; integral time 4/(k′·k_p): Skogestad, J. Process Control 13 (2003) 291–309'
      : 'Search on the sampled loop',
    figures: [
      { label: 'Wanted peak sensitivity', value: most, unit: '' },
      ...least,
      { label: `${symbol}, softest`, value: slopes.softest, unit },
      { label: `${symbol}, stiffest`, value: slopes.stiffest, unit },
    ],
    edits: [],
    note: '',
    short: null,
  }
  if (kp === null)
    return [
      {
        ...design,
        note: 'No gain reaches that margin: tune the velocity loop inside it first, or allow a higher peak.',
      },
    ]
  const gains = gainsFor(kp)
  return [
    {
      ...design,
      edits: Object.entries(gains).map(([name, value]) => ({ path: `${FORCE}.${name}`, value: tidy(value) })),
    },
  ]
}

function withGains(scenario: Scenario, gains: { kp: number; ki: number; kd: number }): Scenario {
  const { strategies } = scenario
  return { ...scenario, strategies: { ...strategies, sensedForce: { ...strategies.sensedForce, ...gains } } }
}

/** Largest peak sensitivity at any working point; Infinity where one of the loops is unstable. */
function worstPeak(scenario: Scenario, options: WorkingPointOptions): number {
  const { loops } = analyseLoops(scenario, { ...options, loops: ['force'], count: 120 })
  return Math.max(...loops.map(({ margins }) => margins?.peakSensitivity ?? Number.POSITIVE_INFINITY))
}

/** The largest value that fits, within eight decades below and four above `guess`; null if none does. */
function largestFitting(fits: (value: number) => boolean, guess: number): number | null {
  let low = guess
  let decades = 0
  while (!fits(low)) {
    low /= 10
    if (++decades > 8) return null
  }
  let high = low * 10
  for (decades = 0; fits(high) && decades < 4; decades++) {
    low = high
    high *= 10
  }
  for (let n = 0; n < 14; n++) {
    const middle = Math.sqrt(low * high)
    if (fits(middle)) low = middle
    else high = middle
  }
  return low * 0.9995 // so that rounding to four digits does not pass it
}
