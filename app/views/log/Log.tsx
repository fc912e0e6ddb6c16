/** A measured log laid over the model: what its columns hold, how it lies, the fit, and what the real axis changes. */
import { type DragEvent, useEffect, useState } from 'react'
import { fitNote, logWords, wordingOf } from '../../../sim/index.ts'
import { keepFitting } from '../../store/fitted.ts'
import { useLog } from '../../store/log.ts'
import { countedOf, holds, isBusy, isHeld, type OpenLog, standsOn } from '../../store/log-state.ts'
import { useScenario } from '../../store/scenario.ts'
import { useView } from '../../store/view.ts'
import type { Laid } from '../../worker/log-messages.ts'
import { Alignment } from './Alignment.tsx'
import { Changes } from './Changes.tsx'
import { Choose, LogFile } from './Files.tsx'
import { Fit, unfitText } from './Fit.tsx'
import { Overlays } from './Overlays.tsx'
import { Response } from './Response.tsx'
import { Understood } from './Understood.tsx'
import { UseIt } from './UseIt.tsx'
import { nameOf } from './words.ts'
import './log.css'

export function Log() {
  const { logs, open } = useLog()
  const [over, setOver] = useState(false)
  const files = ({ dataTransfer }: DragEvent) => dataTransfer.types.includes('Files')
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same by keyboard
    <div
      className="log"
      data-over={over}
      onDragOver={(event) => {
        if (!files(event)) return
        event.preventDefault()
        event.stopPropagation()
        setOver(true)
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false)
      }}
      onDrop={(event) => {
        setOver(false)
        const dropped = [...event.dataTransfer.files]
        // A scenario goes on the bench, wherever it is dropped.
        if (dropped.length === 0 || dropped.every(({ name }) => /\.json$/i.test(name))) return
        event.preventDefault()
        event.stopPropagation()
        open(dropped)
      }}
    >
      <header className="log-head">
        <h1>What does the real axis say?</h1>
        <Choose />
        <p className="log-note">
          A log stays on this machine: it is read in this page, is not part of the link, and is gone when the page is
          closed. Only values that you use on the bench go into the scenario.
        </p>
      </header>
      {logs.length === 0 ? <Nothing /> : <Open logs={logs} />}
      {over && <p className="drop-here">Drop the logs to read them</p>}
    </div>
  )
}

function Nothing() {
  const { tells, hands } = logWords(useScenario(({ scenario }) => scenario.job))
  return (
    <div className="log-nothing">
      <p>
        Record moves both ways at two speeds or more, with position and current, and a force or torque where there is a
        gauge. From such a log come mass, friction by direction, offset and delay of the axis as it is, each with its
        interval; {tells}.
      </p>
      <p>
        Recording moves the machine: keep hands out of {hands}, limit speed and force, and follow the rules of the site
        and the standards in force.
      </p>
    </div>
  )
}

/** Rest after a change before the logs are laid over the model anew [ms]. */
const REST = 200

function Open({ logs }: { logs: OpenLog[] }) {
  const scenario = useScenario((state) => state.scenario)
  const settings = useScenario((state) => state.logs)
  const units = useView((state) => state.units)
  const { laid, unlaid, fit, lay } = useLog()
  const busy = isBusy(logs, settings)
  const held = isHeld(logs, settings)
  const counted = countedOf(logs, settings)
  const found = fit.found && holds(fit.found.about, logs, settings) && standsOn(scenario, fit.found) ? fit.found : null
  useEffect(() => {
    if (busy || held) return
    const timer = setTimeout(() => lay(scenario), REST)
    return () => clearTimeout(timer)
  }, [logs, settings, scenario, busy, held, lay])
  const shown = found ?? laid
  const names = (shown?.about.recordings ?? counted).map(({ log, recording }) => nameOf(logs, log, recording))
  return (
    <>
      {logs.map((log) => (
        <section key={log.id} className="log-one" aria-label={log.name}>
          <LogFile log={log} />
          <Understood log={log} />
        </section>
      ))}
      {(counted.length > 0 || (held && laid)) && (
        <>
          <Alignment laid={shown} names={names} />
          {unlaid && !found && (
            <p role="alert" className="log-fault">
              It cannot be laid over the model: {unfitText(unlaid)}.
            </p>
          )}
          <Fit
            ready={!busy && !held && laid !== null}
            contact={shown?.recordings.some(({ setup }) => setup.contact) ?? false}
            found={found}
          />
          {found && (
            <>
              <UseIt
                found={found.scenario}
                from={found.about.scenario}
                note={fitNote(found.about.scenario, found.values, secondsOf(found), wordingOf(units))}
                onUse={() => {
                  const { values, untold, residuals } = found
                  keepFitting({ kind: 'log', names, seconds: secondsOf(found), values, untold, residuals })
                }}
              />
              <Changes before={found.about.scenario} after={found.scenario} />
            </>
          )}
          {shown && <Overlays laid={shown} names={names} />}
        </>
      )}
      <Response logs={logs} ready={!busy} />
    </>
  )
}

/** How long each recording is [s]. */
const secondsOf = ({ recordings }: Laid) => recordings.map(({ overlays }) => overlays[0]?.time.at(-1) ?? 0)
