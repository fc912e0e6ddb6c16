/** Simplifications from the bridge to the motor, and of its heat. */

import { COPPER_COEFFICIENT, REFERENCE } from '../../axis/heat.ts'
import { axisOf } from '../../axis/reflect.ts'
import { jobOf } from '../../job/index.ts'
import { readPath } from '../../scenario/index.ts'
import { effortUnits, type Simplification, scaled } from './simplification.ts'

/** Dead time of a bridge [s]; common practice, no source. */
const DEAD_TIME = 1e-6
/** IEC 60028 states the coefficient of copper at this temperature [°C]. */
const COPPER_AT = 20

export const ELECTRIC: Simplification[] = [
  {
    id: 'ripple',
    element: 'bridge',
    title: 'No ripple of the bridge',
    text: 'The winding sees one constant voltage for a whole period of the current loop. A real bridge switches between the rails, and the current ripples about its mean.',
    bound: {
      how: 'formula',
      formula: 'ΔI = U/(4·L·f_i); force K_m·ΔI/2; at a contact k_c·K_m·ΔI/(2·(M + m_J)·(2π·f_i)²)',
      basis:
        'Closed form: one leg switched at half duty, once a sample of the current loop, moving mass taken as rigid. Both legs against each other double it.',
      figures: (scenario) => {
        const { drive, actuator } = scenario
        const axis = axisOf(actuator)
        const ripple = drive.busVoltage / (4 * actuator.motor.inductance * drive.currentRate)
        const force = (axis.forcePerAmpere * ripple) / 2
        const omega = 2 * Math.PI * drive.currentRate
        const job = jobOf(scenario)
        const { perEffort } = job.workOf(scenario)
        const { stiffness } = job.why.pressed(scenario, scenario.strategies.sensedForce.target)
        const swing = force / ((axis.mass + job.outputOf(scenario).mass) * omega * omega)
        const { work, output } = effortUnits(scenario)
        return [
          { label: 'Current, peak to peak', value: ripple, unit: 'A', shown: 'mA' },
          { label: 'Of the motor at the output, amplitude', value: force, unit: output },
          { label: 'On the work, amplitude', value: (stiffness * swing) / perEffort, unit: work },
        ]
      },
    },
  },
  {
    id: 'dead-time',
    element: 'bridge',
    title: 'Ideal bridge',
    text: 'The bridge gives exactly the voltage that is asked for, up to the bus voltage. A real one loses some in its switches and in its dead time, most visibly where the current changes sign.',
    bound: {
      how: 'formula',
      formula: 'ΔU = U·f_i·t_d',
      basis: `Closed form; dead time t_d of ${DEAD_TIME * 1e6} µs: common practice, no source. The integral of the current loop removes it while the current keeps its sign.`,
      figures: ({ drive }) => [
        { label: 'Voltage lost', value: drive.busVoltage * drive.currentRate * DEAD_TIME, unit: 'V' },
      ],
    },
  },
  {
    id: 'supply',
    element: 'bridge',
    title: 'Stiff supply',
    text: 'The bus voltage is constant. A real one sags under load and rises when the axis brakes.',
    bound: {
      how: 'runs',
      basis: 'Bus voltage a tenth lower.',
      variants: (scenario) =>
        scaled((path) => readPath(scenario, path), ['drive.busVoltage'], [['a tenth lower', 0.9]]),
    },
  },
  {
    id: 'force-constant',
    element: 'motor',
    title: 'Force in proportion to the current',
    text: 'The motor gives the same force for each ampere at any current. Iron saturates, so near the peak current a real motor gives less, and data sheets allow a tolerance.',
    bound: {
      how: 'runs',
      basis: 'Torque or force constant a tenth off; the settings in amperes stay.',
      variants: (scenario) =>
        scaled(
          (path) => readPath(scenario, path),
          ['actuator.motor.torqueConstant', 'actuator.motor.forceConstant'],
          [
            ['a tenth less', 0.9],
            ['a tenth more', 1.1],
          ],
        ),
    },
  },
  {
    id: 'inductance',
    element: 'motor',
    title: 'Constant inductance',
    text: 'The inductance depends neither on current nor on position. Iron saturates, and the inductance falls with it.',
    bound: {
      how: 'runs',
      basis:
        'Inductance halved under a current controller that still counts on the whole one: the bandwidth is doubled with it, so its proportional gain stays; its integral gain doubles.',
      variants: (scenario) => [
        {
          label: 'halved',
          edits: [
            { path: 'actuator.motor.inductance', value: scenario.actuator.motor.inductance / 2 },
            { path: 'drive.currentBandwidth', value: scenario.drive.currentBandwidth * 2 },
          ],
        },
      ],
    },
  },
  {
    id: 'harmonics',
    element: 'motor',
    title: 'One sine each for cogging and ripple',
    text: 'Cogging and ripple are one harmonic each, and none unless the scenario names them. A real motor has several, and its commutation has errors of its own.',
    bound: {
      how: 'unknown',
      measure: 'Move the axis slowly over two turns or pole pitches without work and record the current.',
    },
  },
]

export const HEAT: Simplification[] = [
  {
    id: 'nodes',
    element: 'heat',
    title: 'Two thermal nodes',
    text: 'Winding and housing have one temperature each, and the resistances between them do not depend on mounting or air flow. The magnets are as warm as the housing, and their flux falls in proportion.',
    bound: {
      how: 'runs',
      basis: 'Both thermal resistances a fifth higher at the same heat capacities. It counts in a duty that repeats.',
      variants: (scenario) =>
        scaled(
          (path) => readPath(scenario, path),
          ['windingResistance', 'windingTime', 'housingResistance', 'housingTime'].map(
            (key) => `actuator.motor.thermal.${key}`,
          ),
          [['a fifth higher', 1.2]],
        ),
    },
  },
  {
    id: 'copper',
    element: 'heat',
    title: 'Coefficient of copper used from {25 °C} on',
    text: 'The coefficient belongs to {20 °C}, the resistance of the scenario to {25 °C}; the model multiplies the two as they are.',
    bound: {
      how: 'formula',
      formula: '(1 + α_Cu·(T_max − T_ref))·(1 + α_Cu·(T_ref − T_20))/(1 + α_Cu·(T_max − T_20)) − 1',
      basis: 'Closed form, at the winding limit T_max; T_20 is {20 °C}.',
      figures: ({ actuator }) => {
        const from = (reference: number, to: number) => 1 + COPPER_COEFFICIENT * (to - reference)
        const { limit } = actuator.motor.thermal
        const error = (from(REFERENCE, limit) * from(COPPER_AT, REFERENCE)) / from(COPPER_AT, limit) - 1
        return [{ label: 'Error of the resistance', value: error, unit: '', shown: '%' }]
      },
    },
  },
  {
    id: 'other-losses',
    element: 'heat',
    title: 'Copper loss alone heats the motor',
    text: 'Iron loss, friction and the losses of the drive heat nothing. Of these the friction is known here; iron loss is not.',
    bound: {
      how: 'formula',
      formula: '(F_c + b·v)·v against R·I_c²',
      basis:
        'Closed form, at approach speed and at the continuous current. Iron loss is not known; measure the housing.',
      figures: ({ actuator, approach }) => {
        const { coulomb, viscous } = actuator.transmission
        const { resistance, continuousCurrent } = actuator.motor
        return [
          { label: 'Friction', value: (coulomb + viscous * approach.speed) * approach.speed, unit: 'W' },
          { label: 'Copper loss', value: resistance * continuousCurrent * continuousCurrent, unit: 'W' },
        ]
      },
    },
  },
]
