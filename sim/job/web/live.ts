/** What can be done by hand to a web and its line, and what happens to it. */
import { LINE_PHASE, type Line } from '../../control/line.ts'
import { numbers } from '../../core/native.ts'
import type { JobLive, LiveHands } from '../live.ts'
import { addRamp, type LinePhase, topSpeed, turnToTaut } from './fill.ts'
import type { WebLoad } from './load.ts'
import { webIn } from './scenario.ts'

type Hands = LiveHands<WebLoad>

/** Phases of a line that goes from whatever it does to another speed. */
const ROOM = 8
/** Of a line whose file has no ramp [m/s²], [m/s³]; common practice, no source. */
const USUAL = { acceleration: 1, jerk: 10 }

/** The line stands, and has room for ramps. */
function stand(line: Line): void {
  line.phases = numbers(LINE_PHASE * ROOM)
  line.count = 1
}

/** Sends the line to a speed [m/s], from what it does now; the drive knows of it. */
function send({ load, follower, scenario, time }: Hands, to: number): void {
  const [first] = webIn(scenario).line.ramps
  const { acceleration, jerk } = first ?? USUAL
  load.line.at(time)
  const { way, speed, acceleration: now } = load.line.state
  const phases: LinePhase[] = [[time, way, speed, now, -Math.sign(now) * jerk]]
  // What is left of an acceleration is taken away first.
  const rest = Math.abs(now) / jerk
  const steady = speed + (now * rest) / 2
  addRamp(phases, steady, { start: time + rest, speed: to, acceleration, jerk })
  for (const line of [load.line, follower.line]) {
    line.phases.set(phases.flat())
    line.count = phases.length
    line.state.index = 0
  }
}

/** How fast the line may run [m/s]: as fast as it does in the file. */
const full = ({ scenario }: Hands) => topSpeed(scenario)

/** The drive is told how much hangs or how far the web is drawn, as it knows at the start of a run. */
function teach({ load, follower, scenario, motorTravel }: Hands): void {
  follower.state.angle = motorTravel - turnToTaut(scenario) - Math.min(0, load.state.drawn) / load.state.radius
}

export const webLive: JobLive<WebLoad> = {
  groups: [
    {
      id: 'output',
      acts: [
        { id: 'pull', kind: 'out', can: ({ load }) => Number.isNaN(load.state.torn), act: teach },
        {
          id: 'slacken',
          kind: 'back',
          can: ({ load }) => Number.isNaN(load.state.torn) && load.state.drawn > 0,
          to: ({ load, scenario, motorTravel }) =>
            motorTravel - (Math.max(0, load.state.drawn) + webIn(scenario).web.slack) / load.state.radius,
        },
      ],
    },
    {
      id: 'line',
      acts: [
        {
          id: 'run',
          kind: 'work',
          can: (at) => at.load.line.state.acceleration <= 0 && at.load.line.state.speed < full(at),
          act: (at) => send(at, full(at)),
        },
        {
          id: 'halt',
          kind: 'work',
          can: ({ load: { line } }) => line.state.acceleration >= 0 && line.state.speed > 0,
          act: (at) => send(at, 0),
        },
      ],
    },
    {
      id: 'work',
      acts: [
        {
          id: 'newWeb',
          kind: 'anew',
          can: ({ load }) => !Number.isNaN(load.state.touched) && load.line.state.speed === 0,
        },
      ],
    },
  ],
  before: null,
  events: [
    { id: 'taut', damage: false, at: ({ state }) => state.taut },
    // It may go slack again and again.
    {
      id: 'slack',
      damage: false,
      at: ({ state }, time) => (state.taut < time && state.drawn <= 0 ? time : Number.NaN),
    },
    { id: 'over', damage: true, at: ({ state }) => state.over },
    { id: 'torn', damage: true, at: ({ state }) => state.torn },
  ],
  facts: {
    hangs: ({ state }) => state.drawn <= 0,
    runs: ({ line }) => line.state.speed > 0 || line.state.acceleration !== 0,
  },
  inHand: ({ state }) => !Number.isNaN(state.touched) && Number.isNaN(state.torn),
  fixed: (scenario) => {
    const { roll, span, web, line } = webIn(scenario)
    return [roll.kind, roll.radius, roll.coreRadius, span.length, web.slack, web.thickness, line.radius]
  },
  still(load, follower) {
    load.from = Number.POSITIVE_INFINITY
    stand(load.line)
    stand(follower.line)
  },
  carry(from, to) {
    for (const [old, next] of [
      [from.load.line, to.load.line],
      [from.follower.line, to.follower.line],
    ] as const) {
      next.phases.set(old.phases)
      next.count = old.count
    }
  },
}
