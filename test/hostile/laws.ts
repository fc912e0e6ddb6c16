/** What every run must keep, whatever the scenario. */
import { forceWindow, type GripResult, type Scenario, VERDICTS } from '../../sim/index.ts'
import { reasonIn } from '../say/support.ts'

/** Rounding of sums over a run: figures that are equal in exact numbers may differ by this share. */
const ROUNDING = 1e-9

interface Law {
  name: string
  /** What is wrong; null: nothing. */
  broken(result: GripResult, scenario: Scenario): string | null
}

const unless = (kept: boolean, wrong: () => string) => (kept ? null : wrong())

const notAbove = (low: number | null, high: number | null) =>
  low === null || high === null || low <= high + ROUNDING * Math.abs(high)

export const LAWS: Law[] = [
  {
    name: 'every figure and every instant is a finite number or none',
    broken({ metrics, events, step }) {
      const odd = Object.entries({ ...metrics, ...events, step }).find(
        ([, value]) => value !== null && !Number.isFinite(value),
      )
      return unless(odd === undefined, () => `${odd![0]} is ${odd![1]}`)
    },
  },
  {
    name: 'no contact pulls, and nothing that has a size is negative',
    broken({ metrics }) {
      const sizes = [
        'peakForce',
        'settledForce',
        'minForceInMove',
        'maxForceInMove',
        'requiredForce',
        'slipDistance',
        'peakCurrent',
        'rmsCurrent',
        'forceRipple',
        'reversals',
        'contactTime',
        'gripTime',
        'peakForceTime',
      ] as const
      const odd = sizes.find((id) => (metrics[id] ?? 0) < 0)
      return unless(odd === undefined, () => `${odd} is ${metrics[odd!]}`)
    },
  },
  {
    name: 'the peak is at least the settled force and the forces in the moves',
    broken: ({ metrics: { peakForce, settledForce, minForceInMove, maxForceInMove } }) =>
      unless(
        notAbove(settledForce, peakForce) &&
          notAbove(maxForceInMove, peakForce) &&
          notAbove(minForceInMove, maxForceInMove),
        () => `peak ${peakForce}, settled ${settledForce}, in moves ${minForceInMove} to ${maxForceInMove}`,
      ),
  },
  {
    name: 'the rms current is at most the peak current',
    broken: ({ metrics: { rmsCurrent, peakCurrent } }) =>
      unless(notAbove(rmsCurrent, peakCurrent), () => `rms ${rmsCurrent}, peak ${peakCurrent}`),
  },
  {
    name: 'what happens happens within the run, touch before peak and slip before fall',
    broken({ metrics, events }, { run, drive }) {
      const times = [metrics.contactTime, metrics.peakForceTime, ...Object.values(events)]
      const end = run.duration + 1 / drive.currentRate // a run takes whole periods
      const within = times.every((time) => time === null || (time >= 0 && time <= end))
      const ordered = notAbove(metrics.contactTime, metrics.peakForceTime) && notAbove(events.slip, events.drop)
      return unless(within && ordered, () =>
        JSON.stringify({ ...events, touch: metrics.contactTime, peak: metrics.peakForceTime }),
      )
    },
  },
  {
    name: 'the verdict agrees with what happened',
    broken({ verdict, metrics, events }) {
      const agrees =
        VERDICTS.includes(verdict) &&
        (verdict === 'unstable') === (events.unstable !== null) &&
        (verdict !== 'crushed' || events.crack !== null) &&
        (verdict !== 'dropped' || events.drop !== null) &&
        (verdict !== 'missed' || metrics.contactTime === null || events.lift === null)
      return unless(agrees, () => `${verdict}: ${JSON.stringify(events)}`)
    },
  },
  {
    name: 'window and verdict agree: what is held was never above the window, what is marked or crushed was, unless the jaws met through it',
    broken({ verdict, metrics: { peakForce }, events: { met } }, scenario) {
      const most = forceWindow(scenario).most ?? Number.POSITIVE_INFINITY
      if (verdict === 'held')
        return unless((peakForce ?? 0) <= most, () => `held, with a peak of ${peakForce} above ${most}`)
      const harmed = verdict === 'marked' || (verdict === 'crushed' && met === null)
      return unless(!harmed || (peakForce ?? 0) >= most, () => `${verdict}, with a peak of ${peakForce} below ${most}`)
    },
  },
  {
    name: 'a damage margin is negative where and only where the peak is above the window',
    broken({ metrics: { damageMargin, peakForce } }, scenario) {
      const { most } = forceWindow(scenario)
      if (damageMargin === null || peakForce === null || most === null) return null
      const far = Math.abs(peakForce - most) > ROUNDING * most
      return unless(
        !far || damageMargin < 0 === peakForce > most,
        () => `margin ${damageMargin}, peak ${peakForce} of ${most}`,
      )
    },
  },
  {
    name: 'held means touched, hung, never lost, and a margin that is not negative',
    broken({ verdict, metrics, events }) {
      if (verdict !== 'held') return null
      const { contactTime, holdMargin } = metrics
      const kept = contactTime !== null && events.lift !== null && events.drop === null && events.crack === null
      return unless(
        kept && (holdMargin ?? 0) >= 0,
        () => `margin ${holdMargin}, ${JSON.stringify({ contactTime, ...events })}`,
      )
    },
  },
  {
    name: 'held means that some force was as great as the one needed',
    broken: ({ verdict, metrics: { peakForce, requiredForce } }) =>
      unless(
        verdict !== 'held' || notAbove(requiredForce, peakForce),
        () => `needed ${requiredForce}, at most ${peakForce}`,
      ),
  },
  {
    name: 'the reason is a sentence',
    broken(result, scenario) {
      const reason = reasonIn(scenario, result)
      return unless(/^[A-Z].+\.$/.test(reason) && !/NaN|Infinity|undefined|null/.test(reason), () => reason)
    },
  },
]

/** Of a run whose step error was asked for. */
export const ERROR_LAW: Law = {
  name: 'the error of the step is stated for every stable run with a force, or in doubt as a finer one leaves its rails',
  broken({ stepError, events, metrics, doubt }) {
    const stable = events.unstable === null && doubt?.verdict !== 'unstable'
    const due = stable && Boolean(metrics.peakForce) && Boolean(metrics.settledForce)
    return unless(!due || (stepError !== null && stepError >= 0), () => `stated ${stepError}`)
  },
}
