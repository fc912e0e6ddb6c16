/** Pressing a bushing in: bushing and bore, joint, axis. */
import { axisOf } from '../../axis/reflect.ts'
import { seatDepth } from '../../job/press/fill.ts'
import { pressIn } from '../../job/press/scenario.ts'
import { allowedForce, neededForce, slidingForce } from '../../job/press/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import { type Answers, asGiven, figuresAt, given, leftOut, type NewJob, rounded } from './job.ts'

const NEEDED = ['bushing.diameter', 'bushing.length', 'bushing.interference', 'bore.outerDiameter']
const MATERIALS = ['bushing.innerDiameter', 'bushing.modulus', 'bore.modulus', 'joint.friction.pressing']
const FORCES = ['window.seat.least', 'window.seat.most']
const LIMITS = ['window.mostForce', 'bushing.mostForce']

/** Inner diameter of a bushing whose wall nobody gave, as a share of the outer one; common practice, no source. */
const INNER = 2 / 3
/** Friction at rest over that of pressing; common practice, no source. */
const AT_REST = 1.1
/** Half-angle of the leading cone [rad], and its length ∛d with d in mm: DIN 7190-1 advises 5° at most and that length. */
const CHAMFER_ANGLE = Math.PI / 36
const chamferLength = (diameter: number) => Math.cbrt(diameter * 1000) / 1000
/** Way of the ram to the bore and beyond the seat [m]. */
const [GAP, SPARE] = [0.01, 0.01]
/** Share of the length by which a bushing may stand off a shoulder, and off its depth where there is none; common practice, no source. */
const [OFF_SHOULDER, OFF_DEPTH] = [0.005, 0.02]
/** Points of the band by depth over length, and its width about the force in closed form; common practice, no source. */
const BAND = [0.25, 0.95]
const [WEAK, STRONG] = [0.6, 1.6]
/** No run need last longer [s]. */
const LONGEST = 20
/** Share of what is left up to the most force that momentum may take, as squares since energies add; common practice, no source. */
const BLOW = 0.2
/** Seating force over the one that slides the bushing home, least and most; common practice, no source. */
const [SEATS, BRUISES] = [1.2, 2.2]

const { shoulder, depth } = { shoulder: 'shoulder', depth: 'depth' }

export const pressJob: NewJob = {
  label: 'Press a bushing into a bore',
  steps: [
    { title: 'Bushing and bore', figures: figuresAt(NEEDED, MATERIALS) },
    {
      title: 'Joint',
      choices: [
        {
          id: 'end',
          legend: 'What ends the way?',
          options: [
            { value: shoulder, label: 'A shoulder in the bore, at the bushing’s length' },
            { value: depth, label: 'The depth alone: the bore goes through' },
          ],
        },
      ],
      figures: [
        ...FORCES.map((path) => ({ id: path, path, when: { choice: 'end', is: shoulder } })),
        ...LIMITS.map((path) => ({ id: path, path })),
        { id: 'ram.stiffness', path: 'ram.stiffness' },
      ],
      note: {
        when: { choice: 'end', is: depth },
        text: 'Without a shoulder the depth has to come from the way of the ram. A strategy that goes by force alone ends where its force does, short of the depth or beyond it.',
      },
    },
  ],
  effort: {
    type: 'number',
    title: 'Wanted pressing force',
    symbol: 'F',
    unit: 'N',
    minimum: 0.001,
    maximum: 1e8,
    description: 'Force of the ram at the end of the way that every strategy is set to.',
  },
  window: {
    title: 'Joint window',
    unit: ' at the end of the way',
    below: 'less leaves the bushing short',
    above: 'more is too much for the joint',
    noLeast: 'the joint asks for no least force',
    noMost: 'no most force is given',
    empty:
      'The end of the way takes more force than is allowed: less interference, another bore or less friction can help, no axis and no tuning.',
  },
  whole: (answers) => NEEDED.every((path) => given(answers, path) !== undefined),
  windowComes: 'appears here as soon as diameter, length, interference and the wall around the bore are given.',
  edits(answers) {
    const d = given(answers, 'bushing.diameter')
    const length = given(answers, 'bushing.length')
    const friction = given(answers, 'joint.friction.pressing')
    const interference = given(answers, 'bushing.interference') ?? 0
    return [
      ...asGiven(answers, [...NEEDED, ...MATERIALS, ...LIMITS, 'ram.stiffness']),
      ...(d === undefined ? [] : ofDiameter(answers, d, interference)),
      ...(length === undefined ? [] : ofLength(answers, length)),
      ...(friction === undefined ? [] : [{ path: 'joint.friction.static', value: rounded(AT_REST * friction) }]),
      { path: 'ram.gap', value: GAP },
      { path: 'arm.gravity', value: 'along' },
    ]
  },
  follows(scenario, answers) {
    const { bushing } = pressIn(scenario)
    const force = (share: number) => slidingForce(scenario, share * bushing.length)
    const joins = bushing.interference > 0 && force(1) > 0
    const band = BAND.map((share) => ({
      depth: rounded(share * bushing.length),
      least: rounded(WEAK * force(share), 3),
      most: rounded(STRONG * force(share), 3),
    }))
    const seat = seatOf(scenario, answers, force(1))
    return [...(joins ? [{ path: 'window.band', value: band }] : []), ...(onShoulder(answers) ? seat : [])]
  },
  edges(scenario, answers) {
    if (NEEDED.some((path) => given(answers, path) === undefined)) return { least: null, most: null }
    const most = allowedForce(scenario)
    const needed = neededForce(scenario)
    return { least: needed > 0 ? needed : null, most: most < Number.POSITIVE_INFINITY ? most : null }
  },
  /** By force the profile ends so far beyond the shoulder that the position loop stands at its limit; by depth at the depth and the frame's give. */
  onAxis(scenario, effort) {
    const { ram, bore, bushing } = pressIn(scenario)
    const end = seatDepth(scenario)
    const give = (effort ?? 0) / ram.stiffness
    const lead = (2 * scenario.servo.currentLimit) / scenario.servo.kp
    const beyond =
      bore.shoulder === null ? bushing.length - end + slidingForce(scenario, end) / ram.stiffness : give + lead
    const overtravel = end + beyond
    return [
      { path: 'approach.creepSpeed', value: creepOf(scenario, effort ?? 0) },
      { path: 'approach.overtravel', value: rounded(overtravel) },
      { path: 'ram.stroke', value: rounded(ram.gap + overtravel + SPARE) },
    ]
  },
  /**
   * The profile, or the force loop, whichever is slower: its speed is k_p·(F* − F), with a force that grows with the way up to the one that slides
   * the bushing home, so it takes l/(k_p·F_l)·ln(F* /(F* − F_l)).
   */
  lasts(scenario, effort) {
    const { ram } = pressIn(scenario)
    const { approach, strategies } = scenario
    const end = seatDepth(scenario)
    const profile =
      (ram.gap + end) / approach.speed + (approach.creepFrom + approach.overtravel - end) / approach.creepSpeed
    const slides = slidingForce(scenario, end)
    const { kp, speedLimit } = strategies.sensedForce
    const share = effort === null ? 0 : Math.min(0.9, slides / effort)
    const loop = share > 0 && kp > 0 ? (end / (kp * slides)) * -Math.log(1 - share) : 0
    const sensed = ram.gap / approach.speed + Math.max(end / speedLimit, loop)
    return rounded(Math.min(LONGEST, Math.max(1.5, Math.max(profile, sensed) + 0.8)), 2)
  },
  fastest: ({ approach }) => approach.speed,
  assumed: (answers) => [
    ...leftOut(answers, [...MATERIALS, 'ram.stiffness']),
    ...(onShoulder(answers) ? leftOut(answers, FORCES) : ['window.depth.least', 'window.depth.most']),
    'joint.friction.static',
    'bushing.chamfer.angle',
    'bushing.chamfer.length',
    'window.band',
    'ram.gap',
    'ram.mass',
    'arm.gravity',
    'approach.speed',
    'approach.creepSpeed',
  ],
}

/** Speed at which the moving mass brings the wanted force no further than it may [m/s]: M·v²·k = share·(most² − F²). */
function creepOf(scenario: Scenario, effort: number): number {
  const { ram, bore } = pressIn(scenario)
  const { creepSpeed } = scenario.approach
  if (bore.shoulder === null) return creepSpeed
  const most = Math.min(allowedForce(scenario), 1.5 * effort)
  const stiffness = (bore.shoulder.stiffness * ram.stiffness) / (bore.shoulder.stiffness + ram.stiffness)
  const mass = axisOf(scenario.actuator).mass + ram.mass
  const room = Math.max(0.05 * effort * effort, most * most - effort * effort)
  return Math.max(0.0005, Math.min(creepSpeed, rounded(Math.sqrt((BLOW * room) / (stiffness * mass)), 2)))
}

const onShoulder = ({ choices }: Answers) => choices.end !== depth

function ofDiameter(answers: Answers, d: number, interference: number) {
  const chamfer = Math.max(chamferLength(d), (1.2 * Math.max(0, interference)) / 2 / Math.tan(CHAMFER_ANGLE))
  return [
    ...(given(answers, 'bushing.innerDiameter') === undefined
      ? [{ path: 'bushing.innerDiameter', value: rounded(INNER * d) }]
      : []),
    { path: 'bushing.chamfer', value: { angle: CHAMFER_ANGLE, length: rounded(chamfer, 3) } },
  ]
}

function ofLength(answers: Answers, length: number) {
  if (onShoulder(answers))
    return [
      { path: 'bore.shoulder', value: { depth: length } },
      { path: 'strategies.thresholdStop.afterwards', value: 'press' },
      { path: 'strategies.thresholdStop.confirmTime', value: 0.001 },
      { path: 'window.depth', value: { least: rounded((1 - OFF_SHOULDER) * length) } },
      { path: 'approach.creepFrom', value: rounded(0.1 * length, 3) },
    ]
  const [least, most] = [(1 - OFF_DEPTH) * length, (1 + OFF_DEPTH) * length]
  return [
    { path: 'bore.shoulder', value: null },
    { path: 'window.depth', value: { least: rounded(least), most: rounded(most) } },
    { path: 'approach.creepFrom', value: rounded(0.1 * length, 3) },
  ]
}

/** What was not told of the seating force, from what was and from the force that slides the bushing home. */
function seatOf(scenario: Scenario, answers: Answers, slides: number) {
  const [told, toldMost] = FORCES.map((path) => given(answers, path))
  const bound = Math.min(toldMost ?? Number.POSITIVE_INFINITY, allowedForce(scenario))
  const least = told ?? Math.min(SEATS * slides, bound)
  const most = toldMost ?? Math.min(Math.max(BRUISES * slides, 1.5 * least), bound)
  return [
    { path: 'window.seat.least', value: rounded(least, 3) },
    ...(most > 0 && most < Number.POSITIVE_INFINITY ? [{ path: 'window.seat.most', value: rounded(most, 3) }] : []),
  ]
}
