/** The registry of what a run looks like at an instant: one picture a job. */
import type { ComponentType } from 'react'
import type { JobId } from '../../../sim/index.ts'
import { CapPicture } from '../cap/CapPicture.tsx'
import { PressPicture } from '../press/PressPicture.tsx'
import { WebPicture } from '../web/WebPicture.tsx'
import { GripPicture } from './GripPicture.tsx'
import type { RunPictureProps } from './picture.ts'

const PICTURES: Record<JobId, ComponentType<RunPictureProps>> = {
  grip: GripPicture,
  press: PressPicture,
  cap: CapPicture,
  web: WebPicture,
}

export function RunPicture(props: RunPictureProps) {
  const Picture = PICTURES[props.run.scenario.job]
  return <Picture {...props} />
}
