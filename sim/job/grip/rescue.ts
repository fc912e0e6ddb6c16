/** What may save a grip on the side of pads and part, and which verdicts come of too much force or too little. */
import type { Scenario } from '../../scenario/index.ts'
import type { JobRescue } from '../job.ts'
import { contactsOf } from './geometry.ts'
import type { GripJudgement } from './result.ts'

/**
 * Way of a jaw by which the size of a part may be off [m]: no rescue leaves a shorter creep zone before it, or ends the move less far
 * behind its surface; common practice for made parts, no source.
 */
const CLEAR = 5e-4

export const gripRescue: JobRescue<GripJudgement> = {
  parameters: [
    { path: 'jaws.padStiffness', cost: 'tooling' },
    {
      path: 'jaws.friction.static',
      cost: 'tooling',
      along: ({ jaws }: Scenario, friction) => [
        { path: 'jaws.friction.sliding', value: Math.min(jaws.friction.sliding, friction) },
      ],
    },
  ],
  creep(scenario) {
    const { part, jaws } = scenario
    const contacts = contactsOf(scenario)
    const ends = { none: part.width, most: jaws.opening }
    return { ...ends, shortest: CLEAR * contacts, tried: 1e-4 * contacts, sensible: 1e-3 * contacts }
  },
  clear: CLEAR,
  alike: {
    slipped: 'too little',
    loose: 'too little',
    dropped: 'too little',
    marked: 'too much',
    crushed: 'too much',
  },
  worsens: new Set(['slipped', 'loose', 'marked'] as const),
  supported: true,
}
