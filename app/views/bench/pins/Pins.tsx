import { type GripResult, readPath, textIn, wordingOf } from '../../../../sim/index.ts'
import { type Pin, useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { Noted, walkNotes } from '../../../ui/Noted.tsx'
import type { UnitSystem } from '../../../ui/units.ts'
import { FIGURES } from '../figures.ts'
import { FigureValue } from '../verdicts/FigureValue.tsx'
import { differenceText, VERDICT_WORDS } from '../verdicts/words.ts'
import { differingPaths } from './changes.ts'
import { settingLabel, settingText } from './setting.ts'
import './pins.css'

/** Pinned runs side by side: verdicts, figures with their distance from the first, and what was set differently. */
export function Pins() {
  const pins = useResults((state) => state.pins)
  const units = useView((state) => state.units)
  return (
    <section className="pins" aria-labelledby="pins-title">
      <h2 id="pins-title">Pinned runs</h2>
      {pins.length === 0 ? (
        <p className="hint">Nothing to compare yet. Pin a run, change something, and pin another.</p>
      ) : (
        <>
          <Against pins={pins} />
          {/* Several pins are wider than their column; focus lets the keyboard scroll them. */}
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
          <section className="pins-scroll" tabIndex={0} aria-label="Table of pinned runs">
            <PinTable pins={pins} units={units} />
          </section>
        </>
      )}
    </section>
  )
}

function Against({ pins }: { pins: Pin[] }) {
  const against = useView((state) => state.against)
  const { set } = useView.getState()
  return (
    <label className="against">
      Differences on the cards against{' '}
      <select value={against} onChange={(event) => set({ against: event.target.value })}>
        <option value="ghost">the run before</option>
        {pins.map((pin) => (
          <option key={pin.id} value={pin.id}>
            {pin.id}, {pin.label}
          </option>
        ))}
      </select>
    </label>
  )
}

function PinTable({ pins, units }: { pins: Pin[]; units: UnitSystem }) {
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
              {id} <span className="pin-label">{label}</span>
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
            <td key={id}>{run.result && VERDICT_WORDS[run.result.verdict]}</td>
          ))}
        </tr>
        {FIGURES.map((figure, place) => (
          <tr key={figure.id}>
            <th scope="row">
              <Noted note={textIn(figure.note, wordingOf(units))} place={place}>
                {figure.label}
              </Noted>
            </th>
            {pins.map(({ id, run }, index) => {
              const result = run.result as GripResult
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
            <th scope="row">{settingLabel(first.scenario.actuator.kind, path)}</th>
            {pins.map(({ id, run }) => (
              <td key={id}>{settingText(run.scenario, path, readPath(run.scenario, path), units)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
