import { useMemo } from 'react'
import type { LoopAnalysis, LoopId, LoopsResult } from '../../../sim/index.ts'
import { Chart, type ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure } from '../../ui/format.ts'
import { DASHES, LOOP_LABELS, nameOf, pointLabel, WIDTH, WORST_WIDTH } from './lines.ts'
import { useLoopsState } from './state.ts'

interface Props {
  loop: LoopId
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

const NO_TIME = new Float64Array(0)

/** Answer of each stable loop to a unit step of its set point. */
export function Step({ loop, result, analyses, worst }: Props) {
  const time = useLoopsState((state) => state.time)
  const { series, end, words, missing } = useMemo(() => {
    const shown = analyses.filter(({ stable, crossover, step }) => stable && crossover !== null && step)
    const series = shown.map(
      (each): ChartSeries => ({
        label: nameOf(each, worst),
        color: 'var(--ink)',
        dash: DASHES[each.workingPoint],
        width: each === worst ? WORST_WIDTH : WIDTH,
        values: each.step!.value,
        time: each.step!.time,
      }),
    )
    return {
      series,
      end: Math.max(...shown.map(({ step }) => step!.time.at(-1)!), 1e-3),
      words: shown
        .map((each) => `${pointLabel(result, each.workingPoint)}: highest value ${formatFigure(highest(each))} of 1.`)
        .join(' '),
      missing: analyses
        .filter((each) => !shown.includes(each))
        .map(
          (each) =>
            `${pointLabel(result, each.workingPoint)}: ${each.stable ? 'no crossover' : 'unstable'}, no step response to show.`,
        ),
    }
  }, [result, analyses, worst])
  return (
    <div className="loops-step">
      {series.length > 0 && (
        <Chart
          series={series}
          time={NO_TIME}
          xRange={[0, end]}
          yLabel={`${LOOP_LABELS[loop]} loop: step response`}
          height={250}
          cursorTime={time === null ? null : Math.min(time, end)}
          onCursor={(next) => useLoopsState.setState({ time: next })}
          syncKey="loops-step"
          summary={`Linear answer to a step of 1. ${words}`}
        />
      )}
      {missing.map((line) => (
        <p key={line} className="loops-small">
          {line}
        </p>
      ))}
      <p className="loops-small">Linear, to a step of 1; no limit of current, voltage or speed and no friction.</p>
    </div>
  )
}

const highest = ({ step }: LoopAnalysis) => step!.value.reduce((most, value) => Math.max(most, value), 0)
