/** The sections of the panel, in the order of the power's way, and the line that stands for a folded one. */
import { type ActuatorKind, type JobId, type Scenario, STRATEGIES } from '../../sim/index.ts'
import { textAt } from '../read/scenario/textAt.ts'
import { fieldAt, topKeys } from '../read/scenario/walk.ts'
import type { UnitSystem } from '../read/units.ts'

export interface Section {
  id: string
  title: string
  /** Paths of what it holds. */
  paths: string[]
  /** Keys that the folded line shows; a text before a key stands before its figure. */
  line: (string | [before: string, path: string])[]
}

const WORK: Record<JobId, Section[]> = {
  grip: [
    {
      id: 'part',
      title: 'Part',
      paths: ['part'],
      line: [
        'part.width',
        'part.mass',
        'part.stiffness',
        ['marks at', 'part.markForce'],
        ['dents at', 'part.yieldForce'],
        ['cracks at', 'part.crackForce'],
      ],
    },
    {
      id: 'jaws',
      title: 'Jaws',
      paths: ['jaws'],
      line: ['jaws.layout', 'jaws.opening', ['friction', 'jaws.friction.static']],
    },
  ],
  press: [
    {
      id: 'bushing',
      title: 'Bushing',
      paths: ['bushing'],
      line: ['bushing.diameter', 'bushing.length', ['interference', 'bushing.interference'], ['tilt', 'bushing.tilt']],
    },
    {
      id: 'bore',
      title: 'Bore and joint',
      paths: ['bore', 'joint'],
      line: ['bore.outerDiameter', ['shoulder at', 'bore.shoulder.depth'], ['friction', 'joint.friction.pressing']],
    },
    {
      id: 'window',
      title: 'Joint window',
      paths: ['window'],
      line: [['depth', 'window.depth.least'], ['seat', 'window.seat.least'], 'window.band'],
    },
    { id: 'ram', title: 'Ram and frame', paths: ['ram'], line: ['ram.stroke', ['frame', 'ram.stiffness']] },
  ],
  cap: [
    {
      id: 'closure',
      title: 'Closure and liner',
      paths: ['closure', 'liner'],
      line: [
        'closure.meanDiameter',
        ['lead', 'closure.lead'],
        ['friction', 'closure.threadFriction'],
        ['strips at', 'closure.stripTorque'],
      ],
    },
    {
      id: 'window',
      title: 'Torque window',
      paths: ['window'],
      line: [
        ['from', 'window.torque.least'],
        ['to', 'window.torque.most'],
        ['after', 'window.leastTurns'],
      ],
    },
    {
      id: 'chuck',
      title: 'Chuck',
      paths: ['chuck'],
      line: ['chuck.inertia', ['gives', 'chuck.stiffness'], ['top load', 'chuck.topLoad']],
    },
  ],
  web: [
    {
      id: 'web',
      title: 'Web',
      paths: ['web'],
      line: ['web.width', 'web.thickness', 'web.modulus', ['slack', 'web.slack'], ['tears at', 'web.breakTension']],
    },
    {
      id: 'span',
      title: 'Span and idlers',
      paths: ['span', 'idlers'],
      line: ['span.length', ['comes with', 'span.entryTension'], ['drag', 'idlers.coulomb']],
    },
    {
      id: 'window',
      title: 'Tension window',
      paths: ['window'],
      line: ['window.least', ['to', 'window.most'], ['from', 'window.from']],
    },
    { id: 'line', title: 'Line', paths: ['line'], line: ['line.ramps', ['out of round', 'line.runout']] },
    {
      id: 'roll',
      title: 'Roll',
      paths: ['roll', 'follow'],
      line: ['roll.kind', 'roll.radius', ['out of round', 'roll.runout'], ['inertia made up for', 'follow.inertia']],
    },
  ],
}

const SECTIONS: Section[] = [
  {
    id: 'transmission',
    title: 'Transmission',
    paths: ['actuator.transmission'],
    line: [
      ['lead', 'actuator.transmission.lead'],
      ['pinion', 'actuator.transmission.pinionRadius'],
      ['gear', 'actuator.transmission.gearRatio'],
      ['friction', 'actuator.transmission.coulomb'],
      ['carriage', 'actuator.transmission.carriageMass'],
    ],
  },
  {
    id: 'motor',
    title: 'Motor',
    paths: ['actuator.motor'],
    line: [
      'actuator.motor.torqueConstant',
      'actuator.motor.forceConstant',
      'actuator.motor.inertia',
      'actuator.motor.movingMass',
      'actuator.motor.resistance',
    ],
  },
  {
    id: 'drive',
    title: 'Drive',
    paths: ['drive'],
    line: ['drive.busVoltage', ['current loop', 'drive.currentRate'], ['bandwidth', 'drive.currentBandwidth']],
  },
  {
    id: 'sensors',
    title: 'Sensors',
    paths: ['sensors'],
    line: [
      ['encoder', 'sensors.encoder.resolution'],
      ['gauge', 'sensors.gauge.resolution'],
      ['noise', 'sensors.gauge.noise'],
    ],
  },
  { id: 'servo', title: 'Servo', paths: ['servo'], line: ['servo.rate', 'servo.kp', ['limit', 'servo.currentLimit']] },
  {
    id: 'strategies',
    title: 'Approach and strategies',
    paths: ['approach', 'strategies'],
    line: ['approach.speed', ...STRATEGIES.map(({ setting }): [string, string] => [setting.brief, setting.path])],
  },
  {
    id: 'arm',
    title: 'Arm',
    paths: ['arm'],
    line: [['gravity', 'arm.gravity'], 'arm.moves', ['lifts at', 'arm.lift']],
  },
  {
    id: 'events',
    title: 'Events',
    paths: ['events'],
    line: [
      ['power fails at', 'events.powerLoss.time'],
      ['windings', 'events.powerLoss.windings'],
    ],
  },
  { id: 'requirements', title: 'Requirements', paths: ['requirements'], line: [] },
  { id: 'run', title: 'Run', paths: ['run'], line: ['run.duration', ['step', 'run.step'], ['seed', 'run.seed']] },
  { id: 'scenario', title: 'Name and notes', paths: ['name', 'notes'], line: ['name'] },
]

/** Edited where a study of many grips is asked for. */
const ELSEWHERE = ['spread']

/** A head that turns stands still, so there is nothing to say of an arm. */
const WITHOUT: Partial<Record<JobId, readonly string[]>> = { cap: ['arm'] }

/** All sections; keys that none of them claims get sections of their own at the end. */
export function sectionsOf(kind: ActuatorKind, job: JobId = 'grip'): Section[] {
  const without = WITHOUT[job] ?? []
  const sections = [...WORK[job], ...SECTIONS.filter(({ id }) => !without.includes(id))]
  const claimed = new Set([
    ...ELSEWHERE,
    ...without,
    ...sections.flatMap((section) => section.paths.map((path) => path.split('.')[0])),
  ])
  const rest = topKeys(kind, job).filter((key) => !claimed.has(key))
  return [...sections, ...rest.map((key) => ({ id: key, title: titleOf(kind, key, job), paths: [key], line: [] }))]
}

const titleOf = (kind: ActuatorKind, path: string, job: JobId) => {
  const field = fieldAt(kind, path, job)
  return field?.kind === 'quantity' ? field.schema.title : (field?.title ?? path)
}

/** The folded line, e.g. "70 mm · 250 g · cracks at 40 N"; keys that are not set are left out. */
export function lineOf(section: Section, scenario: Scenario, system: UnitSystem): string {
  const texts = section.line.flatMap((entry) => {
    const [before, path] = typeof entry === 'string' ? ['', entry] : entry
    const text = textAt(scenario, path, system)
    return text === '' ? [] : [before ? `${before} ${text}` : text]
  })
  return texts.join(' · ') || 'none'
}
