/** Sizes of the drawing [px], from those of the closure: true to scale across and along, walls as they usually are for the size. */
import { capIn, type Scenario } from '../../../sim/index.ts'

export interface Sizes {
  /** Mean radius of the thread, its depth, its pitch; way down for each radian. */
  radius: number
  tooth: number
  pitch: number
  perRadian: number
  /** Inner radius of the neck, outer ones of lid and chuck. */
  bore: number
  lidRadius: number
  chuckRadius: number
  /** Thickness of liner and top plate; length of the skirt and of the neck. */
  liner: number
  plate: number
  skirt: number
  neck: number
  /** Heights of the rim and of the arrow of the torque. */
  rim: number
  turning: number
}

export function sizesOf(scenario: Scenario, width: number, height: number): Sizes {
  const { lead, meanDiameter, engagement } = capIn(scenario).closure
  const radius = Math.min(0.32 * width, 0.37 * height)
  const scale = radius / (meanDiameter / 2)
  // A lead that is long beside the diameter is drawn shorter, so that the skirt keeps its place.
  const pitch = Math.min(lead * scale, 0.3 * radius)
  const turns = Math.min(2.5, Math.max(1, engagement / (2 * Math.PI)))
  const skirt = pitch * turns + 0.36 * radius
  return {
    radius,
    tooth: Math.max(2.5, Math.min(0.06 * radius, 0.45 * pitch)),
    pitch,
    perRadian: pitch / (2 * Math.PI),
    bore: 0.8 * radius,
    lidRadius: 1.17 * radius,
    chuckRadius: 1.42 * radius,
    liner: 0.07 * radius,
    plate: 0.1 * radius,
    skirt,
    neck: skirt + 0.3 * radius,
    rim: 0.43 * height,
    turning: 0.1 * height,
  }
}
