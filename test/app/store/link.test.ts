import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { deflateSync, strToU8 } from 'fflate'
import { describe, expect, it } from 'vitest'
import { axisToLink, linkToAxis, linkToScenario, scenarioToLink } from '../../../app/store/link.ts'
import { AXIS_PRESETS, allAxes, checkScenario, editScenario, PRESETS, type Scenario } from '../../../sim/index.ts'

function scenario(input: object): Scenario {
  const checked = checkScenario(input)
  if (!checked.ok) throw new Error(JSON.stringify(checked.faults))
  return checked.scenario
}

const busy = scenario({
  name: 'Schale „Nº 7“ 🥣',
  actuator: { kind: 'direct', motor: { forceConstant: 12.345678901234567 } },
  part: { width: 0.0701, crackForce: 41.2, exponent: 1.5 },
  arm: {
    lift: 0.5,
    moves: [
      { start: 0.7, acceleration: -4 },
      { start: 1.1, axis: 'up' },
    ],
  },
  events: { powerLoss: { time: 1.2, windings: 'shorted' } },
})

/** Links of version 1 and the scenarios they were made from, by the bench as it was. */
const FIRST: { id: string; link: string; scenario: object }[] = JSON.parse(
  readFileSync(new URL('../../scenario/fixtures/version-1.json', import.meta.url), 'utf8'),
)

/** A link as anyone could make it. */
function linkOf(version: string, text: string): string {
  const data = Buffer.from(deflateSync(strToU8(text))).toString('base64url')
  let hash = 0x811c9dc5
  for (const unit of data) hash = Math.imul(hash ^ unit.charCodeAt(0), 0x01000193)
  return `${version}.${(hash >>> 0).toString(36)}.${data}`
}

const opened = (link: string) => {
  const result = linkToScenario(link)
  return result.ok ? result.scenario : result.why
}

describe('a link', () => {
  it('restores a scenario bit for bit', () => {
    for (const each of [scenario({}), scenario({ actuator: { kind: 'rack' } }), busy])
      expect(opened(scenarioToLink(each))).toEqual(each)
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 20, noNaN: true }), fc.string({ maxLength: 200 }), (speed, notes) => {
        const edited = editScenario(busy, [
          { path: 'approach.speed', value: speed },
          { path: 'approach.creepFrom', value: 0 },
          { path: 'notes', value: notes },
        ])
        expect(edited.ok).toBe(true)
        if (!edited.ok) return
        const back = linkToScenario(scenarioToLink(edited.scenario))
        expect(back).toEqual({ ok: true, scenario: edited.scenario })
        expect(back.ok && Object.is(back.scenario.approach.speed, speed)).toBe(true)
      }),
    )
  })

  it('is short, and safe to paste', () => {
    const link = scenarioToLink(busy)
    expect(link).toMatch(/^2\.[0-9a-z]+\.[\w-]+$/)
    expect(link.length).toBeLessThan(500)
    expect(scenarioToLink(scenario({})).length).toBeLessThan(60)
  })

  it('given out by the first version still opens the same scenario', () => {
    expect(opened(FIRST_LINK)).toEqual(busy)
    for (const { id, link, scenario } of FIRST) {
      const checked = checkScenario(scenario)
      expect(checked.ok && checked.scenario, id).toEqual(opened(link))
    }
  })

  it('that holds no scenario at all is refused', () => {
    for (const text of ['null', '3', '[]', '"grip"'])
      for (const version of ['1', '2']) expect(opened(linkOf(version, text))).toMatch(/^This link holds .*faults/)
  })

  it('with many faults tells the first ones and how many there are', () => {
    const moves = Array.from({ length: 20 }, () => ({ start: -1, jerk: -1 }))
    const why = opened(linkOf('2', JSON.stringify({ arm: { moves } })))
    expect(why).toMatch(/^This link holds a scenario with faults: arm\.moves\[0\]\.start: .*; and 35 more\.$/)
  })

  it('of a few characters that unpacks into a list without end is refused by the length of the list', () => {
    const link = linkOf('2', `{"arm":{"moves":[${'{},'.repeat(60_000)}{}]}}`)
    expect(link.length).toBeLessThan(500)
    expect(opened(link)).toContain('arm.moves: given a list of 60001, allowed a list of at most 20 entries')
  })

  it('is held against the keys of its own version', () => {
    expect(opened(linkOf('1', '{"sensors":{}}'))).toContain('faults: sensors: given an unknown key')
    expect(opened(linkOf('2', '{"servo":{"encoderResolution":0}}'))).toContain('faults: servo.encoderResolution: given')
  })

  it('that was cut or changed is refused in words', () => {
    const link = scenarioToLink(busy)
    for (let length = 0; length < link.length; length++)
      expect(opened(link.slice(0, length))).toMatch(/^This link .*\.$/)
    for (let at = 2; at < link.length; at += 7) {
      const other = link[at] === 'A' ? 'B' : 'A'
      expect(opened(link.slice(0, at) + other + link.slice(at + 1))).toMatch(/^This link .*\.$/)
    }
    expect(opened('3.abc.def')).toBe('This link is of version 3; this bench reads versions 1 and 2.')
    expect(opened(`1.x.${'A'.repeat(300_000)}`)).toContain('at most 200000')
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(linkToScenario(text).ok).toBe(false)
      }),
    )
  })
})

describe('the link of a second axis', () => {
  it('restores every generic axis and those of the presets, title and all', () => {
    const own = PRESETS.map(({ title, scenario: { actuator } }) => ({ title, actuator }))
    for (const { title, actuator } of [...allAxes(), ...own]) {
      const link = axisToLink({ title, actuator })!
      expect(link.length, title).toBeLessThan(700)
      expect(linkToAxis(link), title).toEqual({ title, actuator })
    }
  })

  it('that was cut or changed holds none', () => {
    const link = axisToLink(AXIS_PRESETS[0]!)!
    for (const text of ['', link.slice(0, -1), link.replace(/.$/, '_'), 'x'.repeat(50)])
      expect(linkToAxis(text)).toBeNull()
  })
})

const FIRST_LINK =
  '1.14lfwxr.dZAxTsQwEEWvEk0dLCckBNwiUSEaSkRhObPEJLEjx9msFFnagyAoEJeg5Ch7Ao7AOFoQzXa2__z3v2cBI3sEAfeqkR0mh_3r3ddnUh32L8n328c7pCCVn6S3DsQCrTY1DdfaofKk9fYobKxTeG3N6KXxILKcnRflRXV5xbN8PYWQwiAdaQvMuvYNCM54xbMUlJOqvYkAEEXG8hRwN1iDK4iVZJSuj75Ob-iJszIGb3EE8bAAJUYqZ1WsqrBDJ722BsRZQS87TWMkODuOVLieflXOSH5G14LIOQ_pHylj1Onom4Z1Af-pFH4S8khdcUvFybvAYGd0tzGXLl7HNa-_m2mJ2jxF_thY57GGEMIP'
