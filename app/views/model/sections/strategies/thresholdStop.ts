import { type Section, say, tex } from '../../section.ts'
import { COMMAND, SERVO_PERIOD } from '../symbols.ts'

export const THRESHOLD_STOP: Section[] = [
  {
    id: 'threshold-stop',
    title: 'Threshold stop',
    blocks: [
      say`The servo follows the profile. The current command goes through a low pass once a period of the servo:`,
      tex`i_f' = i_f + \frac{T_s}{T_th + T_s}\,(i^* - i_f)`,
      say`When $i_f$ has stood above $I_th$ without a break for longer than $t_c$, which does not count while the profile speeds up, the profile halts and the servo holds the position commanded at that moment. Set to press, it goes on towards the end of the profile with the clamp current as its limit.`,
    ],
    quantities: [
      'strategies.thresholdStop.threshold',
      'strategies.thresholdStop.confirmTime',
      'strategies.thresholdStop.filter',
    ],
    own: [{ symbol: 'i_f', title: 'Filtered command', unit: 'A' }, COMMAND, SERVO_PERIOD],
    fixed: [],
    sources: [],
  },
]
