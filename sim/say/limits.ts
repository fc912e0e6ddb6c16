/** What limits the bandwidth of a loop, and what more of it would take. */

import { JOBS } from '../job/index.ts'
import type { Limit, LimitFigures } from '../loops/design/limits.ts'
import type { JobId } from '../scenario/index.ts'
import { JOB_WORDS } from './jobs.ts'
import { outputWords } from './output.ts'
import { decibels, figure, type Wording } from './wording.ts'

export interface LimitWords {
  /** Where the bound comes from, with figures. */
  because: string
  /** What more bandwidth would take. */
  remedy: string
}

type Say<I extends keyof LimitFigures> = (figures: LimitFigures[I], words: Wording, job: JobId) => LimitWords

const SAY: { [I in keyof LimitFigures]: Say<I> } = {
  'current-delay': ({ delay, rate }, words) => ({
    because: `Computing and holding take 1.5 samples, ${words.shortTime(delay)}; 60° of phase are to be left.`,
    remedy: `Twice the current loop rate, ${words.frequency(2 * rate)}, doubles it.`,
  }),
  'current-voltage': ({ step, headroom, bus }, words) => ({
    because: `A step to ${words.current(step)} asks for L·ω·ΔI at once; at approach speed ${words.voltage(Math.max(0, headroom))} of ${words.voltage(bus)} are left for it.`,
    remedy: `Twice as much takes ${words.voltage(2 * Math.max(0, headroom) + bus - headroom)}, or a winding of half the inductance.`,
  }),
  'current-noise': ({ ripple, resistance, inductance }, words) => ({
    because: `Noise and steps of the measured current, ${words.smallCurrent(ripple)} rms, come out as L·ω times that; 5 % of the bus voltage are allowed. Winding ${words.resistance(resistance)}, ${words.inductance(inductance)}.`,
    remedy: 'Half the noise of the current measurement doubles it.',
  }),
  'motion-delay': ({ delay, lags }, words) => {
    const ms = words.shortTime
    const [name, largest] = Object.entries({
      'a faster current loop': lags.currentLoop,
      'a higher servo rate': lags.hold + lags.difference,
      'a shorter speed filter': lags.filter,
    }).reduce((a, b) => (b[1] > a[1] ? b : a))
    return {
      because: `The lags add up to ${ms(delay)}: current loop ${ms(lags.currentLoop)}, hold ${ms(lags.hold)}, difference ${ms(lags.difference)}, speed filter ${ms(lags.filter)}; they may take 30° at the crossover.`,
      remedy: `The largest share goes with ${name}: ${ms(largest)}.`,
    }
  },
  resonance: ({ jaw, motor, omega, damping }, words, job) => {
    const { mass } = outputWords(job, words)
    const { label } = JOBS[job].output
    return {
      because: `The ${label} of ${mass(jaw)} swings against the motor side of ${mass(motor)} at ${words.swing(omega)} with damping ${figure(damping)}; its peak is to stay below one half.`,
      remedy: `A lighter ${label}, more damping, or a stiffer transmission: four times the stiffness at the same damping ratio doubles it.`,
    }
  },
  'motion-voltage': ({ bus, current, inductance }, words) => ({
    because: `Above it ${words.voltage(bus)} do not drive a sine of the full ${words.current(current)} through ${words.inductance(inductance)}; small signals are not bound by it.`,
    remedy: `Twice the voltage, ${words.voltage(2 * bus)}, or half the current limit about doubles it.`,
  }),
  encoder: ({ step, current }, words, job) => ({
    because: `One encoder step of ${outputWords(job, words).smallWay(step)} kicks the current by k_d·Δx/T through the filter; 5 % of the continuous ${words.current(current)} are allowed.`,
    remedy: `Twice as much takes an encoder of ${outputWords(job, words).smallWay(step / 2)}, or a longer speed filter, which costs delay.`,
  }),
  'force-delay': ({ delay, velocityLoop, hold, gauge }, words, job) => {
    const ms = words.shortTime
    return {
      because: `The lags add up to ${ms(delay)}: velocity loop ${ms(velocityLoop)}, hold ${ms(hold)}, gauge ${ms(gauge)}; they may take 30° at the crossover ${JOB_WORDS[job].loops.at.stiffest}.`,
      remedy: `A faster velocity loop, a higher ${JOB_WORDS[job].study.effort} loop rate or a gauge of more bandwidth, whichever lag is the largest.`,
    }
  },
  'inner-loop': ({ inner, rate }, words, job) => ({
    because: `The velocity loop inside crosses at about k_p·K/M = ${words.swing(inner)}; the ${JOB_WORDS[job].study.effort} loop is to stay at a third of it (common practice, no source).`,
    remedy: `A higher velocity gain; the servo runs at ${words.frequency(rate)}.`,
  }),
  'force-noise': ({ ripple, quiet }, words, job) => ({
    because: `Noise and steps of the gauge, ${outputWords(job, words).effort(ripple)} rms, become speed through the gain; ${quiet === 'dead band' ? 'three times that is to stay inside the dead band' : '5 % of the speed limit are allowed'}.`,
    remedy: `Half the noise, or twice the dead band, which leaves a larger error of the ${JOB_WORDS[job].study.effort}, doubles it.`,
  }),
  contact: ({ mass, stiffness, omega, damping, followed }, words, job) => {
    const own = outputWords(job, words)
    const { at, calmer } = JOB_WORDS[job].loops
    return {
      because: `With the ${JOBS[job].output.label} ${at.stiffest}, where the axis of ${own.mass(mass)} meets ${own.hardStiffness(stiffness)}, a swing of ${words.swing(omega)} is left with damping ${figure(damping)} by the velocity loop; its peak is to stay below one half. Slow commands the velocity loop follows against it by ${words.ratio(followed)} only.`,
      remedy: `${calmer}; a velocity loop with more integral gain follows slow commands better.`,
    }
  },
  'free-air': ({ gainMargin, fingerMass }, words, job) => {
    const { at, inertia } = JOB_WORDS[job].loops
    return {
      because: `Before the touch the gauge feels ${inertia} of ${outputWords(job, words).mass(fingerMass)}, and the ${JOB_WORDS[job].study.effort} loop answers it: with the present gains the margin is ${decibels(gainMargin)} ${at.free}, of which 6 dB are to be left.`,
      remedy: 'Less mass in front of the gauge, or a gauge of less bandwidth, which costs delay.',
    }
  },
  reach: ({ most, at, factor, peakFrequency }, words, job) =>
    at === null
      ? {
          because: `At no gain in the present ratio does the sampled loop keep a peak sensitivity of ${figure(most)} at every working point.`,
          remedy: 'The loop inside it has to be tuned first, or the ratio of the gains changed.',
        }
      : {
          because: `With the gains in their present ratio, ${figure(factor)} times as large, the sampled loop comes to a peak sensitivity of ${figure(most)}, ${JOB_WORDS[job].loops.at[at]} at ${words.swing(peakFrequency)}; all delays and resonances of the model count.`,
          remedy: 'Whichever of the others stands near it; another ratio of the gains may reach further.',
        },
  speed: ({ speed, growth, target }, words, job) => {
    const own = outputWords(job, words)
    const { study, loops } = JOB_WORDS[job]
    return {
      because: `At the speed limit of ${own.speed(speed)} the ${study.effort} grows by ${own.effortRate(growth)} ${loops.at.softest}; the whole target of ${own.effort(target)} cannot swing faster. Small signals are not bound by it.`,
      remedy: 'A higher speed limit, at the price of a harder touch.',
    }
  },
}

const NAMES: Record<Limit['kind'], string> = {
  delay: 'Delay',
  resonance: 'Resonance',
  voltage: 'Voltage',
  encoder: 'Encoder',
  noise: 'Noise',
  'inner-loop': 'Inner loop',
  speed: 'Speed limit',
  contact: 'Contact resonance',
  'free-air': 'Before the touch',
  reach: 'Sampled loop',
}

export const limitName = ({ kind }: Pick<Limit, 'kind'>): string => NAMES[kind]

export const limitWords = (limit: Limit, words: Wording, job: JobId): LimitWords =>
  (SAY[limit.id] as (figures: Limit, words: Wording, job: JobId) => LimitWords)(limit, words, job)
