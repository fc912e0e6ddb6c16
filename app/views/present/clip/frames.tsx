/** Draws the play for a file: the board at a fixed size out of sight, photographed instant by instant. */
import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import { shownAs } from '../../../../sim/index.ts'
import { today } from '../../../read/today.ts'
import { drawArea, Styles } from '../../../ui/draw.ts'
import { Board, type BoardProps } from '../Board.tsx'
import { type Size, textSize } from '../useSize.ts'

export type Subject = Omit<BoardProps, 'time' | 'width' | 'height' | 'text' | 'bar'> & {
  title: string
  /** The window in a few words. */
  span: string
}

export interface Photographer {
  canvas: HTMLCanvasElement
  draw(time: number): Promise<void>
  end(): void
}

/** `scale`: image pixels for each pixel of `size`. */
export async function photographer(subject: Subject, size: Size, scale = 1): Promise<Photographer> {
  const host = document.createElement('div')
  host.className = 'photo-place'
  host.inert = true
  host.ariaHidden = 'true'
  document.body.append(host)
  const root = createRoot(host)
  const canvas = document.createElement('canvas')
  canvas.width = size.width * scale
  canvas.height = size.height * scale
  const pen = canvas.getContext('2d', { alpha: false })!
  const styles = new Styles()
  await document.fonts.ready
  return {
    canvas,
    async draw(time) {
      flushSync(() => root.render(<Photo {...subject} {...size} time={time} />))
      pen.setTransform(scale, 0, 0, scale, 0, 0)
      pen.fillStyle = getComputedStyle(document.documentElement).backgroundColor
      pen.fillRect(0, 0, size.width, size.height)
      await drawArea(pen, host, 0, 0, styles)
    },
    end() {
      root.unmount()
      host.remove()
    },
  }
}

/** Room around the board, in lines of type, and the line above it. */
const MARGIN = 1
const HEAD = 2.4

function Photo({ title, span, ...board }: Subject & Size & { time: number }) {
  const { width, height } = board
  const text = textSize(board)
  const margin = MARGIN * text
  return (
    <div className="photo" style={{ width, height, padding: margin, fontSize: text }}>
      <div className="present-head" style={{ height: HEAD * text }}>
        <p className="photo-title">{title}</p>
        <p className="photo-said">
          {shownAs(board.scenario).window} <strong>{span}</strong> · simulated, {today()}
        </p>
      </div>
      <Board {...board} width={width - 2 * margin} height={height - 2 * margin - HEAD * text} text={text} />
    </div>
  )
}
