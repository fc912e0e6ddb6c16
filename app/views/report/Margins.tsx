import { type LoopsResult, missingLoops, type Scenario, STIFFNESS_SPREAD, shownAs } from '../../../sim/index.ts'
import { FigureUnit, LoopFigure } from '../../read/loops/Figure.tsx'
import { COLUMNS } from '../../read/loops/figures.ts'
import { standing, worstOfEach } from '../../read/loops/lines.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import type { Answered } from '../../read/study/useKept.ts'
import type { UnitSystem } from '../../read/units.ts'

const SHOWN = COLUMNS.filter(({ id }) => ['crossover', 'phase-margin', 'gain-margin', 'peak-sensitivity'].includes(id))

interface Props {
  scenario: Scenario
  units: UnitSystem
  loops: Answered<LoopsResult>
}

/** Each loop at the working point that comes closest to instability. */
export function Margins({ scenario, units, loops: { item, failure } }: Props) {
  return (
    <section className="report-margins" aria-label="Margins at the worst working point">
      {item && !failure ? (
        <>
          <MarginRows result={item} />
          <p className="report-small">
            Worst of all working points, at a target of {textAt(scenario, 'strategies.sensedForce.target', units)} with{' '}
            {shownAs(scenario).stiff} as stiff as stated or {100 * STIFFNESS_SPREAD} % softer or stiffer; linear loops
            without dry friction. {missingLoops(item)}
          </p>
        </>
      ) : (
        <p>{failure ? `The loops could not be computed: ${failure}` : 'The margins are being worked out.'}</p>
      )}
    </section>
  )
}

function MarginRows({ result }: { result: LoopsResult }) {
  return (
    <table className="report-table">
      <thead>
        <tr>
          <th scope="col">Margins, worst at</th>
          {SHOWN.map(({ id, label, unit, frequency }) => (
            <th key={id} scope="col">
              {label} <FigureUnit unit={unit} frequency={frequency} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {worstOfEach(result).map(({ loop, heading, worst }) => (
          <tr key={loop}>
            <th scope="row">{heading}</th>
            {SHOWN.map((column, index) => (
              <td key={column.id}>
                {worst && !worst.stable ? (
                  index === 0 && <b>{standing(worst)}</b>
                ) : (
                  <LoopFigure value={worst && column.value(worst)} frequency={column.frequency} />
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
