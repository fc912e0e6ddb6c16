/** What a job's picture is told. */
import type { RunView } from '../../store/results.ts'

export interface RunPictureProps {
  /** What is drawn; before its run, without rows. */
  run: Pick<RunView, 'scenario' | 'result' | 'traces' | 'rows'>
  /** All that stand side by side, for which the scale of arrows is the same. */
  runs: RunView[]
  /** The instant [s]. */
  time: number
  width: number
  height: number
  label: string
  /** Whether the things in it are named, where the picture can. */
  names?: boolean
}
