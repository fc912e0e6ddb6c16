/** Spreads that are sensible to begin with. Common practice, no source, unless one is named. */
import type { Varied } from '../scenario/index.ts'
import type { Job } from './job.ts'

type Sizes = Omit<Varied, 'path'>

/** A quantity by its path, its law, and what the law stands for, one sentence. */
export type Usual = readonly [path: string, sizes: Sizes, why: string]

/** With sizes that are shares of the value. */
export const share = (law: Omit<Sizes, 'share'>): Sizes => ({ ...law, share: true })

/** Of axis, drive and sensors, whatever they work on. What the sensors are off by is known of metres and newtons only. */
export const axisUsual = ({ travel, effort }: Job['output']): readonly Usual[] =>
  AXIS.filter(
    ([path]) =>
      (travel === 'm' || path !== 'sensors.encoder.offset') && (effort === 'N' || path !== 'sensors.gauge.offset'),
  )

const AXIS: readonly Usual[] = [
  [
    'actuator.transmission.coulomb',
    share({ law: 'uniform', half: 0.3 }),
    'Friction of the axis differs from unit to unit, and with grease, temperature and wear.',
  ],
  [
    'actuator.transmission.threadFriction',
    share({ law: 'lognormal', factor: 1.15 }),
    'Friction of the thread differs with grease, temperature and wear.',
  ],
  ['actuator.transmission.viscous', share({ law: 'uniform', half: 0.4 }), 'Grease is stiffer when it is cold.'],
  [
    'actuator.motor.torqueConstant',
    share({ law: 'normal', sd: 0.03, within: 0.1 }),
    'Data sheets give motor constants to ±10 %.',
  ],
  [
    'actuator.motor.forceConstant',
    share({ law: 'normal', sd: 0.03, within: 0.1 }),
    'Data sheets give motor constants to ±10 %.',
  ],
  [
    'actuator.motor.thermal.ambient',
    { law: 'uniform', half: 8, share: false },
    'A hall that is cold in the morning and warm in the afternoon.',
  ],
  ['drive.busVoltage', share({ law: 'uniform', half: 0.05 }), 'A supply regulated to ±5 %.'],
  [
    'drive.currentOffset',
    { law: 'normal', sd: 0.01, share: false },
    'Offset of the current measurement, trimmed at each start.',
  ],
  [
    'sensors.encoder.offset',
    { law: 'normal', sd: 0.00005, share: false },
    'A homing switch or stop repeats to some hundredths of a millimetre.',
  ],
  ['sensors.gauge.gainError', { law: 'normal', sd: 0.01, share: false }, 'A gauge calibrated to a per cent or so.'],
  ['sensors.gauge.offset', { law: 'normal', sd: 0.2, share: false }, 'A gauge tared at each start.'],
]
