/** How a press is shown to others. */
import { forceLimit } from '../../job/press/fill.ts'
import type { PressJudgement } from '../../job/press/result.ts'
import { pressIn } from '../../job/press/scenario.ts'
import { jointWindow } from '../../job/press/window.ts'
import type { Scenario } from '../../scenario/index.ts'
import type { Wording } from '../wording.ts'
import { armMoves, beyond, MOTOR_KEYS, moveText, RATING_KEYS, type Shown, type TextAt } from './shown.ts'

export const pressShown: Shown<PressJudgement> = {
  title: 'The press',
  works: 'bushings',
  effort: 'Force of the ram',
  window: 'Joint window',
  below: 'ends short',
  above: (scenario) =>
    forceLimit(scenario) <= (jointWindow(scenario).seat.most ?? Infinity) ? 'is forced' : 'seats too hard',
  between: 'seats',
  picture: 'ram, bushing and bore in section',
  stiff: 'a joint',
  stage(result, time) {
    const contact = result?.metrics.contactTime ?? null
    if (!result || contact === null || time < contact) return 'Approaching'
    return result.events.seat !== null && time >= result.events.seat ? 'On the shoulder' : 'Pressing in'
  },
  fate: ({ verdict, events }) => (verdict === 'forced' && events.over === null ? 'leaves the band' : FATES[verdict]),
  achieves: 'seats the bushing as it should be',
  spare(scenario, { metrics }, words) {
    const { least, most } = jointWindow(scenario).seat
    const { bandMargin, forceMargin, seatForce } = metrics
    return [
      ...beyond(bandMargin, words, 'to spare in the band'),
      ...beyond(
        least === null || seatForce === null ? null : seatForce / least - 1,
        words,
        'more on the shoulder than needed',
      ),
      ...beyond(most === null || !seatForce ? null : most / seatForce - 1, words, 'before the shoulder has too much'),
      ...beyond(forceMargin, words, 'before the force limit'),
    ]
  },
  events: armMoves,
  facts,
  sheet: {
    work: {
      title: 'Bushing, bore and joint',
      keys: [
        ...['diameter', 'innerDiameter', 'length', 'interference', 'chamfer.angle', 'chamfer.length', 'tilt'].map(
          (key) => `bushing.${key}`,
        ),
        'bushing.mostForce',
        ['bore.outerDiameter', 'Around the bore'],
        ['bore.shoulder.depth', 'Shoulder at'],
        'joint.friction.pressing',
        'joint.friction.static',
      ],
    },
    axis: ['actuator.family', ...MOTOR_KEYS, 'ram.mass', ['ram.stiffness', 'Frame and ram'], ...RATING_KEYS],
    course: {
      title: 'Way of the ram',
      keys: [
        ['ram.gap', 'To the bore'],
        'approach.speed',
        'approach.creepSpeed',
        'approach.creepFrom',
        'approach.overtravel',
      ],
      list: { path: 'arm.moves', item: 'Move', text: moveText, none: '' },
    },
    settings: [],
  },
  unlost: '',
  assumed,
  danger: 'Presses crush, may start unexpectedly, and keep the energy of their bent frame after they have stopped.',
}

const FATES: Record<PressJudgement['verdict'], string> = {
  forced: 'goes over its limit',
  tilted: 'goes above the band',
  slack: 'falls below the band',
  unstable: 'leaves its rails',
  short: 'ends short',
  missed: 'is missed',
  seated: 'is seated',
}

function facts(scenario: Scenario, words: Wording) {
  const { bushing, bore, ram } = pressIn(scenario)
  const { speed, creepSpeed, creepFrom } = scenario.approach
  const fit =
    bushing.interference < 0
      ? `${words.smallLength(-bushing.interference)} smaller than its bore`
      : `${words.smallLength(bushing.interference)} larger than its bore`
  const creeps =
    creepFrom > 0 && creepSpeed < speed ? `, the last ${words.length(creepFrom)} with ${words.speed(creepSpeed)}` : ''
  return [
    {
      name: 'Bushing',
      words: `${words.length(bushing.diameter)} across, ${words.length(bushing.length)} long, ${fit}`,
    },
    {
      name: 'Bore',
      words: `${words.length(bore.outerDiameter)} across outside, ${bore.shoulder ? `its shoulder ${words.length(bore.shoulder.depth)} deep` : 'without a shoulder'}`,
    },
    { name: 'Ram', words: `${words.length(ram.gap)} to the bore, moving with ${words.speed(speed)}${creeps}` },
  ]
}

function assumed(scenario: Scenario, at: TextAt): string[] {
  return [
    'Each press is that of one bushing and one bore of exactly the stated size, metal and friction: they scatter only in shares of many joints.',
    'Pressure by Lamé’s thick-walled rings, elastic and the same along the joint; where the wall flows, the true pressure is lower.',
    'Friction is one coefficient for sliding and one at rest: no galling, no shaved metal, no oil that is squeezed out, no warming.',
    `A tilted bushing keeps its ${pressIn(scenario).bushing.tilt > 0 ? at('bushing.tilt') : 'angle'} against the bore all the way in.`,
    `Ram and frame give by ${at('ram.stiffness')} and do not bend aside; the transmission gives by ${at('actuator.transmission.stiffness')}.`,
  ]
}
