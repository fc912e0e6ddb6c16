/** The press at the newest sample. */
import { memo, useMemo } from 'react'
import { Press, type PressFrame } from '../../../picture/press/Press.tsx'
import type { PictureProps } from '../jobs.ts'
import { alikeBy, channelAt, useMostEffort, useSeen } from './seen.ts'

/** Less than a tenth of a pixel [m], and of the longest arrow. */
const UNSEEN = 1e-5
const UNSEEN_SHARE = 2e-3

export function PressPicture({ scenario, state, ...size }: PictureProps) {
  const mostForce = useMostEffort(scenario, state)
  const at = channelAt(scenario, state)
  const alike = useMemo(() => {
    const force = UNSEEN_SHARE * mostForce
    return alikeBy<PressFrame>({ travel: UNSEEN, depth: UNSEEN, force, shoulder: force })
  }, [mostForce])
  const frame = useSeen(
    { travel: at('travel'), depth: at('depth'), force: at('force'), shoulder: at('shoulderForce') },
    alike,
  )
  return <Drawn {...{ scenario, frame, mostForce }} label={LABEL} {...size} />
}

const Drawn = memo(Press)

const LABEL = 'Ram, bushing and bore in section, as they move.'
