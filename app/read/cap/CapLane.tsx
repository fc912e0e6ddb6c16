/** What a strategy does to a closure, its torque and turns at the instant of the cursor; on the bench and in lessons. */
import { capIn, type Scenario } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { CapPicture, capFrame } from './CapPicture.tsx'

export function CapLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const frame = capFrame(run, time)
  const turns = quantityUnit('turns', units)
  const turned = Math.max(0, frame.angle - capIn(run.scenario).chuck.startAngle)
  const foot = `${withUnit(formatFigure(turns.toShown(turned)), turns.symbol)} on the thread, preload ${forceText(frame.preload, units)}`
  const shows = 'jar, thread, closure and chuck in half section'
  return (
    <JobLane {...{ run, width, foot, shows }} effort={frame.torque} quantity="spindleTorque">
      {(label) => <CapPicture {...{ run, runs, time, width, height, label }} />}
    </JobLane>
  )
}

function forceText(value: number, units: UnitSystem): string {
  const force = quantityUnit('force', units)
  return withUnit(formatFigure(force.toShown(value)), force.symbol)
}

/** The closure before its run, where nothing has been turned. */
export function OpenCap({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const run = { scenario, result: null, traces: null, rows: 0 }
  const label = 'Jar, closure and chuck in half section, before the run.'
  return <CapPicture runs={[]} time={0} {...{ run, label, width, height }} />
}
