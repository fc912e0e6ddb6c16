/** Canvases that can be drawn finer than the screen is, for pictures of the page. */
type Fine = (scale: number) => HTMLCanvasElement

const known = new WeakMap<HTMLCanvasElement, Fine>()

export const canBeFine = (canvas: HTMLCanvasElement, fine: Fine) => known.set(canvas, fine)

/** The drawing with `scale` pixels for each of the page; as it is where nobody draws it anew. */
export const fineOf = (canvas: HTMLCanvasElement, scale: number): HTMLCanvasElement =>
  known.get(canvas)?.(scale) ?? canvas
