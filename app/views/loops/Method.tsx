import {
  type DesignOutcome,
  designWords,
  type Edit,
  exponentOf,
  type Limit,
  readPath,
  type Scenario,
  wordingOf,
} from '../../../sim/index.ts'
import { sentence } from '../../parameters/faultText.ts'
import { editMany, useFault } from '../../parameters/refusal.ts'
import { FigureUnit, LoopFigure } from '../../read/loops/Figure.tsx'
import { frequencyText } from '../../read/loops/frequency.ts'
import { SHORT } from '../../read/loops/lines.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { knowsUnit, quantityUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { formatFigure, formatPlain } from '../../ui/format.ts'
import { FormulaText, UnitText } from '../../ui/Symbols.tsx'
import type { TriedDesign } from '../../worker/studies.ts'

/** One method: its gains beside those on the bench, what becomes of the loop, formula, source and what went in. */
export function Method({ tried: { design, outcomes, faults }, limits }: { tried: TriedDesign; limits: Limit[] }) {
  const scenario = useScenario((state) => state.scenario)
  const system = useView((state) => state.units)
  const fault = useFault(`design.${design.method}`)
  const same = design.edits.every(({ path, value }) => readPath(scenario, path) === value)
  return (
    <article className="loops-method" aria-label={design.label}>
      <div className="loops-method-head">
        <h3>{design.label}</h3>
        {design.edits.length > 0 && (
          <Button
            disabled={same}
            aria-label={`Use these: ${design.label}`}
            onClick={() => editMany(`design.${design.method}`, design.edits)}
          >
            {same ? 'On the bench' : 'Use these'}
          </Button>
        )}
      </div>
      {design.note && <p>{design.note}</p>}
      {design.edits.length > 0 && (
        <>
          <GainTable edits={design.edits} scenario={scenario} system={system} />
          {faults.map((each) => (
            <p key={each.path}>The bench does not take these gains: {sentence(each, '', scenario, system)}</p>
          ))}
          {outcomes.length > 0 && <Outcomes method={design.label} outcomes={outcomes} />}
          {designWords(design.short, outcomes, limits, wordingOf(system), scenario.job).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </>
      )}
      <p role="status" className="field-fault">
        {fault}
      </p>
      <p>
        <FormulaText text={design.formula} />
      </p>
      <p className="loops-small">
        {design.figures
          .map(({ label, value, unit }) => {
            if (unit === 'rad/s') return `${label} ${frequencyText(value)}`
            const shown = figureUnit(unit, system)
            return `${label} ${formatFigure(shown.toShown(value))} ${shown.symbol}`.trim()
          })
          .join(', ')}
        .
      </p>
      <p className="loops-small">Source: {design.source}</p>
    </article>
  )
}

function figureUnit(unit: string, system: UnitSystem) {
  if (unit === 's') return quantityUnit('shortTime', system)
  return shownUnit({ unit }, knowsUnit(unit) ? system : 'si')
}

interface GainTableProps {
  edits: Edit[]
  scenario: Scenario
  system: UnitSystem
}

function GainTable({ edits, scenario, system }: GainTableProps) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Gain</th>
          <th scope="col" className="figure">
            designed
          </th>
          <th scope="col" className="figure">
            on the bench
          </th>
        </tr>
      </thead>
      <tbody>
        {edits.map(({ path, value }) => {
          const field = fieldAt(scenario.actuator.kind, path, scenario.job)
          const quantity = field?.kind === 'quantity' ? field.schema : { title: path, unit: '' }
          const unit = shownUnit(quantity, system, exponentOf(scenario))
          return (
            <tr key={path}>
              <th scope="row">
                {quantity.title} <UnitText symbol={unit.symbol} />
              </th>
              <td className="figure">{formatPlain(unit.toShown(value as number), 4)}</td>
              <td className="figure">{formatPlain(unit.toShown(readPath(scenario, path) as number), 4)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/** What the loop does with the designed gains, a row for each working point. */
function Outcomes({ method, outcomes }: { method: string; outcomes: DesignOutcome[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="loops-scroll" tabIndex={0} aria-label={`What these gains give: ${method}`}>
      <table>
        <thead>
          <tr>
            <th scope="col">Gives</th>
            {GIVEN.map(({ label, unit, frequency, note }) => (
              <th key={label} scope="col" className="figure" title={note}>
                {label} <FigureUnit unit={unit} frequency={frequency} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {outcomes.map((outcome) => (
            <tr key={outcome.workingPoint}>
              <th scope="row">{SHORT[outcome.workingPoint]}</th>
              {GIVEN.map(({ label, value, frequency }) => (
                <td key={label} className="figure">
                  <LoopFigure value={value(outcome)} frequency={frequency} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

interface Given {
  label: string
  unit: string
  frequency?: boolean
  note: string
  value(outcome: DesignOutcome): number | null
}

const GIVEN: Given[] = [
  {
    label: 'Band',
    unit: 'rad/s',
    frequency: true,
    note: 'Bandwidth: lowest frequency at which the closed loop falls through −3 dB.',
    value: ({ bandwidth }) => bandwidth,
  },
  {
    label: 'Over',
    unit: '%',
    note: 'Overshoot of the linear answer to a step of the set point.',
    value: ({ overshoot }) => overshoot && overshoot * 100,
  },
  { label: 'Phase', unit: '°', note: 'Phase margin.', value: ({ phaseMargin }) => phaseMargin },
  { label: 'Gain', unit: 'dB', note: 'Gain margin.', value: ({ gainMargin }) => gainMargin },
  { label: 'Peak', unit: '', note: 'Peak sensitivity.', value: ({ peakSensitivity }) => peakSensitivity },
]
