/**
 * The scenario format: the one source of types, defaults, allowed ranges, units, labels and of the published JSON Schema.
 * Values are SI; `shown` names the unit in which people usually read them.
 */
import Type from 'typebox'
import { ACTUATORS } from './actuator.ts'
import { choice, group, limit, quantity } from './quantity.ts'

const jaws = group('Jaws', {
  layout: choice(
    'Layout',
    ['mirrored', 'anvil'],
    ['Both jaws driven', 'One jaw against a fixed one'],
    'Mirrored: both jaws are driven and coupled, the drive carries both contacts. Anvil: one driven jaw presses against a fixed one.',
  ),
  mass: quantity({
    label: 'Jaw mass',
    symbol: 'm_j',
    unit: 'kg',
    shown: 'g',
    default: 0.12,
    range: [0.0001, 100],
    note: 'One jaw with finger and pad, on the part side of the transmission stiffness.',
  }),
  opening: quantity({
    label: 'Opening',
    symbol: 'w_0',
    unit: 'm',
    shown: 'mm',
    default: 0.09,
    range: [0.0002, 2],
    note: 'Gap between the pads before the move; wider than the part.',
  }),
  stroke: quantity({
    label: 'Stroke of a jaw',
    symbol: 's_j',
    unit: 'm',
    shown: 'mm',
    default: 0.03,
    range: [0.0001, 1],
    note: 'Travel of one jaw to its end stop.',
  }),
  padStiffness: quantity({
    label: 'Pad stiffness',
    symbol: 'k_p',
    unit: 'N/m',
    shown: 'N/mm',
    default: 400000,
    range: [100, 1e9],
    note: 'One pad, in series with the part: a soft pad makes the impact smaller and a position error cheaper.',
  }),
  padLength: quantity({
    label: 'Pad length',
    symbol: 'l_p',
    unit: 'm',
    shown: 'mm',
    default: 0.025,
    range: [0.0001, 1],
    note: 'A part that has slid this far has left the jaws.',
  }),
  friction: group('Pad friction', {
    static: quantity({
      label: 'Static friction',
      symbol: 'µ_s',
      unit: '',
      default: 0.5,
      range: [0.01, 3],
      note: 'Between pad and part before it slides; it sets the least force that holds.',
    }),
    sliding: quantity({
      label: 'Sliding friction',
      symbol: 'µ_k',
      unit: '',
      default: 0.4,
      range: [0.01, 3],
      note: 'Between pad and part once it slides; below the static value a slide does not stop by itself.',
    }),
    loadExponent: quantity({
      label: 'Load exponent',
      symbol: 'm_µ',
      unit: '',
      default: 1,
      range: [0.5, 1],
      note: 'On soft pads friction grows with the load to this power, so the coefficient falls: µ = µ₀·(N/N₀)^(m−1); 1 for none, 2/3 for a soft round contact.',
    }),
    referenceForce: quantity({
      label: 'Reference force',
      symbol: 'N_0',
      unit: 'N',
      default: 20,
      range: [0.001, 1e5],
      note: 'Force at one contact at which the coefficients are given.',
    }),
  }),
})

const part = group('Part', {
  width: quantity({
    label: 'Width',
    symbol: 'w',
    unit: 'm',
    shown: 'mm',
    default: 0.07,
    range: [0.0001, 2],
    note: 'Size across the grip; it varies from part to part.',
  }),
  mass: quantity({
    label: 'Mass',
    symbol: 'm',
    unit: 'kg',
    shown: 'g',
    default: 0.25,
    range: [0.00001, 200],
    note: 'With pad friction and arm acceleration it sets the least force that holds.',
  }),
  stiffness: quantity({
    label: 'Stiffness',
    symbol: 'K',
    unit: 'N/m^n',
    shown: 'N/mm^n',
    default: 150000,
    range: [10, 1e13],
    note: 'Force over flattening of the whole part to the power n; a stiff part turns a small position error into a large force.',
  }),
  exponent: Type.Union([Type.Literal(1), Type.Literal(1.5)], {
    title: 'Contact exponent',
    default: 1,
    symbol: 'n',
    labels: ['1, linear', '1.5, rounded surfaces (Hertz)'],
    description: '1 for a shell or a block, 1.5 for rounded solid surfaces.',
  }),
  damping: quantity({
    label: 'Contact damping',
    symbol: 'λ',
    unit: 's/m',
    default: 0.3,
    range: [0, 100],
    note: 'Hunt–Crossley damping: how much of an impact the part swallows.',
  }),
  relaxation: group('Relaxation', {
    fraction: quantity({
      label: 'Relaxing share',
      symbol: 'φ',
      unit: '',
      shown: '%',
      default: 0,
      range: [0, 0.98],
      note: 'Share of the elastic force that fades while the part is held at the same width.',
    }),
    time: quantity({
      label: 'Relaxation time',
      symbol: 'τ_r',
      unit: 's',
      default: 1,
      range: [0.001, 1e5],
      note: 'Time constant of the fading share.',
    }),
  }),
  markForce: limit({
    label: 'Mark limit',
    symbol: 'F_mark',
    unit: 'N',
    range: [0.001, 1e6],
    note: 'Force at one contact above which the part carries a visible mark.',
  }),
  yieldForce: limit({
    label: 'Yield force',
    symbol: 'F_y',
    unit: 'N',
    range: [0.001, 1e6],
    note: 'Force at one contact above which a lasting dent grows.',
  }),
  crackForce: limit({
    label: 'Crack force',
    symbol: 'F_crack',
    unit: 'N',
    range: [0.001, 1e6],
    note: 'Force at one contact at which the part breaks.',
  }),
})

const drive = group('Drive', {
  busVoltage: quantity({
    label: 'Bus voltage',
    symbol: 'U',
    unit: 'V',
    default: 48,
    range: [0.5, 2000],
    note: 'Limits the current at speed and how fast current can rise.',
  }),
  currentRate: quantity({
    label: 'Current loop rate',
    symbol: 'f_i',
    unit: '1/s',
    shown: 'kHz',
    default: 20000,
    range: [500, 200000],
    note: 'Samples a second of the current loop; its output acts one sample late.',
  }),
  currentBandwidth: quantity({
    label: 'Current bandwidth',
    symbol: 'ω_i',
    unit: 'rad/s',
    shown: 'Hz',
    default: 5000,
    range: [10, 1e6],
    note: 'Wanted bandwidth of the current loop; its gains follow by pole-zero cancellation.',
  }),
  currentResolution: quantity({
    label: 'Current resolution',
    symbol: 'ΔI',
    unit: 'A',
    shown: 'mA',
    default: 0.002,
    range: [0, 10],
    note: 'Step of the measured current; 0 for none.',
  }),
  currentNoise: quantity({
    label: 'Current noise, rms',
    symbol: 'σ_I',
    unit: 'A',
    shown: 'mA',
    default: 0.003,
    range: [0, 10],
    note: 'Noise of the measured current.',
  }),
  currentOffset: quantity({
    label: 'Current offset',
    symbol: 'I_0',
    unit: 'A',
    shown: 'mA',
    default: 0,
    range: [-10, 10],
    note: 'Constant error of the measured current; it becomes a constant error of the force.',
  }),
  backEmfFeedforward: quantity({
    label: 'Back-EMF feed-forward',
    symbol: 'γ',
    unit: '',
    shown: '%',
    default: 1,
    range: [0, 1],
    note: 'Share of the back-EMF that the current loop compensates from the measured speed.',
  }),
})

const servo = group('Servo', {
  rate: quantity({
    label: 'Servo rate',
    symbol: 'f_s',
    unit: '1/s',
    shown: 'kHz',
    default: 4000,
    range: [50, 100000],
    note: 'Samples a second of the position loop; it must divide the current loop rate.',
  }),
  kp: quantity({
    label: 'Proportional gain',
    symbol: 'k_p',
    unit: 'A/m',
    shown: 'A/mm',
    default: 8000,
    range: [0, 1e9],
    note: 'Current for each metre of following error: it decides how stiffly the axis holds its position.',
  }),
  ki: quantity({
    label: 'Integral gain',
    symbol: 'k_i',
    unit: 'A/(m·s)',
    shown: 'A/(mm·s)',
    default: 100000,
    range: [0, 1e12],
    note: 'Removes a lasting position error; in contact it winds the current up to its limit.',
  }),
  kd: quantity({
    label: 'Derivative gain',
    symbol: 'k_d',
    unit: 'A·s/m',
    default: 60,
    range: [0, 1e7],
    note: 'Current for each m/s of speed error: damping.',
  }),
  speedFilter: quantity({
    label: 'Speed filter',
    symbol: 'T_f',
    unit: 's',
    shown: 'ms',
    default: 0.0003,
    range: [0, 1],
    note: 'Time constant of the filter on the measured speed; it calms the encoder steps and costs phase.',
  }),
  velocityFeedforward: quantity({
    label: 'Speed feed-forward',
    symbol: 'k_v',
    unit: 'A·s/m',
    default: 0,
    range: [0, 1e6],
    note: 'Current in advance for viscous friction.',
  }),
  accelerationFeedforward: quantity({
    label: 'Acceleration feed-forward',
    symbol: 'k_a',
    unit: 'A·s²/m',
    default: 0,
    range: [0, 1e5],
    note: 'Current in advance for the moving mass.',
  }),
  currentLimit: quantity({
    label: 'Current limit',
    symbol: 'I_lim',
    unit: 'A',
    default: 6,
    range: [0.0001, 5000],
    note: 'Highest current that the position loop may ask for on the way.',
  }),
  encoderResolution: quantity({
    label: 'Encoder resolution',
    symbol: 'Δx',
    unit: 'm',
    shown: 'µm',
    default: 1e-6,
    range: [0, 0.01],
    note: 'Step of the measured position, at the jaw; 0 for none.',
  }),
})

const approach = group('Approach', {
  speed: quantity({
    label: 'Approach speed',
    symbol: 'v',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.05,
    range: [1e-5, 20],
    note: 'Speed on the way; the moving mass carries it into the part.',
  }),
  acceleration: quantity({
    label: 'Acceleration',
    symbol: 'a',
    unit: 'm/s²',
    default: 3,
    range: [0.001, 2000],
    note: 'Acceleration limit of the profile.',
  }),
  jerk: quantity({
    label: 'Jerk',
    symbol: 'j',
    unit: 'm/s³',
    default: 200,
    range: [0.01, 1e7],
    note: 'Limit on the change of acceleration.',
  }),
  creepSpeed: quantity({
    label: 'Creep speed',
    symbol: 'v_c',
    unit: 'm/s',
    shown: 'mm/s',
    default: 0.01,
    range: [1e-5, 20],
    note: 'Slower speed inside the creep zone, at most the approach speed.',
  }),
  creepFrom: quantity({
    label: 'Creep from opening',
    symbol: 'w_c',
    unit: 'm',
    shown: 'mm',
    default: 0,
    range: [0, 2],
    note: 'Opening between the pads from which on the jaws creep; 0, or any opening below the part, means no creep zone.',
  }),
  overtravel: quantity({
    label: 'Overtravel',
    symbol: 'x_o',
    unit: 'm',
    shown: 'mm',
    default: 0.002,
    range: [0, 0.5],
    note: 'How far beyond first contact with the nominal part the profile of a jaw ends.',
  }),
})

const strategies = group('Strategies', {
  thresholdStop: group('Threshold stop', {
    threshold: quantity({
      label: 'Threshold',
      symbol: 'I_th',
      unit: 'A',
      default: 1.2,
      range: [0.0001, 5000],
      note: 'Current command above which the move is halted.',
    }),
    confirmTime: quantity({
      label: 'Confirm time',
      symbol: 't_c',
      unit: 's',
      shown: 'ms',
      default: 0.002,
      range: [0, 1],
      note: 'How long the command must stand above the threshold: shorter detects earlier and trips more easily.',
    }),
    filter: quantity({
      label: 'Filter',
      symbol: 'T_th',
      unit: 's',
      shown: 'ms',
      default: 0.001,
      range: [0, 1],
      note: 'Time constant of the filter on the current command before it is held against the threshold.',
    }),
    afterwards: choice(
      'After the stop',
      ['hold', 'press'],
      ['Hold the position', 'Press with the clamp current'],
      'Hold: keep the position at which the move was halted. Press: from then on push with the clamp current, as the current clamp does.',
    ),
  }),
  currentClamp: group('Current clamp', {
    limit: quantity({
      label: 'Clamp current',
      symbol: 'I_cl',
      unit: 'A',
      default: 1.2,
      range: [0.0001, 5000],
      note: 'Limit of the position loop’s output; in contact the axis presses with it.',
    }),
    from: quantity({
      label: 'Clamp from opening',
      symbol: 'w_cl',
      unit: 'm',
      shown: 'mm',
      default: 2,
      range: [0, 2],
      note: 'Opening between the pads from which on the clamp current limits; wider open the servo’s current limit holds. Wide enough: always.',
    }),
  }),
  sensedForce: group('Sensed force', {
    target: quantity({
      label: 'Target force',
      symbol: 'F*',
      unit: 'N',
      default: 25,
      range: [0.001, 1e6],
      note: 'Wanted grip force at one contact.',
    }),
    contactForce: quantity({
      label: 'Contact force',
      symbol: 'F_t',
      unit: 'N',
      default: 1.5,
      range: [0.0001, 1e5],
      note: 'Gauge reading at which the force loop takes over.',
    }),
    rate: quantity({
      label: 'Force loop rate',
      symbol: 'f_F',
      unit: '1/s',
      shown: 'kHz',
      default: 1000,
      range: [20, 100000],
      note: 'Samples a second of the force loop; it must divide the servo rate.',
    }),
    kp: quantity({
      label: 'Proportional gain',
      symbol: 'k_p',
      unit: 'm/(N·s)',
      shown: 'mm/(N·s)',
      default: 0.0004,
      range: [0, 100],
      note: 'Jaw speed for each newton of force error; on a stiff part it rings first.',
    }),
    ki: quantity({
      label: 'Integral gain',
      symbol: 'k_i',
      unit: 'm/(N·s²)',
      shown: 'mm/(N·s²)',
      default: 0,
      range: [0, 1000],
      note: 'Removes a lasting force error; together with friction it hunts.',
    }),
    kd: quantity({
      label: 'Derivative gain',
      symbol: 'k_d',
      unit: 'm/N',
      shown: 'mm/N',
      default: 0,
      range: [0, 1],
      note: 'Jaw speed for each N/s of force change.',
    }),
    deadband: quantity({
      label: 'Dead band',
      symbol: 'v_db',
      unit: 'm/s',
      shown: 'mm/s',
      default: 0.0002,
      range: [0, 10],
      note: 'Speed command below which the axis is told to stand still; it ends hunting and leaves a small force error.',
    }),
    speedLimit: quantity({
      label: 'Speed limit',
      symbol: 'v_lim',
      unit: 'm/s',
      shown: 'mm/s',
      default: 0.02,
      range: [1e-6, 20],
      note: 'Highest speed that the force loop may ask for.',
    }),
    velocity: group('Velocity loop', {
      kp: quantity({
        label: 'Proportional gain',
        symbol: 'k_p',
        unit: 'A·s/m',
        default: 80,
        range: [0, 1e7],
        note: 'Current for each m/s of speed error.',
      }),
      ki: quantity({
        label: 'Integral gain',
        symbol: 'k_i',
        unit: 'A/m',
        shown: 'A/mm',
        default: 4000,
        range: [0, 1e9],
        note: 'Removes a lasting speed error; it holds against friction.',
      }),
    }),
    sensor: group('Gauge', {
      bandwidth: quantity({
        label: 'Bandwidth',
        symbol: 'ω_g',
        unit: 'rad/s',
        shown: 'Hz',
        default: 3000,
        range: [1, 1e6],
        note: 'Bandwidth of gauge and amplifier.',
      }),
      gainError: quantity({
        label: 'Gain error',
        symbol: 'ε_g',
        unit: '',
        shown: '%',
        default: 0,
        range: [-0.5, 0.5],
        note: 'Relative error of the gauge’s gain.',
      }),
      offset: quantity({
        label: 'Offset',
        symbol: 'F_0',
        unit: 'N',
        default: 0,
        range: [-1e4, 1e4],
        note: 'Reading without load.',
      }),
      drift: quantity({
        label: 'Offset drift',
        symbol: 'Ḟ_0',
        unit: 'N/s',
        default: 0,
        range: [-1000, 1000],
        note: 'Change of the offset with time, as a gauge warms up.',
      }),
      noise: quantity({
        label: 'Noise, rms',
        symbol: 'σ_F',
        unit: 'N',
        default: 0.05,
        range: [0, 1000],
        note: 'Noise of the reading.',
      }),
      resolution: quantity({
        label: 'Resolution',
        symbol: 'ΔF',
        unit: 'N',
        default: 0.02,
        range: [0, 1000],
        note: 'Step of the reading; 0 for none.',
      }),
      fingerMass: quantity({
        label: 'Finger before the gauge',
        symbol: 'm_g',
        unit: 'kg',
        shown: 'g',
        default: 0.03,
        range: [0, 100],
        note: 'Mass of the finger in front of the gauge; its inertia reads as force.',
      }),
    }),
  }),
})

const move = Type.Object(
  {
    start: quantity({
      label: 'Start',
      symbol: 't_0',
      unit: 's',
      default: 0.8,
      range: [0, 3600],
      note: 'Time at which the arm starts to move.',
    }),
    axis: choice(
      'Direction',
      ['across', 'along', 'up'],
      ['Across the grip', 'Along the grip', 'Up'],
      'Across: sideways in the plane of the pads. Along: in the direction in which the driven jaw closes. Up: against gravity.',
    ),
    acceleration: quantity({
      label: 'Acceleration',
      symbol: 'a',
      unit: 'm/s²',
      default: 5,
      range: [-1000, 1000],
      note: 'Peak acceleration; the move speeds up with it and slows down with its opposite.',
    }),
    duration: quantity({
      label: 'Duration',
      symbol: 'T',
      unit: 's',
      default: 0.4,
      range: [0.001, 3600],
      note: 'Whole move from rest to rest; half of it speeds up, half slows down.',
    }),
    jerk: quantity({
      label: 'Jerk',
      symbol: 'j',
      unit: 'm/s³',
      default: 200,
      range: [0.01, 1e7],
      note: 'Limit on the change of acceleration.',
    }),
  },
  { title: 'Move', additionalProperties: false },
)

const arm = group('Arm', {
  gravity: choice(
    'Gravity',
    ['across', 'along', 'none'],
    ['Across the grip', 'Along the grip', 'None'],
    'Across: the part hangs by friction. Along: it weighs on the jaw towards which the driven jaw closes.',
  ),
  lift: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Lift',
        symbol: 't_l',
        unit: 's',
        range: [0, 3600],
        note: 'Time at which the support under the part is taken away.',
      }),
    ],
    {
      title: 'Lift',
      default: null,
      description:
        'Time at which the support under the part is taken away; null: with the first move, or, without any, at two thirds of the run.',
    },
  ),
  moves: Type.Array(move, { title: 'Moves', default: [], maxItems: 20 }),
})

const powerLoss = Type.Object(
  {
    time: quantity({
      label: 'Time',
      symbol: 't_p',
      unit: 's',
      default: 1,
      range: [0, 3600],
      note: 'Time at which the supply fails.',
    }),
    windings: choice(
      'Windings',
      ['open', 'shorted'],
      ['Open', 'Shorted'],
      'Open: no current flows. Shorted: the moving motor brakes itself.',
    ),
  },
  { title: 'Power loss', additionalProperties: false },
)

const release = Type.Object(
  {
    time: quantity({
      label: 'Time',
      symbol: 't_r',
      unit: 's',
      default: 1.3,
      range: [0, 3600],
      note: 'Time at which the jaws open again; from then on the part stands on its support.',
    }),
  },
  { title: 'Release', additionalProperties: false },
)

const run = group('Run', {
  duration: quantity({
    label: 'Duration',
    symbol: 'T',
    unit: 's',
    default: 1.5,
    range: [0.01, 600],
    note: 'Simulated time.',
  }),
  step: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Step',
        symbol: 'Δt',
        unit: 's',
        shown: 'µs',
        range: [1e-8, 0.001],
        note: 'Fixed step of the integration.',
      }),
    ],
    {
      title: 'Step',
      default: null,
      description:
        'Fixed step of the integration, an integer part of the current loop’s period; null: chosen from the stiffest mode.',
    },
  ),
  cycle: Type.Union(
    [
      Type.Null(),
      quantity({
        label: 'Cycle time',
        symbol: 'T_c',
        unit: 's',
        range: [0.01, 86400],
        note: 'Time from one grip to the next.',
      }),
    ],
    {
      title: 'Cycle time',
      default: null,
      description:
        'The grip repeats at this interval: motor and magnets start at the temperatures of the steady state of that duty. Null: a single grip from cold.',
    },
  ),
  seed: quantity({
    label: 'Seed',
    symbol: '',
    unit: '',
    default: 1,
    range: [0, 4294967295],
    integer: true,
    note: 'Seed of the noise; the same seed gives the same run.',
  }),
})

const schemaOf = <A extends Type.TSchema>(actuator: A) =>
  Type.Object(
    {
      format: Type.Literal('jawbench-scenario', { default: 'jawbench-scenario' }),
      version: Type.Literal(1, { default: 1 }),
      name: Type.String({ title: 'Name', default: 'Untitled grip', maxLength: 200 }),
      notes: Type.String({ title: 'Notes', default: '', maxLength: 20000 }),
      actuator,
      jaws,
      part,
      drive,
      servo,
      approach,
      strategies,
      arm,
      events: group('Events', {
        powerLoss: Type.Union([Type.Null(), powerLoss], { title: 'Power loss', default: null }),
        release: Type.Union([Type.Null(), release], { title: 'Release', default: null }),
      }),
      run,
    },
    { title: 'Jawbench scenario, version 1', additionalProperties: false },
  )

/** The published format: any of the three kinds of actuator. */
export const SCENARIO_SCHEMA = schemaOf(
  Type.Union([ACTUATORS.screw, ACTUATORS.rack, ACTUATORS.direct], { title: 'Actuator', default: {} }),
)

/** The format for one kind of actuator, against which an input of that kind is checked. */
export const SCHEMAS = {
  screw: schemaOf(ACTUATORS.screw),
  rack: schemaOf(ACTUATORS.rack),
  direct: schemaOf(ACTUATORS.direct),
}

export type Scenario = Type.Static<typeof SCENARIO_SCHEMA>
export type Actuator = Scenario['actuator']
export type ActuatorKind = Actuator['kind']
export type ArmMove = Type.Static<typeof move>
