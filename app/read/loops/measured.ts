/**
 * A loop with the measured axis in the place of the modelled one: the loop in free air times measured over modelled, frequency by
 * frequency. Knows no React.
 */
import { axisResponse, type LoopAnalysis, type Scenario } from '../../../sim/index.ts'
import type { ChartSeries } from '../../ui/Chart.tsx'
import type { RespondedTold, ResponseQuestion } from '../../worker/log-messages.ts'

/** Loops that go through the axis and through nothing that only a part has. */
const THROUGH = ['position', 'velocity']

export interface MeasuredLoop {
  magnitude: ChartSeries
  phase: ChartSeries
}

/** Null where the loop is another one, or none of the frequencies that count lies within it. */
export function measuredLoop(
  analyses: readonly LoopAnalysis[],
  scenario: Scenario,
  { measured, counts, input, about }: RespondedTold & { about: ResponseQuestion },
): MeasuredLoop | null {
  const free = analyses.find(({ loop, workingPoint }) => workingPoint === 'free' && THROUGH.includes(loop))
  if (!free?.curves) return null
  const { curves } = free
  const [first, last] = [curves.frequency[0]!, curves.frequency.at(-1)!]
  const rows = [...counts.keys()].filter(
    (k) => counts[k] === 1 && measured.frequency[k]! >= first && measured.frequency[k]! <= last,
  )
  if (rows.length === 0) return null
  const time = Float64Array.from(rows, (k) => measured.frequency[k]!)
  const at = axisResponse(scenario, about.shown, 0, input)
  const model = Array.from(time, at)
  const line = (values: Float64Array): ChartSeries => ({
    label: 'Measured',
    color: 'var(--ink)',
    width: 1,
    time,
    values,
  })
  const turns = (degrees: number) => degrees - 360 * Math.round(degrees / 360)
  return {
    magnitude: line(
      time.map((omega, n) => {
        const gain = 20 * Math.log10(Math.hypot(model[n]!.re, model[n]!.im))
        return along(curves.frequency, curves.magnitude, omega) + measured.magnitude[rows[n]!]! - gain
      }),
    ),
    phase: line(
      time.map((omega, n) => {
        const angle = (180 * Math.atan2(model[n]!.im, model[n]!.re)) / Math.PI
        return along(curves.frequency, curves.phase, omega) + turns(measured.phase[rows[n]!]! - angle)
      }),
    ),
  }
}

/** Value between two rows, in a straight line over the logarithm. */
function along(frequency: Float64Array, values: Float64Array, omega: number): number {
  const k = Math.max(
    1,
    frequency.findIndex((each) => each >= omega),
  )
  const [from, to] = [frequency[k - 1]!, frequency[k]!]
  const share = Math.log(omega / from) / Math.log(to / from)
  return values[k - 1]! + share * (values[k]! - values[k - 1]!)
}
