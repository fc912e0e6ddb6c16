/** Simplifications of measuring, drive and stepping. */

import { jobOf } from '../../job/index.ts'
import { modelOf } from '../../model/model.ts'
import { strategiesOn, strategyOf } from '../../strategy/index.ts'
import { forceSlope } from './mechanic.ts'
import { effortUnits, type Simplification } from './simplification.ts'

/** Error of a gauge's gain that is tried; common practice, no source. */
const GAUGE_ERROR = 0.02

export const MEASURING: Simplification[] = [
  {
    id: 'current-delay',
    element: 'measuring',
    title: 'Current measured at one instant',
    text: 'The current is sampled without filter or delay, with noise, offset and steps as set. A converter that averages over its period is half a period late.',
    bound: {
      how: 'formula',
      formula: 'ω_i/(2·f_i)',
      basis: 'Closed form: phase of half a period at the bandwidth of the current loop.',
      figures: ({ drive }) => [
        {
          label: 'Phase margin lost',
          value: drive.currentBandwidth / (2 * drive.currentRate),
          unit: 'rad',
          shown: '°',
        },
      ],
    },
  },
  {
    id: 'encoder',
    element: 'measuring',
    title: 'Encoder on the motor side with even steps',
    text: 'Position is the travel of the motor side, rounded to even steps. Real encoders have errors within their period and on the way to the output; a held position turns them into force.',
    bound: {
      how: 'formula',
      formula: '(dF/dx)·Δx',
      basis:
        'Closed form, on nominal work: one encoder step of travel. Errors of position cost force in the same proportion.',
      figures: (scenario) => {
        const { resolution } = scenario.sensors.encoder
        const { work, output } = effortUnits(scenario)
        const slope = forceSlope(scenario)
        if (slope === null) return []
        const step = { label: 'On the work for one step', value: slope * resolution, unit: work }
        if (output !== 'N') return [step]
        return [step, { label: 'Force over travel', value: slope, unit: 'N/m', shown: 'N/µm' }]
      },
      without: 'The axis presses on nothing that gives.',
    },
  },
  {
    id: 'gauge',
    element: 'measuring',
    title: 'Linear gauge',
    text: 'The gauge has a gain, an offset that drifts, noise, steps and one time constant. Creep, hysteresis, temperature and moments beside its axis are not there.',
    bound: {
      how: 'runs',
      basis: `Gain ${GAUGE_ERROR * 100} points lower and higher: common practice, no source. Calibrate with weights on the finished tool.`,
      variants: ({ sensors }, strategy) =>
        strategyOf(strategy).sensed
          ? [-GAUGE_ERROR, GAUGE_ERROR].map((error) => ({
              label: error < 0 ? 'reads less' : 'reads more',
              edits: [
                {
                  path: 'sensors.gauge.gainError',
                  value: sensors.gauge.gainError + error,
                },
              ],
            }))
          : [],
      without: 'This strategy has no gauge.',
    },
  },
  {
    id: 'noise',
    element: 'measuring',
    title: 'One draw of the noise',
    text: 'Noise is near-normal, without memory and bounded; a run shows one draw of it.',
    bound: {
      how: 'runs',
      basis: 'The two seeds that follow.',
      variants: ({ run }) =>
        [1, 2].map((n) => ({
          label: `seed + ${n}`,
          edits: [{ path: 'run.seed', value: (run.seed + n) % 4294967296 }],
        })),
    },
  },
]

export const DRIVE: Simplification[] = [
  {
    id: 'servo-delay',
    element: 'drive',
    title: 'The servo computes in no time',
    text: 'At a sample the servo reads and commands at once; only the voltage acts a sample of the current loop later. Many drives command one servo period later.',
    bound: {
      how: 'runs',
      basis: 'One servo period more in the filter of the measured speed, which costs the loop about that delay.',
      variants: ({ servo }) => [
        { label: 'a period later', edits: [{ path: 'servo.speedFilter', value: servo.speedFilter + 1 / servo.rate }] },
      ],
    },
  },
  {
    id: 'structure',
    element: 'drive',
    title: 'Controllers as written here',
    text: 'Order, filters, anti-windup and limits are those of this page. A real drive has its own, also between its settings and what they mean.',
    bound: {
      how: 'unknown',
      measure: 'Lay a measured step of each loop of the drive over the step of the Loops view, with the same gains.',
    },
  },
]

export const STEPPING: Simplification[] = [
  {
    id: 'step',
    element: 'stepping',
    title: 'First-order stepping at a fixed step',
    text: 'The plant is integrated by semi-implicit Euler, whose error falls in proportion to the step.',
    bound: {
      how: 'runs',
      basis: 'The step halved, which shows half of what it makes.',
      variants: (scenario) => [
        {
          label: 'halved',
          edits: [
            {
              path: 'run.step',
              value:
                1 /
                scenario.drive.currentRate /
                (2 * modelOf(scenario, strategiesOn(jobOf(scenario))[0]!).bench.axis.steps),
            },
          ],
        },
      ],
    },
  },
]
