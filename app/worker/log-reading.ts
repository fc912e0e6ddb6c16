/** A log from a file of the page: its bytes as they come, unpacked where gzip has packed them. Nothing of the text is kept. */
import { LogReader, type Table } from '../../sim/index.ts'

/** What gzip has packed begins with these (RFC 1952). */
const GZIP = [0x1f, 0x8b]

/** `told` hears the share of the bytes that was read and returns whether to go on. Null: it was told to stop. Rejects where the file cannot be read. */
export async function readTable(file: Blob, told: (done: number) => boolean): Promise<Table | null> {
  const head = new Uint8Array(await file.slice(0, GZIP.length).arrayBuffer())
  const packed = GZIP.every((byte, at) => head[at] === byte)
  let read = 0
  const counted = file.stream().pipeThrough(
    new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
      transform(bytes, controller) {
        read += bytes.length
        controller.enqueue(bytes)
      },
    }),
  )
  const source = (packed ? counted.pipeThrough(new DecompressionStream('gzip')) : counted).getReader()
  const reader = new LogReader()
  for (;;) {
    const { done, value } = await source.read()
    if (done) break
    const goOn = told(file.size > 0 ? read / file.size : 1)
    if (goOn && reader.push(value)) continue
    await source.cancel()
    if (!goOn) return null
    break
  }
  return reader.finish()
}
