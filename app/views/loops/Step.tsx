import { useMemo } from 'react'
import type { LoopAnalysis, LoopId, LoopsResult, SimulatedSteps } from '../../../sim/index.ts'
import { DASHES, loopLabel, nameOf, POINT_SIGNS, pointLabel, WIDTH, WORST_WIDTH } from '../../read/loops/lines.ts'
import { useKept } from '../../read/study/useKept.ts'
import { useScenario } from '../../store/scenario.ts'
import { Chart, type ChartSeries } from '../../ui/Chart.tsx'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { Segments } from '../../ui/Choice.tsx'
import { formatFigure } from '../../ui/format.ts'
import { NumberField } from '../../ui/NumberField.tsx'
import { SimulatedTable } from './SimulatedTable.tsx'
import { named } from './scales.ts'
import { useLoopsState } from './state.ts'

interface Props {
  loop: LoopId
  result: LoopsResult
  analyses: LoopAnalysis[]
  worst: LoopAnalysis | null
}

/** Answer of each stable loop to a step of its set point: of the linear loop, and beneath it that of the time simulation. */
export function Step(props: Props) {
  const simulated = useLoopsState((state) => state.simulated)
  return (
    <div className="loops-step">
      {simulated === 'none' ? (
        <>
          <StepChart {...props} simulated={null} />
          <Friction />
        </>
      ) : (
        <SimulatedStep {...props} />
      )}
    </div>
  )
}

function Friction() {
  const simulated = useLoopsState((state) => state.simulated)
  return (
    <Segments
      label="Simulated step"
      options={[
        { value: 'none', label: 'None' },
        { value: 'off', label: 'Friction off' },
        { value: 'on', label: 'Friction on' },
      ]}
      value={simulated}
      onChoose={(next) => useLoopsState.setState({ simulated: next })}
    />
  )
}

const TIMES = named('×')

function SimulatedStep(props: Props) {
  const { loop } = props
  const scenario = useScenario((state) => state.scenario)
  const friction = useLoopsState((state) => state.simulated === 'on')
  const scale = useLoopsState((state) => state.scale)
  const question = useMemo(() => ({ scenario, loop, friction, scale }), [scenario, loop, friction, scale])
  const { item, failure } = useKept('steps', question)
  const simulated = item?.loop === loop && item.friction === friction ? item : null
  return (
    <>
      <StepChart {...props} simulated={simulated} />
      {failure && <p role="status">No simulated step: {failure}</p>}
      <Friction />
      <NumberField
        label="Step, over the automatic one"
        unit={TIMES}
        value={scale}
        min={0.1}
        max={100}
        resetTo={1}
        note="The automatic step stays clear of the limits of current, voltage and speed and keeps contact."
        onEdit={(next) => useLoopsState.setState({ scale: next })}
      />
      {simulated && simulated.steps.length > 0 && <SimulatedTable result={props.result} simulated={simulated} />}
      {props.analyses.some(({ workingPoint }) => workingPoint === 'sliding') && (
        <p className="loops-small">
          {pointLabel(props.result, 'sliding')}: not simulated, as it is passed on the way, without a balance that a
          step could start from.
        </p>
      )}
    </>
  )
}

const NO_TIME = new Float64Array(0)
const SIMULATED_WIDTH = 4
/** Shown time over 1/crossover of the slowest loop. */
const SPAN = 15

function StepChart({ loop, result, analyses, worst, simulated }: Props & { simulated: SimulatedSteps | null }) {
  const time = useLoopsState((state) => state.time)
  const { lines, end, words, missing } = useMemo(() => linearSteps(result, analyses, worst), [result, analyses, worst])
  const series = useMemo(
    () => [
      ...(simulated?.steps ?? []).map(
        ({ step }): ChartSeries => ({
          label: '',
          color: 'var(--edge)',
          width: SIMULATED_WIDTH,
          values: step.value,
          time: step.time,
        }),
      ),
      ...lines,
    ],
    [lines, simulated],
  )
  return (
    <>
      {lines.length > 0 && (
        <>
          <ChartTools syncKey="loops-step" name="Step response" />
          <Chart
            series={series}
            time={NO_TIME}
            xRange={[0, end]}
            yLabel={`${loopLabel(loop, result.friction.job)} loop: step response`}
            height={250}
            cursorTime={time === null ? null : Math.min(time, end)}
            onCursor={(next) => useLoopsState.setState({ time: next })}
            syncKey="loops-step"
            summary={`Linear answer to a step of 1. ${words}`}
          />
          <ChartReadout syncKey="loops-step" name="Step response" />
        </>
      )}
      {missing.map((line) => (
        <p key={line} className="loops-small">
          {line}
        </p>
      ))}
      <p className="loops-small">
        Thin: linear, to a step of 1; no limit of current, voltage or speed and no friction.
        {simulated &&
          ` Wide, grey: simulated ${simulated.friction ? 'with' : 'without'} dry friction, all else as on the bench, less a run without the step.`}
      </p>
    </>
  )
}

/** Lines of the loops that answer, the time they need, and words for these and for the others. */
function linearSteps(result: LoopsResult, analyses: LoopAnalysis[], worst: LoopAnalysis | null) {
  const shown = analyses.filter(({ stable, crossover, step }) => stable && crossover !== null && step)
  const lines = shown.map(
    (each): ChartSeries => ({
      label: nameOf(each, worst),
      color: 'var(--ink)',
      dash: DASHES[each.workingPoint],
      sign: POINT_SIGNS[each.workingPoint],
      width: each === worst ? WORST_WIDTH : WIDTH,
      values: each.step!.value,
      time: each.step!.time,
    }),
  )
  return {
    lines,
    end: Math.max(...shown.map(({ step, crossover }) => Math.min(SPAN / crossover!, step!.time.at(-1)!)), 1e-3),
    words: shown
      .map((each) => `${pointLabel(result, each.workingPoint)}: highest value ${formatFigure(highest(each))} of 1.`)
      .join(' '),
    missing: analyses
      .filter((each) => !shown.includes(each))
      .map(
        (each) =>
          `${pointLabel(result, each.workingPoint)}: ${each.stable ? 'no crossover' : 'not stable'}, no step response to show.`,
      ),
  }
}

const highest = ({ step }: LoopAnalysis) => step!.value.reduce((most, value) => Math.max(most, value), 0)
