/** One lane of a press: ram, bushing and bore by one strategy, its force and depth at the instant of the cursor; on the bench and in lessons. */
import type { Scenario } from '../../../sim/index.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { JobLane, type JobLaneProps } from '../stage/JobLane.tsx'
import { quantityUnit } from '../units.ts'
import { PressPicture, pressFrame } from './PressPicture.tsx'

export function PressLane({ run, runs, width, height }: JobLaneProps) {
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const frame = pressFrame(run, time)
  const length = quantityUnit('length', units)
  const foot = `Depth ${withUnit(formatFigure(length.toShown(Math.max(0, frame.depth))), length.symbol)}`
  return (
    <JobLane {...{ run, width, foot }} effort={frame.force} quantity="force" shows="ram, bushing and bore in section">
      {(label) => <PressPicture {...{ run, runs, time, width, height, label }} />}
    </JobLane>
  )
}

/** The joint before its run. */
export function OpenPress({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const run = { scenario, result: null, traces: null, rows: 0 }
  const label = 'Ram, bushing and bore in section, before the run.'
  return <PressPicture runs={[]} time={0} {...{ run, label, width, height }} />
}
