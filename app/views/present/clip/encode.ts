/** A video file out of pictures that are drawn one after another; the library does the encoding and the container. */
import type { OutputFormat, VideoCodec } from 'mediabunny'
import { RATE } from './times.ts'

/** Size of a clip [px]. */
export const CLIP = { width: 1280, height: 720 }

export interface Encoding {
  codec: VideoCodec
  ending: 'mp4' | 'webm'
  /** As a person reads it. */
  name: string
}

/** What is asked for, the most widely played first. Line art stays sharp in all of them. */
const ENCODINGS: Encoding[] = [
  { codec: 'avc', ending: 'mp4', name: 'MP4, H.264' },
  { codec: 'vp9', ending: 'webm', name: 'WebM, VP9' },
  { codec: 'vp8', ending: 'webm', name: 'WebM, VP8' },
]

type CanEncode = (codec: VideoCodec, size: { width: number; height: number }) => Promise<boolean>

/** Those that this browser can make, best first; empty: it has no encoder for a page. */
export async function knownEncodings(canEncode?: CanEncode): Promise<Encoding[]> {
  if (!canEncode && typeof VideoEncoder === 'undefined') return []
  const ask = canEncode ?? (await import('mediabunny')).canEncodeVideo
  const known = await Promise.all(ENCODINGS.map(({ codec }) => ask(codec, CLIP).catch(() => false)))
  return ENCODINGS.filter((_, i) => known[i])
}

export interface ClipJob {
  encodings: Encoding[]
  canvas: HTMLCanvasElement
  frames: number
  /** Puts a frame on the canvas. */
  draw(frame: number): Promise<void>
  progress(frame: number): void
  signal: AbortSignal
}

export interface Clip {
  blob: Blob
  encoding: Encoding
}

/** Tries the encodings in turn, because some browsers promise one that they cannot start. Null: cancelled. */
export async function encodeClip(job: ClipJob): Promise<Clip | null> {
  let fault: unknown = new Error('This browser has no video encoder for a page.')
  for (const encoding of job.encodings) {
    try {
      const blob = await encodeAs(encoding, job)
      return blob && { blob, encoding }
    } catch (error) {
      fault = error
    }
  }
  throw fault
}

async function encodeAs({ codec, ending }: Encoding, job: ClipJob): Promise<Blob | null> {
  const { BufferTarget, CanvasSource, Mp4OutputFormat, Output, Quality, WebMOutputFormat } = await import('mediabunny')
  const format: OutputFormat =
    ending === 'mp4' ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat()
  const target = new BufferTarget()
  const output = new Output({ format, target })
  const source = new CanvasSource(job.canvas, { codec, quality: new Quality('high'), keyFrameInterval: 2 })
  output.addVideoTrack(source, { frameRate: RATE })
  try {
    await output.start()
    for (let frame = 0; frame < job.frames; frame++) {
      if (job.signal.aborted) break
      await job.draw(frame)
      await source.add(frame / RATE, 1 / RATE)
      job.progress(frame + 1)
      await turn()
    }
    if (!job.signal.aborted) await output.finalize()
  } finally {
    if (output.state !== 'finalized') await output.cancel()
  }
  return target.buffer && !job.signal.aborted ? new Blob([target.buffer], { type: format.mimeType }) : null
}

/** Lets the page answer and draw; a timer would do so too, but is held back to one a second while the page is out of sight. */
const turn = () =>
  new Promise<void>((done) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      done()
    }
    port2.postMessage(null)
  })
