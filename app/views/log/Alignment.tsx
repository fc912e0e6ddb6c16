/** How the logs lie over the model: where they begin to tell, and at which travel their position reads 0, dragged or typed. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react'
import { alignmentTexts, jobOf, logOf, logWords, type Scenario, takenText, wordingOf } from '../../../sim/index.ts'
import { quantityUnit } from '../../read/units.ts'
import { useLog } from '../../store/log.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Choice } from '../../ui/Choice.tsx'
import { NumberField } from '../../ui/NumberField.tsx'
import { roundTo } from '../../ui/number.ts'
import { useWidth } from '../../ui/useWidth.ts'
import type { Laid } from '../../worker/log-messages.ts'

const PART = [
  { value: 'auto', label: 'Where a force rises' },
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const

const DRIVERS = [
  { value: 'auto', label: 'As the log allows' },
  { value: 'target', label: 'The position reference' },
  { value: 'motorTravel', label: 'The measured position' },
  { value: 'current', label: 'The measured current' },
] as const

const DRIVER_WORDS = {
  target: 'the position reference',
  motorTravel: 'the measured position',
  current: 'the measured current',
} as const

export function Alignment({ laid, names }: { laid: Laid | null; names: string[] }) {
  const units = useView((state) => state.units)
  const words = wordingOf(units)
  const { part = null, drivenBy = null, origin = 0 } = useScenario(({ logs }) => logs.wish)
  const scenario = useScenario((state) => state.scenario)
  const said = logWords(scenario.job)
  const stroke = strokeOf(scenario)
  const endGesture = useScenario((state) => state.endGesture)
  const setWish = useLog((state) => state.setWish)
  return (
    <section className="log-alignment" aria-label="How it lies over the model">
      <h2>How it lies over the model</h2>
      {laid?.alignment.map((each, at) => {
        const { setup, step } = laid.recordings[at]!
        return (
          <p key={names[at]}>
            {names.length > 1 && <b>{names[at]}: </b>}
            {alignmentTexts(scenario.job, each, step, words).join(' ')} The simulated axis is driven by{' '}
            {DRIVER_WORDS[setup.drivenBy]}, {setup.contact ? said.onto : said.free}.
          </p>
        )
      })}
      {laid?.taken.map((each) => (
        <p key={each.header}>{takenText(each)}.</p>
      ))}
      <div className="log-settings">
        {!logOf(scenario).always && (
          <Choice
            label={said.meets}
            options={PART}
            value={part === null ? 'auto' : part ? 'yes' : 'no'}
            onChoose={(value) => setWish({ part: value === 'auto' ? null : value === 'yes' })}
          />
        )}
        <Choice
          label="What drives the simulated axis"
          options={DRIVERS}
          value={drivenBy ?? 'auto'}
          onChoose={(value) => setWish({ drivenBy: value === 'auto' ? null : value })}
        />
        <NumberField
          label="Travel where its position reads 0"
          unit={quantityUnit(wayQuantity(scenario), units)}
          value={origin}
          min={-stroke}
          max={stroke}
          note={said.origin}
          onEdit={(value, gesture) => setWish({ origin: value }, gesture)}
          onEnd={endGesture}
        />
      </div>
      {laid && <Ruler laid={laid} />}
    </section>
  )
}

/** Way of the output that a ruler shows [m or rad]: a spindle that turns on and on goes as far again as it takes to its work. */
function strokeOf(scenario: Scenario): number {
  const { touch, stroke } = jobOf(scenario).workOf(scenario)
  return jobOf(scenario).output.travel === 'rad' ? 2 * Math.max(touch, 1) : stroke
}

const wayQuantity = (scenario: Scenario) => (jobOf(scenario).output.travel === 'rad' ? 'turns' : 'length')

/** px: a row of figures, and the way of the log beneath the stroke of the axis. */
const HEIGHT = 58
const ROOM = 8

/** The way that the logs go, laid over the stroke; dragged sideways, or moved by keys, it sets the origin. */
function Ruler({ laid }: { laid: Laid }) {
  const [box, width] = useWidth<HTMLDivElement>()
  const units = useView((state) => state.units)
  const scenario = useScenario((state) => state.scenario)
  const origin = useScenario(({ logs }) => logs.wish.origin ?? 0)
  const endGesture = useScenario((state) => state.endGesture)
  const setWish = useLog((state) => state.setWish)
  const held = useRef<{ x: number; origin: number; name: string } | null>(null)
  const unit = quantityUnit(wayQuantity(scenario), units)
  const said = logWords(scenario.job)
  const words = wordingOf(units)
  const text = (way: number) => (wayQuantity(scenario) === 'turns' ? words.turns(way) : words.length(way))
  const way = wayOf(laid)
  if (!way) return null
  const stroke = strokeOf(scenario)
  const touch = jobOf(scenario).workOf(scenario).touch
  const [from, to] = [Math.min(0, way.least + origin), Math.max(stroke, way.most + origin)]
  const room = Math.max(1, width - 2 * ROOM)
  const x = (travel: number) => ROOM + (room * (travel - from)) / (to - from)
  const grain = (to - from) / room
  const put = (next: number, gesture: string) => setWish({ origin: Math.min(stroke, Math.max(-stroke, next)) }, gesture)
  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    held.current = { x: event.clientX, origin, name: `origin#${++gestures}` }
  }
  const move = ({ clientX }: PointerEvent) => {
    if (!held.current) return
    const { x: start, origin: before, name } = held.current
    put(roundTo(before + (clientX - start) * grain, grain), name)
  }
  const up = () => {
    held.current = null
    endGesture()
  }
  const press = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key]
    if (step === undefined) return
    event.preventDefault()
    put(origin + step * (event.shiftKey ? 10 : 1) * roundTo(stroke / 400, stroke / 400), 'origin by keys')
  }
  const [a, b] = [x(way.least + origin), x(way.most + origin)]
  return (
    <div className="log-ruler" ref={box}>
      <svg width={width} height={HEIGHT} aria-hidden="true">
        <path className="log-stroke" d={`M${x(0)} 30H${x(stroke)}M${x(0)} 24v12M${x(stroke)} 24v12`} />
        <text x={x(0)} y={16}>
          {said.start}
        </text>
        <path className="log-touch" d={`M${x(touch)} 22V52`} />
        <text x={x(touch)} y={16} textAnchor={x(touch) > width / 2 ? 'end' : 'start'}>
          {said.touches}
        </text>
        <rect className="log-way" x={a} y={38} width={Math.max(2, b - a)} height={12} />
        <path className="log-zero" d={`M${x(origin)} 34v20`} />
      </svg>
      <div
        className="log-hand"
        style={{ left: Math.min(a, b - 24), width: Math.max(24, b - a) }}
        role="slider"
        tabIndex={0}
        aria-label="Way of the logs along the stroke"
        aria-valuemin={unit.toShown(-stroke)}
        aria-valuemax={unit.toShown(stroke)}
        aria-valuenow={unit.toShown(origin)}
        aria-valuetext={`Position 0 lies at ${text(origin)} of travel; the logs go from ${text(way.least + origin)} to ${text(way.most + origin)}`}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
        onKeyDown={press}
        onKeyUp={endGesture}
      />
    </div>
  )
}

let gestures = 0

/** Least and most position of all logs, as they read; null: none has one. */
function wayOf({ recordings }: Laid): { least: number; most: number } | null {
  const all = recordings.flatMap(({ overlays }) => overlays.filter(({ channel }) => channel === 'motorTravel'))
  if (all.length === 0) return null
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const { measured } of all)
    for (const value of measured) {
      if (value < least) least = value
      if (value > most) most = value
    }
  return { least, most }
}
