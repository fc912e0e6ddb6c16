import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
// @ts-expect-error
import { compiledCore as bytes } from '../.tools/core.mjs'
import type { GripLoad } from '../sim/job/grip/load.ts'
import { modelOf } from '../sim/model/model.ts'
import { type Core, compiledCore, sourceCore } from '../sim/run/core.ts'
import { STRATEGIES } from '../sim/strategy/index.ts'

const PRIME = 16777619
function fnv(column: Float64Array) {
  const c = Float64Array.from(column, (v) => (Number.isNaN(v) ? NaN : v))
  const words = new Uint32Array(c.buffer)
  let low = 0x811c9dc5,
    high = 0x01000193
  for (let n = 0; n < words.length; n += 2) {
    low = Math.imul(low ^ words[n]!, PRIME)
    high = Math.imul(high ^ words[n + 1]!, PRIME) ^ (low >>> 15)
  }
  return (high >>> 0).toString(16).padStart(8, '0') + (low >>> 0).toString(16).padStart(8, '0')
}
const ids = [
  'time',
  'force',
  'farForce',
  'partShift',
  'sag',
  'drift',
  'dent',
  'current',
  'command',
  'voltage',
  'travel',
  'target',
  'motorTravel',
  'speed',
  'temperature',
  'gauge',
  'wantedSpeed',
]
import { checkScenario } from '../sim/index.ts'
const golden = JSON.parse(readFileSync('/tmp/golden/golden.json', 'utf8')).map((g: any) => { const c = checkScenario({ ...g.scenario, version: 1 }); if (!c.ok) throw new Error(JSON.stringify(c.faults)); return { ...g, scenario: c.scenario } })
function check(core: Core) {
  const bad: string[] = []
  let runs = 0
  for (const { name, scenario, runs: list } of golden) {
    for (const want of list) {
      const strategy = STRATEGIES.find((s) => s.id === want.id)!
      if (scenario.run.cycle !== null) continue
      const model = modelOf(scenario, strategy)
      model.bench.recording = 1
      model.bench.figuring = 1
      const run = core.lay(model)
      run.begin(model.samples)
      run.advance(model.samples)
      run.finish()
      const b = run.bench()
      const cols = run.rows(0, b.record.rows)
      runs++
      const diff = ids.filter((id, c) => fnv(cols[c]!) !== want.channels[id])
      if (b.record.rows !== want.rows || diff.length)
        bad.push(`${name} ${want.id} rows ${b.record.rows}/${want.rows} ${diff.join(',')}`)
      else {
        const load = b.load as GripLoad
        const s = b.figures.sums
        const f = (v: number) => (Number.isFinite(v) ? v : null)
        const m = want.metrics
        const touched = !Number.isNaN(load.state.contactTime)
        const mine: any = {
          contactTime: f(load.state.contactTime),
          peakForceTime: f(load.state.peakTime),
          minForceInMove: f(load.sums.least),
          maxForceInMove: f(load.sums.most),
          requiredForce: load.sums.required > 0 ? f(load.sums.required) : null,
          holdMargin: f(load.sums.margin - 1),
          settledForce: touched && s.count > 0 ? f(s.force) : null,
          gripTime: f(s.gripTime),
          peakCurrent: f(s.peakCurrent),
          windingTemperature: f(s.hottest),
          jawTravel: f(s.travel),
        }
        for (const k of Object.keys(mine)) if (mine[k] !== m[k]) bad.push(`${name} ${want.id} ${k} ${mine[k]} ${m[k]}`)
        const e: any = {
          lift: f(load.state.lift),
          slip: f(load.state.slip),
          drop: f(load.state.drop),
          release: f(load.state.free),
          crack: f(load.state.crackTime),
          engaged: f(b.state.engaged),
          unstable: f(b.rails.state.left),
        }
        for (const k of Object.keys(e))
          if (e[k] !== want.events[k]) bad.push(`${name} ${want.id} event ${k} ${e[k]} ${want.events[k]}`)
      }
    }
  }
  console.log(runs, bad.length, bad.slice(0, 30).join('\n'))
  return bad
}
it('source', { timeout: 1e6 }, () => {
  check(sourceCore)
})
it('compiled', { timeout: 1e6 }, async () => {
  const instance = new WebAssembly.Instance(new WebAssembly.Module(await bytes()))
  check(compiledCore(instance.exports))
})
