/** Quantities that go together: wide parts that are heavy, cold grease that is stiff. */

import { shownUnit } from '../../../sim/index.ts'
import { edit, endGesture, useFault } from '../../parameters/refusal.ts'
import { nameOf } from '../../read/spread/name.ts'
import { useScenario } from '../../store/scenario.ts'
import { Button } from '../../ui/Button.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { NumberField } from '../../ui/NumberField.tsx'

const PATH = 'spread.together'

export function Together() {
  const scenario = useScenario((state) => state.scenario)
  const fault = useFault(PATH)
  const { varies, together } = scenario.spread
  const paths = varies.map(({ path }) => path)
  const options = paths.map((path) => ({ value: path, label: nameOf(scenario, path) }))
  const put = (next: typeof together, gesture?: string, typed?: boolean) => edit(PATH, next, gesture, typed)
  const free = freePair(paths, together)
  return (
    <details className="usual" open={together.length > 0}>
      <summary>What goes together</summary>
      {together.map((pair, at) => (
        <fieldset className="set" key={pair.paths.join(' ')}>
          <legend>Correlation</legend>
          <Button quiet className="set-remove" onClick={() => put(together.toSpliced(at, 1))}>
            remove
          </Button>
          {[0, 1].map((end) => (
            <Pick
              key={end}
              label={end === 0 ? 'One' : 'The other'}
              bare
              options={options}
              value={pair.paths[end]!}
              onChoose={(path) => put(together.with(at, { ...pair, paths: pair.paths.with(end, path) }))}
            />
          ))}
          <NumberField
            label="Correlation"
            symbol="ρ"
            unit={shownUnit({ unit: '' }, 'si')}
            value={pair.correlation}
            min={-0.999}
            max={0.999}
            note="1: they rise together, −1: one falls as the other rises, 0: neither tells anything of the other."
            onEdit={(correlation, gesture, typed) => put(together.with(at, { ...pair, correlation }), gesture, typed)}
            onEnd={endGesture}
          />
        </fieldset>
      ))}
      <span className="field-fault" aria-live="polite">
        {fault}
      </span>
      <Button disabled={!free} onClick={() => free && put([...together, { paths: free, correlation: 0.5 }])}>
        Let two go together
      </Button>
    </details>
  )
}

/** Two that are not yet said to go together. */
function freePair(paths: string[], together: { paths: string[] }[]): string[] | undefined {
  const pairs = paths.flatMap((a, at) => paths.slice(at + 1).map((b) => [a, b]))
  return pairs.find(([a, b]) => !together.some(({ paths: pair }) => pair.includes(a!) && pair.includes(b!)))
}
