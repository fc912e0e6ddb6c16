/** The presets of jobs other than gripping. */
import { castArm } from './cast-arm.ts'
import { type Preset, preset } from './index.ts'
import { jarLid } from './jar-lid.ts'
import { lidHinge } from './lid-hinge.ts'
import { paperRoll } from './paper-roll.ts'
import { smallLid } from './small-lid.ts'
import { trayFilm } from './tray-film.ts'

/** Those of pressing in. */
export const PRESS_PRESETS: Preset[] = [
  preset('cast-arm', 'A shoulder ends the way: momentum and frame decide the seating force.', castArm),
  preset('lid-hinge', 'No shoulder: the depth comes from the drive, and force alone goes too far.', lidHinge),
]

/** Those of tightening a cap. */
export const CAP_PRESETS: Preset[] = [
  preset('jar-lid', 'The rotor behind the gear makes the peak: speed at the liner decides the torque.', jarLid),
  preset('small-lid', 'A motor without a gear: the current tells the torque.', smallLid),
]

/** Those of holding a web's tension. */
export const WEB_PRESETS: Preset[] = [
  preset('paper-roll', 'A roll that grows as it winds: torque follows the radius, or tension does not.', paperRoll),
  preset('tray-film', 'A line that starts and stops: what speeds the roll up is missing in the film.', trayFilm),
]
