/** Outlines in the magnifier: pad and part as they are pressed into one another. Pixels; x = 0 is the undeformed pad face. */

export interface LensView {
  /** Radius of the magnifier. */
  r: number
  /** How far the pad and the part's surface are pressed in, enlarged. */
  pad: number
  part: number
  /** Gap between the faces while they do not touch, enlarged; 0 in contact. */
  gap: number
  round: boolean
  hollow: boolean
}

export interface LensShape {
  part: string
  pad: string
  /** Faces as they were before, hidden edges. */
  before: string
  hurt: string
  crack: string
}

const n = (value: number) => value.toFixed(2)

export function lensShape({ r, pad, part, gap, round, hollow }: LensView): LensShape {
  const radius = (round ? 1.5 : 3.2) * r
  const arc = `A${n(radius)} ${n(radius)} 0 0`
  // The part's surface: flat where it is pressed in, its own curve beyond.
  const face = gap - pad
  const flat = Math.min(Math.sqrt(2 * radius * part), 1.1 * r)
  const end = Math.max(1.15 * r, flat + 0.01)
  const rim = face - part + radius - Math.sqrt(radius * radius - end * end)
  const back = hollow ? 0.3 * r : 3 * r
  const behind = hollow
    ? `${arc} 1 ${n(face + back)} ${n(flat)}L${n(face + back)} ${n(-flat)}${arc} 1 ${n(rim + back)} ${n(-end)}`
    : `L${n(rim + back)} ${n(-end)}`
  // The pad follows the part until the part's curve has left it.
  const reach = Math.min(1.15 * r, Math.sqrt(2 * radius * (part + pad)))
  const within = Math.min(flat, reach)
  const dip =
    pad > 0 ? `L0 ${n(-reach)}${arc} 0 ${n(-pad)} ${n(-within)}L${n(-pad)} ${n(within)}${arc} 0 0 ${n(reach)}` : ''
  return {
    part:
      `M${n(rim)} ${n(-end)}${arc} 0 ${n(face)} ${n(-flat)}L${n(face)} ${n(flat)}${arc} 0 ${n(rim)} ${n(end)}` +
      `L${n(rim + back)} ${n(end)}${behind}Z`,
    pad: `M${n(-2 * r)} ${n(-1.15 * r)}L0 ${n(-1.15 * r)}${dip}L0 ${n(1.15 * r)}L${n(-2 * r)} ${n(1.15 * r)}Z`,
    before:
      (pad > 0 ? `M0 ${n(-reach)}L0 ${n(reach)}` : '') +
      (part > 0 ? `M${n(face)} ${n(-flat)}${arc} 0 ${n(face)} ${n(flat)}` : ''),
    hurt: `M${n(face)} ${n(-0.4 * r)}Q${n(face + 0.34 * r)} 0 ${n(face)} ${n(0.4 * r)}Z`,
    crack:
      `M${n(face)} 0l${n(0.12 * r)} ${n(-0.08 * r)}l${n(0.06 * r)} ${n(0.12 * r)}l${n(0.16 * r)} ${n(-0.14 * r)}` +
      `l${n(0.08 * r)} ${n(0.1 * r)}l${n(0.2 * r)} ${n(-0.16 * r)}` +
      `M${n(face + 0.18 * r)} ${n(0.04 * r)}l${n(0.1 * r)} ${n(0.16 * r)}l${n(0.14 * r)} ${n(0.04 * r)}`,
  }
}
