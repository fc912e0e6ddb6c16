/** A study as the page starts it: a worker of its own, ended when the study is done or no longer wanted. */
import type { Studies, StudyAnswer, StudyName } from './studies.ts'

export interface StudyEvents<S extends StudyName> {
  item(item: Studies[S]['item']): void
  done(): void
  failed(message: string): void
}

/** Returns a function that stops the study. */
export function startStudy<S extends StudyName>(
  study: S,
  input: Studies[S]['input'],
  events: StudyEvents<S>,
): () => void {
  const worker = new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module' })
  const end = (tell: () => void) => {
    worker.terminate()
    tell()
  }
  worker.onmessage = ({ data }: MessageEvent<StudyAnswer>) => {
    if (data.kind === 'item') events.item(data.item as Studies[S]['item'])
    else if (data.kind === 'done') end(events.done)
    else end(() => events.failed(data.message))
  }
  worker.onerror = () => end(() => events.failed('The study stopped before it was finished.'))
  worker.postMessage({ study, input })
  return () => worker.terminate()
}
