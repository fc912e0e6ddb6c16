/** The gripper at the newest sample. */
import { memo, useMemo, useRef } from 'react'
import {
  CHANNELS,
  forceWindow,
  type LiveState,
  type Scenario,
  strategyOf,
  travelToContact,
} from '../../../../sim/index.ts'
import { restFrame } from '../../../picture/grip/frameAt.ts'
import { forceScale, type PictureScales } from '../../../picture/grip/scales.ts'
import { Picture } from '../../../read/stage/Lane.tsx'
import { useLive } from '../../../store/live.ts'
import { liveFrame, looksAlike } from '../frame.ts'
import type { PictureProps } from '../jobs.ts'
import { useSeen } from './seen.ts'

export function GripPicture({ scenario, state, ...size }: PictureProps) {
  const scales = useScales(scenario, state)
  const frame = useSeen(state ? liveFrame(scenario, state) : restFrame(scenario), looksAlike)
  return <Drawn frame={frame} scenario={scenario} scales={scales} names={false} label={LABEL} {...size} />
}

const Drawn = memo(Picture)

const LABEL = 'The gripper in section, as it moves.'
const TRAVEL = CHANNELS.findIndex(({ id }) => id === 'travel')
const SHIFT = CHANNELS.findIndex(({ id }) => id === 'partShift')

/** Scales from the force that the strategy is set to; the magnifier makes room for any deeper squeeze that a whole part has seen. */
function useScales(scenario: Scenario, state: LiveState | null): PictureScales {
  const strategy = useLive((live) => live.strategy)
  const deepest = useRef<{ scenario: Scenario | null; squeeze: number }>({ scenario: null, squeeze: 0 })
  const { force, squeeze } = useMemo(() => {
    const { expected } = strategyOf(strategy).forceOf(scenario)
    const given = expected / scenario.jaws.padStiffness
    return {
      force: forceScale([expected], [1.5 * expected], forceWindow(scenario)),
      squeeze: Math.max(2e-6, 2 * given),
    }
  }, [scenario, strategy])
  if (deepest.current.scenario !== scenario) deepest.current = { scenario, squeeze }
  if (state && state.events.crack === null && state.events.lost === null) {
    const overlap = state.now[TRAVEL]! - travelToContact(scenario) - state.now[SHIFT]!
    if (overlap > deepest.current.squeeze) deepest.current.squeeze = 1.3 * overlap
  }
  return useMemo(() => ({ force, squeeze: deepest.current.squeeze }), [force, deepest.current.squeeze])
}
