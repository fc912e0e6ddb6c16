/**
 * The layout of the picture: where everything is, in pixels, for a scenario and a size. Opening, stroke, part, pads, screw
 * and pinion are true to one scale; what the scenario does not know (fingers, housing, motor) is drawn in units of 1/100 of
 * the gripper's base length. Origin: the middle between the open jaws, on the axis of the drive; y points down.
 */
import type { Scenario } from '../../../sim/index.ts'
import { HEIGHTS, type ShapeKind, shapeOf, wallOf } from './shape.ts'

/** Levels of the body in units, from the axis of the drive down. */
export const LEVEL = {
  flange: -47,
  plate: -40,
  rail: -34,
  carriage: -28.5,
  block: -15,
  blockBottom: 15,
  cover: 17,
} as const

/** Lengths along the grip in units. A jaw's own origin is its pad face, outwards is negative. */
export const JAW = {
  pad: 4,
  tip: 9,
  finger: 14,
  blockFrom: -26,
  blockTo: -1,
  middle: -13.5,
  clearance: 3,
  wall: 9,
} as const

export interface Size {
  width: number
  height: number
  /** Room for part names above and to the right [px]. */
  names?: boolean
}

export interface Lens {
  x: number
  y: number
  r: number
}

export interface Plan {
  width: number
  height: number
  /** Pixels for a unit and for a metre. */
  u: number
  m: number
  /** Weight of lines and width of hatching over those of a picture of usual size: a small one is drawn finer. */
  line: number
  /** Where the origin is in the picture [px]. */
  origin: { x: number; y: number }
  mirrored: boolean
  /** Half the gap between the open pads [px]: the pad faces start at ∓half. */
  half: number
  stroke: number
  padHalf: number
  padThickness: number
  shape: ShapeKind
  partWidth: number
  partHeight: number
  /** Wall of a hollow part [px]. */
  partWall: number
  /** Level of the pads' middle and the lower end of the fingers [px]. */
  contactY: number
  fingerEnd: number
  floor: number
  /** Inner faces of the end walls, outer face of the left one, and left end of the drive [px]. */
  wallLeft: number
  wallRight: number
  driveRight: number
  driveLeft: number
  right: number
  lens: Lens
  /** Longest force arrow [px]. */
  arrow: number
  names: boolean
}

/** Longest force arrow [units]. */
const ARROW = 47
/** Units from the part's top to the jaw block, and below the part to its support. */
const CLEARANCE = 7
const BELOW = 12
/** Strip for the scale bar, and margins [px]. */
const STRIP = 30
const MARGIN = 6
const NAMES_TOP = 40
const NAMES_RIGHT = 58

/** Base length [m]: whatever is largest of opening, stroke and pads. */
export function baseLength({ jaws }: Scenario): number {
  const moved = jaws.layout === 'mirrored' ? 2 * jaws.stroke : jaws.stroke
  return Math.max(jaws.opening, Math.min(moved, 1.6 * jaws.opening), Math.min(1.3 * jaws.padLength, 1.5 * jaws.opening))
}

/** `drive`: length of the drive unit left of the end wall, in units. */
export function planOf(scenario: Scenario, size: Size, drive: number): Plan {
  const { jaws, part } = scenario
  const { width, height, names = false } = size
  const unit = baseLength(scenario) / 100
  const mirrored = jaws.layout === 'mirrored'
  const shape = shapeOf(part)
  const measures = measuresOf(scenario, unit, shape, drive)
  const { half, partWidth, partHeight, padHalf, contactY, fingerEnd, floor, left, wall } = measures
  const { u, origin } = placeOf(measures, size)
  return {
    width,
    height,
    u,
    m: u / unit,
    line: Math.min(1.15, Math.max(0.62, u / 1.45)),
    origin,
    mirrored,
    half: half * u,
    stroke: (jaws.stroke / unit) * u,
    padHalf: padHalf * u,
    padThickness: JAW.pad * u,
    shape,
    partWidth: partWidth * u,
    partHeight: partHeight * u,
    partWall: wallOf(part, shape) * partWidth * u,
    contactY: contactY * u,
    fingerEnd: fingerEnd * u,
    floor: floor * u,
    wallLeft: (-half + JAW.blockFrom - JAW.clearance) * u,
    wallRight: mirrored ? (half - JAW.blockFrom + JAW.clearance) * u : (half + 1) * u,
    driveRight: (-half + JAW.blockFrom - JAW.clearance - JAW.wall) * u,
    driveLeft: left * u,
    right: wall * u,
    lens: lensOf(measures, origin, u, height),
    arrow: ARROW * u,
    names,
  }
}

type Measures = ReturnType<typeof measuresOf>

/** Sizes and levels in units, from the middle of the opening and from the flange. */
function measuresOf({ jaws, part }: Scenario, unit: number, shape: ShapeKind, drive: number) {
  const mirrored = jaws.layout === 'mirrored'
  const half = jaws.opening / 2 / unit
  const partWidth = part.width / unit
  const partHeight = partWidth * HEIGHTS[shape]
  const padHalf = Math.min(jaws.padLength / 2 / unit, 60)
  const contactY = LEVEL.blockBottom + CLEARANCE + Math.max(partHeight / 2, padHalf + 2)
  const fingerEnd = contactY + padHalf + 3
  const floor = contactY + partHeight / 2
  const wall = mirrored ? half - JAW.blockFrom + JAW.clearance + JAW.wall : half - JAW.blockFrom
  return {
    half,
    partWidth,
    partHeight,
    padHalf,
    contactY,
    fingerEnd,
    floor,
    wall,
    left: -half + JAW.blockFrom - JAW.clearance - JAW.wall - drive,
    right: Math.max(wall, (mirrored ? partWidth / 2 : half) + ARROW + 2),
    bottom: Math.max(floor, fingerEnd) + BELOW,
    /** Where the driven jaw on the left touches the part. */
    touch: mirrored ? -partWidth / 2 : half - partWidth,
  }
}

/** Pixels for each unit, and where the middle of the opening comes to lie at the level of the flange. */
function placeOf({ left, right, bottom }: Measures, { width, height, names = false }: Size) {
  const top = names ? NAMES_TOP : MARGIN
  const roomX = Math.max(40, width - MARGIN - (names ? NAMES_RIGHT : MARGIN))
  const roomY = Math.max(40, height - top - STRIP)
  const u = Math.min(roomX / (right - left), roomY / (bottom - LEVEL.flange))
  const spareX = roomX - u * (right - left)
  const spareY = roomY - u * (bottom - LEVEL.flange)
  return { u, origin: { x: MARGIN + 0.62 * spareX - left * u, y: top + 0.5 * spareY - LEVEL.flange * u } }
}

/** The magnifier below the drive, clear of the finger and of the force window's outer edge, as far as it can still be read. */
function lensOf({ half, touch }: Measures, origin: Plan['origin'], u: number, height: number): Lens {
  const right = origin.x + (-half - JAW.pad - JAW.finger - 6) * u
  const top = origin.y + (LEVEL.blockBottom + 12) * u
  const bottom = height - 5
  const arrowEnd = origin.x + (touch - ARROW) * u - 6
  const r = Math.max(30, Math.min(88, (right - 8) / 2, arrowEnd / 2 - 4, (bottom - top) / 2))
  return { x: Math.max(r + 6, Math.min(right, arrowEnd) - r), y: bottom - r, r }
}
