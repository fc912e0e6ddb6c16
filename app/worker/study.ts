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

/** A study that is asked again and again, by a slider that moves: its worker stays, and of inputs that wait only the latest is run. */
export interface KeptStudy<S extends StudyName> {
  ask(input: Studies[S]['input']): void
  end(): void
}

/** Items come from the run of the latest input, or of the one before while that ends. A worker that broke is replaced at the next input. */
export function keepStudy<S extends StudyName>(study: S, events: StudyEvents<S>): KeptStudy<S> {
  let stop: (() => void) | null = null
  let worker: Worker | null = null
  let busy = false
  let waiting: { input: Studies[S]['input'] } | null = null

  const next = () => {
    busy = waiting !== null
    if (!waiting) return
    worker ??= open()
    worker.postMessage({ study, input: waiting.input })
    waiting = null
  }
  const ended = (tell: () => void) => {
    const last = waiting === null
    next()
    if (last) tell()
  }
  const open = () => {
    const opened = new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module' })
    opened.onmessage = ({ data }: MessageEvent<StudyAnswer>) => {
      if (data.kind === 'item') events.item(data.item as Studies[S]['item'])
      else if (data.kind === 'done') ended(events.done)
      else ended(() => events.failed(data.message))
    }
    opened.onerror = () => {
      stop?.()
      ended(() => events.failed('The study stopped before it was finished.'))
    }
    stop = () => {
      opened.terminate()
      worker = null
    }
    return opened
  }
  return {
    ask(input) {
      waiting = { input }
      if (!busy) next()
    },
    end: () => stop?.(),
  }
}
