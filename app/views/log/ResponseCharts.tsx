/** Magnitude, phase and coherence over one axis of frequency: measured, as on the bench, as fitted. */
import { useMemo } from 'react'
import { create } from 'zustand'
import { unrelatedBelow } from '../../../sim/index.ts'
import type { ChartSeries } from '../../ui/Chart.tsx'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { LogChart } from '../../ui/LogChart.tsx'
import type { RespondedTold, ResponseQuestion } from '../../worker/log-messages.ts'
import { Key } from './Key.tsx'
import { AFTER_DASH, BEFORE_DASH, HERTZ, SIMULATED } from './look.ts'

const KEY = 'log-response'
const NAME = 'Frequency response, measured over the model'
const useCursor = create<{ at: number | null }>()(() => ({ at: null }))

const NONE: never[] = []
const DEGREES = [15, 30, 45, 90, 180, 360, 720]
const DECIBELS = [1, 2, 5, 10, 20, 40, 60, 80]
const TURNS = [-90, -180]
const FLOORS = { magnitude: -300, phase: -7200 }

type Told = RespondedTold & { about: ResponseQuestion }

export function ResponseCharts({ responded }: { responded: Told }) {
  const cursor = useCursor((state) => state.at)
  const shown = useMemo(() => shownOf(responded), [responded])
  const { measured, coherence, blocks, fit } = responded
  const hertz = shown.all
  const common = {
    xRange: [hertz[0]!, hertz.at(-1)!] as [number, number],
    xUnit: 'Hz',
    other: SWING,
    axis: HERTZ,
    cursor,
    onCursor: (at: number) => useCursor.setState({ at }),
    syncKey: KEY,
    points: NONE,
  }
  const unit = responded.about.shown === 'speed' ? 'm/s per A' : 'm per A'
  return (
    <div className="log-bode">
      <Key fitted={fit !== null} />
      <ChartTools syncKey={KEY} name={NAME} />
      <LogChart
        {...common}
        series={shown.magnitude}
        yLabel={`Magnitude re 1 ${unit}`}
        yUnit="dB"
        height={190}
        levels={NONE}
        floor={FLOORS.magnitude}
        steps={DECIBELS}
        figures={false}
        summary={`Magnitude over frequency, measured and of the model, from ${HERTZ.figure(hertz[0]!)} to ${HERTZ.figure(hertz.at(-1)!)}.`}
      />
      <LogChart
        {...common}
        series={shown.phase}
        yLabel="Phase"
        yUnit="°"
        height={170}
        levels={TURNS}
        floor={FLOORS.phase}
        steps={DEGREES}
        figures={coherence === null}
        summary={`Phase over frequency, measured and of the model, in ${measured.frequency.length} frequencies.`}
      />
      {coherence && (
        <LogChart
          {...common}
          series={shown.coherence}
          yLabel="Coherence"
          yUnit=""
          height={120}
          levels={blocks > 1 ? [unrelatedBelow(blocks)] : NONE}
          floor={0}
          summary="Coherence of what drives the axis and what it shows; beneath the thin line it may be that of unrelated signals."
        />
      )}
      <ChartReadout syncKey={KEY} name={NAME} />
    </div>
  )
}

const TURN = 2 * Math.PI
const SWING = { unit: 'rad/s', is: 1 / TURN }

const toHertz = (omega: Float64Array) => omega.map((each) => each / TURN)

/** Frequencies that count are drawn firmly, all of them faintly beneath where some do not. */
function shownOf({ measured, coherence, counts, before, after }: Told) {
  const all = toHertz(measured.frequency)
  const rows = [...counts.keys()].filter((k) => counts[k] === 1)
  const some = rows.length < all.length
  const kept = (values: Float64Array) => Float64Array.from(rows, (k) => values[k]!)
  const time = kept(all)
  const lines = (column: 'magnitude' | 'phase'): ChartSeries[] => [
    {
      label: 'on the bench',
      color: SIMULATED,
      dash: BEFORE_DASH,
      width: 1.5,
      time: toHertz(before.frequency),
      values: before[column],
    },
    ...(after
      ? [
          {
            label: 'fitted',
            color: SIMULATED,
            dash: AFTER_DASH,
            width: 2.25,
            time: toHertz(after.frequency),
            values: after[column],
          },
        ]
      : []),
    ...(some ? [{ label: '', color: 'var(--ink)', faint: true, time: all, values: measured[column] }] : []),
    { label: 'measured', color: 'var(--ink)', width: 1, time, values: kept(measured[column]) },
  ]
  return {
    all,
    magnitude: lines('magnitude'),
    phase: lines('phase'),
    coherence: coherence ? [{ label: 'measured', color: 'var(--ink)', width: 1, time: all, values: coherence }] : [],
  }
}
