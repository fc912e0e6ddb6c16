import { describe, expect, it } from 'vitest'
import { rackPath, teethOf } from '../../../../app/picture/elements/gear.ts'
import { markHeight, wrap } from '../../../../app/picture/elements/turning.tsx'
import { armAt } from '../../../../app/picture/grip/armMove.ts'
import { contactGeometry, contactShares } from '../../../../app/picture/grip/contact.ts'
import { placeNames } from '../../../../app/picture/grip/Names.tsx'
import { planOf } from '../../../../app/picture/grip/plan.ts'
import { forceScale, magnification, roundBelow } from '../../../../app/picture/grip/scales.ts'
import { roundPath, shapeOf, wallOf } from '../../../../app/picture/grip/shape.ts'
import type { ArmMove } from '../../../../sim/index.ts'
import { scenarioOf } from './support.ts'

const part = (changes: object) => scenarioOf({ jaws: { opening: 0.13 }, part: changes }).part

describe('shape of the part', () => {
  it('follows from its parameters', () => {
    expect(shapeOf(part({ crackForce: 60, mass: 0.9, width: 0.08 }))).toBe('cup')
    expect(shapeOf(part({ crackForce: 16, mass: 0.04, width: 0.08 }))).toBe('globe')
    expect(shapeOf(part({ exponent: 1.5, relaxation: { fraction: 0.4, time: 1 } }))).toBe('softBall')
    expect(shapeOf(part({ exponent: 1.5 }))).toBe('ball')
    expect(shapeOf(part({ stiffness: 6e6 }))).toBe('ring')
    expect(shapeOf(part({ stiffness: 5e4 }))).toBe('block')
  })

  it('has the wall that its mass allows', () => {
    expect(wallOf(part({ crackForce: 16, mass: 0.9, width: 0.118 }), 'cup')).toBeCloseTo(
      0.9 / (2400 * 3.7 * 0.118 ** 3),
      6,
    )
    expect(wallOf(part({ crackForce: 16, mass: 50, width: 0.1 }), 'cup')).toBe(0.085)
  })

  it('is cut flat where it is pressed', () => {
    const [, x] = /^M(-?[\d.]+) /.exec(roundPath(100, { driven: 4, far: 0, pad: 10 }))!
    expect(Number(x)).toBe(-46)
  })
})

describe('contact', () => {
  const geometry = (layout: 'mirrored' | 'anvil') =>
    contactGeometry(scenarioOf({ jaws: { layout, opening: 0.09, padStiffness: 1e5 }, part: { width: 0.07 } }))

  it('splits the squeeze into pad and part', () => {
    const shares = contactShares(geometry('mirrored'), {
      travel: 0.0105,
      partShift: 0,
      force: 20,
      farForce: 20,
      dent: 0,
    })
    expect(shares.driven.overlap).toBeCloseTo(0.0005, 9)
    expect(shares.driven.pad).toBeCloseTo(0.0002, 9)
    expect(shares.far.part).toBeCloseTo(0.0003, 9)
  })

  it('lets the part shift towards the fixed jaw of an anvil', () => {
    const shares = contactShares(geometry('anvil'), {
      travel: 0.0205,
      partShift: 0.0001,
      force: 30,
      farForce: 5,
      dent: 0,
    })
    expect(shares.driven.overlap).toBeCloseTo(0.0004, 9)
    expect(shares.far.overlap).toBeCloseTo(0.0001, 9)
    expect(shares.far.pad).toBeCloseTo(0.00005, 9)
  })

  it('keeps half of the dent at each side, and nothing else without force', () => {
    const gone = contactShares(geometry('mirrored'), {
      travel: 0.014,
      partShift: 0,
      force: 0,
      farForce: 0,
      dent: 0.0004,
    })
    expect(gone.driven).toMatchObject({ pad: 0, part: 0.0002 })
  })
})

describe('arm', () => {
  const move = { start: 1, axis: 'up', acceleration: 8, duration: 0.4, jerk: 100 } as ArmMove

  it('sums moves by direction', () => {
    expect(armAt([move, { ...move, axis: 'across' }, move], 1.1)).toEqual({ up: 16, across: 8, along: 0 })
  })
})

describe('scales', () => {
  it('give the settled forces room and draw a far peak broken', () => {
    expect(forceScale([40], [500], { least: 16, most: null })).toBe(100)
    expect(forceScale([40, 20], [58], { least: 16, most: 65 })).toBeCloseTo(72.8)
    expect(forceScale([0], [0], { least: null, most: null })).toBe(1)
  })

  it('round down', () => {
    expect([roundBelow(73), roundBelow(0.49), roundBelow(20)]).toEqual([50, 0.2, 20])
    expect([magnification(47), magnification(9.9), magnification(0.3)]).toEqual([40, 5, 1])
  })
})

describe('plan', () => {
  it.each(['mirrored', 'anvil'] as const)('is true to scale and inside the picture: %s', (layout) => {
    const scenario = scenarioOf({
      jaws: { layout, opening: 0.09, stroke: 0.03 },
      part: { width: 0.07, crackForce: 60 },
    })
    for (const [width, height] of [
      [237, 200],
      [374, 270],
      [740, 310],
      [1600, 430],
    ] as const) {
      const plan = planOf(scenario, { width, height }, 80)
      expect(plan.partWidth / plan.m).toBeCloseTo(0.07)
      expect((2 * plan.half) / plan.m).toBeCloseTo(0.09)
      expect(plan.stroke / plan.m).toBeCloseTo(0.03)
      expect(plan.origin.x + plan.driveLeft).toBeGreaterThanOrEqual(0)
      expect(plan.origin.x + plan.right).toBeLessThanOrEqual(width)
      expect(plan.origin.y + plan.floor).toBeLessThan(height)
      expect(plan.lens.x - plan.lens.r).toBeGreaterThanOrEqual(0)
      expect(plan.lens.y + plan.lens.r).toBeLessThanOrEqual(height)
      const farTouch = layout === 'mirrored' ? plan.partWidth / 2 : plan.half
      expect(plan.origin.x + farTouch + plan.arrow).toBeLessThanOrEqual(width)
    }
  })
})

describe('drawn machine elements', () => {
  it('mesh: the rack has the pinion’s pitch and a gap where the pinion has a tooth', () => {
    const teeth = teethOf(10, 5)
    expect(teeth.count % 2).toBe(0)
    expect(teeth.count * teeth.pitch).toBeCloseTo(2 * Math.PI * 10)
    const tips = [...rackPath(teeth, -40, 40, -1, 4).matchAll(/L(-?[\d.]+) (-?[\d.]+)/g)].filter(
      ([, , y]) => Number(y) > 0,
    )
    const nearest = Math.min(...tips.map(([, x]) => Math.abs(Number(x))))
    expect(nearest).toBeGreaterThan(0.3 * teeth.pitch)
  })

  it('turn: a mark wanders over the near side and vanishes on the far one', () => {
    expect(markHeight(0.5, 10)).toBeCloseTo(10 * Math.sin(0.5))
    expect(markHeight(2, 10)).toBeNull()
    expect(wrap(7)).toBeCloseTo(7 - 2 * Math.PI)
  })
})

describe('names', () => {
  it('do not overlap in their row and stay in the picture', () => {
    const labels = ['encoder', 'winding', 'stator', 'rotor', 'coupling', 'bearing'].map((text, i) => ({
      text,
      x: 8 * i,
      y: 0,
    }))
    const placed = placeNames(labels, { x: 20, y: 60 }, 360, 2)
    for (const a of placed) {
      expect(a.left + a.width).toBeLessThanOrEqual(360)
      for (const b of placed)
        if (a !== b && a.base === b.base) expect(a.left + a.width <= b.left || b.left + b.width <= a.left).toBe(true)
    }
  })
})
