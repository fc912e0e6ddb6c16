/** Fitted values with what stood there before and their intervals, and what was not told. */
import {
  type FittedValue,
  freeName,
  intervalText,
  type Scenario,
  type Untold,
  untoldText,
  wordingOf,
} from '../../../sim/index.ts'
import { fittedWriter } from '../../read/fitted/values.ts'
import { useView } from '../../store/view.ts'
import { NO_FIGURE } from '../../ui/format.ts'

interface Props {
  values: FittedValue[]
  untold: Untold[]
  scenario: Scenario
}

export function Values({ values, untold, scenario }: Props) {
  const system = useView((state) => state.units)
  const words = wordingOf(system)
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="log-scroll" tabIndex={0} aria-label="Values found">
        <table className="log-values">
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              <th scope="col">was</th>
              <th scope="col">is</th>
              <th scope="col">95 % interval</th>
            </tr>
          </thead>
          <tbody>
            {values.map((each) => {
              const write = fittedWriter(scenario, each.path, system)
              const doubted = untold.some(({ kind, paths }) => kind !== 'ratio' && paths.some((p) => p === each.path))
              return (
                <tr key={each.path} data-doubted={doubted}>
                  <th scope="row">{freeName(scenario, each.path)}</th>
                  <td>{each.from === null ? NO_FIGURE : write(each.from)}</td>
                  <td>{write(each.value)}</td>
                  <td>{intervalText(each, write)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </section>
      {untold.length > 0 && (
        <ul className="log-untold" aria-label="What the logs do not tell">
          {untold.map((each) => (
            <li key={JSON.stringify(each)}>{untoldText(scenario, each, words)}</li>
          ))}
        </ul>
      )}
    </>
  )
}
