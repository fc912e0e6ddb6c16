/** A web, the line that hands it out, the roll that pulls it, and the tension that it has to have. */
import type Type from 'typebox'
import { boundsOf } from '../bounds.ts'
import { webApproach, webSensors, webStrategies } from './drive.ts'
import { WEB_FIGURES } from './figures.ts'
import { follow, line, roll } from './rolls.ts'
import { idlers, span, web, window } from './web.ts'

export const WEB = { web, span, idlers, line, roll, follow, window }

/** What a web has in place of what every turning axis has. */
export const WEB_SHARED = {
  approach: webApproach,
  sensors: webSensors,
  strategies: webStrategies,
  requirements: boundsOf(WEB_FIGURES),
}

export type WebGroups = { [K in keyof typeof WEB]: Type.Static<(typeof WEB)[K]> }
