import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { lentOf } from '../../../app/store/lend.ts'
import { useLog } from '../../../app/store/log.ts'
import { standsOn } from '../../../app/store/log-state.ts'
import { useScenario } from '../../../app/store/scenario.ts'
import { run } from '../../../sim/cli/core.ts'
import { editScenario, PRESETS, tracesCsv } from '../../../sim/index.ts'
import { quick } from '../../grip/scenarios.ts'
import { DeskWorker } from './desk-worker.ts'

const scenario = quick()
const heavier = editScenario(scenario, [{ path: 'actuator.transmission.carriageMass', value: 0.9 }])
if (!heavier.ok) throw new Error('refused')
const trace = tracesCsv(run(heavier.scenario, 'current-clamp', { traces: true }).traces)

const log = () => useLog.getState()
const bench = () => useScenario.getState()
const file = (text: BlobPart, name = 'a.csv') => new File([text], name)
const first = () => log().logs[0]!
const until = (state: () => boolean) => vi.waitFor(() => expect(state()).toBe(true), { timeout: 600_000, interval: 5 })

const packed = async (text: string) =>
  new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('gzip'))).arrayBuffer()

beforeEach(() => {
  vi.stubGlobal('Worker', DeskWorker)
  useScenario.setState(useScenario.getInitialState(), true)
  for (const { id } of log().logs) log().close(id)
})
afterEach(() => {
  vi.unstubAllGlobals()
  useScenario.setState(useScenario.getInitialState(), true)
})

async function opened(text: BlobPart, name?: string) {
  log().open([file(text, name)])
  await until(() => log().logs.every(({ status }) => status !== 'reading'))
}

describe('logs that are open', () => {
  it('are read, packed or not, with a small picture of each column', async () => {
    await opened(trace)
    await opened(await packed(trace), 'a.csv.gz')
    const [plain, gz] = log().logs
    expect(plain!.told!.faults).toEqual([])
    expect(gz!.told).toEqual(plain!.told)
    expect(plain!.sketches).toHaveLength(plain!.told!.columns.length)
    expect(Math.max(...plain!.sketches.map(({ length }) => length))).toBeLessThanOrEqual(240)
  })

  it('that are damaged or no text are refused, and the others stay', async () => {
    await opened(trace)
    await opened(new Uint8Array([0x1f, 0x8b, 1, 2, 3]), 'damaged.gz')
    await opened(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), 'picture.csv')
    expect(log().logs.map(({ status }) => status)).toEqual(['read', 'unreadable', 'read'])
    expect(log().logs[2]!.told!.faults.map(({ kind }) => kind)).toEqual(['not-text'])
    expect(first().told!.recordings).toHaveLength(1)
  })

  it('that are closed while they are read are let go', async () => {
    log().open([file(trace)])
    log().close(first().id)
    await opened(trace)
    expect(log().logs).toHaveLength(1)
  })

  it('are understood anew when a person says something, and when it is undone', async () => {
    await opened(trace)
    const current = () => first().told!.columns.find(({ header }) => header === 'current')!
    const { place } = current()
    log().choose(first().id, place, { header: '', channel: 'current', scale: -1 })
    await until(() => current().scale === -1)
    expect(current().reason).toEqual({ kind: 'person' })
    bench().undo()
    await until(() => current().scale === 1)
    bench().redo()
    await until(() => current().scale === -1)
    log().choose(first().id, place, null)
    await until(() => current().scale === 1)
  })

  it('keep their columns in sight where what was said makes no sense', async () => {
    await opened(trace)
    const { id, told } = first()
    log().choose(id, 2, { header: '', channel: 'speed' })
    log().choose(id, 3, { header: '', channel: 'speed' })
    await until(() => first().told!.faults.length > 0)
    expect(first().told!.faults[0]).toMatchObject({ kind: 'two-for-one', channel: 'speed' })
    expect(first().told!.columns).toHaveLength(told!.columns.length)
  })

  it('count by recording, and a dragged origin is one step back', async () => {
    await opened(trace)
    log().leaveOut({ log: first().id, recording: 0 }, true)
    log().lay(scenario)
    expect(log().laid).toBeNull()
    log().leaveOut({ log: first().id, recording: 0 }, false)
    const before = bench().past.length
    for (const origin of [0.001, 0.002, 0.003]) log().setWish({ origin }, 'drag')
    expect(bench().past.length).toBe(before + 1)
    bench().undo()
    expect(bench().logs.wish.origin).toBe(0)
  })
})

describe('logs and the model', () => {
  it('are laid over each other, then fitted; what was heavier is found to be', { timeout: 0 }, async () => {
    await opened(trace)
    log().lay(scenario)
    await until(() => log().laid !== null)
    const { overlays } = log().laid!.recordings[0]!
    expect(overlays.map(({ channel }) => channel)).toContain('current')
    expect(overlays.every(({ after, time, measured }) => after === null && time.length === measured.length)).toBe(true)

    const paths = ['actuator.transmission.carriageMass', 'actuator.transmission.coulomb']
    log().setWish({ free: paths })
    log().startFit(scenario)
    await until(() => log().fit.status !== 'running')
    const { values, residuals, recordings } = log().fit.found!
    expect(values.map(({ path }) => path)).toEqual(paths)
    expect(Math.abs(values[0]!.value / 0.9 - 1)).toBeLessThan(0.1)
    expect(residuals.find(({ channel }) => channel === 'motorTravel')!.rms).toBeLessThan(
      residuals.find(({ channel }) => channel === 'motorTravel')!.before,
    )
    expect(recordings[0]!.overlays[0]!.after).not.toBeNull()

    // Used on the bench it is still the fit of what stands there; another change makes it one of something else.
    const found = log().fit.found!
    bench().load(scenario)
    const used = [...lentOf('', found.scenario, scenario).edits, { path: 'notes', value: 'Fitted to a log.' }]
    expect(bench().editMany(used)).toBe(true)
    expect(standsOn(bench().scenario, found)).toBe(true)
    expect(bench().edit('servo.kp', 2 * scenario.servo.kp)).toBe(true)
    expect(standsOn(bench().scenario, found)).toBe(false)
    bench().undo()
    bench().undo()
    expect(standsOn(bench().scenario, found)).toBe(true)
  })

  it('a fit that is cancelled says so, and gives nothing', { timeout: 0 }, async () => {
    await opened(trace)
    log().startFit(scenario)
    log().stopFit()
    expect(log().fit).toMatchObject({ status: 'stopped', found: null })
  })

  it('a log in which nothing moves is refused by what it lacks', { timeout: 0 }, async () => {
    const rows = Array.from({ length: 80 }, (_, k) => `${k / 1000},3,${k % 3}`)
    await opened(['time [s],position [mm],current [A]', ...rows].join('\n'))
    log().lay(PRESETS[0]!.scenario)
    await until(() => log().unlaid !== null)
    expect(log().unlaid).toMatchObject({ fault: { kind: expect.stringMatching(/still|nothing/) } })
  })

  it('a worker that is lost takes its logs along, and says so', async () => {
    await opened(trace)
    DeskWorker.last!.onerror()
    expect(first().status).toBe('unreadable')
    expect(log().laid).toBeNull()
  })
})
