/** Calls at most once a frame, with the newest arguments; older ones are dropped. */
export interface Latest<A extends unknown[]> {
  (...args: A): void
  /** Makes the waiting call at once, if there is one. */
  flush(): void
}

export function latest<A extends unknown[]>(call: (...args: A) => void): Latest<A> {
  let waiting: A | null = null
  let frame = 0
  const flush = () => {
    cancelAnimationFrame(frame)
    frame = 0
    const args = waiting
    waiting = null
    if (args) call(...args)
  }
  const ask = (...args: A) => {
    waiting = args
    if (frame === 0) frame = requestAnimationFrame(flush)
  }
  return Object.assign(ask, { flush })
}
