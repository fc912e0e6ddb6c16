/** Fitted values with what stood there before and their intervals, and what was not told. */
import { type FittedValue, type Scenario, type Untold, untoldText, wordingOf } from '../../../sim/index.ts'
import { ValueTable } from '../../read/fitted/ValueTable.tsx'
import { useView } from '../../store/view.ts'

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
        <ValueTable {...{ values, untold, scenario }} units={system} className="log-values" />
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
