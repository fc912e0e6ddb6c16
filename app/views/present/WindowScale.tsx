/** The window as a scale: what is too little, what will do, what is too much. */
import { useId } from 'react'
import { jobOf, type Scenario, shownAs } from '../../../sim/index.ts'
import { limitWords } from '../../read/effort/effort.ts'
import type { UnitSystem } from '../../read/units.ts'
import { Hatch } from './Hatch.tsx'
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
  const { least, most } = jobOf(scenario).study.window(scenario)
  const width = size?.width ?? 0
  // A window that is open on one side still shows where that side lies.
  const top = most === null ? 3 * (least ?? 1) : 1.35 * Math.max(most, least ?? 0)
  const x = (effort: number) => (effort / top) * width
  const from = x(least ?? 0)
  const to = x(most ?? top)
  const words = limitWords(scenario, units)
  const bar = 1.5 * text
  return (
    <div ref={element} style={{ height: 3.3 * text }}>
      {width > 0 && (
        <svg width={width} height={3.3 * text} className="story" fontSize={text} aria-hidden="true">
          <Hatch id={hatch} text={text} />
          <rect width={width} height={bar} className="story-empty" />
          {least !== null && <rect width={from} height={bar} fill={`url(#${hatch})`} />}
          {most !== null && <rect x={to} width={width - to} height={bar} fill={`url(#${hatch})`} />}
          {from < to && <rect x={from} width={to - from} height={bar} className="story-holds" />}
          {from < to && (
            <text x={(from + to) / 2} y={1.07 * text} textAnchor="middle" className="story-name">
              {shownAs(scenario).between}
            </text>
          )}
          {least !== null && <Edge at={from} words={words.least} end={from > to} width={width} text={text} />}
          {most !== null && <Edge at={to} words={words.most} end={from < to} width={width} text={text} />}
        </svg>
      )}
    </div>
  )
}

interface EdgeProps {
  at: number
  words: string | null
  /** Its words stand at the end of the scale. */
  end: boolean
  width: number
  text: number
}

const Edge = ({ at, words, end, width, text }: EdgeProps) => (
  <>
    <path d={`M${at} 0V${1.9 * text}`} className="story-edge" />
    <text x={end ? width : 0} y={2.9 * text} textAnchor={end ? 'end' : 'start'} className="story-note">
      {words}
    </text>
  </>
)
