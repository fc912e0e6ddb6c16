/** The bench of any job but gripping: its card, its lane and its chart in the frame that all benches have. */
import { type ComponentType, useMemo } from 'react'
import { jobWords, type StrategyId } from '../../../sim/index.ts'
import type { JobChartProps } from '../../read/chart/EffortChart.tsx'
import { useShownRuns } from '../../read/result/useShownRuns.ts'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import type { JobLaneProps } from '../../read/stage/JobLane.tsx'
import { laneSizes } from '../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../read/stage/moments.ts'
import { TimeBar } from '../../read/stage/TimeBar.tsx'
import { useLens } from '../../read/stage/useLens.ts'
import { usePlay } from '../../read/stage/usePlay.ts'
import { openPresent } from '../../store/present.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { useWidth } from '../../ui/useWidth.ts'
import { BenchFrame } from './BenchFrame.tsx'
import { JobCard } from './JobCard.tsx'
import { useKeys, useStart } from './stage/habits.ts'
import { Transport } from './stage/Transport.tsx'
import { Verdicts } from './verdicts/Verdicts.tsx'

interface Props {
  /** Figures of a card that are always in sight. */
  main: readonly string[]
  Lane: ComponentType<JobLaneProps>
  Chart: ComponentType<JobChartProps>
}

export function JobBench({ main, Lane, Chart }: Props) {
  const Card = useMemo(
    () =>
      ({ strategy }: { strategy: StrategyId }) => <JobCard {...{ strategy, main }} />,
    [main],
  )
  return (
    <BenchFrame
      head={
        <>
          <WindowLine />
          <Button onClick={openPresent}>Present</Button>
        </>
      }
      verdicts={<Verdicts Card={Card} />}
    >
      <Stage {...{ Lane, Chart }} />
    </BenchFrame>
  )
}

/** A lane a strategy over one time bar, and the effort over what the job measures it by. */
function Stage({ Lane, Chart }: Pick<Props, 'Lane' | 'Chart'>) {
  const scenario = useScenario((state) => state.scenario)
  const runs = useShownRuns()
  const [element, width] = useWidth<HTMLDivElement>()
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const { lens, axis, duration } = useLens(runs)
  const play = useMemo(() => ({ lens, ...playSpan(runs, duration) }), [lens, runs, duration])
  usePlay(lens)
  useStart(runs, play)
  useKeys(axis, play)
  const { columns, each } = laneSizes(width, Math.max(1, runs.length))
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && runs.map((run) => <Lane key={nameOf(run)} {...{ run, runs }} {...each} />)}
        {width > 0 && runs.length === 0 && <NothingYet />}
      </div>
      <div className="stage-controls">
        <Transport runs={runs} play={play} />
        {width > 0 && <TimeBar {...{ runs, axis, play, duration, width }} />}
      </div>
      {width > 0 && <Chart {...{ scenario, runs, time, units, width }} />}
    </section>
  )
}

function NothingYet() {
  const scenario = useScenario((state) => state.scenario)
  const none = useView((state) => state.shown.length === 0)
  const { act, acted } = jobWords(scenario).study
  return (
    <p>
      {none
        ? `No strategy is shown: choose one to see it ${act}.`
        : `Nothing has been ${acted} yet: the first run is on its way.`}
    </p>
  )
}
