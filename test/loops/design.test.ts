import { describe, expect, it } from 'vitest'
import {
  analyseLoops,
  designGains,
  designWords,
  editScenario,
  LOOPS,
  limitsOf,
  limitWords,
  outcomeOf,
  PRESETS,
  tryDesign,
  wordingOf,
} from '../../sim/index.ts'
import { axisFigures } from '../../sim/loops/design/axis-figures.ts'
import { reachOf, scaledGains } from '../../sim/loops/design/scaled-gains.ts'
import { scenarioOf } from '../checks/support.ts'

const SI = wordingOf('si')

function scenarioWith(scenario: typeof BASE, path: string, value: number) {
  const made = editScenario(scenario, [{ path, value }])
  if (!made.ok) throw new Error(JSON.stringify(made.faults))
  return made.scenario
}

const BASE = scenarioOf()

describe('designGains', () => {
  it('hands out formula, source and gains that the scenario takes, for every loop of every preset', () => {
    for (const { scenario } of PRESETS) {
      for (const loop of LOOPS) {
        const designs = designGains(scenario, loop)
        expect(designs.length).toBeGreaterThan(0)
        for (const design of designs) {
          for (const text of [design.label, design.formula, design.source]) expect(text).not.toBe('')
          const tried = tryDesign(scenario, design)
          expect(tried.ok, JSON.stringify(tried)).toBe(true)
          if (!tried.ok || design.edits.length === 0) continue
          const [free] = tried.result.loops
          expect(free!.stable, `${scenario.name} ${loop} ${design.method}`).toBe(true)
        }
      }
    }
  })

  it('says in whole sentences what limits a loop, and names the quantities that a design reckons with', () => {
    for (const { scenario } of PRESETS)
      for (const loop of LOOPS) {
        for (const limit of limitsOf(scenario, loop)) {
          const { because, remedy } = limitWords(limit, SI, scenario.job)
          for (const text of [because, remedy]) expect(text).toMatch(/^[A-Z0-9].{20,}\.$/s)
        }
        for (const { figures } of designGains(scenario, loop)) {
          const labels = figures.map(({ label }) => label)
          expect(new Set(labels).size, labels.join()).toBe(labels.length)
          if (loop === 'force')
            expect(labels.slice(-2).map((label) => label.split(', ')[1])).toEqual(['softest', 'stiffest'])
          for (const { label, unit } of figures)
            expect(label.startsWith(`${unit} `) || label === unit, label).toBe(false)
        }
      }
  })

  it('has three methods for position and velocity and two for the current', () => {
    const methods = (loop: 'current' | 'position' | 'velocity') => designGains(BASE, loop).map(({ method }) => method)
    expect(methods('current')).toEqual(['pole-zero-cancellation', 'magnitude-optimum'])
    for (const loop of ['position', 'velocity'] as const)
      expect(methods(loop)).toEqual(['bandwidth-damping', 'symmetric-optimum', 'simc'])
  })

  it('puts the dominant poles of a slow position loop where they were wanted', () => {
    const omega = 0.02 / axisFigures(BASE).delay
    const [design] = designGains(BASE, 'position', { bandwidth: omega, damping: 0.7 })
    const tried = tryDesign(BASE, design!, { workingPoints: ['free'] })
    if (!tried.ok) throw new Error('refused')
    const { poles, period } = tried.result.loops[0]!
    const slow = poles
      .slice(0, 3)
      .map(({ re, im }) => Math.hypot(Math.log(Math.hypot(re, im)), Math.atan2(im, re)) / period)
    for (const rate of slow) expect(Math.abs(rate / omega - 1)).toBeLessThan(0.1)
  })

  it('gives a velocity loop the phase margin that its default promises', () => {
    const [design] = designGains(BASE, 'velocity')
    const tried = tryDesign(BASE, design!, { workingPoints: ['free'] })
    if (!tried.ok) throw new Error('refused')
    expect(tried.result.loops[0]!.margins!.phaseMargin).toBeGreaterThan(45)
    expect(tried.result.loops[0]!.margins!.phaseMargin).toBeLessThan(65)
  })

  it.each([
    [1.3, false],
    [1.6, true],
    [2, true],
  ])('force loop: the worst peak sensitivity over the stiffness range is %d', (peakSensitivity, integral) => {
    const [design] = designGains(BASE, 'force', { peakSensitivity, integral }, { spread: 0.5 })
    const tried = tryDesign(BASE, design!, { spread: 0.5, workingPoints: ['softest', 'nominal', 'stiffest'] })
    if (!tried.ok) throw new Error('refused')
    const worst = Math.max(...tried.result.loops.map(({ margins }) => margins!.peakSensitivity))
    expect(worst).toBeLessThanOrEqual(peakSensitivity * 1.001)
    expect(worst).toBeGreaterThan(peakSensitivity * 0.98)
  })

  it('gives no force gain where the velocity loop inside is unstable, and says so', () => {
    const wild = scenarioOf({ strategies: { sensedForce: { velocity: { kp: 8000 } } } })
    const [design] = designGains(wild, 'force')
    expect(design!.edits).toEqual([])
    expect(design!.note).toMatch(/velocity loop/)
  })

  it.each([
    ['bandwidth', 0],
    ['bandwidth', Number.NaN],
    ['damping', -1],
  ])('refuses a %s of %d', (name, value) => {
    expect(() => designGains(BASE, 'position', { [name]: value })).toThrow(new RegExp(`^${name}: given ${value}`))
  })

  it('refuses a peak sensitivity that no loop has', () => {
    expect(() => designGains(BASE, 'force', { peakSensitivity: 1 })).toThrow(/peak sensitivity: given 1/)
  })
})

describe('limitsOf', () => {
  it('names the tightest first, each with figures and a remedy', () => {
    for (const { scenario } of PRESETS) {
      for (const loop of LOOPS) {
        const limits = limitsOf(scenario, loop)
        for (let i = 1; i < limits.length; i++)
          expect(limits[i]!.crossover).toBeGreaterThanOrEqual(limits[i - 1]!.crossover)
        for (const limit of limits) {
          const { crossover } = limit
          const { because, remedy } = limitWords(limit, wordingOf('si'), 'grip')
          expect(crossover).toBeGreaterThanOrEqual(0)
          expect(because).toMatch(/\d/)
          expect(because + remedy).not.toMatch(/NaN|undefined|Infinity/)
        }
      }
    }
  })

  it('keeps its promises: twice the current rate doubles what the delay allows, a quarter of the voltage less than halves', () => {
    const bound = (scenario: typeof BASE, kind: string) =>
      limitsOf(scenario, 'current').find((limit) => limit.kind === kind)!.crossover
    const faster = scenarioOf({ drive: { currentRate: 40000 } })
    expect(bound(faster, 'delay') / bound(BASE, 'delay')).toBeCloseTo(2, 9)
    const weaker = scenarioOf({ drive: { busVoltage: 24 } })
    expect(bound(weaker, 'voltage')).toBeLessThan(bound(BASE, 'voltage') / 2)
  })

  it('the delay bound of the current loop leaves 60° in the sampled loop as well', () => {
    const { crossover } = limitsOf(BASE, 'current').find(({ kind }) => kind === 'delay')!
    const at = scenarioOf({ drive: { currentBandwidth: crossover, backEmfFeedforward: 0 } })
    const [loop] = analyseLoops(at, { loops: ['current'], workingPoints: ['free'] }).loops
    expect(loop!.margins!.phaseMargin).toBeGreaterThan(58)
    expect(loop!.margins!.phaseMargin).toBeLessThan(63)
  })
})

describe('what a design gives', () => {
  const slow = 0.02 / axisFigures(BASE).delay
  const given = (loop: 'position' | 'velocity', wanted: object) => {
    const tried = tryDesign(BASE, designGains(BASE, loop, wanted)[0]!, { workingPoints: ['free'] })
    if (!tried.ok) throw new Error('refused')
    return outcomeOf(tried.result.loops[0]!)
  }

  it('overshoot of slow loops is that of their closed forms: triple pole 24.9 %, double pole with its zero', () => {
    // The speed is not taken from the set point, so (3ω₀²s + ω₀³)/(s + ω₀)³: 1 + (t² − t − 1)·e^(−t) is highest at t = 3/ω₀, by
    // 5·e^(−3). With k_p less by the friction d, (a·s + 1)/(s + 1)² with a = 2 − d/ω: (a − 1)·e^(−1 − 1/(a − 1)). Closed forms.
    expect(Math.abs(given('position', { bandwidth: slow }).overshoot! * 100 - 500 * Math.exp(-3))).toBeLessThan(0.5)
    const zero = 1 - axisFigures(BASE).drag / slow
    const expected = 100 * zero * Math.exp(-1 - 1 / zero)
    expect(Math.abs(given('velocity', { bandwidth: slow }).overshoot! * 100 - expected)).toBeLessThan(0.5)
  })

  it('says what it cannot give instead of giving less in silence', () => {
    const { delay } = axisFigures(BASE)
    const simc = designGains(BASE, 'position', { bandwidth: 3 / delay }).find(({ method }) => method === 'simc')!
    expect(simc.short).toEqual({ kind: 'too fast', wanted: 3 / delay, fastest: 1 / delay })
    expect(designWords(simc.short, [], [], SI, 'grip').join(' ')).toMatch(/cannot be had by this method: its fastest/)
    const sticky = scenarioOf({ actuator: { transmission: { viscous: 400 } } })
    const [placed] = designGains(sticky, 'velocity', { bandwidth: 1, damping: 0.1 })
    expect(placed!.short).toEqual({ kind: 'friction' })
    for (const design of designGains(BASE, 'position')) expect(design.short).toBeNull()
  })

  it('a design that crosses beyond a limit is told so, and an unstable one where', () => {
    const limits = limitsOf(BASE, 'position')
    const [wild] = designGains(BASE, 'position', { bandwidth: 2000 })
    const tried = tryDesign(BASE, wild!)
    if (!tried.ok) throw new Error('refused')
    const outcomes = tried.result.loops.map(outcomeOf)
    const said = designWords(wild!.short, outcomes, limits, SI, 'grip').join(' ')
    expect(said).toMatch(/beyond what is advised below: .*delay/)
    expect(designWords(null, [{ ...outcomes[0]!, stable: false }], [], SI, 'grip')).toEqual(['Unstable in free air.'])
  })
})

describe('limits at the contact', () => {
  const bushing = PRESETS.find(({ id }) => id === 'bushing')!.scenario
  const limit = (id: string, scenario = bushing) => limitsOf(scenario, 'force').find((each) => each.id === id)!

  it('the gains that the sampled loop reaches have just the peak sensitivity', () => {
    for (const loop of ['position', 'velocity', 'force'] as const) {
      const { factor, crossover } = reachOf(bushing, loop, 1.6)!
      const { loops } = analyseLoops(scaledGains(bushing, loop, factor), { loops: [loop] })
      const peaks = loops.map(({ margins }) => margins!.peakSensitivity)
      expect(Math.max(...peaks)).toBeGreaterThan(1.59)
      expect(Math.max(...peaks)).toBeLessThanOrEqual(1.6)
      expect(Math.min(...loops.flatMap((each) => each.crossover ?? []))).toBeCloseTo(crossover, 6)
    }
  })

  it('bushing: the swing of the axis on the part limits the loop to what it reaches, not to a hundred', () => {
    const [tightest] = limitsOf(bushing, 'force')
    expect(tightest!.kind).toBe('reach')
    expect(limit('contact').crossover / tightest!.crossover).toBeGreaterThan(0.8)
    expect(limit('contact').crossover / tightest!.crossover).toBeLessThan(1.5)
  })

  it('that swing is the mass on the part with the loop’s own stiffness, but for its delays', () => {
    // √((k + K·k_i)/M) without delays, closed form; the lags of the velocity loop stiffen it further.
    const { mass, stiffness, followed, omega } = limit('contact') as Extract<
      ReturnType<typeof limit>,
      { id: 'contact' }
    >
    const free = Math.sqrt(stiffness / (1 - followed) / mass)
    expect(omega / free).toBeGreaterThan(1)
    expect(omega / free).toBeLessThan(1.4)
  })

  it('with the gains at that limit the peak stands at one half', () => {
    const { crossover, omega } = limit('contact') as Extract<ReturnType<typeof limit>, { id: 'contact' }>
    const kp = bushing.strategies.sensedForce.kp
    const [now] = analyseLoops(bushing, {
      loops: ['force'],
      workingPoints: ['stiffest'],
      curves: true,
      count: 2000,
    }).loops
    const { frequency, magnitude } = now!.curves!
    const height = 10 ** (magnitude[frequency.findIndex((each) => each >= omega)]! / 20)
    const at = scenarioWith(bushing, 'strategies.sensedForce.kp', (kp * 0.5) / height)
    const [then] = analyseLoops(at, { loops: ['force'], workingPoints: ['stiffest'] }).loops
    expect(then!.margins!.crossings[0]! / crossover).toBeCloseTo(1, 1)
  })

  it('free air leaves 6 dB of the gain margin there', () => {
    const apricot = PRESETS.find(({ id }) => id === 'apricot')!.scenario
    const { crossover, gainMargin } = limit('free-air', apricot) as { gainMargin: number } & ReturnType<typeof limit>
    const scaled = scaledGains(apricot, 'force', 10 ** (gainMargin / 20) / 2)
    const [free, stiffest] = analyseLoops(scaled, { loops: ['force'], workingPoints: ['free', 'stiffest'] }).loops
    expect(free!.margins!.gainMargin).toBeCloseTo(20 * Math.log10(2), 6)
    expect(stiffest!.crossover).toBeCloseTo(crossover, 6)
  })
})
