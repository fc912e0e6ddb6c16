import type { ReactNode } from 'react'
import { type ArmMove, STRATEGIES, shakeOf } from '../../../sim/index.ts'
import { useReducedMotion } from '../../read/stage/usePlay.ts'
import { quantityUnit } from '../../read/units.ts'
import { SPEEDS, type Speed, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import { formatFigure, withUnit } from '../../ui/format.ts'
import type { LiveSession } from './session.ts'

const STRATEGY_OPTIONS = STRATEGIES.map(({ id, label }) => ({ value: id, label }))
const SPEED_WORDS: Record<Speed, string> = { 1: '1×', 0.1: '1/10×', 0.01: '1/100×' }
const SPEED_OPTIONS = SPEEDS.map((speed) => ({ value: String(speed), label: SPEED_WORDS[speed] }))

/** Everything that a person does to the running plant. */
export function Controls({ session }: { session: LiveSession | null }) {
  const strategy = useLive((live) => live.strategy)
  return (
    <div className="live-controls">
      <div className="live-row">
        <Segments
          bare
          label="Strategy"
          options={STRATEGY_OPTIONS}
          value={strategy}
          onChoose={(value) => useLive.setState({ strategy: value })}
        />
        <Pace session={session} />
      </div>
      <Hand session={session} />
    </div>
  )
}

function Pace({ session }: { session: LiveSession | null }) {
  const speed = useLive((live) => live.speed)
  const running = useLive((live) => live.running)
  return (
    <div className="live-pace">
      <Segments
        bare
        label="Speed"
        options={SPEED_OPTIONS}
        value={String(speed)}
        onChoose={(value) => useLive.setState({ speed: SPEEDS.find((each) => String(each) === value) ?? 1 })}
      />
      <Button className="live-pause" aria-keyshortcuts="Space" onClick={() => useLive.setState({ running: !running })}>
        {running ? 'Pause' : 'Go on'}
      </Button>
      <Button quiet onClick={session?.startAnew}>
        Start anew
      </Button>
    </div>
  )
}

const SHAKES: { axis: ArmMove['axis']; label: string }[] = [
  { axis: 'along', label: 'along the grip' },
  { axis: 'across', label: 'across it' },
  { axis: 'up', label: 'up' },
]

function Hand({ session }: { session: LiveSession | null }) {
  const read = useLive((live) => live.read)
  const speed = useLive((live) => live.speed)
  const able = read !== null && read.left === ''
  const powered = able && read.powered
  const closing = read?.phase === 'closing'
  const whole = read !== null && read.lost === null && read.crack === null
  const shaking = read?.moves.some(({ start, duration }) => read.time < start + duration) ?? false
  return (
    <div className="live-row live-hand">
      <Group label="Jaws">
        <Button disabled={!powered || closing} onClick={() => session?.act('close')}>
          Close
        </Button>
        <Button disabled={!powered} onClick={() => session?.act('open')}>
          Open
        </Button>
      </Group>
      <Group label="Part">
        <Button
          disabled={!able || !read.supported}
          title="Takes the support away: what nothing grips stays behind."
          onClick={() => session?.act('lift')}
        >
          Lift
        </Button>
        <Button
          disabled={!able || !read.clear || (whole && read.supported)}
          title="A new part on its support; there has to be room for it between the jaws."
          onClick={() => session?.act('newPart')}
        >
          New part
        </Button>
      </Group>
      <Group label="Shake the arm">
        <Shakes session={session} disabled={!able || (shaking && speed === 1)} />
      </Group>
      <Group label="Power">
        <Button
          className="live-power"
          disabled={!able}
          onClick={() => session?.act(read?.powered ? 'cutPower' : 'restorePower')}
        >
          {read?.powered === false ? 'Restore the power' : 'Cut the power'}
        </Button>
      </Group>
    </div>
  )
}

function Shakes({ session, disabled }: { session: LiveSession | null; disabled: boolean }) {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const { symbol, toShown } = quantityUnit('acceleration', units)
  return SHAKES.map(({ axis, label }) => {
    const { acceleration, duration } = shakeOf(scenario, axis)
    const words = `${withUnit(formatFigure(toShown(Math.abs(acceleration))), symbol)} for ${withUnit(formatFigure(duration), 's')}`
    return (
      <Button
        key={axis}
        disabled={disabled}
        title={`${words}; the support goes first.`}
        onClick={() => session?.shake(axis)}
      >
        {label}
      </Button>
    )
  })
}

function Group({ label, children }: { label: string; children: ReactNode }) {
  return (
    <fieldset className="live-group">
      <legend>{label}</legend>
      {children}
    </fieldset>
  )
}

/** Whoever has asked for less motion is told that this view moves, and what stops it. */
export function MotionNote() {
  const reduced = useReducedMotion()
  return reduced && <p className="live-note">This view moves as long as the plant runs; Pause holds it.</p>
}
