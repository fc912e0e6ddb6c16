import { memo, useMemo, useRef } from 'react'
import {
  CHANNELS,
  forceWindow,
  type LiveState,
  type Scenario,
  strategyOf,
  travelToContact,
} from '../../../sim/index.ts'
import { type GripFrame, restFrame } from '../../picture/grip/frameAt.ts'
import { forceScale, type PictureScales } from '../../picture/grip/scales.ts'
import { Picture } from '../../read/stage/Lane.tsx'
import { laneSizes } from '../../read/stage/laneSize.ts'
import { useLive } from '../../store/live.ts'
import { useScenario } from '../../store/scenario.ts'
import { useWidth } from '../../ui/useWidth.ts'
import { liveFrame, looksAlike } from './frame.ts'

/** The gripper at the newest sample. */
export function LivePicture() {
  const [element, width] = useWidth<HTMLDivElement>()
  return (
    <div ref={element} className="live-picture">
      {width > 0 && <Moving {...sizeOf(width)} />}
    </div>
  )
}

/** Lower than a picture on the bench, so that the traces stay in sight under it [px]. */
const HIGHEST = 230

function sizeOf(width: number) {
  const { alone } = laneSizes(width, 1)
  return { ...alone, height: Math.min(alone.height, HIGHEST) }
}

function Moving(size: { width: number; height: number }) {
  const scenario = useScenario((state) => state.scenario)
  const state = useLive((live) => live.now?.state)
  const scales = useScales(scenario, state)
  const frame = useSeen(state ? liveFrame(scenario, state) : restFrame(scenario))
  return <Drawn frame={frame} scenario={scenario} scales={scales} names={false} label={LABEL} {...size} />
}

/** The instant that was drawn last, until another one looks different. */
function useSeen(frame: GripFrame): GripFrame {
  const seen = useRef(frame)
  if (!looksAlike(seen.current, frame)) seen.current = frame
  return seen.current
}

const Drawn = memo(Picture)

const LABEL = 'The gripper in section, as it moves.'
const TRAVEL = CHANNELS.findIndex(({ id }) => id === 'travel')
const SHIFT = CHANNELS.findIndex(({ id }) => id === 'partShift')

/** Scales from the force that the strategy is set to; the magnifier makes room for any deeper squeeze that a whole part has seen. */
function useScales(scenario: Scenario, state: LiveState | undefined): PictureScales {
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
  if (state && state.crack === null && state.lost === null) {
    const overlap = state.now[TRAVEL]! - travelToContact(scenario) - state.now[SHIFT]!
    if (overlap > deepest.current.squeeze) deepest.current.squeeze = 1.3 * overlap
  }
  return useMemo(() => ({ force, squeeze: deepest.current.squeeze }), [force, deepest.current.squeeze])
}
