import { lazy, Suspense } from 'react'
import { type Pin, useResults } from '../../../store/results.ts'
import { useView } from '../../../store/view.ts'
import './pins.css'

const PinTable = lazy(async () => ({ default: (await import('./PinTable.tsx')).PinTable }))

/** Pinned runs side by side: verdicts, figures with their distance from the first, and what was set differently. */
export function Pins() {
  const pins = useResults((state) => state.pins)
  const units = useView((state) => state.units)
  return (
    <section className="pins" aria-labelledby="pins-title" data-no-sheet={pins.length === 0 || undefined}>
      <h2 id="pins-title">Pinned runs</h2>
      {pins.length === 0 ? (
        <p className="hint">Nothing to compare yet. Pin a run, change something, and pin another.</p>
      ) : (
        <>
          <Against pins={pins} />
          {/* Several pins are wider than their column; focus lets the keyboard scroll them. */}
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
          <section className="pins-scroll" tabIndex={0} aria-label="Table of pinned runs">
            <Suspense fallback={null}>
              <PinTable pins={pins} units={units} />
            </Suspense>
          </section>
        </>
      )}
    </section>
  )
}

function Against({ pins }: { pins: Pin[] }) {
  const against = useView((state) => state.against)
  const { set } = useView.getState()
  return (
    <label className="against">
      Differences on the cards against{' '}
      <select value={against} onChange={(event) => set({ against: event.target.value })}>
        <option value="ghost">the run before</option>
        {pins.map((pin) => (
          <option key={pin.id} value={pin.id}>
            {pin.id}, {pin.label}
          </option>
        ))}
      </select>
    </label>
  )
}
