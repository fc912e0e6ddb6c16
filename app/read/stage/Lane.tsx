/** One lane: what a strategy does to the part, its verdict, and the force at the instant of the cursor. */
import { type ReactNode, Suspense, useCallback, useMemo } from 'react'
import { forceWindow, type Scenario } from '../../../sim/index.ts'
import { frameAt, type GripFrame, restFrame } from '../../picture/grip/frameAt.ts'
import { Gripper } from '../../picture/grip/Gripper.tsx'
import { type PictureScales, roundBelow } from '../../picture/grip/scales.ts'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { formatFigure, formatPlain, NO_FIGURE, withUnit } from '../../ui/format.ts'
import { VerdictWord } from '../result/VerdictWord.tsx'
import { noResult, spokenVerdict } from '../result/words.ts'
import { quantityUnit, type UnitSystem } from '../units.ts'
import { nameOf } from './moments.ts'
import './stage.css'

interface LaneProps {
  run: RunView
  width: number
  height: number
  scales: PictureScales | undefined
  names: boolean
  /** What stands at the right below the picture. */
  corner?: ReactNode
  /** It has a row of its own. */
  alone?: boolean
}

export function Lane({ run, width, height, scales, names, corner, alone = false }: LaneProps) {
  const time = useView((state) => state.time)
  const frame = frameAt(run, time)
  const units = useView((state) => state.units)
  const label = nameOf(run)
  return (
    <figure className="lane" data-strategy={run.strategy} data-alone={alone} style={{ width }}>
      <figcaption className="lane-head">
        <span className="lane-name">{label}</span>
        <Word run={run} />
        <LiveForce frame={run.rows > 0 ? frame : null} />
      </figcaption>
      <Picture frame={frame} scenario={run.scenario} label={said(label, run)} {...{ width, height, scales, names }} />
      <div className="lane-foot">
        <p>{noteOf(run, frame, units)}</p>
        {corner}
      </div>
    </figure>
  )
}

interface PictureProps extends Omit<LaneProps, 'run' | 'corner' | 'alone'> {
  frame: GripFrame
  scenario: Scenario
  label: string
}

/** The gripper with forces in the person's units. */
export function Picture(props: PictureProps) {
  const units = useView((state) => state.units)
  const unit = useMemo(() => quantityUnit('force', units), [units])
  const format = useCallback((force: number) => withUnit(formatFigure(unit.toShown(force)), unit.symbol), [unit])
  const formatRound = useCallback((force: number) => withUnit(formatPlain(unit.toShown(force)), unit.symbol), [unit])
  const round = useCallback((force: number) => unit.toSi(roundBelow(unit.toShown(force))), [unit])
  const window = useMemo(() => forceWindow(props.scenario), [props.scenario])
  return (
    <Suspense fallback={<div style={{ width: props.width, height: props.height }} />}>
      <Gripper {...props} window={window} formatForce={format} formatRound={formatRound} roundForce={round} />
    </Suspense>
  )
}

/** The gripper open, where nothing has been run. */
export function OpenPicture({
  scenario,
  ...size
}: {
  scenario: Scenario
  width: number
  height: number
  names: boolean
}) {
  const frame = useMemo(() => restFrame(scenario), [scenario])
  return (
    <Picture frame={frame} scenario={scenario} scales={undefined} label="The gripper in section, open." {...size} />
  )
}

function Word({ run }: { run: RunView }) {
  const { result } = run
  const none = noResult(run)
  if (none) return <span className="lane-word">{none.word}</span>
  if (!result) return <span className="lane-word lane-waiting">Closing …</span>
  return (
    <strong className="lane-word">
      <VerdictWord result={result} />
    </strong>
  )
}

/** Difference of the two contacts below which one figure says it [share]. */
const ALIKE = 0.02

function LiveForce({ frame }: { frame: GripFrame | null }) {
  const { symbol, toShown } = quantityUnit(
    'force',
    useView((state) => state.units),
  )
  if (!frame) return <span className="lane-force">{NO_FIGURE}</span>
  const { force, farForce } = frame
  const alike = Math.abs(force - farForce) <= ALIKE * Math.max(force, farForce)
  const figure = (newtons: number) => formatFigure(toShown(newtons))
  return (
    <span className="lane-force" title={alike ? 'force at each contact' : 'force at the driven and at the far contact'}>
      {alike ? figure(force) : `${figure(force)} | ${figure(farForce)}`} <span className="unit">{symbol}</span>
    </span>
  )
}

/** Movement square to the section from which on it is told [m]. */
const SIDEWAYS = 1e-4

/** What the picture cannot show by itself. */
function noteOf(run: RunView, frame: GripFrame, units: UnitSystem): string | null {
  const { status, result, scenario } = run
  const none = noResult(run)
  if (none) return none.why
  const unstable = result?.events.unstable ?? null
  if (frame.unstable && unstable !== null)
    return `Left its rails at ${formatFigure(unstable)} s; the picture stands there.`
  if (status === 'running')
    return `Simulated up to ${formatFigure(frame.time)} s of ${formatFigure(scenario.run.duration)} s.`
  if (frame.fallen !== null) return 'The part has left the jaws.'
  if (Math.abs(frame.drift) >= SIDEWAYS) {
    const { symbol, toShown } = quantityUnit('length', units)
    const way = withUnit(formatFigure(toShown(Math.abs(frame.drift))), symbol)
    return `The part has moved ${way} sideways, square to this section.`
  }
  return null
}

function said(label: string, { result, scenario }: RunView): string {
  const both = scenario.jaws.layout === 'mirrored' ? 'both jaws driven' : 'one jaw driven against a fixed one'
  const word = result ? `, ${spokenVerdict(result)}` : ''
  return `${label}${word}: the gripper in section, ${both}.`
}
