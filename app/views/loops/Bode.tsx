import { useMemo } from 'react'
import type { LoopAnalysis, LoopId, LoopsResult } from '../../../sim/index.ts'
import { FREQUENCY } from '../../read/loops/frequency.ts'
import {
  curveSeries,
  frequencyRange,
  LOOP_LABELS,
  magnitudePoints,
  phasePoints,
  summary,
} from '../../read/loops/lines.ts'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { LogChart } from '../../ui/LogChart.tsx'
import { useLoopsState } from './state.ts'

interface Props {
  loop: LoopId
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

const HERTZ = { unit: 'Hz', is: 2 * Math.PI }
const ZERO = [0]
const HALF_TURN = [-180]
const DEGREES = [15, 30, 45, 90, 180, 360, 720]
const DECIBELS = [1, 2, 5, 10, 20, 40, 60, 80]

/** Open loop in magnitude and phase, all working points, one cursor over both. */
export function Bode({ loop, result, analyses, worst }: Props) {
  const chosen = useLoopsState((state) => state.cursor)
  const shown = useMemo(
    () => ({
      range: frequencyRange(analyses),
      magnitude: curveSeries(analyses, worst, 'magnitude'),
      phase: curveSeries(analyses, worst, 'phase'),
      gainPoints: magnitudePoints(analyses, worst),
      phasePoints: phasePoints(analyses, worst),
      words: summary(result, analyses, worst),
    }),
    [result, analyses, worst],
  )
  const name = `${LOOP_LABELS[loop]} loop, open`
  const common = {
    xRange: shown.range,
    xUnit: 'rad/s',
    other: HERTZ,
    axis: FREQUENCY,
    cursor: chosen ?? worst?.crossover ?? null,
    onCursor: (cursor: number) => useLoopsState.setState({ cursor }),
    syncKey: 'loops',
  }
  return (
    <div className="bode">
      <ChartTools syncKey="loops" name="Frequency response" />
      <LogChart
        {...common}
        series={shown.magnitude}
        yLabel={`${name}: magnitude`}
        yUnit="dB"
        height={220}
        points={shown.gainPoints}
        levels={ZERO}
        floor={-80}
        steps={DECIBELS}
        figures={false}
        summary={`Magnitude over frequency. ${shown.words}`}
      />
      <LogChart
        {...common}
        series={shown.phase}
        yLabel={`${name}: phase`}
        yUnit="°"
        height={220}
        points={shown.phasePoints}
        levels={HALF_TURN}
        floor={-720}
        steps={DEGREES}
        summary={`Phase over frequency. ${shown.words}`}
      />
      <ChartReadout syncKey="loops" name="Frequency response" />
    </div>
  )
}
