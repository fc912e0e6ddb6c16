import { useMemo } from 'react'
import {
  type DriveScales,
  driveResolutions,
  type EnteredLoops,
  enteredWords,
  type JobId,
  resolutionLabel,
  resolutionWords,
  type Scenario,
  studyWords,
  wordingOf,
} from '../../../sim/index.ts'
import { FigureUnit, LoopFigure } from '../../read/loops/Figure.tsx'
import { COLUMNS } from '../../read/loops/figures.ts'
import { standing, worstOfEach } from '../../read/loops/lines.ts'
import { useKept } from '../../read/study/useKept.ts'
import { useView } from '../../store/view.ts'

interface Props {
  scenario: Scenario
  scales: DriveScales
}

/** What one unit amounts to, and the margins that are left with the integers at the drive's own periods. */
export function Entered({ scenario, scales }: Props) {
  const question = useMemo(() => ({ scenario, scales }), [scenario, scales])
  const { item, failure } = useKept('entered', question)
  return (
    <>
      <Resolution {...question} />
      <h3>Margins as entered</h3>
      {failure && <p role="status">No margins: {failure}</p>}
      {!item && !failure && <p className="loops-small">Computing …</p>}
      {item && <Margins entered={item} scales={scales} job={scenario.job} />}
    </>
  )
}

function Resolution({ scenario, scales }: Props) {
  const words = wordingOf(useView((state) => state.units))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="loops-scroll" tabIndex={0} aria-label="Resolution">
      <table className="loops-table">
        <thead>
          <tr>
            <th scope="col">Reading or output</th>
            <th scope="col" className="figure">
              One unit
            </th>
            <th scope="col">What it does to the {studyWords(scenario.job).effort}</th>
          </tr>
        </thead>
        <tbody>
          {driveResolutions(scenario, scales).map((each) => {
            const { step, force } = resolutionWords(each, scenario.job, words)
            return (
              <tr key={each.id}>
                <th scope="row">{resolutionLabel(each, scenario.job)}</th>
                <td className="figure">{step}</td>
                <td className="remark">{force}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}

const SHOWN = COLUMNS.filter(({ id }) =>
  ['crossover', 'phase-margin', 'delay-margin', 'gain-margin', 'peak-sensitivity'].includes(id),
)

/** Each loop at its worst working point. */
function Margins({ entered, scales, job }: { entered: EnteredLoops; scales: DriveScales; job: JobId }) {
  const words = wordingOf(useView((state) => state.units))
  const { loops: result } = entered
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="loops-scroll" tabIndex={0} aria-label="Margins as entered">
        <table className="loops-table">
          <thead>
            <tr>
              <th scope="col">Worst of each loop</th>
              {SHOWN.map(({ id, label, unit, frequency }) => (
                <th key={id} scope="col" className="figure">
                  {label} <FigureUnit unit={unit} frequency={frequency} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {worstOfEach(result).map(({ loop, heading, worst }) => (
              <tr key={loop} data-wrong={worst?.stable === false}>
                <th scope="row">
                  {heading}
                  {worst?.stable === false && `: ${standing(worst)}`}
                </th>
                {SHOWN.map((column) => (
                  <td key={column.id} className="figure">
                    <LoopFigure value={worst && column.value(worst)} frequency={column.frequency} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="loops-small">{enteredWords(entered, scales, job, words)}</p>
    </>
  )
}
