/** The bench of any job but gripping: its card, its lane and its chart in the frame that all benches have. */
import { type ComponentType, useMemo } from 'react'
import { type JobId, jobOf, jobWords } from '../../../sim/index.ts'
import type { JobChartProps } from '../../read/chart/EffortChart.tsx'
import type { Figure } from '../../read/result/figures.ts'
import { useBesideRuns, useShownRuns } from '../../read/result/useShownRuns.ts'
import type { JobLaneProps } from '../../read/stage/JobLane.tsx'
import { laneSizes } from '../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../read/stage/moments.ts'
import { TimeBar } from '../../read/stage/TimeBar.tsx'
import { useLens } from '../../read/stage/useLens.ts'
import { usePlay } from '../../read/stage/usePlay.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { BenchFrame } from './BenchFrame.tsx'
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
  const job = useScenario((state) => state.scenario.job)
  const figures = useMemo(() => inOrder(job, main), [job, main])
  return (
    <BenchFrame verdicts={<Verdicts figures={figures} main={main.length} />}>
      <Stage {...{ Lane, Chart }} />
    </BenchFrame>
  )
}

/** The figures of a job, those that are always in sight first. */
function inOrder(job: JobId, main: readonly string[]): Figure[] {
  const all = jobOf({ job }).figures as unknown as Figure[]
  const [first, others] = [true, false].map((sight) => all.filter(({ id }) => main.includes(id) === sight))
  return [...first!, ...others!]
}

/** A lane a strategy over one time bar, the axis beside under that of the bench, and the effort over what the job measures it by. */
function Stage({ Lane, Chart }: Pick<Props, 'Lane' | 'Chart'>) {
  const scenario = useScenario((state) => state.scenario)
  const [own, beside] = [useShownRuns(), useBesideRuns()]
  const runs = useMemo(() => [...own, ...beside], [own, beside])
  const [element, width] = useWidth<HTMLDivElement>()
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const { lens, axis, duration } = useLens(runs)
  const play = useMemo(() => ({ lens, ...playSpan(runs, duration) }), [lens, runs, duration])
  usePlay(lens)
  useStart(runs, play)
  useKeys(axis, play)
  // A row an axis; a single strategy has both in one, and on a narrow page each lane has its own.
  const { columns, each } = laneSizes(width, Math.max(1, own.length === 1 ? runs.length : own.length))
  const lanes = columns > 1 ? runs : own.flatMap((run) => [run, ...beside.filter((o) => o.strategy === run.strategy)])
  return (
    <section className="stage" aria-label="Picture">
      <div ref={element} className="lanes" data-columns={columns}>
        {width > 0 && lanes.map((run) => <Lane key={nameOf(run)} {...{ run, runs }} {...each} />)}
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
