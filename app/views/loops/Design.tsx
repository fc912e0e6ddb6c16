import { Fragment, useMemo } from 'react'
import { type Limit, type LoopId, limitName, limitWords, type Wanted, wordingOf } from '../../../sim/index.ts'
import { frequencyText } from '../../read/loops/frequency.ts'
import { loopLabel } from '../../read/loops/lines.ts'
import { useKept } from '../../read/study/useKept.ts'
import { shownUnit } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Segments } from '../../ui/Choice.tsx'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { NumberField } from '../../ui/NumberField.tsx'
import { FormulaText } from '../../ui/Symbols.tsx'
import type { DesignAnswer } from '../../worker/studies.ts'
import { Method } from './Method.tsx'
import { useLoopsState } from './state.ts'

/** Gains from what the engineer asks for, each method with its formula and source, and what stands against more. */
export function Design({ loop }: { loop: LoopId }) {
  const scenario = useScenario((state) => state.scenario)
  const wanted = useLoopsState((state) => state.wanted[loop])
  const question = useMemo(() => ({ scenario, loop, wanted }), [scenario, loop, wanted])
  const { item, failure } = useKept('designs', question)
  const answer = item?.loop === loop ? item : null
  return (
    <section className="loops-design" aria-label="Gain design">
      <h2>{loopLabel(loop, scenario.job)} loop: gains</h2>
      <Wishes loop={loop} wanted={wanted} answer={answer} />
      {failure && <p role="status">No gains: {failure}</p>}
      {!answer && !failure && <p className="loops-small">Computing …</p>}
      {answer?.designs.map((tried) => (
        <Method key={tried.design.method} tried={tried} limits={answer.limits} />
      ))}
      {answer?.designs.length === 0 && <p>There is nothing that could be pressed on, and so no gain to be designed.</p>}
      {answer && answer.limits.length > 0 && <Limits limits={answer.limits} />}
    </section>
  )
}

interface Wish {
  key: 'bandwidth' | 'damping' | 'peakSensitivity'
  label: string
  unit: string
  min: number
  max: number
  note: string
}

const BANDWIDTH: Wish = {
  key: 'bandwidth',
  label: 'Wanted bandwidth',
  unit: 'rad/s',
  min: 1,
  max: 1e5,
  note: 'Place of the closed poles; automatic leaves a usual phase margin to the lags of this axis.',
}
const DAMPING: Wish = {
  key: 'damping',
  label: 'Wanted damping',
  unit: '',
  min: 0.1,
  max: 3,
  note: 'Damping ratio of the dominant pair of poles.',
}
const MARGIN: Wish = {
  key: 'peakSensitivity',
  label: 'Largest peak sensitivity',
  unit: '',
  min: 1.05,
  max: 5,
  note: 'Wanted margin at every working point; smaller is safer. 1.6 leaves a modulus margin of 0.63.',
}
const WISHES: Record<LoopId, Wish[]> = {
  current: [BANDWIDTH],
  position: [BANDWIDTH, DAMPING],
  velocity: [BANDWIDTH, DAMPING],
  force: [MARGIN],
}

function Wishes({ loop, wanted, answer }: { loop: LoopId; wanted: Wanted; answer: DesignAnswer | null }) {
  const integral = useScenario((state) => state.scenario.strategies.sensedForce.ki > 0)
  const wish = (change: Wanted) =>
    useLoopsState.setState((state) => ({ wanted: { ...state.wanted, [loop]: { ...wanted, ...change } } }))
  return (
    <div className="loops-wishes">
      {WISHES[loop].map(({ key, label, unit, min, max, note }) => {
        const value = wanted[key] ?? automatic(answer, key)
        if (value === undefined) return null
        return (
          <Fragment key={key}>
            <NumberField
              label={label}
              unit={shownUnit({ unit }, 'si')}
              value={value}
              min={min}
              max={max}
              note={note}
              onEdit={(next) => wish({ [key]: next })}
              clear={
                wanted[key] === undefined ? undefined : { words: 'automatic', act: () => wish({ [key]: undefined }) }
              }
            />
            {key === 'bandwidth' && <p className="loops-small">{hertz(value)}</p>}
          </Fragment>
        )
      })}
      {loop === 'force' && (
        <Segments
          label="Integral"
          options={[
            { value: 'without', label: 'Without' },
            { value: 'with', label: 'With' },
          ]}
          value={(wanted.integral ?? integral) ? 'with' : 'without'}
          onChoose={(next) => wish({ integral: next === 'with' })}
        />
      )}
    </div>
  )
}

/** Beside what is in rad/s. */
const hertz = (omega: number) => withUnit(formatFigure(omega / (2 * Math.PI)), 'Hz')

const FIGURE: Record<Wish['key'], string> = {
  bandwidth: 'Wanted bandwidth',
  damping: 'Wanted damping',
  peakSensitivity: 'Wanted peak sensitivity',
}

/** What the design took where nothing was wished for. */
const automatic = (answer: DesignAnswer | null, key: Wish['key']): number | undefined =>
  answer?.designs.flatMap(({ design }) => design.figures).find(({ label }) => label.startsWith(FIGURE[key]))?.value

function Limits({ limits }: { limits: Limit[] }) {
  const words = wordingOf(useView((state) => state.units))
  const job = useScenario((state) => state.scenario.job)
  const said = limits.map((limit) => ({ ...limit, ...limitWords(limit, words, job) }))
  return (
    <div className="loops-limits">
      <h3>What limits the bandwidth</h3>
      <ol>
        {said.map(({ id, kind, crossover, because, remedy }) => (
          <li key={id}>
            <strong>
              {limitName({ kind })}:{' '}
              {Number.isFinite(crossover) ? `crossover up to ${frequencyText(crossover)}` : 'sets no bound'}
            </strong>
            <p>
              <FormulaText text={because} />
            </p>
            <p>More: {remedy}</p>
          </li>
        ))}
      </ol>
    </div>
  )
}
