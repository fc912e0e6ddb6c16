/** The force window as a scale: what drops the part, what holds it, what harms it. */
import { useId } from 'react'
import { forceWindow, type Scenario } from '../../../sim/index.ts'
import type { UnitSystem } from '../../ui/units.ts'
import { limitWords } from './limitWords.ts'
import { useSize } from './useSize.ts'

interface WindowScaleProps {
  scenario: Scenario
  units: UnitSystem
  /** Size of its type [px]. */
  text: number
}

export function WindowScale({ scenario, units, text }: WindowScaleProps) {
  const [element, size] = useSize<HTMLDivElement>()
  const hatch = useId()
  const { least, most } = forceWindow(scenario)
  const width = size?.width ?? 0
  // A window that is open on one side still shows where that side lies.
  const top = most === null ? 3 * (least ?? 1) : 1.35 * Math.max(most, least ?? 0)
  const x = (force: number) => (force / top) * width
  const from = x(least ?? 0)
  const to = x(most ?? top)
  const words = limitWords(scenario, units)
  const bar = 1.5 * text
  return (
    <div ref={element} style={{ height: 3.3 * text }}>
      {width > 0 && (
        <svg width={width} height={3.3 * text} className="story" fontSize={text} aria-hidden="true">
          <pattern
            id={hatch}
            width={0.4 * text}
            height={0.4 * text}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d={`M0 0V${0.4 * text}`} className="story-hatch" />
          </pattern>
          <rect width={width} height={bar} className="story-empty" />
          {least !== null && <rect width={Math.min(from, to)} height={bar} fill={`url(#${hatch})`} />}
          {most !== null && (
            <rect x={Math.max(from, to)} width={width - Math.max(from, to)} height={bar} fill={`url(#${hatch})`} />
          )}
          {from < to && <rect x={from} width={to - from} height={bar} className="story-holds" />}
          {from < to && (
            <text x={(from + to) / 2} y={1.07 * text} textAnchor="middle" className="story-name">
              holds
            </text>
          )}
          {least !== null && (
            <>
              <path d={`M${from} 0V${1.9 * text}`} className="story-edge" />
              <text y={2.9 * text} className="story-note">
                {words.least}
              </text>
            </>
          )}
          {most !== null && (
            <>
              <path d={`M${to} 0V${1.9 * text}`} className="story-edge" />
              <text x={width} y={2.9 * text} textAnchor="end" className="story-note">
                {words.most}
              </text>
            </>
          )}
        </svg>
      )}
    </div>
  )
}
