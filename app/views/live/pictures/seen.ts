/** What spares drawing: a plant at rest differs by its noise alone. */
import { useRef } from 'react'
import { channelsOf, jobOf, type LiveState, type Scenario, strategyOf } from '../../../../sim/index.ts'
import { useLive } from '../../../store/live.ts'

/** The instant that was drawn last, until another one looks different. */
export function useSeen<Frame>(frame: Frame, alike: (a: Frame, b: Frame) => boolean): Frame {
  const seen = useRef(frame)
  if (!alike(seen.current, frame)) seen.current = frame
  return seen.current
}

/** Two instants look alike where every figure differs by no more than is seen of it, and all else is the same. */
export const alikeBy =
  <Frame extends object>(unseen: Partial<Record<keyof Frame, number>>) =>
  (a: Frame, b: Frame): boolean =>
    (Object.keys(a) as (keyof Frame)[]).every((key) => {
      const [one, other] = [a[key], b[key]]
      if (typeof one !== 'number' || typeof other !== 'number') return one === other
      return Math.abs(one - other) <= (unseen[key] ?? 0)
    })

/** A channel of the newest sample [SI]; 0 before there is one. */
export function channelAt(scenario: Scenario, state: LiveState | null) {
  const channels = channelsOf(jobOf(scenario))
  return (id: string) => state?.now[channels.findIndex((each) => each.id === id)] ?? 0
}

/** Effort for which an arrow is as long as it may be [N or N·m]: one and a half times what is asked for, or what there was. */
export function useMostEffort(scenario: Scenario, state: LiveState | null): number {
  const strategy = useLive((live) => live.strategy)
  const most = useRef({ scenario, strategy, effort: 0 })
  if (most.current.scenario !== scenario || most.current.strategy !== strategy)
    most.current = { scenario, strategy, effort: 1.5 * strategyOf(strategy).forceOf(scenario).expected }
  const peak = state?.figures.peak ?? 0
  if (peak > most.current.effort) most.current.effort = 1.3 * peak
  return Math.max(1e-9, most.current.effort)
}
