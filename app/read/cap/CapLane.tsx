/** What a strategy does to a closure, its verdict, torque and turns at the instant of the cursor; on the bench and in lessons. */
import { capIn, type Scenario } from '../../../sim/index.ts'
import { Cap } from '../../picture/cap/Cap.tsx'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { greatest } from '../chart/ticks.ts'
import { rowAt } from '../press/traces.ts'
import { VerdictWord } from '../result/VerdictWord.tsx'
import { noResult, spokenVerdict } from '../result/words.ts'
import { nameOf } from '../stage/moments.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { capTraces } from './traces.ts'

export interface Most {
  torque: number
  preload: number
}

/** The same scale in every lane. */
export function mostOf(runs: RunView[]): Most {
  const columns = runs.flatMap(({ traces, rows }) => (traces && rows > 0 ? [capTraces(traces)] : []))
  return {
    torque: Math.max(0, ...columns.map(({ torque }) => greatest(torque))),
    preload: Math.max(0, ...columns.map(({ preload }) => greatest(preload))),
  }
}

interface LaneProps {
  run: RunView
  time: number
  most: Most
  width: number
  height: number
}

export function CapLane({ run, time, most, width, height }: LaneProps) {
  const units = useView((state) => state.units)
  const label = nameOf(run)
  const traces = run.traces && run.rows > 0 ? capTraces(run.traces) : null
  const row = traces ? rowAt(traces.time, time) : 0
  const at = (name: 'travel' | 'angle' | 'torque' | 'preload') => traces?.[name][row] ?? 0
  const strip = (run.result?.events as { strip?: number | null } | undefined)?.strip ?? null
  const stripped = strip !== null && time >= strip
  const frame = { travel: at('travel'), angle: at('angle'), torque: at('torque'), preload: at('preload'), stripped }
  const torque = quantityUnit('spindleTorque', units)
  const turns = quantityUnit('turns', units)
  const none = noResult(run)
  const turned = Math.max(0, frame.angle - capIn(run.scenario).chuck.startAngle)
  return (
    <figure className="lane" data-strategy={run.strategy} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <strong className="lane-word">
          {run.result ? <VerdictWord result={run.result} /> : (none?.word ?? 'Turning …')}
        </strong>
        <span className="lane-force">
          {formatFigure(torque.toShown(frame.torque))} <span className="unit">{torque.symbol}</span>
        </span>
      </figcaption>
      <Cap
        scenario={run.scenario}
        label={`${label}${run.result ? `, ${spokenVerdict(run.result)}` : ''}: jar, thread, closure and chuck in half section.`}
        mostTorque={most.torque}
        mostPreload={most.preload}
        {...{ frame, width, height }}
      />
      <div className="lane-foot">
        <p>
          {none?.why ??
            `${withUnit(formatFigure(turns.toShown(turned)), turns.symbol)} on the thread, preload ${forceText(frame.preload, units)}`}
        </p>
      </div>
    </figure>
  )
}

function forceText(value: number, units: UnitSystem): string {
  const force = quantityUnit('force', units)
  return withUnit(formatFigure(force.toShown(value)), force.symbol)
}

/** The closure before its run, where nothing has been turned. */
export function OpenCap({ scenario, width, height }: { scenario: Scenario; width: number; height: number }) {
  const frame = { travel: 0, angle: 0, torque: 0, preload: 0, stripped: false }
  const label = 'Jar, closure and chuck in half section, before the run.'
  return <Cap {...{ scenario, frame, label, width, height }} mostTorque={0} mostPreload={0} />
}
