/** The actuator: motor and transmission, for the three ways in which a motor moves an output in a straight line, and for one that turns it. */
import Type from 'typebox'
import { choice, group } from '../quantity.ts'
import { linear, rotary } from './motor.ts'
import { gear, moved, rack, screw } from './transmission.ts'

const direct = group('Transmission', moved)

export const SCREW_FAMILIES = ['brushless-screw', 'brush-screw', 'step-screw'] as const
export const RACK_FAMILIES = ['geared-rack'] as const
export const SPINDLE_FAMILIES = ['brushless-spindle', 'brush-spindle', 'step-spindle'] as const
export type SpindleFamily = (typeof SPINDLE_FAMILIES)[number]
export const DIRECT_FAMILIES = [
  'voice-coil',
  'linear-magnets-moving',
  'linear-coils-moving',
  'tubular-rod-moving',
  'tubular-coils-moving',
  'moving-magnet',
] as const

const FAMILY_NOTE = 'How the motor is built; it decides the drawing and what is typical for the numbers.'

/** One closed object a kind; `kind` decides which of them an input is held against. */
export const ACTUATORS = {
  screw: Type.Object(
    {
      kind: Type.Literal('screw', { title: 'Kind', default: 'screw' }),
      family: choice(
        'Family',
        SCREW_FAMILIES,
        ['Brushless motor, screw', 'Brush motor, screw', 'Step motor, screw'],
        FAMILY_NOTE,
      ),
      motor: rotary,
      transmission: screw,
    },
    { title: 'Screw axis', default: {}, additionalProperties: false },
  ),
  rack: Type.Object(
    {
      kind: Type.Literal('rack', { title: 'Kind', default: 'rack' }),
      family: choice('Family', RACK_FAMILIES, ['Brushless motor, gear and rack'], FAMILY_NOTE),
      motor: rotary,
      transmission: rack,
    },
    { title: 'Rack axis', default: {}, additionalProperties: false },
  ),
  direct: Type.Object(
    {
      kind: Type.Literal('direct', { title: 'Kind', default: 'direct' }),
      family: choice(
        'Family',
        DIRECT_FAMILIES,
        [
          'Voice coil',
          'Linear brushless, magnets moving',
          'Linear brushless, coils moving',
          'Tubular brushless, rod moving',
          'Tubular brushless, coils moving',
          'Moving-magnet linear',
        ],
        FAMILY_NOTE,
      ),
      motor: linear,
      transmission: direct,
    },
    { title: 'Direct drive', default: {}, additionalProperties: false },
  ),
  spindle: Type.Object(
    {
      kind: Type.Literal('spindle', { title: 'Kind', default: 'spindle' }),
      family: choice(
        'Family',
        SPINDLE_FAMILIES,
        ['Brushless motor, spindle', 'Brush motor, spindle', 'Step motor, spindle'],
        FAMILY_NOTE,
      ),
      motor: rotary,
      transmission: gear,
    },
    { title: 'Spindle axis', default: {}, additionalProperties: false },
  ),
}
