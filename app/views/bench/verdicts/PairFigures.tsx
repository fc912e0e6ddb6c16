import { textIn, wordingOf } from '../../../../sim/index.ts'
import { Ring } from '../../../read/axes/Ring.tsx'
import type { Figure } from '../../../read/result/figures.ts'
import { differenceText } from '../../../read/result/words.ts'
import { type RunView, useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { NO_FIGURE } from '../../../ui/format.ts'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import { FigureValue } from './FigureValue.tsx'

interface Props {
  /** On the bench, and on the axis beside. */
  runs: readonly [RunView | undefined, RunView | undefined]
  figures: readonly Figure[]
}

/** The figures of one strategy on both axes, each with its distance from the run before or from the chosen pin. */
export function PairFigures({ runs, figures }: Props) {
  const units = useView((state) => state.units)
  return (
    <table className="pair-figures" onKeyDown={walkNotes}>
      <thead>
        <tr>
          <td />
          <th scope="col">bench</th>
          <th scope="col">
            <Ring />
            beside
          </th>
        </tr>
      </thead>
      <tbody>
        {figures.map((figure, place) => (
          <tr key={figure.id}>
            <th scope="row">
              <Noted note={textIn(figure.note, wordingOf(units))} place={place}>
                {figure.label}
              </Noted>
            </th>
            {runs.map((run, n) => (
              <td key={n === 0 ? 'own' : 'beside'}>{run?.result ? <Cell run={run} figure={figure} /> : NO_FIGURE}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Cell({ run, figure }: { run: RunView; figure: Figure }) {
  const units = useView((state) => state.units)
  const reference = useReference(run)?.result
  const result = run.result!
  const before = reference && figure.id !== 'stepError' ? figure.value(reference) : null
  const change = differenceText(figure, figure.value(result), before, units)
  return (
    <>
      <FigureValue figure={figure} result={result} scenario={run.scenario} units={units} />
      {change && <span className="change">{change}</span>}
    </>
  )
}

/** The run that figures are compared with: the one before on the same axis, or the pin that the person chose. */
export function useReference({ strategy, axis }: Pick<RunView, 'strategy' | 'axis'>): RunView | undefined {
  const against = useView((state) => state.against)
  const pinned = useResults((state) => state.pins.find((pin) => pin.id === against)?.run)
  const ghost = useResults((state) => (axis === undefined ? state.ghosts : state.besideGhosts)[strategy])
  return pinned ?? ghost
}
