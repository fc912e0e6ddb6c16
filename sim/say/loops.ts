/** What is to be said of the loops beside their figures. */
import type { LoopAnalysis, LoopsResult } from '../loops/analyse.ts'
import type { DryFriction, LoopRemark } from '../loops/remarks.ts'
import { jobWords } from './jobs.ts'
import { outputWords } from './output.ts'
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
    case 'nothing to feel': {
      const { loops, study } = jobWords(remark)
      return `No crossover: ${loops.at.free} the gauge feels ${loops.feels}, so there is no ${study.effort} to control.`
    }
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
    case 'forgets':
    case 'slides':
    case 'held by friction':
    case 'content with any force':
      return ofWork(remark, words)
    case 'cracks':
      return `The part would crack at ${words.force(remark.force)}, below the working force.`
    case 'yields':
      return `The part yields at ${words.force(remark.force)}; the stiffness is that of its springing back.`
    case 'bruises':
      return `The bushing takes no more than ${words.force(remark.force)}, below the working force.`
    case 'strips':
      return `The thread would strip at ${words.spindleTorque(remark.force)}, below the working torque.`
    case 'tears':
      return `The web would tear at ${words.force(remark.force)}, below the working tension.`
    case 'idle integral':
      return 'The integral stands at the speed limit and takes no part.'
  }
}

type WorkRemark = Extract<
  LoopRemark,
  { kind: 'relaxes' | 'forgets' | 'slides' | 'held by friction' | 'content with any force' }
>

/** How the work answers. */
function ofWork(remark: WorkRemark, words: Wording): string {
  const { loops, study } = jobWords(remark)
  const own = outputWords(remark.job, words)
  switch (remark.kind) {
    case 'relaxes':
      return `Quick changes meet ${own.stiffness(remark.quick)}${loops.contact}, slow ones, to which ${loops.relaxes} has time to give way, ${own.stiffness(remark.slow)}.`
    case 'forgets':
      return `A stretch leaves with the web: left to itself, the ${study.effort} forgets it within ${words.shortTime(remark.time)}.`
    case 'slides':
      return `Passed at ${own.speed(remark.speed)}, where the ${study.effort} grows by ${own.stiffness(remark.stiffness)}; as soon as it stands, friction holds it as at the points at rest.`
    case 'held by friction':
      return `Its friction holds elastically as long as the ${study.effort} swings by no more than ${own.effort(remark.room)}; beyond that it slides, and the loop meets less.`
    case 'content with any force':
      return `At rest it is content with any ${study.effort}; only the ${study.effort} loop decides on one.`
  }
}

/** Load-proportional friction below this is none. */
const NONE = 1e-9

/** What Coulomb friction does to loops whose margins are those of an axis without it. */
export function frictionNote(friction: DryFriction, words: Wording): string {
  const { job, coulomb, breakaway, current, bristleStiffness, raise, lower, integral, deadband } = friction
  const { force, hardStiffness } = outputWords(job, words)
  const { loops, study } = jobWords(friction)
  if (breakaway === 0 && raise < NONE) return 'The axis has no dry friction; the linear loops are the whole story.'
  const parts = [
    `The margins are those of a moving axis with its viscous friction only. At rest friction of up to ${force(breakaway)} (${words.current(current)}) holds it like a spring of ${hardStiffness(bristleStiffness)}, and the loops move nothing until their integral has broken it away.`,
  ]
  if (raise >= NONE)
    parts.push(
      `Under load the transmission adds ${words.ratio(raise)} of the load ${loops.onwards} and ${words.ratio(lower)} ${loops.back}.`,
    )
  if (breakaway > coulomb)
    parts.push(
      `Break-away lies ${force(breakaway - coulomb)} above sliding friction: with an integral in the loop the axis can stick and slip about its target, which no linear margin shows.`,
    )
  if (integral && !deadband) parts.push(`The ${study.effort} loop has no dead band to end such hunting.`)
  return parts.join(' ')
}

/** Why loops are missing; '' if none are. */
export const missingLoops = ({ openLoop, friction }: Pick<LoopsResult, 'openLoop' | 'friction'>): string =>
  openLoop
    ? `The step motor runs in open loop: its field follows the command, and there is no position, velocity or ${jobWords(friction).study.effort} loop to look at.`
    : ''
