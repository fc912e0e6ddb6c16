/** The closure under its head at the newest sample. */
import { memo, useMemo, useRef } from 'react'
import { Cap, type CapFrame } from '../../../picture/cap/Cap.tsx'
import type { PictureProps } from '../jobs.ts'
import { alikeBy, channelAt, useMostEffort, useSeen } from './seen.ts'

/** Less than a tenth of a pixel on the rim [rad], and of the longest arrow. */
const UNSEEN = 1e-3
const UNSEEN_SHARE = 2e-3

export function CapPicture({ scenario, state, ...size }: PictureProps) {
  const mostTorque = useMostEffort(scenario, state)
  const at = channelAt(scenario, state)
  const preload = at('preload')
  // One scale from the first preload on that is worth an arrow.
  const most = useRef(1)
  if (preload > most.current) most.current = 1.3 * preload
  const mostPreload = most.current
  const alike = useMemo(
    () =>
      alikeBy<CapFrame>({
        travel: UNSEEN,
        angle: UNSEEN,
        torque: UNSEEN_SHARE * mostTorque,
        preload: UNSEEN_SHARE * mostPreload,
      }),
    [mostTorque, mostPreload],
  )
  const stripped = state?.events.strip != null
  const frame = useSeen({ travel: at('travel'), angle: at('angle'), torque: at('torque'), preload, stripped }, alike)
  return <Drawn {...{ scenario, frame, mostTorque, mostPreload }} label={LABEL} {...size} />
}

const Drawn = memo(Cap)

const LABEL = 'Jar, thread, closure and chuck in half section, as they turn.'
