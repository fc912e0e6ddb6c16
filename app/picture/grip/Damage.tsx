/** Damage, the only thing in vermilion: a crack from the contact that peaked, a mark, a lasting dent. */
import { useId } from 'react'
import { usePaint } from '../paint.ts'
import type { SideName } from './contact.ts'
import type { GripFrame } from './frameAt.ts'
import type { Plan } from './plan.ts'
import { blockPath, type Pressed, roundPath } from './shape.ts'

/** A crack and its branches, from the contact inwards, in units of the part's width. */
const CRACK = [
  [
    [0, 0],
    [0.07, -0.045],
    [0.12, 0.015],
    [0.2, -0.07],
    [0.25, -0.02],
    [0.34, -0.12],
    [0.39, -0.09],
    [0.47, -0.2],
  ],
  [
    [0.12, 0.015],
    [0.16, 0.1],
    [0.22, 0.12],
    [0.25, 0.21],
    [0.33, 0.26],
  ],
  [
    [0.07, -0.045],
    [0.08, -0.15],
    [0.14, -0.2],
    [0.13, -0.28],
  ],
  [
    [0.25, -0.02],
    [0.33, 0.03],
    [0.37, 0.015],
  ],
] as const

interface DamageProps {
  plan: Plan
  frame: GripFrame
  pressed: Pressed
}

export function Damage({ plan, frame, pressed }: DamageProps) {
  const clip = useId()
  const paint = usePaint()
  const { partWidth: width, partHeight: height, shape } = plan
  const round = shape === 'globe' || shape === 'ball' || shape === 'softBall'
  const hurt = frame.crack !== null || frame.marked.length > 0 || frame.dent > 0
  if (!hurt) return null
  const surface = (side: SideName) => (side === 'driven' ? -width / 2 + pressed.driven : width / 2 - pressed.far)
  const outline = round ? roundPath(width, pressed) : blockPath(width, height, pressed, 0.08 * width)
  const zone = Math.max(5, 0.09 * width)
  return (
    <g>
      <clipPath id={clip}>
        <path d={outline} />
      </clipPath>
      {(['driven', 'far'] as const).map((side) => {
        const x = surface(side)
        const inward = side === 'driven' ? 1 : -1
        const cracked = frame.crack === side
        const dent = (frame.dent / 2) * plan.m
        return (
          <g key={side}>
            {(cracked || frame.marked.includes(side) || dent > 0.3) && (
              <g clipPath={`url(#${clip})`}>
                <ellipse
                  cx={x}
                  cy={0}
                  rx={cracked ? 1.8 * zone : zone}
                  ry={(cracked ? 2.4 : 1.7) * zone}
                  fill={paint.damage}
                />
              </g>
            )}
            {cracked && <Crack x={x} inward={inward} width={width} />}
          </g>
        )
      })}
    </g>
  )
}

function Crack({ x, inward, width }: { x: number; inward: number; width: number }) {
  const d = CRACK.map(
    (line) => `M${line.map(([a, b]) => `${(x + inward * a * width).toFixed(1)} ${(b * width).toFixed(1)}`).join('L')}`,
  ).join('')
  return (
    <>
      <path d={d} className="pic-damage-gap" />
      <path d={d} className="pic-damage" />
    </>
  )
}
