import { useMemo, useState } from 'react'
import {
  type Element,
  jobOf,
  jobWords,
  type Scenario,
  type StrategyId,
  simplificationsOf,
  strategiesOn,
} from '../../../sim/index.ts'
import { useKept } from '../../read/study/useKept.ts'
import { Choice, type Option } from '../../ui/Choice.tsx'
import { HeadingAt } from './Contents.tsx'
import { LargestChanges } from './LargestChanges.tsx'
import { SimplificationView } from './SimplificationView.tsx'

const ELEMENTS: Record<Element, string> = {
  bridge: 'Bridge and supply',
  motor: 'Motor',
  transmission: 'Transmission',
  jaws: 'Jaws',
  part: 'Part',
  pads: 'Pads',
  arm: 'Arm',
  joint: 'Joint',
  closure: 'Closure',
  web: 'Web',
  heat: 'Heat',
  measuring: 'Measuring',
  drive: 'Drive',
  stepping: 'Stepping',
}

/** Every simplification with a figure: a closed form, counter-runs of the simulator, or what to measure. */
export function Simplifications({ scenario }: { scenario: Scenario }) {
  const strategies = useMemo(() => strategiesOn(jobOf(scenario)), [scenario])
  const options: Option<StrategyId>[] = strategies.map(({ id, label }) => ({ value: id, label }))
  const [chosen, choose] = useState(strategies[0]!.id)
  const strategy = strategies.some(({ id }) => id === chosen) ? chosen : strategies[0]!.id
  const entries = simplificationsOf(scenario.job)
  const question = useMemo(() => ({ scenario, strategy }), [scenario, strategy])
  const { item, busy, failure } = useKept('model', question)
  const told = item?.strategy === strategy ? item : null
  return (
    <section aria-labelledby="model-simplifications">
      <HeadingAt id="simplifications">What is simplified, and how far off that can be</HeadingAt>
      <p>
        Each entry is bounded for the scenario on the bench: by a closed form, by counter-runs of the simulator in which
        what is uncertain is made different, or not at all, with what to measure. Where a run does not end well its
        figures are those of {jobWords(scenario).rescue.of.replace(/^the/, 'a')} that does not break, since what has
        broken hides how far it would have gone; the verdict is that of the run as it is. Effects do not add up, and
        what is not listed is not thereby exact.
      </p>
      <p>
        The same by command: <code>npm run -s jawbench -- model FILE --strategy {strategy}</code>
      </p>
      <Choice label="Strategy" options={options} value={strategy} onChoose={(next) => choose(next)} />
      <p role="status" aria-busy={busy}>
        {failure
          ? `The counter-runs could not be made: ${failure}`
          : told && !busy
            ? `${told.of} counter-runs made.`
            : 'Making the counter-runs …'}
        {told && busy && <span aria-hidden="true">{` ${told.runs.length} of ${told.of}`}</span>}
      </p>
      {told && <LargestChanges scenario={scenario} told={told} />}
      {[...new Set(entries.map(({ element }) => element))].map((element) => (
        <section key={element} className="model-element" aria-label={`Simplified: ${ELEMENTS[element]}`}>
          <h3>{ELEMENTS[element]}</h3>
          {entries
            .filter((each) => each.element === element)
            .map((each) => (
              <SimplificationView key={each.id} entry={each} scenario={scenario} strategy={strategy} told={told} />
            ))}
        </section>
      ))}
    </section>
  )
}
