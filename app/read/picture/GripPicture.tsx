import { useMemo } from 'react'
import { frameAt } from '../../picture/grip/frameAt.ts'
import { Picture } from '../stage/Lane.tsx'
import { scalesOf } from '../stage/scales.ts'
import type { RunPictureProps } from './picture.ts'

/** The gripper with its part. */
export function GripPicture({ run, runs, time, names = false, ...rest }: RunPictureProps) {
  const scales = useMemo(() => scalesOf(runs), [runs])
  return <Picture frame={frameAt(run, time)} scenario={run.scenario} {...{ scales, names, ...rest }} />
}
