/** Outlines of gears and racks that mesh: trapezoidal teeth of one pitch on both. Pixels. */

export interface Teeth {
  /** Pitch radius of the pinion. */
  r: number
  /** Even, so that a tooth stands at the top and at the bottom. */
  count: number
  /** Distance of teeth along the pitch line. */
  pitch: number
}

/** Least distance of drawn teeth [px]. */
const FINEST = 4.4

export function teethOf(r: number, wanted: number): Teeth {
  const count = Math.max(8, 2 * Math.round((Math.PI * r) / Math.max(FINEST, wanted)))
  return { r, count, pitch: (2 * Math.PI * r) / count }
}

/** Height of a tooth above and below the pitch line. */
export const addendum = (pitch: number) => 0.3 * pitch
export const dedendum = (pitch: number) => 0.36 * pitch

const n = (value: number) => value.toFixed(2)

/** A gear about the origin, a tooth at the top. */
export function gearPath({ r, count, pitch }: Teeth): string {
  const outer = r + addendum(pitch)
  const inner = r - dedendum(pitch)
  const points: string[] = []
  for (let i = 0; i < count; i++) {
    const middle = -Math.PI / 2 + (2 * Math.PI * i) / count
    const step = (2 * Math.PI) / count
    for (const [share, radius] of [
      [-0.34, inner],
      [-0.14, outer],
      [0.14, outer],
      [0.34, inner],
    ] as const) {
      points.push(`${n(radius * Math.cos(middle + share * step))} ${n(radius * Math.sin(middle + share * step))}`)
    }
  }
  return `M${points.join('L')}Z`
}

/**
 * A rack from x1 to x2 with its pitch line at y = 0 and a gap at x = 0; its body lies towards `body` (−1 up, 1 down) and is
 * `thickness` high behind the roots of the teeth.
 */
export function rackPath({ pitch }: Teeth, x1: number, x2: number, body: 1 | -1, thickness: number): string {
  const tip = -body * addendum(pitch)
  const root = body * dedendum(pitch)
  const back = root + body * thickness
  let d = `M${n(x1)} ${n(back)}L${n(x1)} ${n(root)}`
  for (let k = Math.ceil(x1 / pitch - 0.5 + 0.4); (k + 0.9) * pitch < x2; k++) {
    const middle = (k + 0.5) * pitch
    d += `L${n(middle - 0.36 * pitch)} ${n(root)}L${n(middle - 0.16 * pitch)} ${n(tip)}L${n(middle + 0.16 * pitch)} ${n(tip)}L${n(middle + 0.36 * pitch)} ${n(root)}`
  }
  return `${d}L${n(x2)} ${n(root)}L${n(x2)} ${n(back)}Z`
}
