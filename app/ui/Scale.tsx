/** The thin scale beneath a number field: shows where the value lies and lets it be dragged. Keys work on the field itself. */
import { type PointerEvent, useRef } from 'react'
import { type DragScale, dragScale } from './drag-scale.ts'
import { type Latest, latest } from './latest.ts'
import { roundTo } from './number.ts'

interface ScaleProps {
  /** All in the shown unit. */
  value: number
  base: number
  min: number
  max: number
  onBegin(): void
  onMove(value: number): void
  onEnd: (() => void) | undefined
}

export function Scale({ value, base, min, max, onBegin, onMove, onEnd }: ScaleProps) {
  /** Frozen while dragging, so that the scale does not run away under the pointer. */
  const held = useRef<DragScale | null>(null)
  const move = useRef(onMove)
  move.current = onMove
  const calls = useRef<Latest<[number]> | null>(null)
  calls.current ??= latest((next: number) => move.current(next))
  const scale = held.current ?? dragScale(value, base, min, max)

  const follow = (event: PointerEvent<HTMLDivElement>) => {
    const frozen = held.current!
    const { left, width } = event.currentTarget.getBoundingClientRect()
    const place = (event.clientX - left) / width
    // Round to what one pixel means, so that dragging gives round figures.
    const grain = Math.abs(frozen.at(place + 1 / width) - frozen.at(place - 1 / width)) / 2
    calls.current!(roundTo(frozen.at(place), grain))
  }
  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    held.current = dragScale(value, base, min, max)
    onBegin()
    // A finger may be about to scroll the panel: only its sideways movement counts.
    if (event.pointerType !== 'touch') follow(event)
  }
  const up = () => {
    if (!held.current) return
    calls.current!.flush()
    held.current = null
    onEnd?.()
  }
  return (
    <div
      className="scale"
      aria-hidden="true"
      onPointerDown={down}
      onPointerMove={(event) => held.current && follow(event)}
      onPointerUp={up}
      onPointerCancel={up}
      onLostPointerCapture={up}
    >
      <div className="scale-base" style={{ left: percent(scale.place(base)) }} />
      <div className="scale-run" style={{ width: percent(scale.place(value)) }} />
      <div className="scale-thumb" style={{ left: percent(scale.place(value)) }} />
    </div>
  )
}

const percent = (share: number) => `${(100 * share).toFixed(2)}%`
