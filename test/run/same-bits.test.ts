/** The core as TypeScript and the core compiled ahead of time are one simulator: the same to the last bit. */

import base64 from 'virtual:core'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { ALL_PRESETS, compiledCore, jobOf, type Scenario, strategiesOn } from '../../sim/index.ts'
import { modelOf } from '../../sim/model/model.ts'
import { simulate } from '../../sim/run/simulate.ts'
import { absurd, plausible } from '../grip/random.ts'
import { drawnCaps } from '../job/cap/random.ts'
import { drawnPresses } from '../job/press/random.ts'
import { drawnWebs } from '../job/web/random.ts'
import { KINDS } from '../scenario/schema-walk.ts'

const core = compiledCore(new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(base64, 'base64'))).exports)

/** Steps that one run of the corpus may take, and its scenarios: half of them within a decade of the defaults, half anywhere. */
const MOST = 20_000
const EACH = 84
const SEED = 20261127

function affordable(scenario: Scenario): boolean {
  try {
    const { axis } = modelOf(scenario, strategiesOn(jobOf(scenario))[0]!).bench
    return axis.steps * scenario.drive.currentRate * scenario.run.duration <= MOST
  } catch {
    return false
  }
}

function sameBits(name: string, scenario: Scenario): void {
  for (const { id } of strategiesOn(jobOf(scenario))) {
    const { result } = simulate(scenario, id, { core })
    expect(result.hash, `${name}, ${id}`).toMatch(/^[0-9a-f]{16}$/)
    expect(result, `${name}, ${id}`).toEqual(simulate(scenario, id).result)
  }
}

it.each(ALL_PRESETS.map(({ id, scenario }) => [id, scenario] as const))('%s by every strategy', (id, scenario) => {
  sameBits(id, { ...scenario, run: { ...scenario.run, cycle: null } }) // one run tells as much as the rounds of a duty
})

it.each(KINDS)('random %s axes by every strategy', (kind) => {
  for (const draw of [plausible, absurd]) {
    const corpus = fc
      .sample(draw(kind), { numRuns: 5 * EACH, seed: SEED })
      .filter(affordable)
      .slice(0, EACH)
    expect(corpus.length).toBe(EACH)
    corpus.forEach((scenario, n) => {
      sameBits(`${draw.name} ${kind} ${n}`, scenario)
    })
  }
})

it.each([
  ['presses', drawnPresses],
  ['closures', drawnCaps],
  ['webs', drawnWebs],
] as const)('random %s by every strategy', (name, drawn) => {
  const corpus = fc
    .sample(drawn, { numRuns: 5 * EACH, seed: SEED })
    .filter(affordable)
    .slice(0, EACH)
  expect(corpus.length).toBe(EACH)
  corpus.forEach((scenario, n) => {
    sameBits(`${name} ${n}`, scenario)
  })
})
