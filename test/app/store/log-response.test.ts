import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { useLog } from '../../../app/store/log.ts'
import { useScenario } from '../../../app/store/scenario.ts'
import { axisResponse, editScenario } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'
import { normals } from '../../log/normals.ts'
import { DeskWorker } from './desk-worker.ts'

const MASS = 'actuator.transmission.carriageMass'
const scenario = quick()
const made = editScenario(scenario, [{ path: MASS, value: 0.9 }])
if (!made.ok) throw new Error('refused')
const at = axisResponse(made.scenario, 'speed', 0.0002)

const table = (unit: 'Hz' | 'rad/s', scale = 1) => {
  const rows = Array.from({ length: 60 }, (_, k) => {
    const omega = 60 * 100 ** (k / 59)
    const { re, im } = at(omega)
    const decibels = 20 * Math.log10(Math.hypot(re, im) / scale)
    return `${unit === 'Hz' ? omega / (2 * Math.PI) : omega},${decibels},${(180 * Math.atan2(im, re)) / Math.PI}`
  })
  return `Frequency [${unit}],Magnitude [dB],Phase [deg]\n${rows.join('\n')}\n`
}

const log = () => useLog.getState()
const bench = () => useScenario.getState()
const until = (state: () => boolean) => vi.waitFor(() => expect(state()).toBe(true), { timeout: 600_000, interval: 5 })

beforeEach(() => {
  vi.stubGlobal('Worker', DeskWorker)
  useScenario.setState(useScenario.getInitialState(), true)
  useScenario.setState({ scenario })
  for (const { id } of log().logs) log().close(id)
})
afterEach(() => {
  vi.unstubAllGlobals()
  useScenario.setState(useScenario.getInitialState(), true)
})

async function opened(text: BlobPart, name = 'a.csv') {
  log().open([new File([text], name)])
  await until(() => log().logs.every(({ status }) => status !== 'reading'))
}

async function asked() {
  useLog.setState({ responded: null, unresponded: null })
  log().respond(bench().scenario)
  await until(() => log().responded !== null || log().unresponded !== null)
}

const fitted = (path: string) => log().responded!.fit!.values.find((each) => each.path === path)!.value

describe('a measured frequency response', () => {
  it('is a table that is opened like a log, and the axis is fitted to it', async () => {
    await opened(table('Hz'))
    const { told } = log().logs[0]!
    expect(told!.faults).toEqual([])
    expect(told!.response).toMatchObject({ rows: 60, coherence: false, units: { frequency: 'Hz', magnitude: 'dB' } })
    await asked()
    expect(fitted(MASS)).toBeCloseTo(0.9, 3)
    expect(fitted('log.delay')).toBeCloseTo(0.0002, 5)
    const { measured, before, after } = log().responded!
    // Heavier by 0.75 kg of 5.25: less speed for an ampere where the mass alone counts.
    expect(before.magnitude[50]!).toBeGreaterThan(after!.magnitude[50]!)
    expect(after!.magnitude[0]!).toBeCloseTo(measured.magnitude[0]!, 3)
  })

  it('is asked anew with other units or another scale, and as before once that is undone', async () => {
    await opened(table('rad/s', 1e-3).replace('rad/s', 'Hz'))
    const { id } = log().logs[0]!
    await asked()
    expect(log().responded!.fit).toBeNull()
    log().setResponse({ said: { [id]: { frequency: 'rad/s', scale: 1e-3 } } })
    await asked()
    expect(fitted(MASS)).toBeCloseTo(0.9, 3)
    bench().undo()
    await asked()
    expect(log().responded!.fit).toBeNull()
  })

  it.each([
    [
      'an empty table',
      'Frequency [Hz],Magnitude [dB],Phase [deg]\nNaN,NaN,NaN\nNaN,NaN,NaN\nNaN,NaN,NaN\n',
      'few-frequencies',
    ],
    ['too few rows', table('Hz').split('\n').slice(0, 5).join('\n'), 'few-frequencies'],
    ['another axis', table('Hz').replaceAll(/,(-?[\d.]+)$/gm, ',77'), 'another-response'],
  ])('that is %s has no fit, and says why', async (_, text, kind) => {
    await opened(text)
    await asked()
    const { responded, unresponded } = log()
    expect(responded?.fit ?? null).toBeNull()
    expect(responded?.why ?? unresponded).toMatchObject({ fault: { kind } })
  })

  it('is computed from a log of noise where that is asked for', async () => {
    // A mass of 5 kg behind 0.2 N/A is 0.04 m/s² for each ampere, of currents that are held from row to row.
    const normal = normals(4)
    let [speed, position] = [0, 0]
    const rows = Array.from({ length: 6000 }, (_, k) => {
      const current = normal()
      const line = `${k / 2000},${1e6 * position},${current}`
      position += speed / 2000 + (0.02 * current) / 2000 ** 2
      speed += (0.04 * current) / 2000
      return line
    })
    await opened(`time [s],position [µm],current [A]\n${rows.join('\n')}\n`)
    const { id } = log().logs[0]!
    log().respond(scenario)
    expect(log().responded).toBeNull()
    log().setResponse({ source: `${id}/0` })
    await asked()
    const { measured, coherence, input, blocks } = log().responded!
    expect(input).toBe('current')
    expect(blocks).toBeGreaterThan(8)
    expect(coherence!.every((each) => each >= 0 && each <= 1 + 1e-9)).toBe(true)
    // Closed form: 0.04/ω m/s for each ampere; what is held from row to row takes 0.05 dB here, a Hann window leaks some more.
    const k = measured.frequency.findIndex((omega) => omega > 2 * Math.PI * 100)
    expect(measured.magnitude[k]! - 20 * Math.log10(0.04 / measured.frequency[k]!)).toBeCloseTo(0, 0)
    // Of what is taken of the frequencies: up to half of those that rows can show.
    expect(measured.frequency.at(-1)! / (2 * Math.PI)).toBeLessThan(510)
    log().close(id)
    expect(log().responded).toBeNull()
  })
})
