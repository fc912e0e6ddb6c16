import { useMemo } from 'react'
import type { LoopAnalysis, LoopId, LoopsResult } from '../../../sim/index.ts'
import { FREQUENCY } from '../../read/loops/frequency.ts'
import {
  curveSeries,
  frequencyRange,
  loopLabel,
  magnitudePoints,
  phasePoints,
  summary,
} from '../../read/loops/lines.ts'
import { measuredLoop } from '../../read/loops/measured.ts'
import { useLog } from '../../store/log.ts'
import { useScenario } from '../../store/scenario.ts'
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
  const scenario = useScenario((state) => state.scenario)
  const responded = useLog((state) => state.responded)
  const measured = useMemo(
    () => responded && measuredLoop(analyses, scenario, responded),
    [responded, analyses, scenario],
  )
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
  const lines = useMemo(
    () => ({
      magnitude: measured ? [...shown.magnitude, measured.magnitude] : shown.magnitude,
      phase: measured ? [...shown.phase, measured.phase] : shown.phase,
    }),
    [shown, measured],
  )
  const more = measured ? ' The measured axis in the place of the modelled one, in free air, is drawn thin.' : ''
  const name = `${loopLabel(loop, result.friction.job)} loop, open`
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
        series={lines.magnitude}
        yLabel={`${name}: magnitude`}
        yUnit="dB"
        height={220}
        points={shown.gainPoints}
        levels={ZERO}
        floor={-80}
        steps={DECIBELS}
        figures={false}
        summary={`Magnitude over frequency. ${shown.words}${more}`}
      />
      <LogChart
        {...common}
        series={lines.phase}
        yLabel={`${name}: phase`}
        yUnit="°"
        height={220}
        points={shown.phasePoints}
        levels={HALF_TURN}
        floor={-720}
        steps={DEGREES}
        summary={`Phase over frequency. ${shown.words}${more}`}
      />
      <ChartReadout syncKey="loops" name="Frequency response" />
      {measured && (
        <p className="loops-small">
          The thin line is this loop in free air with the measured axis in the place of the modelled one: what was
          measured over what the model of the bench would show, times the loop. It is gone when the log is closed.
        </p>
      )}
    </div>
  )
}
