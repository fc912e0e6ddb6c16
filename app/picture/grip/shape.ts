/**
 * What the part looks like in section, chosen from its parameters alone, and its outline when it is squeezed.
 * Local coordinates: the part's middle is the origin, x along the grip (driven jaw at negative x), y down, pixels.
 */
import type { Scenario } from '../../../sim/index.ts'

type Part = Scenario['part']

/** How a part gives way: walls that bend in, a round body that is cut flat, or sides pressed in under the pad. */
export type ShapeKind = 'cup' | 'globe' | 'ball' | 'softBall' | 'ring' | 'block'

/** Stiffness [N/m] above which a linear part without crack limit is taken as solid metal. */
const METAL = 2e6
/** Mass over the cube of the width [kg/m³] below which a brittle part is a closed thin shell, not a vessel with a wall. */
const AIRY = 200
/** Density of glass and ceramics [kg/m³], for the wall that a mass allows; from memory. */
const BRITTLE = 2400

export function shapeOf(part: Part): ShapeKind {
  const soft = part.relaxation.fraction > 0 || part.yieldForce !== undefined
  const brittle = part.crackForce !== undefined
  if (part.exponent >= 1.25) {
    if (brittle) return 'globe'
    return soft ? 'softBall' : 'ball'
  }
  if (brittle) return part.mass / part.width ** 3 < AIRY ? 'globe' : 'cup'
  return part.stiffness >= METAL ? 'ring' : 'block'
}

/** Wall of a hollow part over its width: what its mass would give as glass or ceramic, within what can be drawn. */
export function wallOf(part: Part, shape: ShapeKind): number {
  if (shape === 'ring') return 0.2
  const surface = (shape === 'globe' ? Math.PI : 3.7) * part.width ** 2
  const wall = part.mass / (BRITTLE * surface * part.width)
  return Math.min(0.085, Math.max(0.018, wall))
}

/** Height over width. */
export const HEIGHTS: Record<ShapeKind, number> = { cup: 0.94, globe: 1, ball: 1, softBall: 1, ring: 0.8, block: 0.8 }

/** How far each side is pressed in [px], and half the height of the pads [px]. */
export interface Pressed {
  driven: number
  far: number
  pad: number
}

const n = (value: number) => value.toFixed(2)

/** A round body whose sides are cut flat where it is pressed; `wall` moves the outline inwards by that much. */
export function roundPath(width: number, pressed: Pressed, wall = 0): string {
  const r = width / 2 - wall
  if (r <= 0) return ''
  const chord = (cut: number) => {
    const x = Math.max(0.02 * r, Math.min(r, r - cut))
    return { x, y: Math.sqrt(r * r - x * x) }
  }
  const left = chord(pressed.driven)
  const right = chord(pressed.far)
  const arc = `A${n(r)} ${n(r)} 0 0 1`
  return `M${n(-left.x)} ${n(-left.y)}${arc} ${n(right.x)} ${n(-right.y)}V${n(right.y)}${arc} ${n(-left.x)} ${n(left.y)}Z`
}

/**
 * The side of a wall from (x, top) to (x, bottom) about the level 0 of the pads, pressed in by `cut` over their height;
 * `inward` is ±1.
 */
export function wallPath(x: number, top: number, bottom: number, cut: number, pad: number, inward: number): string {
  const sign = bottom < top ? -1 : 1
  const reach = Math.min(0.9 * Math.abs(top), 0.9 * Math.abs(bottom), 1.5 * pad)
  const flat = 0.6 * Math.min(pad, reach)
  const deep = x + inward * cut
  const y = (d: number) => n(sign * d)
  const bend = 0.5 * (reach - flat)
  return (
    `L${n(x)} ${n(top)}L${n(x)} ${y(-reach)}C${n(x)} ${y(-reach + bend)} ${n(deep)} ${y(-flat - bend)} ${n(deep)} ${y(-flat)}` +
    `L${n(deep)} ${y(flat)}C${n(deep)} ${y(flat + bend)} ${n(x)} ${y(reach - bend)} ${n(x)} ${y(reach)}L${n(x)} ${n(bottom)}`
  )
}

/** A rectangle pressed in under the pads, its corners rounded or cut off straight. */
export function blockPath(width: number, height: number, pressed: Pressed, corner: number, straight = false): string {
  const x = width / 2
  const y = height / 2
  const c = corner
  const turn = (px: number, py: number, qx: number, qy: number) =>
    straight ? `L${n(qx)} ${n(qy)}` : `Q${n(px)} ${n(py)} ${n(qx)} ${n(qy)}`
  return (
    `M${n(-x + c)} ${n(-y)}L${n(x - c)} ${n(-y)}${turn(x, -y, x, -y + c)}` +
    wallPath(x, -y + c, y - c, pressed.far, pressed.pad, -1) +
    `${turn(x, y, x - c, y)}L${n(-x + c)} ${n(y)}${turn(-x, y, -x, y - c)}` +
    `${wallPath(-x, y - c, -y + c, pressed.driven, pressed.pad, 1)}${turn(-x, -y, -x + c, -y)}Z`
  )
}

/** A cup open at the top, in section: its cut wall with the foot, and the inside behind it. */
export function cupPaths(
  width: number,
  height: number,
  wall: number,
  pressed: Pressed,
): { wall: string; inside: string } {
  const x = width / 2
  const y = height / 2
  const foot = 0.26 * width
  const rise = 0.055 * height
  const floor = y - rise
  const round = 0.36 * width
  const { driven, far, pad } = pressed
  const inner = x - wall
  const bed = floor - wall * 1.15
  const inRound = round - wall * 0.6
  const lip = -y - 0.5 * wall
  // The wall is straight from the lip to the rounding above the foot; the pads press at the part's middle.
  const low = Math.max(floor - round, 0.12 * height)
  const outside =
    `M${n(-x)} ${n(-y)}${wallPath(-x, -y, low, driven, pad, 1)}` +
    `C${n(-x)} ${n(floor - 0.3 * round)} ${n(-foot - 0.3 * (x - foot))} ${n(floor)} ${n(-foot)} ${n(floor)}` +
    `L${n(-foot)} ${n(y)}L${n(-foot + wall)} ${n(y)}L${n(-foot + wall + rise)} ${n(floor + 0.2 * rise)}` +
    `L${n(foot - wall - rise)} ${n(floor + 0.2 * rise)}L${n(foot - wall)} ${n(y)}L${n(foot)} ${n(y)}L${n(foot)} ${n(floor)}` +
    `C${n(foot + 0.3 * (x - foot))} ${n(floor)} ${n(x)} ${n(floor - 0.3 * round)} ${n(x)} ${n(low)}` +
    wallPath(x, low, -y, far, pad, -1)
  const inside =
    `${wallPath(inner, -y, low, far, pad, -1)}` +
    `C${n(inner)} ${n(bed - 0.3 * inRound)} ${n(foot + 0.25 * (x - foot))} ${n(bed)} ${n(foot * 0.9)} ${n(bed)}L${n(-foot * 0.9)} ${n(bed)}` +
    `C${n(-foot - 0.25 * (x - foot))} ${n(bed)} ${n(-inner)} ${n(bed - 0.3 * inRound)} ${n(-inner)} ${n(low)}` +
    wallPath(-inner, low, -y, driven, pad, 1)
  const overLip = (from: number, to: number) =>
    `Q${n(from)} ${n(lip)} ${n((from + to) / 2)} ${n(lip)}Q${n(to)} ${n(lip)} ${n(to)} ${n(-y)}`
  return {
    wall: `${outside}${overLip(x, inner)}${inside}${overLip(-inner, -x)}Z`,
    inside: `M${n(inner)} ${n(-y)}${inside}Z`,
  }
}
