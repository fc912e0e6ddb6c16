import { useMemo } from 'react'
import { isHunting, jobWords, type LiveState, liveSentence, type Scenario, wordingOf } from '../../../sim/index.ts'
import { effortQuantity, type Quantity, quantityUnit } from '../../read/units.ts'
import { useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { formatFigure } from '../../ui/format.ts'
import { Noted, walkNotes } from '../../ui/Noted.tsx'
import { MotionNote } from './Controls.tsx'
import { lookOf } from './jobs.ts'
import { channelAt } from './pictures/seen.ts'

interface Figure {
  label: string
  note: string
  quantity: Quantity
  value(state: LiveState): number
}

function figuresOf(scenario: Scenario): Figure[] {
  const { effort } = jobWords(scenario).live
  const { study } = jobWords(scenario)
  const quantity = effortQuantity(scenario)
  const at = (channel: string) => (state: LiveState) => channelAt(scenario, state)(channel)
  return [
    { label: effort.label, note: effort.mean, quantity, value: ({ figures }) => figures.effort },
    { label: `Peak ${study.effort}`, note: effort.peak, quantity, value: ({ figures }) => figures.peak },
    {
      label: `${study.effort[0]!.toUpperCase()}${study.effort.slice(1)} ripple`,
      note: 'Rms about the mean over the last half second.',
      quantity,
      value: ({ figures }) => figures.ripple,
    },
    {
      label: 'Reversals a second',
      note: `Changes of direction of the motor side over the last half second; with ripple on the ${study.effort} the loop hunts.`,
      quantity: 'number',
      value: ({ figures }) => figures.reversals,
    },
    {
      label: 'Current',
      note: 'Mean over the last half second.',
      quantity: 'current',
      value: ({ figures }) => figures.current,
    },
    { label: 'Winding', note: 'At the newest sample.', quantity: 'temperature', value: at('temperature') },
    ...lookOf(scenario).figures.map(({ channel, ...figure }) => ({ ...figure, value: at(channel) })),
  ]
}

/** Below these a figure is what is left of a decay or the noise of a plant at rest, and reads 0; SI. */
const NOTHING: Partial<Record<Quantity, number>> = {
  force: 1e-6,
  spindleTorque: 1e-4,
  current: 1e-4,
  length: 1e-9,
  speed: 1e-9,
  turns: 0.01,
  number: 1e-6,
}

const flushed = (value: number, quantity: Quantity) => (Math.abs(value) < (NOTHING[quantity] ?? 0) ? 0 : value)

/** What the plant does, in a sentence and in figures, read a few times a second. */
export function Figures() {
  const scenario = useScenario((state) => state.scenario)
  const units = useView((state) => state.units)
  // By themselves: the newest sample changes at every frame.
  const read = useLive((live) => live.read)
  const strategy = useLive((live) => live.strategy)
  const hunting = read !== null && isHunting(read)
  const shown = useMemo(() => figuresOf(scenario), [scenario])
  return (
    <section className="live-figures" aria-label="Figures" data-strategy={strategy}>
      <p className="live-sentence" role="status">
        {read
          ? liveSentence(scenario, read, channelAt(scenario, read), wordingOf(units))
          : 'The plant is being set up.'}
      </p>
      <dl className="figures" onKeyDown={walkNotes}>
        {shown.map(({ label, note, quantity, value }, place) => {
          const unit = quantityUnit(quantity, units)
          return (
            <div key={label} data-hunting={hunting && label.startsWith('Reversals')}>
              <dt>
                <Noted note={note} place={place}>
                  {label}
                </Noted>
              </dt>
              <dd>
                <span className="figure">
                  {formatFigure(read && unit.toShown(flushed(value(read), quantity)))}{' '}
                  <span className="unit">{unit.symbol}</span>
                </span>
              </dd>
            </div>
          )
        })}
      </dl>
      <Clock />
      <MotionNote />
    </section>
  )
}

/** Pace below which it is said [share of the chosen speed]. */
const SLOW = 0.8

function Clock() {
  const read = useLive((live) => live.read)
  const pace = useLive((live) => live.pace)
  const speed = useLive((live) => live.speed)
  const running = useLive((live) => live.running)
  const refusal = useLive((live) => live.refusal)
  return (
    <>
      <p className="live-note">
        <span className="live-time">{(read?.time ?? 0).toFixed(2)} s</span> since the start
        {!running && ', paused'}
        {running && pace < SLOW && `, at ${formatFigure(pace * speed, 2)}× real time, as fast as this machine can`}.
      </p>
      {refusal && (
        <p className="live-note" role="alert">
          The plant goes on with the parameters before: {refusal}
        </p>
      )}
    </>
  )
}
