import { Fragment } from 'react'
import { type Edit, type LoopAnalysis, readPath, type Scenario } from '../../../sim/index.ts'
import { editMany, useFault } from '../../parameters/refusal.ts'
import { worstOf } from '../../read/loops/lines.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import { knowsUnit, shownUnit, type UnitSystem } from '../../read/units.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'
import { formatFigure, formatPlain } from '../../ui/format.ts'
import { UnitText } from '../../ui/Symbols.tsx'
import type { TriedDesign } from '../../worker/studies.ts'

/** One method: its gains beside those on the bench, what becomes of the loop, formula, source and what went in. */
export function Method({ tried: { design, loops } }: { tried: TriedDesign }) {
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
          <p>{outcome(loops)}</p>
        </>
      )}
      <p role="status" className="field-fault">
        {fault}
      </p>
      <p>
        <Formula text={design.formula} />
      </p>
      <p className="loops-small">
        {design.figures
          .map(({ label, value, unit }) => {
            const shown = knowsUnit(unit) ? shownUnit({ unit }, system) : shownUnit({ unit }, 'si')
            return `${label} ${formatFigure(shown.toShown(value))} ${shown.symbol}`.trim()
          })
          .join(', ')}
        .
      </p>
      <p className="loops-small">Source: {design.source}</p>
    </article>
  )
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
          const field = fieldAt(scenario.actuator.kind, path)
          const quantity = field?.kind === 'quantity' ? field.schema : { title: path, unit: '' }
          const unit = shownUnit(quantity, system, scenario.part.exponent)
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

/** `k_p` becomes an italic k with an upright subscript. */
function Formula({ text }: { text: string }) {
  return text.split(/(\p{L}_[\p{L}\d]+)/u).map((piece, place) => {
    const [base, below] = piece.split('_')
    return place % 2 === 0 ? (
      <Fragment key={place}>{piece}</Fragment>
    ) : (
      <Fragment key={place}>
        <i>{base}</i>
        <sub>{below}</sub>
      </Fragment>
    )
  })
}

/** The worst case with the designed gains, in a sentence. */
function outcome(loops: LoopAnalysis[]): string {
  const worst = worstOf(loops)
  if (!worst) return 'The bench does not take these gains, or there is no loop to close with them.'
  const where = worst.workingPoint === 'free' ? 'in free air' : `on the ${worst.workingPoint} part`
  if (!worst.stable) return `Unstable ${where}.`
  const { phaseMargin, gainMargin, peakSensitivity } = worst.margins!
  const gain = gainMargin === null ? 'no bound on the gain' : `gain margin ${formatFigure(gainMargin)} dB`
  return `Worst ${where}: phase margin ${formatFigure(phaseMargin)}°, ${gain}, peak sensitivity ${formatFigure(peakSensitivity)}.`
}
