import { type ReactNode, useMemo } from 'react'
import { actTitle, CUT, jobOf, jobWords, RESTORE, shakeOf, strategiesOn, wordingOf } from '../../../sim/index.ts'
import { useReducedMotion } from '../../read/stage/usePlay.ts'
import { SPEEDS, type Speed, useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { Segments } from '../../ui/Choice.tsx'
import type { LiveSession } from './session.ts'

const SPEED_WORDS: Record<Speed, string> = { 1: '1×', 0.1: '1/10×', 0.01: '1/100×' }
const SPEED_OPTIONS = SPEEDS.map((speed) => ({ value: String(speed), label: SPEED_WORDS[speed] }))

/** Everything that a person does to the running plant. */
export function Controls({ session }: { session: LiveSession | null }) {
  const strategy = useLive((live) => live.strategy)
  const job = useScenario((state) => state.scenario.job)
  const options = useMemo(() => strategiesOn(jobOf({ job })).map(({ id, label }) => ({ value: id, label })), [job])
  return (
    <div className="live-controls">
      <div className="live-row">
        <Segments
          bare
          label="Strategy"
          options={options}
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

/** What a person does to machine and work: the acts that the job knows, and the power. */
function Hand({ session }: { session: LiveSession | null }) {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  const able = useLive((live) => live.read?.able.join(' ') ?? '').split(' ')
  const powered = useLive((live) => live.read?.powered ?? true)
  const { live } = jobWords(scenario)
  const power = powered ? CUT : RESTORE
  return (
    <div className="live-row live-hand">
      {jobOf(scenario).live.groups.map(({ id, acts }) => (
        <Group key={id} label={live.groups[id]!}>
          {acts.map((act) => {
            const move = act.shake ? shakeOf(scenario, act.shake) : null
            return (
              <Button
                key={act.id}
                disabled={!able.includes(act.id)}
                title={actTitle(scenario, act.id, move, wordingOf(units)) || undefined}
                onClick={() => session?.act(act.id)}
              >
                {live.acts[act.id]!.label}
              </Button>
            )
          })}
        </Group>
      ))}
      <Group label="Power">
        <Button className="live-power" disabled={!able.includes(power)} onClick={() => session?.act(power)}>
          {powered ? 'Cut the power' : 'Restore the power'}
        </Button>
      </Group>
    </div>
  )
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
