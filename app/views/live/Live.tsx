import { useEffect, useState } from 'react'
import { ParameterDrawer } from '../../parameters/ParameterDrawer.tsx'
import { Parameters } from '../../parameters/Parameters.tsx'
import { WindowLine } from '../../read/result/WindowLine.tsx'
import { useLive } from '../../store/live.ts'
import { useView } from '../../store/view.ts'
import { useNarrow } from '../../ui/useNarrow.ts'
import { Controls } from './Controls.tsx'
import { Figures } from './Figures.tsx'
import { LivePicture } from './LivePicture.tsx'
import { LiveTraces } from './LiveTraces.tsx'
import { LiveSession } from './session.ts'
import './live.css'

/** The plant runs on while parameters change under it: hunting that starts while a gain is turned is seen as it starts. */
export function Live() {
  const session = useSession()
  const narrow = useNarrow()
  return (
    <div className="live">
      <h1 className="sr-only">Live</h1>
      <WindowLine />
      {narrow ? (
        <ParameterDrawer />
      ) : (
        <div className="live-parameters">
          <Parameters />
        </div>
      )}
      <section className="live-middle" aria-label="Running plant">
        <Controls session={session} />
        <div className="live-scene">
          <LivePicture />
          <Figures />
        </div>
        <LiveTraces narrow={narrow} />
      </section>
    </div>
  )
}

/** A plant that lives as long as the view is open; meanwhile the runs of the bench wait, so that it has the machine. */
function useSession(): LiveSession | null {
  const [session, setSession] = useState<LiveSession | null>(null)
  useEffect(() => {
    const begun = new LiveSession()
    setSession(begun)
    useView.setState({ resting: true })
    window.addEventListener('keydown', onKey)
    return () => {
      begun.close()
      useView.setState({ resting: false })
      window.removeEventListener('keydown', onKey)
    }
  }, [])
  return session
}

/** Space pauses wherever nothing else on the page wants it. */
function onKey(event: KeyboardEvent) {
  if (event.key !== ' ' || event.target !== document.body) return
  event.preventDefault()
  useLive.setState({ running: !useLive.getState().running })
}
