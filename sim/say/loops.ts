/** What is to be said of the loops beside their figures. */
import type { LoopAnalysis, LoopsResult } from '../loops/analyse.ts'
import type { DryFriction, LoopRemark } from '../loops/remarks.ts'
import { decibels, type Wording } from './wording.ts'

/** '' where the figures say it all. */
export const loopNote = ({ remarks }: Pick<LoopAnalysis, 'remarks'>, words: Wording): string =>
  remarks.map((remark) => sentence(remark, words)).join(' ')

function sentence(remark: LoopRemark, words: Wording): string {
  switch (remark.kind) {
    case 'unstable': {
      const { outside, of, swing, doubling } = remark
      return `Unstable: ${outside} of ${of} poles lie outside the unit circle; the fastest growing one swings at ${words.swing(swing)} and doubles every ${words.shortTime(doubling)}. No margin exists.`
    }
    case 'on the border':
      return remark.swing > 0
        ? `On the border of stability: a swing of ${words.swing(remark.swing)} neither grows nor dies away, and no margin exists.`
        : 'On the border of stability: what is once disturbed stays, neither growing nor dying away, and no margin exists.'
    case 'by itself':
      return remark.stability === 'stable'
        ? 'With the servo’s command held, the current loop by itself is stable.'
        : 'Nor is the current loop stable by itself, with the servo’s command held.'
    case 'nothing to feel':
      return 'No crossover: in free air the gauge feels nothing but the inertia of its finger, so there is no force to control.'
    case 'no gain':
      return 'No crossover: all gains are 0, so the loop has no bandwidth and no phase margin.'
    case 'no crossover':
      return `No crossover: the loop gain does not fall through 1 at any frequency, so the loop has no ${remark.bandwidth ? '' : 'bandwidth and no '}phase margin.`
    case 'no bandwidth':
      return remark.closed === 'below'
        ? 'No bandwidth: the closed loop lies below −3 dB at the lowest frequencies already.'
        : 'No bandwidth: the closed loop does not fall through −3 dB below half the sample rate.'
    case 'crossings':
      return `The loop gain passes 1 at ${remark.at.map(words.swing).join(', ')}; the phase margin is the least of them.`
    case 'gain without bound':
      return 'The gain may rise without bound.'
    case 'conditionally stable':
      return `Conditionally stable: it oscillates as well when the gain falls by ${decibels(remark.fall)}.`
    case 'too slow for the servo':
      return `With a gain lower by ${decibels(remark.fall)} it would be too slow for the position servo around it, and the two would oscillate.`
    case 'relaxes':
      return `Quick changes meet ${words.stiffness(remark.quick)} at one contact, slow ones, to which the part has time to give way, ${words.stiffness(remark.slow)}.`
    case 'content with any force':
      return 'At rest it is content with any force; only the force loop decides on one.'
    case 'cracks':
      return `The part would crack at ${words.force(remark.force)}, below the working force.`
    case 'yields':
      return `The part yields at ${words.force(remark.force)}; the stiffness is that of its springing back.`
    case 'idle integral':
      return 'The integral stands at the speed limit and takes no part.'
  }
}

/** Load-proportional friction below this is none. */
const NONE = 1e-9

/** What Coulomb friction does to loops whose margins are those of an axis without it. */
export function frictionNote(friction: DryFriction, words: Wording): string {
  const { coulomb, breakaway, current, bristleStiffness, raise, lower, integral, deadband } = friction
  if (breakaway === 0 && raise < NONE) return 'The axis has no dry friction; the linear loops are the whole story.'
  const parts = [
    `The margins are those of a moving axis with its viscous friction only. At rest friction of up to ${words.force(breakaway)} (${words.current(current)}) holds it like a spring of ${words.hardStiffness(bristleStiffness)}, and the loops move nothing until their integral has broken it away.`,
  ]
  if (raise >= NONE)
    parts.push(
      `Under load the transmission adds ${words.ratio(raise)} of the load closing and ${words.ratio(lower)} opening.`,
    )
  if (breakaway > coulomb)
    parts.push(
      `Break-away lies ${words.force(breakaway - coulomb)} above sliding friction: with an integral in the loop the axis can stick and slip about its target, which no linear margin shows.`,
    )
  if (integral && !deadband) parts.push('The force loop has no dead band to end such hunting.')
  return parts.join(' ')
}

/** Why loops are missing; '' if none are. */
export const missingLoops = ({ openLoop }: Pick<LoopsResult, 'openLoop'>): string =>
  openLoop
    ? 'The step motor runs in open loop: its field follows the command, and there is no position, velocity or force loop to look at.'
    : ''
