/** One lane of a web: line, gauge roll, idlers and driven roll by one strategy, its tension and slack at the instant of the cursor. */
import type { Scenario } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { WebPicture, webFrame } from './WebPicture.tsx'

export function WebLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const frame = webFrame(run, time)
  const shows = 'line, gauge roll, idlers and driven roll in section'
  return (
    <JobLane {...{ run, width, shows }} effort={frame.tension} quantity="force" foot={footOf(frame, units)}>
      {(label) => <WebPicture {...{ run, runs, time, width, height, label }} />}
    </JobLane>
  )
}

function footOf({ lineSpeed, slack, radius, torn }: ReturnType<typeof webFrame>, units: UnitSystem): string {
  const [speed, length] = [quantityUnit('speed', units), quantityUnit('length', units)]
  const said = ({ toShown, symbol }: typeof speed, value: number) => withUnit(formatFigure(toShown(value)), symbol)
  const state = torn ? 'torn' : slack > 0 ? `slack by ${said(length, slack)}` : `roll radius ${said(length, radius)}`
  return `Line at ${said(speed, lineSpeed)}, ${state}`
}

/** The web before its run, which hangs by its slack. */
export function OpenWeb({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const run = { scenario, result: null, traces: null, rows: 0 }
  const label = 'Line, gauge roll, idlers and driven roll in section, before the run.'
  return <WebPicture runs={[]} time={0} {...{ run, label, width, height }} />
}
