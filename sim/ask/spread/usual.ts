/** Spreads that are sensible to begin with, for the quantities that a scenario has. Common practice, no source, unless one is named. */
import { readPath, type Scenario, type Varied } from '../../scenario/index.ts'

export interface UsualSpread {
  varied: Varied
  /** What it stands for, one sentence. */
  why: string
}

type Sizes = Omit<Varied, 'path'>

const share = (law: Omit<Sizes, 'share'>): Sizes => ({ ...law, share: true })

const USUAL: [path: string, sizes: Sizes, why: string][] = [
  [
    'part.width',
    share({ law: 'normal', sd: 0.005 }),
    'Moulded, blown or thrown parts differ by a per cent or so; machined ones by far less.',
  ],
  ['part.mass', share({ law: 'normal', sd: 0.03 }), 'Wall thickness and fill differ from part to part.'],
  [
    'part.stiffness',
    share({ law: 'lognormal', factor: 1.15 }),
    'Stiffness goes with a power of the wall thickness, so it scatters more than size.',
  ],
  [
    'part.markForce',
    share({ law: 'normal', sd: 0.1 }),
    'Limits of damage are tried on a handful of parts and differ widely.',
  ],
  [
    'part.yieldForce',
    share({ law: 'normal', sd: 0.1 }),
    'Limits of damage are tried on a handful of parts and differ widely.',
  ],
  [
    'part.crackForce',
    share({ law: 'lognormal', factor: 1.25 }),
    'Brittle parts break at their worst flaw, so their strength scatters widely.',
  ],
  [
    'jaws.friction.static',
    share({ law: 'lognormal', factor: 1.15 }),
    'Dust, moisture and wear of the pads change their friction from day to day.',
  ],
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

/** Those of quantities that the scenario has, and that do not vary yet. */
export const usualSpreads = (scenario: Scenario): UsualSpread[] =>
  USUAL.flatMap(([path, sizes, why]) => {
    const value = readPath(scenario, path)
    const varies = scenario.spread.varies.some((each) => each.path === path)
    const scaled = sizes.share || sizes.law === 'lognormal'
    if (typeof value !== 'number' || varies || (scaled && value === 0)) return []
    return [{ varied: { path, ...sizes, share: sizes.law === 'lognormal' ? false : sizes.share }, why }]
  })
