/** The job in words: part, axis and arm move, each as a list of what matters for the grip. Knows no React. */
import { notesWith, readPath, type Scenario } from '../../../sim/index.ts'
import { settingText } from '../../read/scenario/setting.ts'
import { textAt } from '../../read/scenario/textAt.ts'
import { fieldAt } from '../../read/scenario/walk.ts'
import type { UnitSystem } from '../../read/units.ts'
import type { Fitting } from '../../store/fitted.ts'

export interface Item {
  label: string
  value: string
}

const PART = ['width', 'mass', 'stiffness', 'exponent', 'damping'].map((key) => `part.${key}`)
const RELAXING = ['part.relaxation.fraction', 'part.relaxation.time']
const LIMITS = ['part.markForce', 'part.yieldForce', 'part.crackForce']
const PADS = ['friction.static', 'friction.sliding', 'padStiffness'].map((key) => `jaws.${key}`)
const AXIS = [
  'actuator.transmission.lead',
  'actuator.transmission.threadFriction',
  'actuator.transmission.pinionRadius',
  'actuator.transmission.gearRatio',
  'actuator.transmission.efficiency',
  'actuator.motor.torqueConstant',
  'actuator.motor.forceConstant',
  'actuator.motor.inertia',
  'actuator.motor.movingMass',
  'actuator.transmission.carriageMass',
  'jaws.mass',
  'actuator.transmission.coulomb',
  'actuator.transmission.breakaway',
  'actuator.motor.continuousCurrent',
  'actuator.motor.peakCurrent',
  'drive.busVoltage',
]

export function partItems(scenario: Scenario, units: UnitSystem): Item[] {
  const relaxing = scenario.part.relaxation.fraction > 0 ? RELAXING : []
  return items(scenario, [...PART, ...relaxing, ...LIMITS, ...PADS], units)
}

export const axisItems = (scenario: Scenario, units: UnitSystem): Item[] => [
  { label: '', value: capital(textAt(scenario, 'actuator.family', units)) },
  { label: '', value: capital(textAt(scenario, 'jaws.layout', units)) },
  ...items(scenario, AXIS, units),
]

/** `most`: moves that are told one by one. */
export function armItems(scenario: Scenario, units: UnitSystem, most = Number.POSITIVE_INFINITY): Item[] {
  const { arm, events, run } = scenario
  const at = (path: string) => textAt(scenario, path, units)
  const told = arm.moves.slice(0, most)
  const moves = told.map((_, index) => ({ label: `Move ${index + 1}`, value: moveText(scenario, index, units) }))
  const rest = arm.moves.length - told.length
  return [
    { label: 'Gravity', value: at('arm.gravity') },
    ...(arm.lift === null ? [] : [{ label: 'Lift at', value: at('arm.lift') }]),
    ...(moves.length > 0 ? moves : [{ label: '', value: 'No arm move' }]),
    ...(rest > 0 ? [{ label: '', value: `and ${rest} more` }] : []),
    ...(events.powerLoss
      ? [
          {
            label: 'Power loss',
            value: `at ${at('events.powerLoss.time')}, windings ${at('events.powerLoss.windings')}`,
          },
        ]
      : []),
    ...(events.release ? [{ label: 'Release', value: `at ${at('events.release.time')}` }] : []),
    { label: 'Run', value: at('run.duration') },
    ...(run.cycle === null ? [] : [{ label: 'Cycle', value: at('run.cycle') }]),
  ]
}

/** `up, 6 m/s² from 0.7 s for 0.36 s, jerk 300 m/s³` */
export function moveText(scenario: Scenario, index: number, units: UnitSystem): string {
  const at = (key: string) => textAt(scenario, `arm.moves[${index}].${key}`, units)
  return `${at('axis')}, ${at('acceleration')} from ${at('start')} for ${at('duration')}, jerk ${at('jerk')}`
}

function items(scenario: Scenario, paths: string[], units: UnitSystem): Item[] {
  return paths.flatMap((path) => {
    const field = fieldAt(scenario.actuator.kind, path)
    const value = readPath(scenario, path)
    if (!field || value === undefined || value === null) return []
    const label = field.kind === 'quantity' ? field.schema.title : field.title
    return [{ label, value: settingText(scenario, path, value, units) }]
  })
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** The notes, without what they say of a fit where the page has a part about it. */
export const notesOf = ({ notes }: Scenario, fitting: Fitting | null) => (fitting ? notesWith(notes, '') : notes)
