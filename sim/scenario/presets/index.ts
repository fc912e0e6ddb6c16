/** The presets: our invented line for tableware, baubles, apricots, bushings and lids. The first opens the page. */

import { faultLine } from '../fault.ts'
import type { Scenario } from '../schema/index.ts'
import { checkScenario } from '../validate.ts'
import { apricot } from './apricot.ts'
import { bauble } from './bauble.ts'
import { bushing } from './bushing.ts'
import { castArm } from './cast-arm.ts'
import { foam } from './foam.ts'
import { jarLid } from './jar-lid.ts'
import { lidHinge } from './lid-hinge.ts'
import { paperRoll } from './paper-roll.ts'
import { smallLid } from './small-lid.ts'
import { teapot } from './teapot.ts'
import { trayFilm } from './tray-film.ts'

export interface Preset {
  id: string
  title: string
  summary: string
  scenario: Scenario
}

const preset = (id: string, summary: string, input: { name: string }): Preset => {
  const checked = checkScenario(input)
  if (!checked.ok) throw new Error(`preset ${id}: ${checked.faults.map(faultLine).join('; ')}`)
  return { id, title: input.name, summary, scenario: checked.scenario }
}

/** Those of gripping. */
export const PRESETS: Preset[] = [
  preset('teapot', 'At 50 mm/s one strategy cracks the pot, the other holds it.', teapot),
  preset('bauble', 'Little mass, little friction: the current tells the force.', bauble),
  preset('apricot', 'A held position loses force as the fruit relaxes, a clamp does not.', apricot),
  preset('bushing', 'Stiff on stiff, and a thread that hides the force from the current.', bushing),
  preset('foam', 'A soft part that relaxes, dents, and is held by friction that falls with load.', foam),
]

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

export const ALL_PRESETS: readonly Preset[] = [...PRESETS, ...PRESS_PRESETS, ...CAP_PRESETS, ...WEB_PRESETS]
