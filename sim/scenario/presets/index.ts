/** The presets: our invented line for tableware, baubles, apricots and bushings; `others.ts` has those of its other jobs. The first opens the page. */

import { faultLine } from '../fault.ts'
import type { Scenario } from '../schema/index.ts'
import { checkScenario } from '../validate.ts'
import { apricot } from './apricot.ts'
import { bauble } from './bauble.ts'
import { bushing } from './bushing.ts'
import { foam } from './foam.ts'
import { teapot } from './teapot.ts'

export interface Preset {
  id: string
  title: string
  summary: string
  scenario: Scenario
}

/** Throws where it has faults. */
export const preset = (id: string, summary: string, input: { name: string }): Preset => {
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

/** Of every job; `sim/others.ts` enrols those of the others. */
export const ALL_PRESETS: Preset[] = [...PRESETS]
