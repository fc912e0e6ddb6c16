/** What one chart draws: a line a strategy, and a faint one for the run it is compared with. */
import { damageWord, forceWindow, type Scenario, STRATEGIES, type StrategyId } from '../../../sim/index.ts'
import type { Runs } from '../../store/results.ts'
import type { ChartBand, ChartMark, ChartSeries } from '../../ui/Chart.tsx'
import { formatFigure } from '../../ui/format.ts'
import type { ShownUnit } from '../../ui/unit.ts'
import type { Panel } from './panels.ts'

export function seriesOf(
  { channel }: Panel,
  runs: Runs,
  before: Runs,
  shown: StrategyId[],
  beside: Runs = {},
): ChartSeries[] {
  const lines = (of: Runs, faint: boolean) =>
    STRATEGIES.filter(({ id }) => shown.includes(id)).map(({ id, label, look }): ChartSeries => {
      const traces = of[id]?.traces
      const columns = traces ? { time: traces.time, values: traces[channel] } : { values: null }
      return {
        ...columns,
        label,
        faint,
        color: `var(--strategy-${id})`,
        dash: [...look.dash],
      }
    })
  const second = Object.keys(beside).length > 0 ? lines(beside, false) : []
  return [...lines(before, true), ...lines(runs, false), ...second.map((line) => ({ ...line, ...BESIDE }))]
}

/** The axis beside: thinner, with rings all along. */
const BESIDE = { sign: 'circle', signed: true, width: 1.25 } as const

export function windowBand(scenario: Scenario): ChartBand[] {
  const { least, most } = forceWindow(scenario)
  if ((least === null && most === null) || (least !== null && most !== null && least >= most)) return []
  return [{ from: least, to: most, label: 'force window', hatch: true, above: `${damageWord(scenario)} above` }]
}

/** What the scenario does and what happened to the part, as marks in time. */
export function marksOf({ arm, events }: Scenario, runs: Runs, beside: Runs = {}): ChartMark[] {
  const lifts = new Set(Object.values(runs).flatMap((run) => run.result?.events.lift ?? []))
  // The lift is told by the sample in which it happens.
  const moves = arm.moves.filter(({ start }) => ![...lifts].some((lift) => Math.abs(lift - start) < 1e-3))
  const cracks = (of: Runs, label: string) =>
    STRATEGIES.flatMap(({ id }) => of[id]?.result?.events.crack ?? []).map((time) => ({
      time,
      label,
      color: 'var(--damage)',
    }))
  return [
    ...[...lifts].map((time) => ({ time, label: 'lift' })),
    ...moves.map((move) => ({ time: move.start, label: 'arm' })),
    ...(events.powerLoss ? [{ time: events.powerLoss.time, label: 'power loss' }] : []),
    ...cracks(runs, 'cracks'),
    ...cracks(beside, '○ cracks'),
  ]
}

/** A chart in words: the extremes and the end of each line. */
export function summaryOf({ channel, label }: Panel, runs: Runs, unit: ShownUnit, beside: Runs = {}): string {
  const said = (value: number | undefined) => `${formatFigure(unit.toShown(value ?? 0))} ${unit.symbol}`
  const all = STRATEGIES.flatMap(({ id, label: name }) => [
    { traces: runs[id]?.traces, name },
    { traces: beside[id]?.traces, name: `${name} on ${beside[id]?.axis}` },
  ])
  const sentences = all.flatMap(({ traces, name }) => {
    if (!traces || traces.time.length === 0) return []
    const values = traces[channel]
    const { low, high } = extremes(values)
    const at = (row: number) => `${formatFigure(traces.time[row])} s`
    return [
      `${name}: lowest ${said(values[low])} at ${at(low)}, highest ${said(values[high])} at ${at(high)}, at the end ${said(values.at(-1))}.`,
    ]
  })
  return `${label} over time. ${sentences.join(' ')}`
}

function extremes(values: Float64Array) {
  let low = 0
  let high = 0
  for (let row = 1; row < values.length; row++) {
    if (values[row]! < values[low]!) low = row
    if (values[row]! > values[high]!) high = row
  }
  return { low, high }
}
