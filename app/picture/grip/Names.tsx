/** Names of the parts with leader lines: above the drawing for the drive, to its right for what touches the part. */
import { memo } from 'react'
import type { Label } from '../families/drawing.ts'
import type { Plan } from './plan.ts'

const LETTER = 6.1
const ROW = 15

export interface Placed extends Label {
  /** Left edge and baseline of the words [px in the picture], and where the leader meets them. */
  left: number
  base: number
  width: number
}

/** Rows of words above the drawing: each as near its anchor as the ones before it allow. */
export function placeNames(labels: Label[], origin: { x: number; y: number }, width: number, rows: number): Placed[] {
  const ends = Array.from({ length: rows }, () => 4)
  const placed: Placed[] = []
  for (const label of [...labels].sort((a, b) => a.x - b.x)) {
    const size = label.text.length * LETTER
    const wanted = Math.max(4, origin.x + label.x - size / 2)
    const row = ends.reduce((best, end, i) => (Math.max(end, wanted) < Math.max(ends[best]!, wanted) ? i : best), 0)
    const left = Math.min(Math.max(ends[row]!, wanted), width - size - 2)
    ends[row] = left + size + 9
    placed.push({ ...label, left, base: 12 + row * ROW, width: size })
  }
  return placed
}

export const Names = memo(function Names({ plan, labels, travel }: { plan: Plan; labels: Label[]; travel: number }) {
  const { origin } = plan
  const above = placeNames(
    labels.filter((label) => label.y < plan.contactY * 0.6),
    origin,
    plan.width,
    2,
  )
  const beside = labels.filter((label) => label.y >= plan.contactY * 0.6)
  const ride = (label: Label) => (label.rides === 'driven' ? travel : label.rides === 'far' ? -travel : 0)
  return (
    <g>
      {above.map((label) => {
        const x = origin.x + label.x + ride(label)
        const y = origin.y + label.y
        return (
          <g key={label.text}>
            <path d={`M${label.left + label.width / 2} ${label.base + 3}L${x} ${y}`} className="pic-leader" />
            <circle cx={x} cy={y} r={1.8} className="pic-leader-dot" />
            <text x={label.left} y={label.base} className="pic-note pic-halo">
              {label.text}
            </text>
          </g>
        )
      })}
      {beside.map((label, i) => {
        const x = origin.x + label.x + ride(label)
        const y = origin.y + label.y
        const left = plan.width - 52
        const base = origin.y + plan.contactY * 0.72 + i * 22
        return (
          <g key={label.text}>
            <path d={`M${left - 3} ${base - 4}L${x} ${y}`} className="pic-leader" />
            <circle cx={x} cy={y} r={1.8} className="pic-leader-dot" />
            <text x={left} y={base} className="pic-note pic-halo">
              {label.text}
            </text>
          </g>
        )
      })}
    </g>
  )
})
