/** What the drive knows of the plant. */
import { type Section, say, tex } from '../section.ts'

const gauge = 'sensors.gauge'

export const MEASURING: Section[] = [
  {
    id: 'gauge',
    title: 'Gauge',
    blocks: [
      say`The gauge sits at the root of a finger. Besides the force at the near contact it feels the finger before it, and it lags by one time constant, stepped once a period of the current loop by backward Euler:`,
      tex`\dot G = ω_g\left(F_n + m_g\,(\dot v_j - a_x) - G\right)`,
      say`Once a period of the servo it is read, with a fresh draw of noise $n_1$, and rounded to the step $ΔF$:`,
      tex`F_m = (1 + ε_g)\,G + F_0 + Ḟ_0\,t + σ_F\,n_1`,
    ],
    quantities: [
      `${gauge}.bandwidth`,
      `${gauge}.fingerMass`,
      `${gauge}.gainError`,
      `${gauge}.offset`,
      `${gauge}.drift`,
      `${gauge}.noise`,
      `${gauge}.resolution`,
    ],
    own: [
      { symbol: 'G', title: 'What the gauge feels', unit: 'N' },
      { symbol: 'F_n', title: 'Force at the near contact', unit: 'N' },
      { symbol: 'a_x', title: 'Pull of gravity and arm along the grip', unit: 'm/s²' },
      { symbol: 'F_m', title: 'Reading', unit: 'N' },
      { symbol: 'n_1', title: 'Noise of unit rms', unit: '' },
    ],
    fixed: [],
    sources: [],
  },
  {
    id: 'encoder',
    title: 'Encoder and current measurement',
    blocks: [
      say`The encoder reads the motor side once a period of the servo; the current is read once a period of the current loop. Both are rounded to the nearest step:`,
      tex`x_m = Δx\left\lfloor \frac{x + x_0}{Δx} + \frac{1}{2} \right\rfloor`,
      tex`i_m = ΔI\left\lfloor \frac{i + I_0 + σ_I\,n_2}{ΔI} + \frac{1}{2} \right\rfloor`,
      say`The way begins where the encoder reads that the output stands, and ends at what it should read there. A step of zero leaves the value as it is. Noise is the sum of four draws of a seeded generator: mean zero, rms one, never beyond $\sqrt{12}$. The same seed $S$ gives the same run.`,
    ],
    quantities: [
      'sensors.encoder.resolution',
      'sensors.encoder.offset',
      'drive.currentResolution',
      'drive.currentNoise',
      'drive.currentOffset',
      'run.seed',
    ],
    own: [
      { symbol: 'x_m', title: 'Measured travel', unit: 'm' },
      { symbol: 'i', title: 'Current', unit: 'A' },
      { symbol: 'i_m', title: 'Measured current', unit: 'A' },
      { symbol: 'n_2', title: 'Noise of unit rms', unit: '' },
    ],
    fixed: [],
    sources: [],
  },
]
