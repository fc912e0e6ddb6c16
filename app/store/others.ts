/** Jobs other than gripping come when one is asked for: the page that opens with a grip does without them. */
import { create } from 'zustand'
import type { Fault } from '../../sim/index.ts'

/** Whether they are here. */
export const useOthers = create(() => ({ here: false }))

let coming: Promise<void> | undefined

/** Rejects where they cannot be fetched; another call then tries again. */
export function fetchOthers(): Promise<void> {
  coming ??= import('../../sim/others.ts').then(
    () => useOthers.setState({ here: true }),
    (error: unknown) => {
      coming = undefined
      throw error
    },
  )
  return coming
}

/** What was read names a job that is not here, so that it is to be read again once the others are. */
export const lacksJob = (read: { ok: boolean; faults?: Fault[] }): boolean =>
  !useOthers.getState().here && !read.ok && (read.faults ?? []).some(({ path }) => path === 'job')
