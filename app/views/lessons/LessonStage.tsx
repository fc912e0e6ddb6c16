/** What a lesson's runs look like: the pictures at one instant, the traces under them, and a verdict for each. */
import { type ComponentProps, useCallback, useMemo } from 'react'
import {
  type JobId,
  type Lesson,
  type LessonRun,
  lessonText,
  percent,
  rangeText,
  type Scenario,
  studyWords,
} from '../../../sim/index.ts'
import { CapLane, OpenCap } from '../../read/cap/CapLane.tsx'
import { OpenPress, PressLane } from '../../read/press/PressLane.tsx'
import { VerdictWord } from '../../read/result/VerdictWord.tsx'
import { reasonText } from '../../read/result/words.ts'
import type { JobLaneProps } from '../../read/stage/JobLane.tsx'
import { Lane, OpenPicture } from '../../read/stage/Lane.tsx'
import { laneSizes } from '../../read/stage/laneSize.ts'
import { nameOf, playSpan } from '../../read/stage/moments.ts'
import { scalesOf } from '../../read/stage/scales.ts'
import { TimeBar } from '../../read/stage/TimeBar.tsx'
import { togglePlay, usePlay } from '../../read/stage/usePlay.ts'
import { OpenWeb, WebLane } from '../../read/web/WebLane.tsx'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { buildLens, flatLens } from '../../ui/timeLens.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { LessonChart } from './LessonChart.tsx'
import type { Figures } from './prose.tsx'

interface Props {
  lesson: Lesson
  runs: LessonRun[]
  figures: Figures
}

export function LessonStage({ lesson, runs, figures }: Props) {
  const [element, width] = useWidth<HTMLDivElement>()
  const units = useView((state) => state.units)
  const named = useCallback((label: string) => lessonText(label, figures, units), [figures, units])
  const views = useMemo(() => viewsOf(seenOf(runs), named), [runs, named])
  const scales = useMemo(() => scalesOf(views.filter(({ scenario }) => scenario.job === 'grip')), [views])
  const duration = longest(views)
  const axis = useMemo(() => flatLens(duration), [duration])
  const play = useMemo(() => ({ lens: lensOf(views), ...playSpan(views, duration) }), [views, duration])
  usePlay(play.lens)
  const { columns, each } = sizesOf(width, views.length)
  return (
    <div className="lesson-stage">
      <section className="stage" aria-label="Picture">
        <div ref={element} className="lanes" data-columns={columns}>
          {width > 0 && views.map((run) => <OneLane key={nameOf(run)} {...{ run, runs: views, scales, ...each }} />)}
        </div>
        <div className="stage-controls">
          <PlayButton onPlay={() => togglePlay(play)} />
          {width > 0 && <TimeBar runs={views} {...{ axis, play, duration, width }} />}
        </div>
      </section>
      <section className="traces" aria-label="Traces">
        <ChartTools syncKey="lesson" name="Traces" />
        {lesson.traces.map((channel, place) => (
          <LessonChart
            key={channel}
            runs={views}
            timeAxis={place === lesson.traces.length - 1}
            {...{ channel, duration }}
          />
        ))}
        <ChartReadout syncKey="lesson" name="Traces" />
      </section>
      <section className="lesson-cards" aria-label="Verdicts">
        {views.map((run) => (
          <Card key={nameOf(run)} run={run} />
        ))}
      </section>
      <PartShares runs={runs} named={named} />
    </div>
  )
}

interface OneLaneProps extends JobLaneProps {
  scales: ComponentProps<typeof Lane>['scales']
}

/** The picture of the job that a run carries out. */
function OneLane({ scales, ...shown }: OneLaneProps) {
  const { job } = shown.run.scenario
  if (job === 'press') return <PressLane {...shown} />
  if (job === 'cap') return <CapLane {...shown} />
  if (job === 'web') return <WebLane {...shown} />
  return <Lane {...shown} scales={scales} names={false} />
}

/** Runs that grip many parts play the one in the file, which is seen once. */
function seenOf(runs: LessonRun[]): LessonRun[] {
  const alone = runs.filter(({ parts }) => !parts)
  return alone.length > 0 ? alone : runs.slice(0, 1)
}

/** Of many parts, the share that each run holds as required. */
function PartShares({ runs, named }: { runs: LessonRun[]; named(label: string): string }) {
  const studied = runs.flatMap(({ id, label, strategy, parts }) => (parts ? [{ id, label, strategy, parts }] : []))
  if (studied.length === 0) return null
  return (
    <section className="lesson-parts" aria-label="Many parts">
      {studied.map(({ id, label, strategy, parts }) => (
        <div key={id}>
          <h3>{named(label)}</h3>
          <p>
            <b>{percent(parts.share)}</b> {studyWords(runs[0]!.scenario.job).many}{' '}
            <span className="unit">({rangeText(parts)})</span>
          </p>
          <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
            <rect className="lesson-parts-all" width={100} y={3} height={7} />
            <rect width={100 * parts.share} y={3} height={7} style={{ fill: `var(--strategy-${strategy})` }} />
            <path d={`M${100 * parts.low} 1.2H${100 * parts.high}`} />
          </svg>
        </div>
      ))}
    </section>
  )
}

/** The picture of a job before its run. */
function BeforeIt(shown: { scenario: Scenario; width: number; height: number }) {
  const { job } = shown.scenario
  if (job === 'press') return <OpenPress {...shown} />
  if (job === 'cap') return <OpenCap {...shown} />
  if (job === 'web') return <OpenWeb {...shown} />
  return <OpenPicture {...shown} names />
}

const BEGINS: Record<JobId, string> = {
  grip: 'the jaws close',
  press: 'the ram presses',
  cap: 'the head turns',
  web: 'the roll pulls',
}

/** What waits to be run, with the names of its parts. */
export function OpenGripper({ scenario }: { scenario: Scenario }) {
  const [element, width] = useWidth<HTMLDivElement>()
  const { alone } = laneSizes(width, 1)
  return (
    <section ref={element} className="stage" aria-label="Picture">
      {width > 0 && <BeforeIt {...{ scenario, ...alone }} />}
      <p className="lesson-empty">
        Answer the question and run it: {BEGINS[scenario.job]}, and the traces come under the picture.
      </p>
    </section>
  )
}

function PlayButton({ onPlay }: { onPlay(): void }) {
  const playing = useView((state) => state.playing)
  return (
    <Button className="play lesson-play" onClick={onPlay}>
      {playing ? 'Pause' : 'Play'}
    </Button>
  )
}

function Card({ run }: { run: RunView }) {
  const units = useView((state) => state.units)
  const name = nameOf(run)
  return (
    <article aria-label={name} data-strategy={run.strategy}>
      <h3>{name}</h3>
      <p className="lesson-word">
        <VerdictWord result={run.result!} />
      </p>
      <p>{reasonText(run, units)}</p>
      <Button onClick={() => openOnBench(run)}>
        Open on the bench<span className="sr-only">: {name}</span>
      </Button>
    </article>
  )
}

/** One step for undo, which brings the person's own scenario back. */
function openOnBench({ scenario, strategy }: RunView) {
  const { shown, set } = useView.getState()
  useScenario.getState().load(scenario)
  set({ view: 'bench', shown: shown.includes(strategy) ? shown : [...shown, strategy] })
}

/** Dashes by which runs of one strategy are told apart. */
const DASHES = [undefined, '7 4', '2 3', '12 3 2 3']

const viewsOf = (runs: LessonRun[], fill: (label: string) => string): RunView[] =>
  runs.map(({ label, strategy, scenario, result, traces }, place) => ({
    strategy,
    scenario,
    result,
    traces,
    look: { name: fill(label), dash: DASHES[place % DASHES.length] },
    status: 'done',
    rows: traces.time.length,
    revision: place,
  }))

const longest = (runs: RunView[]) => Math.max(0.01, ...runs.map(({ scenario }) => scenario.run.duration))

/** What the loss of power does is as quick as an arm move, and is slowed like one [s]. */
const AFTER_LOSS = 0.15

function lensOf(runs: RunView[]) {
  const contacts = runs.flatMap(({ result }) => result?.metrics.contactTime ?? [])
  const { arm, events } = runs[0]?.scenario ?? {}
  const moves = (arm?.moves ?? []).map(({ start, duration }) => ({ start, end: start + duration }))
  const loss = events?.powerLoss
  if (loss) moves.push({ start: loss.time, end: loss.time + AFTER_LOSS })
  return buildLens({ duration: longest(runs), contacts, moves })
}

/** Lower than on the bench, so that the traces stay in sight [px]; four pictures stand two by two. */
const HIGHEST = [250, 250, 250, 200, 160]

function sizesOf(width: number, count: number) {
  const { columns, each } = laneSizes(width, count === 4 ? 2 : count)
  return { columns, each: { ...each, height: Math.min(each.height, HIGHEST[count] ?? 160) } }
}
