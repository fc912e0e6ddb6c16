/** What becomes of the part over any two quantities, and where one verdict gives way to another. */
import {
  exponentOf,
  grouped,
  jobOf,
  type MapAxis,
  quantityAt,
  type Scenario,
  STRATEGIES,
  shownUnit,
  studyWords,
} from '../../../../sim/index.ts'
import { nameOf } from '../../../read/spread/name.ts'
import { useNominal } from '../../../store/lent.ts'
import { useView } from '../../../store/view.ts'
import { Button } from '../../../ui/Button.tsx'
import { Pick } from '../../../ui/Choice.tsx'
import { NumberField } from '../../../ui/NumberField.tsx'
import { Ask } from '../Ask.tsx'
import { Drawing } from './Drawing.tsx'
import { saveMapCsv, saveMapPicture } from './export.ts'
import { axesOf, type MapAnswer, mapPaths, type Shaded, useMap, useMapSettings, usualAxis } from './state.ts'
import './map.css'

/** A map stays until another one is asked for; what it is of, it says itself. */
const ABOUT = 'map'

export function GripMap() {
  const scenario = useNominal()
  const settings = useMapSettings()
  const [x, y] = axesOf(scenario, settings)
  return (
    <Ask
      store={useMap}
      question={{ scenario, x, y }}
      about={ABOUT}
      subjects={STRATEGIES.map(({ id }) => id)}
      name="Map"
      className="map"
      heading="What becomes of the part over two quantities?"
      begin="Draw the map"
      again="Draw it anew"
      progress={progressOf}
      failed="The map could not be drawn"
      settings={
        <>
          <Axis scenario={scenario} axis={x} other={y} which="x" label="Across" />
          <Axis scenario={scenario} axis={y} other={x} which="y" label="Up" />
        </>
      }
    >
      {(answer) => <Answer answer={answer} scenario={scenario} shaded={settings.shaded} />}
    </Ask>
  )
}

function progressOf({ scenario, points, grid }: MapAnswer): string {
  const { runs } = studyWords(scenario.job)
  const all = grid.outcomes.length
  return points < all
    ? `grid: ${grouped(points)} of ${grouped(all)} ${runs}`
    : `following the borders: ${grouped(points)} ${runs}`
}

interface AxisProps {
  scenario: Scenario
  axis: MapAxis
  other: MapAxis
  which: 'x' | 'y'
  label: string
}

function Axis({ scenario, axis, other, which, label }: AxisProps) {
  const units = useView((state) => state.units)
  const schema = quantityAt(scenario, axis.path)!
  const unit = shownUnit(schema, units, exponentOf(scenario))
  const put = (next: MapAxis) => {
    if (next.from < next.to) useMapSettings.setState({ [which]: next })
    return next.from < next.to
  }
  const end = { unit, min: schema.minimum, max: schema.maximum, usual: schema.usual }
  const paths = mapPaths(scenario).filter((path) => path !== other.path)
  return (
    <fieldset className="map-choice">
      <legend className="sr-only">{label}</legend>
      <Pick
        label={label}
        options={paths.map((path) => ({ value: path, label: nameOf(scenario, path) }))}
        value={axis.path}
        onChoose={(path) => put(usualAxis(scenario, path))}
      />
      <NumberField label="From" value={axis.from} onEdit={(from) => put({ ...axis, from })} {...end} />
      <NumberField label="To" value={axis.to} onEdit={(to) => put({ ...axis, to })} {...end} />
    </fieldset>
  )
}

const shadesOf = (scenario: Scenario): { value: Shaded; label: string }[] => [
  { value: 'spare', label: 'Nearest margin' },
  { value: 'none', label: 'Nothing' },
  ...jobOf(scenario).figures.flatMap(({ id, label }) => (id === 'stepError' ? [] : [{ value: id, label }])),
]

function Answer({ answer, scenario, shaded }: { answer: MapAnswer; scenario: Scenario; shaded: Shaded }) {
  const { map } = answer
  const shades = shadesOf(answer.scenario)
  const { runs } = studyWords(answer.scenario.job)
  return (
    <>
      {answer.scenario !== scenario && (
        <p className="spread-hint">The map below is that of the scenario as it was when it was drawn.</p>
      )}
      <div className="spread-commands">
        <Pick
          label="Shade and lines"
          options={shades}
          value={shaded}
          onChoose={(value) => useMapSettings.setState({ shaded: value })}
        />
        {map && (
          <div className="spread-buttons">
            <Button onClick={() => saveMapCsv(answer)}>Figures as CSV</Button>
            <Button onClick={() => saveMapPicture(answer, shaded)}>Picture as PNG</Button>
          </div>
        )}
      </div>
      <Drawing answer={answer} shaded={shaded} />
      {map && (
        <p className="spread-note">
          {grouped(map.evaluations)} {runs}. Borders are traced to 1/500 of either range; an island that is narrower
          than 1/{Math.round(1 / map.hidden)} of either may hide between the {runs} of the grid.
        </p>
      )}
    </>
  )
}
