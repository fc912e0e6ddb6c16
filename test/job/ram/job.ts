/** A second job, kept in the tests: a ram presses a spring, no less than some force and no more than another. */
import type Type from 'typebox'
import { JOBS } from '../../../sim/job/index.ts'
import type { Job } from '../../../sim/job/job.ts'
import { LoadId } from '../../../sim/job/loads.ts'
import { formatFigure } from '../../../sim/say/figure.ts'
import type { JobWords } from '../../../sim/say/job.ts'
import { JOB_WORDS } from '../../../sim/say/jobs.ts'
import type { Scenario } from '../../../sim/scenario/index.ts'
import { group, quantity } from '../../../sim/scenario/quantity.ts'
import { kindsOf, JOBS as SCHEMAS } from '../../../sim/scenario/schema/index.ts'
import { RamLoad } from './load.ts'

const of = (label: string, unit: string, preset: number, range: [number, number]) =>
  quantity({ label, symbol: 'x', unit, default: preset, range, note: `${label} of a ram.` })

const ramSchema = group('Ram', {
  mass: of('Mass', 'kg', 0.5, [0.01, 10]),
  stroke: of('Stroke', 'm', 0.05, [0.01, 1]),
  gap: of('Way to the spring', 'm', 0.01, [0, 1]),
  stiffness: of('Stiffness', 'N/m', 5e4, [1, 1e9]),
  damping: of('Damping', 'N·s/m', 0, [0, 1e6]),
  least: of('Least force', 'N', 20, [0, 1e6]),
  most: of('Most force', 'N', 200, [0, 1e9]),
})

const ramIn = (scenario: Scenario) => (scenario as unknown as { ram: Type.Static<typeof ramSchema> }).ram

interface Pressing {
  verdict: 'pressed' | 'short' | 'bent' | 'missed' | 'unstable'
  metrics: { peak: number | null; settled: number | null }
  events: { engaged: number | null; unstable: number | null }
}

const known = (value: number) => (Number.isFinite(value) ? value : null)
const force = { unit: 'N', missing: () => 'The ram did not touch the spring.' }

export const ram: Job<Pressing> = {
  id: 'ram',
  label: 'Ram',
  load: LoadId.grip, // the compiled core does not know it
  newLoad: () => new RamLoad(),
  output: { label: 'ram', travel: 'm', effort: 'N' },
  channels: [{ id: 'force', label: 'force', unit: 'N' }],
  outputOf(scenario) {
    const { mass, stroke } = ramIn(scenario)
    return { mass, stroke, reach: stroke }
  },
  workOf(scenario) {
    const { gap, stroke } = ramIn(scenario)
    const { creepFrom } = scenario.approach
    const travelAt = (place: number) => gap - place
    const creep = creepFrom > 0 ? travelAt(creepFrom) : Number.POSITIVE_INFINITY
    return { perEffort: 1, touch: gap, meets: gap, stroke, creepFrom: creep, travelAt, reach: 10 * stroke }
  },
  fill(load, scenario) {
    const { gap, stiffness, damping } = ramIn(scenario)
    if (!(load instanceof RamLoad)) throw new TypeError('not the load of a ram')
    Object.assign(load, { gap, stiffness, damping })
  },
  verdicts: ['pressed', 'short', 'bent', 'missed', 'unstable'],
  well: 'pressed',
  judge(scenario, { load, sums, engaged, left }) {
    const { peak, touch } = (load as RamLoad).state
    const { least, most } = ramIn(scenario)
    const touched = !Number.isNaN(touch)
    const settled = touched && sums.count > 0 ? sums.force : null
    const missedOr = (verdict: Pressing['verdict']) => (touched ? verdict : 'missed')
    const kept = peak > most ? 'bent' : (settled ?? 0) < least ? missedOr('short') : 'pressed'
    return {
      verdict: Number.isNaN(left) ? kept : 'unstable',
      metrics: { peak: touched ? peak : null, settled },
      events: { engaged: known(engaged), unstable: known(left) },
    }
  },
  weakestOf: () => null,
  impactOf: (scenario, mass) => scenario.approach.speed * Math.sqrt(ramIn(scenario).stiffness * mass),
  figures: [
    { ...force, id: 'peak', label: 'Peak force', note: 'Highest.', value: ({ metrics }) => metrics.peak },
    { ...force, id: 'settled', label: 'Settled force', note: 'At the end.', value: ({ metrics }) => metrics.settled },
  ],
  headlines: ['peak'],
  errorShare: ({ peak }, errors) => (peak && errors.peak !== undefined ? errors.peak / peak : null),
  isClose: () => false,
  why: {
    figures: [
      {
        id: 'settled',
        tells: (verdict) => verdict === 'short',
        take: ({ result }) => result.metrics.settled,
        bound: (scenario) => ramIn(scenario).least,
      },
      {
        id: 'peak',
        tells: () => true,
        take: ({ result }) => (result.verdict === 'unstable' ? null : result.metrics.peak),
        bound: (scenario) => ramIn(scenario).most,
      },
    ],
    forceless: new Set(['missed', 'unstable'] as const),
    unlosable: [{ path: 'ram.most', value: 1e9 }],
    causes: [
      {
        cause: 'damper',
        label: 'Damper beside the spring',
        without: 'a spring alone',
        edits: () => [{ path: 'ram.damping', value: 0 }],
      },
    ],
    creepBefore: (_, distance) => ({ path: 'approach.creepFrom', value: distance }),
    pressed(scenario, effort) {
      const { stiffness } = ramIn(scenario)
      return { stiffness, travel: effort / stiffness }
    },
  },
  study: {
    told: ['peak'],
    histograms: ['peak'],
    margins(scenario, { metrics }) {
      const { least, most } = ramIn(scenario)
      return [metrics.settled && metrics.settled / least - 1, metrics.peak && most / metrics.peak - 1]
    },
    window: (scenario) => ramIn(scenario),
    mapped: ['ram.stiffness'],
    usual: [['ram.gap', { law: 'normal', sd: 0.0001, share: false }, 'The spring begins where it is put.']],
  },
  rescue: {
    parameters: [{ path: 'ram.stiffness', cost: 'tooling' }],
    creep: (scenario) => ({ none: 0, most: ramIn(scenario).gap, shortest: 1e-4, tried: 1e-4, sensible: 1e-3 }),
    clear: 1e-4,
    alike: { bent: 'too much' },
    worsens: new Set(['short'] as const),
    supported: false,
  },
  linear: false,
}

const ramWords: JobWords<Pressing> = {
  does: 'how each strategy presses the spring',
  window(scenario) {
    const { least, most } = ramIn(scenario)
    return [`the spring takes ${formatFigure(least)} N to ${formatFigure(most)} N`]
  },
  outcome: (_, { verdict, metrics }, words) => `It is ${verdict} with ${words.force(metrics.settled ?? 0)}.`,
  state: (verdict) => `the spring is ${verdict}`,
  why: {
    figures: {
      peak: { whole: 'Peak force', bound: 'Most force', share: 'of the peak', least: false },
      settled: { whole: 'Settled force', bound: 'Least force', share: 'of the force', least: true },
    },
    outcome: (_, { bound }, whole, words) =>
      `The spring sees ${words.force(whole)} against ${words.force(bound ?? 0)}.`,
    missed: ({ way }, words) => `The spring begins at ${words.length(way.contact)}.`,
    lost: 'A stronger spring is not pressed.',
  },
  study: {
    one: 'is pressed',
    many: 'are pressed',
    done: 'pressed',
    counted: 'pressed',
    does: 'presses',
    asks: 'are most springs pressed',
    act: 'press',
    acting: 'pressing',
    acted: 'pressed',
    run: 'spring',
    runs: 'springs',
    band: 'what the spring takes',
    effort: 'force',
    subjects: {
      pressed: 'whether springs are pressed',
      short: 'the soft ones',
      bent: 'the bent ones',
      missed: 'the misses',
      unstable: 'the unstable runs',
    },
  },
  axes: {
    asks: 'Which axis suits the spring?',
    wanted: 'force',
    where: '',
    does: 'presses',
    act: 'press',
    limit: 'limit',
    impact: 'All the energy in the spring.',
    back: 'a force on the ram',
    well: 'every strategy pressing',
    kept: 'force kept at power loss',
  },
  rescue: {
    tooling: 'a new spring',
    happens: {
      pressed: 'it is pressed',
      short: 'it is short',
      bent: 'it is bent',
      missed: 'it is missed',
      unstable: 'a loop is unstable',
    },
    late: 'the ram comes too late',
    of: 'the spring',
  },
}

type Registry = Record<string, unknown>

/** Makes it a job like any other, until what is returned is called: the registries are those of the house. */
export function register(): () => void {
  const entries: [Registry, unknown][] = [
    [SCHEMAS, kindsOf('ram', { ram: ramSchema })],
    [JOBS, ram],
    [JOB_WORDS, ramWords],
  ]
  for (const [registry, entry] of entries) registry.ram = entry
  return () => {
    for (const [registry] of entries) delete registry.ram
  }
}
