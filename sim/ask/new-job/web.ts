/** Holding a web's tension: web, line and roll, tension, axis. */
import { topSpeed, webStiffness } from '../../job/web/fill.ts'
import { webIn } from '../../job/web/scenario.ts'
import { tensionWindow } from '../../job/web/window.ts'
import { type Answers, asGiven, figuresAt, given, leftOut, type NewJob, rounded } from './job.ts'

const WEB = ['web.width', 'web.thickness', 'span.length']
const MAY = ['web.modulus', 'web.breakTension']
const TENSION = ['window.least', 'window.most']
const [SPEED, RAMP] = ['line.ramps[0].speed', 'line.ramps[0].acceleration']
const ROLL = ['roll.radius']
const CORE = ['roll.coreRadius', 'roll.inertia']

/** The line starts then, having stood while the slack is taken up, and the tension counts a little before [s]. */
const [START, COUNTS] = [3, 2.6]
/** The line keeps its speed, and stands again at the end [s]. */
const [STEADY, AFTER] = [2, 1]
/** Time in which the line gets up to speed where nobody gave its acceleration [s], and the share of a ramp on which jerk acts. */
const [RISE, JERKS] = [2, 0.2]
/** Core of a roll over its radius, where nobody gave it; common practice, no source. */
const HOLLOW = 0.4

/** Share of the wanted tension at which the web counts as taut; common practice, no source. */
const TOUCHES = 0.1
/** Bandwidth of the tension loop [rad/s], and rate at which its integral acts [1/s]; common practice, no source. */
const [BANDWIDTH, FINDS_DRAW] = [40, 1]

const winds = { choice: 'kind', is: 'winds' }

export const webJob: NewJob = {
  label: 'Hold the tension of a running web',
  steps: [
    { title: 'Web', figures: figuresAt(WEB, MAY) },
    {
      title: 'Line and roll',
      choices: [
        {
          id: 'kind',
          legend: 'What does the roll do?',
          options: [
            { value: 'winds', label: 'It winds the web up' },
            { value: 'draws', label: 'It draws the web and lets it go' },
          ],
        },
      ],
      figures: [
        {
          id: SPEED,
          path: SPEED,
          needed: true,
          label: 'Speed of the line',
          note: 'Speed at which the web runs between ramps.',
        },
        { id: RAMP, path: RAMP, label: 'Acceleration of the line' },
        ...figuresAt(ROLL, []),
        { id: CORE[0]!, path: CORE[0]!, when: winds },
        { id: CORE[1]!, path: CORE[1]! },
      ],
    },
    { title: 'Tension', figures: figuresAt(TENSION, []) },
  ],
  effort: {
    type: 'number',
    title: 'Wanted tension',
    symbol: 'T',
    unit: 'N',
    minimum: 0.001,
    maximum: 1e7,
    description: 'Tension of the web that every strategy is set to.',
  },
  window: {
    title: 'Tension window',
    unit: '',
    below: 'less lets the web go slack',
    above: 'more stretches it',
    noLeast: 'no least tension is given',
    noMost: 'no most tension is given',
    empty: 'The least tension lies above what the web may have, so no axis and no tuning can help.',
  },
  whole: (answers) => TENSION.every((path) => given(answers, path) !== undefined),
  windowComes: 'appears here as soon as the least or the most tension, or the one at which the web breaks, is given.',
  edits(answers) {
    const radius = given(answers, 'roll.radius')
    const core = given(answers, 'roll.coreRadius')
    const { kind } = answers.choices
    const ramps = rampsOf(answers)
    return [
      ...asGiven(answers, [...WEB, ...MAY, ...TENSION, ...ROLL, ...CORE]),
      ...(radius === undefined || core !== undefined
        ? []
        : [{ path: 'roll.coreRadius', value: rounded(HOLLOW * radius) }]),
      ...(kind === undefined ? [] : [{ path: 'roll.kind', value: kind }]),
      ...(kind === 'winds' ? [{ path: 'follow.radius', value: 'wound' }] : []),
      { path: 'window.from', value: COUNTS },
      { path: 'run.duration', value: ramps.ends },
      { path: 'line.ramps', value: ramps.ramps },
    ]
  },
  edges(scenario, answers) {
    const { least, most, tears } = tensionWindow(scenario)
    const bounds = [...(given(answers, TENSION[1]!) === undefined ? [] : [most]), ...(tears === null ? [] : [tears])]
    return {
      least: given(answers, TENSION[0]!) === undefined ? null : least,
      most: bounds.length === 0 ? null : Math.min(...bounds),
    }
  },
  /** The slack is taken up well before the tension counts. */
  onAxis(scenario, effort) {
    const { web, roll } = webIn(scenario)
    const turn = web.slack / roll.radius
    const speed = Math.max(turn / 0.5, 1e-3)
    return [
      ...(effort === null
        ? []
        : [{ path: 'strategies.sensedForce.contactForce', value: rounded(TOUCHES * effort, 2) }]),
      { path: 'approach.speed', value: rounded(speed, 3) },
      { path: 'approach.acceleration', value: rounded(10 * speed, 3) },
      { path: 'approach.jerk', value: rounded(200 * speed, 3) },
      { path: 'approach.creepSpeed', value: rounded(speed / 4, 3) },
      { path: 'approach.creepFrom', value: rounded(turn / 10, 3) },
      {
        path: 'approach.overtravel',
        value: rounded(Math.max(0.2, (2 * scenario.servo.currentLimit) / scenario.servo.kp), 3),
      },
    ]
  },
  /** Standing, tension is the integral of speed: dT/dφ = E·A·R/L, so k_p over that is a bandwidth; k_i finds the draw within a second. */
  forceGains(scenario) {
    const { roll, span } = webIn(scenario)
    const kp = (BANDWIDTH * span.length) / (webStiffness(scenario) * roll.radius)
    return { kp, ki: FINDS_DRAW * kp, kd: 0 }
  },
  fastest: (scenario) => topSpeed(scenario) / webIn(scenario).roll.radius,
  assumed: (answers) => [
    ...leftOut(answers, MAY.slice(0, 1)),
    'web.density',
    'web.slack',
    ...(answers.choices.kind === 'draws' ? [] : leftOut(answers, ['roll.coreRadius'])),
    ...leftOut(answers, ['roll.inertia', RAMP]),
    'idlers.coulomb',
    'window.from',
    'approach.speed',
  ],
}

/** Up to speed, on for a while, and down again. */
function rampsOf(answers: Answers) {
  const speed = given(answers, SPEED) ?? 0
  const acceleration = given(answers, RAMP) ?? rounded(Math.max(speed / RISE, 0.001), 3)
  if (speed === 0) return { ramps: [], ends: START + STEADY }
  const jerk = rounded(acceleration / (JERKS * Math.max(speed / acceleration, 0.05)), 3)
  const rise = 1.3 * Math.max(speed / acceleration, 0.05)
  const stops = rounded(START + rise + STEADY, 4)
  return {
    ramps: [
      { start: START, speed, acceleration, jerk },
      { start: stops, speed: 0, acceleration, jerk },
    ],
    ends: rounded(stops + rise + AFTER, 4),
  }
}
