import { usePaint } from '../paint.ts'
import type { Sizes } from './sizes.ts'
import { flanks } from './thread.ts'

/** The neck of the jar with its thread, and the shoulder that it stands on. */
export function Neck({ sizes, bottom }: { sizes: Sizes; bottom: number }) {
  const paint = usePaint()
  const { radius, tooth, bore, rim, neck, pitch } = sizes
  const root = radius - tooth / 2
  const foot = rim + neck
  const shoulder = Math.min(bottom - 2, foot + 0.5 * radius)
  const wide = 1.5 * radius
  const from = rim + 0.14 * radius
  const count = Math.max(1, Math.floor((neck - 0.3 * radius) / pitch))
  const cut = flanks(from, count, pitch, root, tooth, -1)
  const seen = flanks(from + pitch / 2, count, pitch, root, tooth, 1)
  return (
    <>
      <path
        className="pic-wide"
        fill={paint.body}
        d={`M${-bore} ${rim}H${-root}${cut}V${foot}Q${-root} ${foot + 0.12 * radius} ${-wide + 0.1 * radius} ${shoulder - 0.12 * radius}V${bottom}H${-wide + 0.25 * radius}V${shoulder}Q${-bore} ${foot + 0.3 * radius} ${-bore} ${foot}Z`}
      />
      <path
        className="pic-edge pic-tone-bright"
        d={`M0 ${rim}H${root}${seen}V${foot}Q${root} ${foot + 0.12 * radius} ${wide - 0.1 * radius} ${shoulder - 0.12 * radius}V${bottom}H0Z`}
      />
      {Array.from({ length: count }, (_, n) => (
        <path
          key={n}
          className="pic-thin pic-line"
          d={`M0 ${from + pitch * (n + 0.75)}Q${0.55 * root} ${from + pitch * (n + 0.75)} ${root} ${from + pitch * (n + 0.5)}`}
        />
      ))}
      <path className="pic-edge pic-line" d={`M${-bore} ${rim}H${root}`} />
    </>
  )
}
