/** What puts fitted values on the bench, and where they are looked at next. */
import { inPlainSpaces, notesWith, readPath, type Scenario } from '../../../sim/index.ts'
import { editMany } from '../../parameters/refusal.ts'
import { axisTitle } from '../../read/axes/names.ts'
import { lentOf } from '../../store/lend.ts'
import { useResults } from '../../store/results.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Button } from '../../ui/Button.tsx'

interface Props {
  found: Scenario
  from: Scenario
  /** What the notes of the scenario keep of it. */
  note: string
  /** Told once the values stand on the bench. */
  onUse(): void
}

export function UseIt({ found, from, note, onUse }: Props) {
  const bench = useScenario((state) => state.scenario)
  const { edits } = lentOf('', found, from)
  const used = edits.every(({ path, value }) => Object.is(readPath(bench, path), value))
  const use = () => {
    const notes = notesWith(bench.notes, inPlainSpaces(note))
    const taken = editMany('log', [...edits, { path: 'notes', value: notes }])
    if (taken) onUse()
    useResults
      .getState()
      .say(
        taken
          ? 'The fitted values are on the bench; undo brings back those before.'
          : 'The bench refuses the fitted values, since they do not go with others that were changed meanwhile.',
      )
  }
  return (
    <div className="log-buttons">
      <Button disabled={used} onClick={use}>
        {used ? 'The fitted values are on the bench' : 'Use on the bench'}
      </Button>
      {used && <Beside from={from} />}
      <Go view="loops" words="Loops and gains" />
      <Go view="spread" words="Spread" />
      <Go view="bench" words="Bench and rescue" />
    </div>
  )
}

/** The axis as it was assumed, beside the fitted one: on the bench, in the report, with gains for each. */
function Beside({ from }: { from: Scenario }) {
  const beside = useScenario((state) => state.beside)
  const stands = beside?.actuator === from.actuator
  const put = () => {
    useScenario.getState().setBeside({ title: `${axisTitle(from)}, as assumed`, actuator: from.actuator })
    useView.setState({ view: 'bench' })
  }
  return (
    <Button disabled={stands} onClick={put}>
      {stands ? 'The assumed axis stands beside it' : 'Assumed axis beside it on the bench'}
    </Button>
  )
}

const Go = ({ view, words }: { view: string; words: string }) => (
  <Button quiet onClick={() => useView.setState({ view })}>
    {words} →
  </Button>
)
