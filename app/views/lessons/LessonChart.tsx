import { useMemo } from 'react'
import { channelsOf, jobOf, type Scenario, tensionWindow, torqueWindow } from '../../../sim/index.ts'
import { dashOf, nameOf } from '../../read/stage/moments.ts'
import { PANELS } from '../../read/traces/panels.ts'
import { windowBand } from '../../read/traces/series.ts'
import { type Quantity, quantityUnit } from '../../read/units.ts'
import type { RunView } from '../../store/results.ts'
import { useView } from '../../store/view.ts'
import { Chart, type ChartBand, type ChartMark, type ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'

interface Props {
  channel: string
  runs: RunView[]
  duration: number
  timeAxis: boolean
}

const NO_TIME = new Float64Array(0)
const HEIGHTS = { force: 210, other: 110, axis: 20 }

/** One channel of all runs of a lesson; the force against the window. */
export function LessonChart({ channel, runs, duration, timeAxis }: Props) {
  const scenario = runs[0]?.scenario
  const { label, quantity } = panelOf(scenario, channel)
  const time = useView((state) => state.time)
  const units = useView((state) => state.units)
  const unit = useMemo(() => quantityUnit(quantity, units), [quantity, units])
  const isForce = ['force', 'torque', 'tension'].includes(channel)
  const series = useMemo(() => runs.map((run) => lineOf(run, channel)), [runs, channel])
  const bands = useMemo(() => (isForce && scenario ? bandOf(scenario) : []), [isForce, scenario])
  const marks = useMemo(() => (isForce ? marksOf(runs) : []), [isForce, runs])
  const range = useMemo<[number, number]>(() => [0, duration], [duration])
  // The last rows lie just before the end of the run.
  const last = Math.max(0, ...runs.map(({ traces }) => traces?.time.at(-1) ?? 0))
  const summary = useMemo(() => summaryOf(label, channel, runs, unit), [label, channel, runs, unit])
  return (
    <Chart
      series={series}
      time={NO_TIME}
      xRange={range}
      yLabel={label}
      height={(isForce ? HEIGHTS.force : HEIGHTS.other) + (timeAxis ? HEIGHTS.axis : 0)}
      cursorTime={Math.min(time, last)}
      onCursor={(at) => useView.getState().set({ time: at, playing: false })}
      syncKey="lesson"
      {...{ unit, bands, marks, summary, timeAxis }}
    />
  )
}

function panelOf(scenario: Scenario | undefined, channel: string): { label: string; quantity: Quantity } {
  const panel = PANELS.find((each) => each.channel === channel)
  const turns = scenario !== undefined && jobOf(scenario).output.travel === 'rad'
  if (panel && !turns) return scenario?.job === 'grip' || channel !== 'force' ? panel : { ...panel, label: 'Force' }
  if (!scenario) return { label: channel, quantity: 'number' }
  const { label, unit } = channelsOf(jobOf(scenario)).find(({ id }) => id === channel)!
  return { label: label[0]!.toUpperCase() + label.slice(1), quantity: WHERE_IT_TURNS[unit] ?? 'number' }
}

/** What the channels of a job are read in whose output turns. */
const WHERE_IT_TURNS: Record<string, Quantity> = {
  N·m: 'spindleTorque',
  rad: 'turns',
  'rad/s': 'turningSpeed',
  N: 'force',
  m: 'length',
  'm/s': 'speed',
  A: 'current',
  V: 'voltage',
  '°C': 'temperature',
}

function bandOf(scenario: Scenario): ChartBand[] {
  if (scenario.job === 'grip') return windowBand(scenario)
  if (scenario.job === 'web') {
    const { least, most } = tensionWindow(scenario)
    return [
      { from: least, to: most, label: 'tension window', hatch: true, below: 'slack below', above: 'stretched above' },
    ]
  }
  if (scenario.job !== 'cap') return []
  const { least, most } = torqueWindow(scenario)
  return [{ from: least, to: most, label: 'torque window', hatch: true, below: 'loose below', above: 'forced above' }]
}

const columnOf = ({ traces }: RunView, channel: string) =>
  (traces as unknown as Record<string, Float64Array> | null)?.[channel]

function lineOf(run: RunView, channel: string): ChartSeries {
  return {
    label: nameOf(run),
    color: `var(--strategy-${run.strategy})`,
    dash: dashOf(run)?.split(' ').map(Number) ?? [],
    time: run.traces?.time,
    values: columnOf(run, channel) ?? null,
  }
}

function marksOf(runs: RunView[]): ChartMark[] {
  const once = (times: (number | null | undefined)[], label: string, color?: string) =>
    [...new Set(times.filter((time) => typeof time === 'number'))].map((time) => ({ time, label, color }))
  return [
    ...once(
      runs.map(({ result }) => result?.events.lift),
      'lift',
    ),
    ...once(
      runs.map(({ scenario }) => scenario.events.powerLoss?.time),
      'power loss',
    ),
    ...once(
      runs.map(({ result }) => result?.events.crack),
      'cracks',
      'var(--damage)',
    ),
  ]
}

function summaryOf(label: string, channel: string, runs: RunView[], unit: ShownUnit): string {
  const said = (value: number | undefined) => `${formatFigure(unit.toShown(value ?? 0))} ${unit.symbol}`
  const sentences = runs.map((run) => {
    const values = columnOf(run, channel) ?? NO_TIME
    const highest = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
    return `${nameOf(run)}: highest ${said(highest)}, at the end ${said(values.at(-1))}.`
  })
  return `${label} over time. ${sentences.join(' ')}`
}
