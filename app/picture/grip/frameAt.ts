/** One instant of a run, as the picture needs it: looked up in the traces by bisection, linear between rows. */

import type { Channel, GripResult, Scenario, Traces } from '../../../sim/index.ts'
import { rowAt } from '../rowAt.ts'
import { type ArmVector, armAt } from './armMove.ts'
import { type ContactShare, contactGeometry, contactShares, type SideName } from './contact.ts'

/** What a run has handed out so far; the first `rows` rows of the traces count. */
export interface RecordedRun {
  scenario: Scenario
  result: GripResult | null
  traces: Traces | null
  rows: number
}

/** SI units. */
export interface GripFrame {
  /** The instant shown: at most the last one recorded. */
  time: number
  travel: number
  motorTravel: number
  /** Normal force at the driven and at the far contact. */
  force: number
  farForce: number
  current: number
  /** Shift of the part along the grip, away from the driven jaw. */
  partShift: number
  sag: number
  drift: number
  /** Angle by which the part has turned about the grip axis [rad]. */
  turn: number
  dent: number
  contacts: Record<SideName, ContactShare>
  /** The contact at which the part broke, once it has. */
  crack: SideName | null
  /** Contacts whose force has exceeded the mark limit. */
  marked: SideName[]
  /** The part still stands on its support. */
  supported: boolean
  /** Time since the part left the jaws; null: it has not. */
  fallen: number | null
  arm: ArmVector
  /** The run left its rails at or before this instant. */
  unstable: boolean
}

/** Seconds around the crack in which the contact that broke it is looked for. */
const CRACK_WINDOW = 0.002

/** The gripper open, before anything has run. */
export function restFrame(scenario: Scenario): GripFrame {
  return frameOf(scenario, null, 0, () => 0)
}

export function frameAt(run: RecordedRun, time: number): GripFrame {
  const { scenario, result, traces, rows } = run
  if (!traces || rows === 0) return restFrame(scenario)
  const { index, fraction } = rowAt(traces.time, rows, time)
  const next = Math.min(index + 1, rows - 1)
  const at = (channel: Channel) => {
    const from = traces[channel][index]!
    return fraction === 0 ? from : from + fraction * (traces[channel][next]! - from)
  }
  const shown = Math.min(Math.max(time, at('time')), traces.time[rows - 1]!)
  const frame = frameOf(scenario, result, shown, at)
  frame.marked = markedSides(scenario, traces, index)
  const crack = result?.events.crack ?? null
  if (crack !== null && crack <= shown) frame.crack = crackSide(traces, rows, crack)
  return frame
}

function frameOf(
  scenario: Scenario,
  result: GripResult | null,
  time: number,
  at: (channel: Channel) => number,
): GripFrame {
  const events = result?.events
  const drop = events?.drop ?? null
  const lift = events ? events.lift : null
  const unstable = events?.unstable ?? null
  const state = {
    travel: at('travel'),
    force: at('force'),
    farForce: at('farForce'),
    partShift: at('partShift'),
    dent: at('dent'),
  }
  return {
    time,
    ...state,
    motorTravel: at('motorTravel'),
    current: at('current'),
    sag: at('sag'),
    drift: at('drift'),
    turn: at('turn'),
    contacts: contactShares(contactGeometry(scenario), state),
    crack: null,
    marked: [],
    supported: lift === null || time < lift,
    fallen: drop !== null && time >= drop ? time - drop : null,
    arm: armAt(scenario.arm.moves, time),
    unstable: unstable !== null && time >= unstable,
  }
}

/** The contact with the greater force about the instant at which the part broke. */
function crackSide(traces: Traces, rows: number, crack: number): SideName {
  let driven = 0
  let far = 0
  for (let i = rowAt(traces.time, rows, crack - CRACK_WINDOW).index; i < rows; i++) {
    if (traces.time[i]! > crack + CRACK_WINDOW) break
    driven = Math.max(driven, traces.force[i]!)
    far = Math.max(far, traces.farForce[i]!)
  }
  return far > driven ? 'far' : 'driven'
}

function markedSides(scenario: Scenario, traces: Traces, upTo: number): SideName[] {
  const limit = scenario.part.markForce
  if (limit === undefined) return []
  const exceeds = (column: Float64Array) => {
    for (let i = 0; i <= upTo; i++) if (column[i]! > limit) return true
    return false
  }
  const sides: SideName[] = []
  if (exceeds(traces.force)) sides.push('driven')
  if (exceeds(traces.farForce)) sides.push('far')
  return sides
}
