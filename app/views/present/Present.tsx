/** The customer view: the grip on a few slides in large type, for a screen at the end of a table. */
import { type ComponentType, useEffect, useMemo, useRef, useState } from 'react'
import { useShownRuns } from '../../read/result/useShownRuns.ts'
import { windowWords } from '../../read/result/windowWords.ts'
import { playSpan } from '../../read/stage/moments.ts'
import { useLens } from '../../read/stage/useLens.ts'
import { type Play, togglePlay, usePlay, useReducedMotion } from '../../read/stage/usePlay.ts'
import { canFillScreen, closePresent, fillScreen } from '../../store/present.ts'
import type { RunView } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import type { TimeLens } from '../../ui/timeLens.ts'
import { Because } from './Because.tsx'
import { ClipMaker } from './clip/ClipMaker.tsx'
import { Grip } from './Grip.tsx'
import { Job } from './Job.tsx'
import { Outcome } from './Outcome.tsx'
import { Spoken } from './Spoken.tsx'
import { type Command, SLIDES, type SlideId, slideAt, within } from './slides.ts'
import { stopBeside, stopsOf } from './standing.ts'
import { useCommands } from './useCommands.ts'
import { textSize, useSize } from './useSize.ts'
import './board.css'
import './present.css'
import './slides.css'

export interface SlideProps {
  runs: RunView[]
  /** Places on the axis of time. */
  axis: TimeLens
  play: Play
  duration: number
  /** Size of its type [px]. */
  text: number
}

const COMPONENTS: Record<SlideId, ComponentType<SlideProps>> = { job: Job, grip: Grip, outcome: Outcome, why: Because }

export function Present() {
  const slide = within(useView((state) => state.slide))
  const [root, size] = useSize<HTMLElement>()
  const runs = useShownRuns()
  const { lens, axis, duration } = useLens(runs, true)
  const play = useMemo(() => ({ lens, ...playSpan(runs, duration) }), [lens, runs, duration])
  const still = useReducedMotion()
  usePlay(lens)
  useStart(slide, runs, play.start, still)
  const stops = useMemo(() => stopsOf(runs, duration), [runs, duration])
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
  useCommands({ slide, still }, obey)
  const place = useRef<HTMLElement>(null)
  useEffect(() => {
    place.current?.focus()
    return () => document.getElementById('view')?.focus()
  }, [])
  const { id, title } = slideAt(slide)
  const Slide = COMPONENTS[id]
  const text = size ? textSize(size) : 16
  return (
    <section ref={root} className="present" style={{ fontSize: text }} aria-label="Customer view">
      <Head />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a low window makes it scroll, which has to work by keyboard */}
      <section ref={place} className="present-slide" tabIndex={0} aria-roledescription="slide" aria-label={title}>
        {size && <Slide {...{ runs, axis, play, duration, text }} />}
      </section>
      <Bar slide={slide} runs={runs} lens={lens} onCommand={obey} />
      <Spoken slide={slide} runs={runs} />
    </section>
  )
}

function Head() {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { span } = windowWords(scenario, units)
  return (
    <header className="present-head">
      <h1>{scenario.name}</h1>
      <p>
        Force window <strong>{span}</strong>
      </p>
    </header>
  )
}

/** The grip starts before the contact when its slide is opened, once everything has been simulated. */
function useStart(slide: number, runs: RunView[], start: number, still: boolean) {
  const wanted = useView((state) => state.shown.length)
  const ready = runs.length > 0 && runs.length === wanted && runs.every(({ status }) => status !== 'running')
  const open = slideAt(slide).id === 'grip'
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
  runs: RunView[]
  lens: TimeLens
  onCommand(command: Command): void
}

/** The same by hand, for a touch screen. */
function Bar({ slide, runs, lens, onCommand }: BarProps) {
  const playing = useView((state) => state.playing)
  const grip = slideAt(slide).id === 'grip'
  const full = useFullScreen()
  return (
    <footer className="present-bar">
      <Button disabled={slide === 0} onClick={() => onCommand({ kind: 'go', slide: slide - 1 })}>
        Back
      </Button>
      <Button disabled={slide === SLIDES.length - 1} onClick={() => onCommand({ kind: 'go', slide: slide + 1 })}>
        Next
      </Button>
      <p className="present-place">
        {slide + 1} of {SLIDES.length}: {slideAt(slide).title}
      </p>
      {grip && (
        <Button className="play" aria-keyshortcuts="Space" onClick={() => onCommand({ kind: 'play' })}>
          {playing ? 'Pause' : 'Play'}
        </Button>
      )}
      {grip && (
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
