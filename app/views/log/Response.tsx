/** A measured frequency response over that of the axis: where it comes from, how well the model meets it, and the values fitted to it. */
import { useEffect } from 'react'
import { type ResponseSaid, responseNote, responseText, wordingOf } from '../../../sim/index.ts'
import { keepFitting } from '../../store/fitted.ts'
import { useLog } from '../../store/log.ts'
import { type OpenLog, sourceOf, sourcesOf } from '../../store/log-state.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import { Pick, Segments } from '../../ui/Choice.tsx'
import { formatPlain } from '../../ui/format.ts'
import { parseNumber } from '../../ui/number.ts'
import type { ResponseTable } from '../../worker/log-messages.ts'
import { Changes } from './Changes.tsx'
import { Entry } from './Entry.tsx'
import { unfitText } from './Fit.tsx'
import { ResponseCharts } from './ResponseCharts.tsx'
import { UseIt } from './UseIt.tsx'
import { Values } from './Values.tsx'
import { nameOf } from './words.ts'

interface Props {
  logs: OpenLog[]
  /** Nothing is being read or understood anew. */
  ready: boolean
}

const SHOWN = [
  { value: 'speed', label: 'Speed' },
  { value: 'position', label: 'Position' },
] as const

const NONE = 'none'

export function Response({ logs, ready }: Props) {
  const settings = useScenario((state) => state.logs)
  const scenario = useScenario((state) => state.scenario)
  const { respond, setResponse } = useLog()
  const source = sourceOf(logs, settings)
  useEffect(() => {
    if (ready) respond(scenario)
  }, [logs, settings, scenario, ready, respond])
  const sources = sourcesOf(logs)
  if (sources.length === 0) return null
  const tables = sources.some(({ recording }) => recording === null)
  const options = sources.map(({ key, log, recording }) => ({
    value: key,
    label: recording === null ? nameOf(logs, log, 0) : `computed from ${nameOf(logs, log, recording)}`,
  }))
  const table = source?.recording === null ? logs.find(({ id }) => id === source.log)?.told?.response : null
  return (
    <section className="log-response" aria-label="Frequency response">
      <h2>Frequency response</h2>
      {!source && (
        <p className="log-note">
          Of a log of noise or a chirp a frequency response can be computed; a measured one, as a table of frequency,
          magnitude and phase, is opened like a log.
        </p>
      )}
      <div className="log-settings">
        <Pick
          label="Shown"
          options={tables ? options : [{ value: NONE, label: 'none' }, ...options]}
          value={source?.key ?? NONE}
          onChoose={(key) => setResponse({ source: key === NONE ? null : key })}
        />
        {source && (
          <Segments
            label="What answers"
            options={SHOWN}
            value={settings.response.shown}
            onChoose={(shown) => setResponse({ shown })}
          />
        )}
        {source && table && <TableUnits log={source.log} table={table} />}
      </div>
      {source && <Responded name={nameOf(logs, source.log, source.recording ?? 0)} />}
    </section>
  )
}

const INPUTS = [
  { value: 'command', label: 'Command' },
  { value: 'current', label: 'Current' },
] as const
const FREQUENCIES = [
  { value: 'Hz', label: 'Hz' },
  { value: 'rad/s', label: 'rad/s' },
] as const
const MAGNITUDES = [
  { value: 'dB', label: 'dB' },
  { value: 'ratio', label: 'Ratio' },
] as const
const PHASES = [
  { value: 'deg', label: '°' },
  { value: 'rad', label: 'rad' },
] as const

/** How the table is understood, and what one of its magnitudes is. */
function TableUnits({ log, table: { units } }: { log: number; table: ResponseTable }) {
  const { said, shown } = useScenario(({ logs }) => logs.response)
  const setResponse = useLog((state) => state.setResponse)
  const own = said[log] ?? {}
  const put = (next: ResponseSaid) => setResponse({ said: { ...said, [log]: { ...own, ...next } } })
  return (
    <>
      <Segments
        label="What drives"
        options={INPUTS}
        value={own.input ?? 'command'}
        onChoose={(input) => put({ input })}
        note="The current that is wanted, with the current loop between it and the axis, or the one that flows."
      />
      <Segments
        label="Frequency in"
        options={FREQUENCIES}
        value={own.frequency ?? units.frequency}
        onChoose={(frequency) => put({ frequency })}
      />
      {units.magnitude && (
        <Segments
          label="Magnitude in"
          options={MAGNITUDES}
          value={own.magnitude ?? units.magnitude}
          onChoose={(magnitude) => put({ magnitude })}
        />
      )}
      {units.phase && (
        <Segments
          label="Phase in"
          options={PHASES}
          value={own.phase ?? units.phase}
          onChoose={(phase) => put({ phase })}
        />
      )}
      <Entry
        label={`A magnitude of 1 is, in ${shown === 'speed' ? 'm/s' : 'm'} per A,`}
        value={formatPlain(own.scale ?? 1, 9)}
        onTake={(text) => {
          const found = parseNumber(text)
          if (!found.ok) return found.why
          if (found.value === 0) return '0 is no scale'
          put({ scale: found.value })
          return ''
        }}
      />
    </>
  )
}

function Responded({ name }: { name: string }) {
  const { responded, unresponded } = useLog()
  const units = useView((state) => state.units)
  const words = wordingOf(units)
  if (unresponded)
    return (
      <p role="alert" className="log-fault">
        There is no frequency response: {unfitText(unresponded)}.
      </p>
    )
  if (!responded) return <p role="status">Computing …</p>
  const { fit, why, about, measured } = responded
  return (
    <>
      {measured.frequency.length > 0 && <ResponseCharts responded={responded} />}
      {why && (
        <p role="alert" className="log-fault">
          There is no fit: {unfitText(why)}.
        </p>
      )}
      {fit && (
        <>
          <p>{responseText(fit, words)}</p>
          <Values values={fit.values} untold={fit.untold} scenario={fit.scenario} />
          <p className="log-note">
            Linear about a motion: friction that sticks, backlash and the limits of the drive are no part of it. What is
            hardly told goes on the bench with the rest.
          </p>
          <UseIt
            found={fit.scenario}
            from={about.scenario}
            note={responseNote(about.scenario, fit, words)}
            onUse={() => {
              const { values, untold, used, leftOut, before, after, resonance } = fit
              keepFitting({ kind: 'response', names: [name], values, untold, used, leftOut, before, after, resonance })
            }}
          />
          <Changes before={about.scenario} after={fit.scenario} />
        </>
      )}
    </>
  )
}
