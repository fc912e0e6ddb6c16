/** Measured over simulated, channel by channel; beneath each what is left of it, and its spectrum on wish. */
import { useMemo, useState } from 'react'
import { create } from 'zustand'
import { fitChannel, type ResidualOf } from '../../../sim/index.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Chart, type ChartMark, type ChartSeries } from '../../ui/Chart.tsx'
import { ChartReadout, ChartTools } from '../../ui/ChartTools.tsx'
import { Pick } from '../../ui/Choice.tsx'
import { formatFigure, withUnit } from '../../ui/format.ts'
import { LogChart } from '../../ui/LogChart.tsx'
import type { Laid, Overlay } from '../../worker/log-messages.ts'
import { Key } from './Key.tsx'
import { AFTER_DASH, BEFORE_DASH, HERTZ, SIMULATED } from './look.ts'
import { unitOf } from './words.ts'

const KEY = 'log'

/** Cursor of the charts over time [s] and over frequency [Hz]. */
const useCursor = create<{ time: number; frequency: number | null }>()(() => ({ time: 0, frequency: null }))

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

interface Props {
  laid: Laid
  /** What each recording is called. */
  names: string[]
}

export function Overlays({ laid, names }: Props) {
  const [chosen, setChosen] = useState('0')
  const at = Math.min(Number(chosen), laid.recordings.length - 1)
  const { overlays } = laid.recordings[at]!
  const { motion, touch } = laid.alignment[at]!
  const marks = useMemo(
    (): ChartMark[] => [
      ...(motion === null ? [] : [{ time: motion, label: 'moves' }]),
      ...(touch === null ? [] : [{ time: touch, label: 'touches' }]),
    ],
    [motion, touch],
  )
  const compared = laid.residuals.filter(({ log }) => log === at)
  return (
    <section className="log-overlays" aria-label="Measured over simulated">
      <h2>Measured over simulated</h2>
      {names.length > 1 && (
        <Pick
          label="Recording"
          options={names.map((label, value) => ({ value: String(value), label }))}
          value={String(at)}
          onChoose={setChosen}
        />
      )}
      <Key fitted={overlays.some(({ after }) => after)} />
      <ChartTools syncKey={KEY} name="Measured over simulated" />
      {overlays.map((overlay, place) => (
        <Pair
          key={overlay.channel}
          overlay={overlay}
          residual={compared.find(({ channel }) => channel === overlay.channel)}
          marks={marks}
          last={place === overlays.length - 1}
        />
      ))}
      <ChartReadout syncKey={KEY} name="Measured over simulated" />
      <Spectrum overlays={overlays} />
    </section>
  )
}

interface PairProps {
  overlay: Overlay
  residual: ResidualOf | undefined
  marks: ChartMark[]
  last: boolean
}

/** A channel, and on a scale of its own what is left. */
function Pair({ overlay, residual, marks, last }: PairProps) {
  const system = useView((state) => state.units)
  const time = useCursor((state) => state.time)
  const { channel } = overlay
  const job = useScenario(({ scenario }) => scenario.job)
  const unit = useMemo(() => unitOf({ job }, channel, system), [job, channel, system])
  const { lines, left } = useMemo(() => seriesOf(overlay), [overlay])
  const text = (value: number) => withUnit(formatFigure(unit.toShown(value)), unit.symbol)
  const figures = residual && figuresOf(residual, overlay.after !== null, text)
  const common = {
    time: overlay.time,
    xRange: [0, overlay.time.at(-1)!] as [number, number],
    unit,
    cursorTime: time,
    onCursor: (next: number) => useCursor.setState({ time: next }),
    syncKey: KEY,
  }
  return (
    <div className="log-pair">
      <Chart
        {...common}
        series={lines}
        yLabel={capital(fitChannel(channel))}
        height={150}
        marks={marks}
        timeAxis={false}
        summary={`${capital(fitChannel(channel))}, measured and simulated, over time. ${figures ?? ''}`}
      />
      <Chart
        {...common}
        series={left}
        yLabel={`${capital(fitChannel(channel))}, measured less simulated`}
        height={last ? 106 : 86}
        timeAxis={last}
        summary={figures ?? 'What is left over time.'}
      />
      {figures && <p className="log-figures">{figures}</p>}
    </div>
  )
}

function figuresOf({ rms, before, relative }: ResidualOf, fitted: boolean, text: (value: number) => string): string {
  const share = relative === null ? '' : `, ${withUnit(formatFigure(100 * relative), '%')} of what was measured`
  return fitted
    ? `Left (rms): ${text(before)} before, ${text(rms)} fitted${share}.`
    : `Left (rms): ${text(rms)}${share}.`
}

function seriesOf({ measured, before, after }: Overlay): { lines: ChartSeries[]; left: ChartSeries[] } {
  const less = (shown: Float64Array) => measured.map((value, row) => value - shown[row]!)
  const old = { color: SIMULATED, dash: BEFORE_DASH, width: 1.5 }
  const now = { color: SIMULATED, dash: AFTER_DASH, width: 2.25 }
  return {
    lines: [
      { label: 'on the bench', ...old, values: before },
      ...(after ? [{ label: 'fitted', ...now, values: after }] : []),
      { label: 'measured', color: 'var(--ink)', width: 1, values: measured },
    ],
    left: [
      { label: 'on the bench', ...old, values: less(before) },
      ...(after ? [{ label: 'fitted', color: SIMULATED, width: 1.25, values: less(after) }] : []),
    ],
  }
}

const NONE: never[] = []
const SPECTRUM_KEY = 'log-spectrum'

function Spectrum({ overlays }: { overlays: Overlay[] }) {
  const system = useView((state) => state.units)
  const cursor = useCursor((state) => state.frequency)
  const able = overlays.filter(({ spectra }) => spectra.before)
  const [chosen, setChosen] = useState<string>('')
  const overlay = able.find(({ channel }) => channel === chosen) ?? able.at(-1)
  const job = useScenario(({ scenario }) => scenario.job)
  const unit = useMemo(() => overlay && unitOf({ job }, overlay.channel, system), [job, overlay, system])
  const series = useMemo(() => (overlay && unit ? spectra(overlay, unit.toShown) : []), [overlay, unit])
  if (!overlay || !unit) return null
  const { frequency, amplitude } = overlay.spectra.after ?? overlay.spectra.before!
  const highest = amplitude.indexOf(amplitude.reduce((most, each) => Math.max(most, each), 0))
  const name = fitChannel(overlay.channel)
  const told = `What is left of the ${name} is strongest at ${HERTZ.figure(frequency[highest]!)}: ${withUnit(formatFigure(unit.toShown(amplitude[highest]!)), unit.symbol)}.`
  return (
    <div className="log-spectrum">
      <Pick
        label="Spectrum of what is left of the"
        options={able.map(({ channel }) => ({ value: channel as string, label: fitChannel(channel) }))}
        value={overlay.channel}
        onChoose={setChosen}
      />
      <LogChart
        series={series}
        xRange={[frequency[0]!, frequency.at(-1)!]}
        xUnit="Hz"
        axis={HERTZ}
        yLabel={`${capital(name)}: amplitude of what is left`}
        yUnit={unit.symbol}
        height={170}
        cursor={cursor ?? frequency[highest]!}
        onCursor={(next) => useCursor.setState({ frequency: next })}
        syncKey={SPECTRUM_KEY}
        points={NONE}
        levels={NONE}
        floor={0}
        summary={told}
      />
      <p className="log-figures">{told}</p>
    </div>
  )
}

function spectra({ spectra: { before, after } }: Overlay, toShown: (si: number) => number): ChartSeries[] {
  const line = (found: NonNullable<typeof before>) => ({
    time: found.frequency,
    values: found.amplitude.map((value) => toShown(value) - toShown(0)),
  })
  return [
    ...(before ? [{ label: 'on the bench', color: SIMULATED, dash: BEFORE_DASH, ...line(before) }] : []),
    ...(after ? [{ label: 'fitted', color: SIMULATED, width: 1.75, ...line(after) }] : []),
  ]
}
