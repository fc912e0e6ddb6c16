import { useEffect, useRef, useState } from 'react'
import { download, fileName } from '../../../store/file.ts'
import { Button } from '../../../ui/Button.tsx'
import { formatFigure, withUnit } from '../../../ui/format.ts'
import { CLIP, type Clip, type Encoding, encodeClip, knownEncodings } from './encode.ts'
import { photographer, type Subject } from './frames.tsx'
import { clipTimes, RATE } from './times.ts'

type State =
  | { at: 'asking' }
  | { at: 'ready' }
  | { at: 'making'; frame: number }
  | { at: 'done'; clip: Clip }
  | { at: 'failed'; why: string }

interface ClipDialogProps {
  subject: Subject
  onStill(): void
}

/** Makes the video while the page goes on; closing the dialog cancels it. */
export function ClipDialog({ subject: given, onStill }: ClipDialogProps) {
  const [subject] = useState(given)
  const [state, setState] = useState<State>({ at: 'asking' })
  const [encodings, setEncodings] = useState<Encoding[]>([])
  const [times] = useState(() => clipTimes(subject.lens))
  const making = useRef<AbortController>(null)
  useEffect(() => {
    let here = true
    knownEncodings()
      .catch(() => [])
      .then((known) => {
        if (!here) return
        setEncodings(known)
        setState({ at: 'ready' })
      })
    return () => {
      here = false
      making.current?.abort()
    }
  }, [])

  const make = async () => {
    const control = new AbortController()
    making.current = control
    setState({ at: 'making', frame: 0 })
    const told = await makeClip(subject, times, encodings, control.signal, (frame) => setState({ at: 'making', frame }))
    if (told?.at === 'done') save(subject, told.clip)
    if (making.current === control) setState(told ?? { at: 'ready' })
  }
  if (state.at === 'asking') return <p role="status">Asking the browser what it can encode …</p>
  if (encodings.length === 0) return <NoEncoder onStill={onStill} />
  return (
    <div className="prose">
      <p>
        The play of all shown strategies as a video of {formatFigure(times.length / RATE, 2)} s, {CLIP.width} ×{' '}
        {CLIP.height}, {RATE} frames a second, {encodings[0]?.name}. It is made on this machine and saved here.
      </p>
      {state.at === 'making' && (
        <Progress frame={state.frame} frames={times.length} onCancel={() => making.current?.abort()} />
      )}
      <p role="status">{wordsOf(state)}</p>
      {state.at !== 'making' && (
        <p className="clip-buttons">
          {state.at === 'done' && <Button onClick={() => save(subject, state.clip)}>Save it again</Button>}
          <Button onClick={make}>{state.at === 'done' ? 'Make it again' : 'Make the clip'}</Button>
        </p>
      )}
    </div>
  )
}

function NoEncoder({ onStill }: Pick<ClipDialogProps, 'onStill'>) {
  return (
    <div className="prose">
      <p role="status">
        This browser has no video encoder that a page may use, so there is no clip. A still works in every browser.
      </p>
      <p>
        <Button onClick={onStill}>Save a still</Button>
      </p>
    </div>
  )
}

function Progress({ frame, frames, onCancel }: { frame: number; frames: number; onCancel(): void }) {
  return (
    <>
      <label className="clip-progress">
        <span>Frames drawn</span>
        <progress max={frames} value={frame} />
        <span>
          {frame} of {frames}
        </span>
      </label>
      <p>
        <Button onClick={onCancel}>Cancel</Button>
      </p>
    </>
  )
}

async function makeClip(
  subject: Subject,
  times: number[],
  encodings: Encoding[],
  signal: AbortSignal,
  progress: (frame: number) => void,
): Promise<State | null> {
  const photo = await photographer(subject, CLIP)
  try {
    const draw = (frame: number) => photo.draw(times[frame]!)
    const clip = await encodeClip({ encodings, canvas: photo.canvas, frames: times.length, draw, progress, signal })
    return clip && { at: 'done', clip }
  } catch (error) {
    return { at: 'failed', why: error instanceof Error ? error.message : String(error) }
  } finally {
    photo.end()
  }
}

const save = ({ title }: Subject, { blob, encoding }: Clip) =>
  download(blob, `${fileName(title)}-clip.${encoding.ending}`)

const megabyte = 1e6

function wordsOf(state: State): string {
  switch (state.at) {
    case 'done':
      return `Saved: ${state.clip.encoding.name}, ${withUnit(formatFigure(state.clip.blob.size / megabyte, 2), 'MB')}.`
    case 'failed':
      return `The clip could not be made: ${state.why}`
    case 'making':
      return 'Drawing and encoding.'
    default:
      return ''
  }
}
