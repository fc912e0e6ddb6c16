/** The customer view: the job on a few slides in large type, for a screen at the end of a table. */
import { type ComponentType, useEffect, useMemo, useRef, useState } from 'react'
import { jobOf, type StrategyId, shownAs, strategiesOn } from '../../../sim/index.ts'
import { useBesideRuns, useShownRuns } from '../../read/result/useShownRuns.ts'
import { windowWords } from '../../read/result/windowWords.ts'
import { playSpan } from '../../read/stage/moments.ts'
import { useLens } from '../../read/stage/useLens.ts'
import { type Play, togglePlay, usePlay, useReducedMotion } from '../../read/stage/usePlay.ts'
import { useBeside } from '../../store/beside.ts'
import { useNominal } from '../../store/lent.ts'
import { canFillScreen, closePresent, fillScreen } from '../../store/present.ts'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import type { TimeLens } from '../../ui/timeLens.ts'
import { Axes } from './Axes.tsx'
import { Because } from './Because.tsx'
import { ClipMaker } from './clip/ClipMaker.tsx'
import { Job } from './Job.tsx'
import { Outcome } from './Outcome.tsx'
import { Parts } from './Parts.tsx'
import { Run } from './Run.tsx'
import { Spoken } from './Spoken.tsx'
import { type Command, type Slide, type SlideId, slideAt, slidesFor, within } from './slides.ts'
import { stopBeside, stopsOf, tellingOf } from './standing.ts'
import { useCommands } from './useCommands.ts'
import { textSize, useSize } from './useSize.ts'
import './board.css'
import './present.css'
import './slides.css'

export interface SlideProps {
  /** On the axis of the bench, and on the one beside it, where one stands there. */
  runs: RunView[]
  beside: RunView[]
  /** The runs that play: all, or both axes of one strategy. */
  told: RunView[]
  onTell(strategy: StrategyId): void
  /** Places on the axis of time. */
  axis: TimeLens
  play: Play
  duration: number
  /** Size of its type [px]. */
  text: number
}

const COMPONENTS: Record<SlideId, ComponentType<SlideProps>> = {
  job: Job,
  run: Run,
  outcome: Outcome,
  parts: Parts,
  axes: Axes,
  why: Because,
}

export function Present() {
  const paired = useBeside()?.fitted.ok === true
  const varies = useNominal().spread.varies.length > 0
  const scenario = useScenario((state) => state.scenario)
  const slides = useMemo(() => slidesFor({ scenario, paired, varies }), [scenario, paired, varies])
  const slide = within(
    useView((state) => state.slide),
    slides,
  )
  const [root, size] = useSize<HTMLElement>()
  const runs = useShownRuns()
  const beside = useBesideRuns()
  const { told, tell } = useTold(runs, beside)
  const { lens, axis, duration } = useLens(told, true)
  const play = useMemo(() => ({ lens, ...playSpan(told, duration) }), [lens, told, duration])
  const still = useReducedMotion()
  usePlay(lens)
  useStart(slideAt(slide, slides).id === 'run', [...runs, ...beside], paired ? 2 : 1, play.start, still)
  const stops = useMemo(() => stopsOf(told, duration), [told, duration])
  const obey = (command: Command) => {
    const { time, set } = useView.getState()
    switch (command.kind) {
      case 'go':
        return set({ slide: command.slide, playing: false })
      case 'play':
        return togglePlay(play)
      case 'leave':
        return closePresent()
      case 'step': {
        const stop = stopBeside(stops, time, command.by)
        if (stop !== null) set({ time: stop, playing: false })
        else if (command.slide !== null) set({ slide: command.slide, playing: false })
      }
    }
  }
  useCommands({ slide, still, slides }, obey)
  const place = useRef<HTMLElement>(null)
  useEffect(() => {
    place.current?.focus()
    return () => document.getElementById('view')?.focus()
  }, [])
  const { id, title } = slideAt(slide, slides)
  const Slide = COMPONENTS[id]
  const text = size ? textSize(size) : 16
  return (
    <section ref={root} className="present" style={{ fontSize: text }} aria-label="Customer view">
      <Head />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a low window makes it scroll, which has to work by keyboard */}
      <section ref={place} className="present-slide" tabIndex={0} aria-roledescription="slide" aria-label={title}>
        {size && <Slide {...{ runs, beside, told, axis, play, duration, text }} onTell={tell} />}
      </section>
      <Bar slide={slide} slides={slides} runs={told} lens={lens} onCommand={obey} />
      <Spoken slide={slide} slides={slides} runs={told} />
    </section>
  )
}

/** With two axes the run is told of one strategy at a time, both of its axes large; first of the one that tells most. */
function useTold(runs: RunView[], beside: RunView[]) {
  const [chosen, tell] = useState<StrategyId | null>(null)
  const told = useMemo(() => {
    if (beside.length === 0) return runs
    const strategy = runs.some((run) => run.strategy === chosen) ? chosen : tellingOf(runs, beside)
    return [...runs, ...beside].filter((run) => run.strategy === strategy)
  }, [runs, beside, chosen])
  return { told, tell }
}

function Head() {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { span } = windowWords(scenario, units)
  return (
    <header className="present-head">
      <h1>{scenario.name}</h1>
      <p>
        {shownAs(scenario).window} <strong>{span}</strong>
      </p>
    </header>
  )
}

/** The play starts before the contact when its slide is opened, once everything has been simulated. */
function useStart(open: boolean, runs: RunView[], axes: number, start: number, still: boolean) {
  const shown = useView((state) => state.shown)
  const job = useScenario((state) => jobOf(state.scenario))
  const wanted = axes * strategiesOn(job).filter(({ id }) => shown.includes(id)).length
  const ready = runs.length > 0 && runs.length === wanted && runs.every(({ status }) => status !== 'running')
  const [started, setStarted] = useState(false)
  useEffect(() => {
    if (!open) setStarted(false)
    if (!open || !ready || started) return
    setStarted(true)
    useView.getState().set(still ? { time: 0, playing: false } : { time: start, playing: true })
  }, [open, ready, started, start, still])
}

interface BarProps {
  slide: number
  slides: Slide[]
  runs: RunView[]
  lens: TimeLens
  onCommand(command: Command): void
}

/** The same by hand, for a touch screen. */
function Bar({ slide, slides, runs, lens, onCommand }: BarProps) {
  const playing = useView((state) => state.playing)
  const plays = slideAt(slide, slides).id === 'run'
  const full = useFullScreen()
  return (
    <footer className="present-bar">
      <Button disabled={slide === 0} onClick={() => onCommand({ kind: 'go', slide: slide - 1 })}>
        Back
      </Button>
      <Button disabled={slide === slides.length - 1} onClick={() => onCommand({ kind: 'go', slide: slide + 1 })}>
        Next
      </Button>
      <p className="present-place">
        {slide + 1} of {slides.length}: {slideAt(slide, slides).title}
      </p>
      {plays && (
        <Button className="play" aria-keyshortcuts="Space" onClick={() => onCommand({ kind: 'play' })}>
          {playing ? 'Pause' : 'Play'}
        </Button>
      )}
      {plays && (
        <>
          <Button aria-keyshortcuts="ArrowUp" onClick={() => onCommand({ kind: 'step', by: -1, slide: null })}>
            Step back
          </Button>
          <Button aria-keyshortcuts="ArrowDown" onClick={() => onCommand({ kind: 'step', by: 1, slide: null })}>
            Step on
          </Button>
        </>
      )}
      <span className="present-gap" />
      <ClipMaker runs={runs} lens={lens} />
      {canFillScreen() && !full && <Button onClick={fillScreen}>Full screen</Button>}
      <Button aria-keyshortcuts="Escape" onClick={closePresent}>
        Leave
      </Button>
    </footer>
  )
}

/** Whether the page fills the screen. The browser's own Escape ends the full screen, and with it the view. */
function useFullScreen(): boolean {
  const [full, setFull] = useState(() => document.fullscreenElement !== null)
  useEffect(() => {
    const changed = () => {
      const now = document.fullscreenElement !== null
      setFull(now)
      // A dialog that was open has had the Escape.
      if (!now && !document.querySelector('dialog[open]')) closePresent()
    }
    document.addEventListener('fullscreenchange', changed)
    return () => document.removeEventListener('fullscreenchange', changed)
  }, [])
  return full
}
