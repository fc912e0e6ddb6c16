/** The web between line and roll at the newest sample. */
import { memo, useMemo, useRef } from 'react'
import { Web, type WebFrame } from '../../../picture/web/Web.tsx'
import type { PictureProps } from '../jobs.ts'
import { alikeBy, channelAt, useMostEffort, useSeen } from './seen.ts'

/** Less than a tenth of a pixel on a rim [rad], [m], and of the longest arrow. */
const UNSEEN = 1e-3
const UNSEEN_LENGTH = 5e-5
const UNSEEN_SHARE = 5e-3

export function WebPicture({ scenario, state, ...size }: PictureProps) {
  const mostTension = useMostEffort(scenario, state)
  const at = channelAt(scenario, state)
  const way = useWay(state?.time ?? 0, at('lineSpeed'))
  const alike = useMemo(() => {
    const tension = UNSEEN_SHARE * mostTension
    const length = UNSEEN_LENGTH
    return alikeBy<WebFrame>({
      travel: UNSEEN,
      way: length,
      tension,
      rollTension: tension,
      slack: length,
      radius: length,
    })
  }, [mostTension])
  const frame = useSeen(
    {
      travel: at('travel'),
      way,
      tension: at('tension'),
      rollTension: at('rollTension'),
      slack: at('slack'),
      radius: at('radius'),
      torn: state?.events.torn != null,
    },
    alike,
  )
  return <Drawn {...{ scenario, frame, mostTension }} label={LABEL} {...size} />
}

/** Length that the line has handed out [m], from its speed from one picture to the next. */
function useWay(time: number, speed: number): number {
  const last = useRef({ time, speed, way: 0 })
  const { current } = last
  if (time < current.time) last.current = { time, speed, way: 0 }
  else if (time > current.time)
    last.current = { time, speed, way: current.way + 0.5 * (current.speed + speed) * (time - current.time) }
  return last.current.way
}

const Drawn = memo(Web)

const LABEL = 'Line, gauge roll, idlers and driven roll in section, as they run.'
