import { type GripResult, readPath, textIn, wordingOf } from '../../../../sim/index.ts'
import { Ring } from '../../../read/axes/Ring.tsx'
import { tableFigures } from '../../../read/result/figures.ts'
import { VerdictWord } from '../../../read/result/VerdictWord.tsx'
import { differenceText } from '../../../read/result/words.ts'
import { differingPaths } from '../../../read/scenario/changes.ts'
import { settingLabel, settingText } from '../../../read/scenario/setting.ts'
import type { UnitSystem } from '../../../read/units.ts'
import { type Pin, useResults } from '../../../store/results.ts'
import { Button } from '../../../ui/Button.tsx'
import { NO_FIGURE } from '../../../ui/format.ts'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import { FigureValue } from '../verdicts/FigureValue.tsx'

/** Verdicts, figures with their distance from the first, and what was set differently. */
export function PinTable({ pins, units }: { pins: Pin[]; units: UnitSystem }) {
  const { unpin } = useResults.getState()
  const first = pins[0]!.run
  const changed = differingPaths(pins.map((pin) => pin.run.scenario))
  return (
    <table onKeyDown={walkNotes}>
      <thead>
        <tr>
          <th scope="col">
            <span className="sr-only">Figure</span>
          </th>
          {pins.map(({ id, label, run }) => (
            <th key={id} scope="col" data-strategy={run.strategy}>
              {id}{' '}
              <span className="pin-label">
                {run.axis !== undefined && <Ring />}
                {label}
              </span>
              <Button quiet onClick={() => unpin(id)}>
                Remove<span className="sr-only"> pin {id}</span>
              </Button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Verdict</th>
          {pins.map(({ id, run }) => (
            <td key={id}>{run.result && <VerdictWord result={run.result} />}</td>
          ))}
        </tr>
        {tableFigures(first.scenario).map((figure, place) => (
          <tr key={figure.id}>
            <th scope="row">
              <Noted note={textIn(figure.note, wordingOf(units))} place={place}>
                {figure.label}
              </Noted>
            </th>
            {pins.map(({ id, run }, index) => {
              const result = run.result as GripResult
              if (run.scenario.job !== first.scenario.job) return <td key={id}>{NO_FIGURE}</td>
              const change =
                index > 0 && differenceText(figure, figure.value(result), figure.value(first.result!), units)
              return (
                <td key={id}>
                  <FigureValue figure={figure} result={result} scenario={run.scenario} units={units} />
                  {change && <span className="change">{change}</span>}
                </td>
              )
            })}
          </tr>
        ))}
        {changed.map((path) => (
          <tr key={path} className="setting">
            <th scope="row">{settingLabel(first.scenario.actuator.kind, path, first.scenario.job)}</th>
            {pins.map(({ id, run }) => (
              <td key={id}>{settingText(run.scenario, path, readPath(run.scenario, path), units)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
